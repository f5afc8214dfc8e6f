import { certainCurrentThrough } from "../analysis/current-through.ts";
import type { WorstOf } from "../analysis/network-result.ts";
import type { Part } from "../model/network.ts";
import type { Citation } from "../standards/citation.ts";
import { type Found, inNetwork, type JudgedPlan } from "./rule.ts";
import { estimateInWords } from "./wording/estimate-in-words.ts";
import { atPart, kindInWords, occasionInWords } from "./wording/part-in-words.ts";

/** A part's maximum current comes from its maker, and the plan repeats it. No document confirms it. */
export const statedRating: Citation = {
  document: "The maker's rating, as the plan states it",
  section: "",
  authority: "stated in the plan",
  confirmed: "read",
};

/**
 * The parts of these kinds that carry more than their stated rating, in a scenario that lasts or with a single device; silent if
 * none is stated.
 */
export function aboveStatedRating(plan: JudgedPlan, ...kinds: readonly RatedKind[]): Found<AboveRating>[] {
  return inNetwork(plan, ({ network, result }) =>
    network.parts.flatMap((part) => {
      if (!isOneOf(kinds, part) || part.ratedA === undefined) return [];
      const worst = certainCurrentThrough(result, part);
      if (!worst || !isAbove(worst.currentA, part.ratedA)) return [];
      const values: AboveRating = {
        kind: kindInWords(part),
        currentA: worst.currentA,
        estimate: estimateInWords(worst.estimate),
        ratedA: part.ratedA,
        scenario: occasionInWords(network, worst),
      };
      return [{ subject: part.name, at: atPart(part, "ratedA"), values }];
    }),
  );
}

type RatedKind = "busBar" | "disconnect" | "relay" | "selectorSwitch";

function isOneOf(kinds: readonly RatedKind[], part: Part): part is Extract<Part, { kind: RatedKind }> {
  return (kinds as readonly string[]).includes(part.kind);
}

export interface AboveRating {
  /** "bus bar", "relay" */
  readonly kind: string;
  /** The maximum current through it; through a bus, the sum of all currents into it. */
  readonly currentA: number;
  readonly estimate: string;
  readonly ratedA: number;
  /** `in "everything on"`, `with windlass alone`. */
  readonly scenario: string;
}

/** A worst current that is worth reporting: for a conductor without current the solver gives rounding errors, not 0. */
export function worthTelling(worst: WorstOf | undefined): WorstOf | undefined {
  return worst && worst.currentA >= leastToldA ? worst : undefined;
}

const leastToldA = 1e-3;

/**
 * True if a solved current is above its limit. The solver's relative error is about 1e-9: a current exactly at its limit is
 * within it.
 */
export function isAbove(currentA: number, limitA: number): boolean {
  return currentA > limitA * (1 + solverBlur);
}

const solverBlur = 1e-9;
