import { converterDemands } from "../../analysis/converter-demand.ts";
import { converterOutput } from "../../standards/machine-practice.ts";
import { isAbove } from "../current-through.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart, listInWords, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const outputCurrent = defineRule<Values>({
  id: "charger/output-current",
  title: "Converter asked for more than it gives",
  severity: "warning",
  why: "With no battery at its output a converter cannot give more than its rating: the voltage falls, and its loads restart or stop.",
  sources: [converterOutput],
  fixable: false,
  acceptable: true,
  // Needs the loads at the output of each converter or charger that no battery supports, in each scenario.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      converterDemands(network).flatMap(({ converters, givesA, demandA, devices, scenario }) => {
        const [first] = converters;
        if (!first || !isAbove(demandA, givesA)) return [];
        const named = devices.flatMap((index) => network.parts[index] ?? []);
        const values: Values = {
          demandA,
          givesA,
          together: converters.length > 1,
          devices: named.slice(0, mostNamed).map((part) => partInWords(part)),
          deviceCount: named.length,
          scenario: scenarioInWords(network, scenario),
          source: sourceInWords(converterOutput),
        };
        return [
          {
            subject: first.name,
            at: atPart(first, "outputA"),
            values,
            related: named.slice(0, mostNamed).map((part) => relatedPart(part)),
          },
        ];
      }),
    ),
  message({ demandA, givesA, together, devices, deviceCount, scenario, source }) {
    const [asked, gives] = formatDistinctWithUnit(demandA, givesA, "A");
    const all = together ? " together with those beside it" : "";
    return `Asked for ${asked} ${scenario} (${listInWords(devices, 2, deviceCount)}), gives ${gives}${all}, and no battery helps (${source}): run less at once, or choose a larger one.`;
  },
});

/** There may be thousands side by side: a full list would contain thousands of names. */
const mostNamed = 16;

interface Values {
  readonly demandA: number;
  readonly givesA: number;
  /** Several feed the same conductors. */
  readonly together: boolean;
  /** The devices that draw, greatest first: the first ones of many. */
  readonly devices: readonly string[];
  readonly deviceCount: number;
  readonly scenario: string;
  readonly source: string;
}
