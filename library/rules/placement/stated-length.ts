import { type HeldLength, heldLengths } from "../../analysis/placement/stated-lengths.ts";
import { metresPerFoot } from "../../model/length-limits.ts";
import { longerThanWay } from "../../standards/conductor-ways.ts";
import type { ProposedFix } from "../finding.ts";
import { atProperty, defineRule, type Found } from "../rule.ts";
import { formatDistinctWithUnit, formatExact } from "../wording/format-number.ts";
import { isInFeet } from "../wording/length-readings.ts";
import { conductorInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const statedLength = defineRule<Values>({
  id: "placement/stated-length",
  title: "Stated length does not fit the way",
  severity: "warning",
  why: "A conductor cut to a length below its way does not reach, and its drop is worse than on paper.",
  sources: [longerThanWay.source],
  fixable: true,
  acceptable: true,
  // Needs the ways of the conductors. Each stated length is held against the longest way of the conductors that it is for.
  check({ placement, circuits }): Found<Values>[] {
    if (!placement) return [];
    return heldLengths(
      placement,
      circuits.map(({ circuit }) => circuit),
    ).map(({ run, lead, ...held }): Found<Values> => {
      const inFeet = isInFeet(held.property);
      const perUnit = inFeet ? metresPerFoot : 1;
      const value = Math.ceil((held.wayM / perUnit) * 100 - 1e-6) / 100;
      const fix: ProposedFix = {
        title: `State ${formatExact(value)} ${inFeet ? "ft" : "m"}, the length of its way`,
        kind: "suggestion",
        changes: [{ do: "set", record: run.record, path: [held.property], value }],
      };
      const leftOut: ProposedFix = {
        title: "Leave the length out, for that of the way",
        kind: "suggestion",
        changes: Object.keys(run.lengthsGiven).map((property) => ({
          do: "remove",
          record: run.record,
          path: [property],
        })),
      };
      return {
        subject: run.name,
        at: atProperty(run, held.property),
        ...(held.is === "longer" && { severity: "info" }),
        values: {
          ...{ is: held.is, stated: held.statedM / perUnit, way: held.wayM / perUnit },
          ...{ unit: inFeet ? "ft" : "m", conductor: conductorInWords(lead) },
          source: sourceInWords(longerThanWay.source),
        },
        fixes: held.hasWays ? [fix, leftOut] : [fix],
      };
    });
  },
  message({ is, stated, way, unit, conductor, source }) {
    const [given, needed] = formatDistinctWithUnit(stated, way, unit);
    return is === "shorter"
      ? `${given} stated, but the way of ${conductor} is ${needed}, without slack: state the length of the way, or move a part.`
      : `${given} stated, and the way of ${conductor} is ${needed}: more than ${longerThanWay.factor} times as long (${source}). State the length of the way, or a channel that leads it around.`;
  },
});

interface Values {
  readonly is: HeldLength["is"];
  readonly stated: number;
  readonly way: number;
  readonly unit: "ft" | "m";
  readonly conductor: string;
  readonly source: string;
}
