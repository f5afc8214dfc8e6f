import { solarCurrent } from "../../analysis/solar-current.ts";
import { solarWiringOf } from "../../analysis/solar-wiring.ts";
import { solarCurrentFactors } from "../../standards/solar-factors.ts";
import { statedRating } from "../current-through.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { atPart, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const controllerCurrent = defineRule<Values>({
  id: "solar/controller-current",
  title: "Controller below the current of its modules",
  severity: "warning",
  why: "A controller that does not track passes the current of its modules on unchanged: above its rating it overheats and fails, often as a closed switch that overcharges the battery.",
  sources: [statedRating, solarCurrentFactors.irradianceSource],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the arrays on each controller that does not track. Arrays in series are one string, with the current of one.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part) => {
        if (part.kind !== "solarController" || part.tracking) return [];
        const arrays = solarWiringOf(network)
          .filter(({ array, controllers, string }) => array === string[0] && controllers.includes(part))
          .map(({ array }) => array);
        const shortCircuitA = sum(arrays.map((array) => array.shortCircuitA * array.parallel));
        const greatestA = sum(
          arrays.map((array) => solarCurrent(array.shortCircuitA, array.parallel).greatestA),
        );
        if (!exceeds(greatestA, part.outputA)) return [];
        const values: Values = {
          outputA: part.outputA,
          shortCircuitA,
          greatestA,
          source: sourceInWords(solarCurrentFactors.irradianceSource),
        };
        const related = arrays.slice(0, mostRelated).map((array) => relatedPart(array));
        return [{ subject: part.name, at: atPart(part, "outputA"), values, related }];
      }),
    ),
  message({ outputA, shortCircuitA, greatestA, source }) {
    const [rated, gives] = formatDistinctWithUnit(outputA, greatestA, "A");
    return `Modules of ${withUnit(shortCircuitA, "A")} drive up to ${gives} through this controller, which does not track (1.25 ×, ${source}); its rating is ${rated} (outputA): use a controller with a higher one, or one that tracks.`;
  },
});

/** There may be thousands side by side. */
const mostRelated = 8;

interface Values {
  readonly outputA: number;
  /** Of all strings, as labelled, A. */
  readonly shortCircuitA: number;
  /** In the brightest sun, A. */
  readonly greatestA: number;
  readonly source: string;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
