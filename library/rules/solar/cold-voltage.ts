import { coldStringOf, mostInSeries } from "../../analysis/solar-cold-voltage.ts";
import { type SolarWiring, solarWiringOf } from "../../analysis/solar-wiring.ts";
import type { SolarControllerPart } from "../../model/network.ts";
import { coldVoltageByCoefficient, coldVoltageFactors } from "../../standards/solar-factors.ts";
import type { ProposedFix } from "../finding.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, formatRounded, withUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const coldVoltage = defineRule<Values>({
  id: "solar/cold-voltage",
  title: "Array voltage exceeds controller input when cold",
  formerTitles: ["Array voltage too high on cold days"],
  severity: "error",
  why: "Cold modules give more voltage than on their label, and a controller is destroyed above its maximum input voltage.",
  sources: [coldVoltageByCoefficient, coldVoltageFactors.source],
  fixable: true,
  acceptable: true,
  // Needs the voltage on the coldest day, and the controller of each array. If this cannot be judged, it is reported as info.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      solarWiringOf(network).flatMap((wiring) => {
        const [weakest] = [...wiring.controllers].sort((one, other) => one.maxInputV - other.maxInputV);
        // Arrays in series are one string: reported once, on the most negative of them.
        return weakest && wiring.array === wiring.string[0] ? findingOn(wiring, weakest) : [];
      }),
    ),
  message(values) {
    const { why, controller } = values;
    if (why === "lowest-not-stated")
      return `Cannot be judged against ${controller}, as cold modules give more than on their label: state lowestC, the coldest day.`;
    if (why === "below-table")
      return `Cannot be judged at ${values.lowestC} °C: the table ends at ${values.tableEndsC} °C (${values.source}): state openCircuitPercentPerC.`;
    const { coldV, maxInputV, openCircuitV, panels, lowestC } = values;
    const [gives, bears] = formatDistinctWithUnit(coldV, maxInputV, "V");
    const subject = panels > 1 ? `${panels} modules in series give` : "Gives";
    const label = `${withUnit(openCircuitV, "V")} × ${formatRounded(coldV / openCircuitV)}, ${values.source}`;
    const when = lowestC === undefined ? "even at 25 °C" : `at ${lowestC} °C (${label})`;
    return `${subject} ${gives} ${when}, ${controller} accepts at most ${bears}: ${values.wayOut}.`;
  },
});

type Values =
  | { readonly why: "lowest-not-stated"; readonly controller: string; readonly source: string }
  | {
      readonly why: "below-table";
      readonly controller: string;
      readonly lowestC: number;
      readonly tableEndsC: number;
      readonly source: string;
    }
  | {
      readonly why: "too-high";
      readonly controller: string;
      readonly maxInputV: number;
      /** The whole string's voltage at 25 °C, and on the coldest day. */
      readonly openCircuitV: number;
      readonly coldV: number;
      /** Undefined: it is too high without any cold. */
      readonly lowestC: number | undefined;
      readonly panels: number;
      readonly source: string;
      readonly wayOut: string;
    };

function findingOn({ array, string }: SolarWiring, controller: SolarControllerPart): Found<Values>[] {
  const { openCircuitV, coldV, notJudged, source } = coldStringOf(string);
  const { maxInputV } = controller;
  const found = {
    subject: array.name,
    related: [
      relatedPart(controller, `${partInWords(controller)} accepts at most ${withUnit(maxInputV, "V")}`),
      ...string.slice(1).map((other) => relatedPart(other, `${partInWords(other)}, in series with it`)),
    ],
  };
  if (exceeds(coldV, maxInputV)) {
    const alone = string.length === 1;
    const fixes = alone ? fewerInSeries(array, maxInputV) : [];
    const values: Values = {
      why: "too-high",
      controller: partInWords(controller),
      maxInputV,
      openCircuitV,
      coldV,
      lowestC: notJudged ? undefined : array.lowestC,
      panels: string.reduce((sum, { series }) => sum + series, 0),
      source: sourceInWords(source),
      wayOut: wayOut(fixes, "use a controller that accepts more, or modules with less voltage"),
    };
    const at = atPart(array, alone && array.series > 1 ? "series" : "openCircuitV");
    return [{ at, values, fixes, ...found }];
  }
  if (!notJudged) return [];
  const values: Values = {
    controller: partInWords(controller),
    source: sourceInWords(coldVoltageFactors.source),
    ...notJudged,
  };
  return [{ at: atPart(array), severity: "info", values, ...found }];
}

/** The builder decides: modules are left over, or go in parallel instead. */
function fewerInSeries(array: SolarWiring["array"], maxInputV: number): ProposedFix[] {
  const series = mostInSeries(array, maxInputV);
  if (series < 1 || series >= array.series) return [];
  return [
    {
      title: series === 1 ? "Put one module in each string" : `Put ${series} modules in series`,
      kind: "suggestion",
      changes: [{ do: "set", record: array.record, path: ["series"], value: series }],
    },
  ];
}
