import { metresPerFoot } from "../../model/length-limits.ts";
import type { Lead } from "../../model/placement/layout.ts";
import type { LengthProperty, Run } from "../../model/run.ts";
import { longerThanWay } from "../../standards/conductor-ways.ts";
import { groupedBy } from "../grouped-by.ts";
import type { Placement } from "./placement.ts";

/** A stated length that does not fit the way. */
export interface HeldLength {
  readonly run: Run;
  readonly property: LengthProperty;
  readonly statedM: number;
  /** Of the conductors that it is for, the one with the longest way. */
  readonly lead: Lead;
  readonly wayM: number;
  readonly is: "shorter" | "longer";
  /** Every conductor of the run has a way: it gives the length if the plan leaves it out. */
  readonly hasWays: boolean;
}

/** The stated lengths that are below the way, or far above it: of a pair, the one length is held against the longer way. */
export function heldLengths({ layout, ways }: Placement, runs: readonly Run[]): readonly HeldLength[] {
  const leadsOf = groupedBy(layout.leads, ({ record }) => record);
  return runs.flatMap((run) =>
    (Object.entries(run.lengthsGiven) as [LengthProperty, number][]).flatMap(([property, given]) => {
      const statedM = property.endsWith("Ft") ? given * metresPerFoot : given;
      const leads = (leadsOf.get(run.record) ?? []).filter(({ role }) => isFor(property, role));
      const found = leads.flatMap((lead) => {
        const way = ways[lead.index]!;
        return way.state === "found" ? [{ lead, wayM: way.lengthMm / 1_000 }] : [];
      });
      const [longest] = found.sort((one, other) => other.wayM - one.wayM);
      if (!longest) return [];
      const is = comparison(statedM, longest.wayM, found.length === leads.length);
      const all = leadsOf.get(run.record) ?? [];
      const hasWays = all.every(({ index }) => ways[index]!.state === "found");
      return is ? [{ run, property, statedM, ...longest, is, hasWays }] : [];
    }),
  );
}

/** `isWhole`: every way is known; otherwise a longer one may be the reason for the stated length. */
function comparison(statedM: number, wayM: number, isWhole: boolean): HeldLength["is"] | undefined {
  const { factor, byM, roundedToM } = longerThanWay;
  if (statedM < wayM - roundedToM - dustM) return "shorter";
  const isMuchLonger = statedM >= factor * wayM - dustM && statedM >= wayM + byM - dustM;
  return isWhole && isMuchLonger ? "longer" : undefined;
}

/** Lengths in feet are rounded in their last binary digits. */
const dustM = 1e-9;

function isFor(property: LengthProperty, role: Lead["role"]): boolean {
  if (property.startsWith("positive")) return role === "positive";
  if (property.startsWith("negative")) return role === "return";
  return true;
}
