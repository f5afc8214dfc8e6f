import { alternatorLoads, type Demand } from "../../analysis/alternator-load.ts";
import { estimatesOf } from "../../analysis/network/estimates.ts";
import { sourceOfFigure } from "../../model/part-roles.ts";
import { alternatorShare } from "../../standards/charging-practice.ts";
import { isAbove } from "../current-through.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atPart, listInWords, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const alternatorOverload = defineRule<Values>({
  id: "alternator/overload",
  title: "Alternator overloaded continuously",
  formerTitles: ["More than the alternator gives for hours"],
  severity: "warning",
  why: "An alternator at its limit for hours gets hot and fails early; the battery supplies the missing current.",
  sources: [alternatorShare.source],
  fixable: false,
  acceptable: true,
  restsOn: "voltages",
  // Needs the loads that run for hours on the alternator's side, in each scenario. Loads on only in built-in scenarios are
  // advice.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      alternatorLoads(judged).flatMap(({ alternators, allowedA, everything, certain }): Found<Values>[] => {
        const [first, ...others] = alternators;
        const over = (demand: Demand | undefined) => demand && isAbove(demand.currentA, allowedA) && demand;
        const demand = over(certain) || over(everything);
        if (!first || !demand) return [];
        const { network, result } = judged;
        const solved = result.scenarios[demand.scenario];
        const devices = demand.devices.map(({ part }) => part);
        const estimate =
          solved?.state === "solved" ? estimatesOf(network).ofDevices(solved, devices) : undefined;
        const named = demand.devices.map(({ part, currentA }) => ({ part: network.parts[part], currentA }));
        const ratedA = alternators.reduce((sum, alternator) => sum + alternator.ratedA, 0);
        return [
          {
            subject: first.name,
            at: atPart(first, "ratedA"),
            severity: over(certain) ? "warning" : "info",
            values: {
              demandA: demand.currentA,
              estimate: estimateInWords(estimate),
              allowedA,
              ratedA,
              percent: (100 * allowedA) / ratedA,
              alternators: alternators.length,
              devices: named.flatMap(({ part }) => (part ? [partInWords(part)] : [])),
              scenario: scenarioInWords(network, demand.scenario),
              source: sourceInWords(sourceOfFigure(first, "continuousPercent")),
            },
            related: [
              ...others.slice(0, mostRelated).map((other) => relatedPart(other)),
              ...named.flatMap(({ part, currentA }) =>
                part ? [relatedPart(part, `${partInWords(part)} takes ${withUnit(currentA, "A")}`)] : [],
              ),
            ],
          },
        ];
      }),
    ),
  message({ demandA, estimate, allowedA, ratedA, percent, alternators, devices, scenario, source }) {
    const [demand, allowed] = formatDistinctWithUnit(demandA, allowedA, "A");
    const rated = `${withUnit(percent, "%")} of ${withUnit(ratedA, "A")}${alternators > 1 ? " together" : ""}`;
    return `Must supply ${demand}${estimate} ${scenario} (${listInWords(devices)}), its continuous limit is ${allowed}, ${rated} (${source}): charge with less, or run less at once.`;
  },
});

/** There may be thousands side by side: a full list for each would contain millions of names. */
const mostRelated = 16;

interface Values {
  readonly demandA: number;
  readonly estimate: string;
  readonly allowedA: number;
  readonly ratedA: number;
  readonly percent: number;
  /** Number of alternators that share it. */
  readonly alternators: number;
  /** The devices that draw the current, greatest first. */
  readonly devices: readonly string[];
  readonly scenario: string;
  readonly source: string;
}
