import { solarWiringOf } from "../../analysis/solar-wiring.ts";
import type { SolarControllerPart } from "../../model/network.ts";
import { arrayAboveBattery } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const arrayVoltage = defineRule<Values>({
  id: "solar/array-voltage",
  title: "Array voltage below the charging voltage",
  severity: "warning",
  why: "A solar controller lowers the voltage of its modules: an array below the charging voltage never fills the battery, or does not charge it at all.",
  sources: [arrayAboveBattery],
  fixable: false,
  acceptable: true,
  // Needs the controller of each array, and the arrays in series with it.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      solarWiringOf(network).flatMap(({ array, controllers, string }) => {
        // Arrays in series are one string: reported once, on the most negative of them.
        const highest = array === string[0] ? mostDemanding(controllers) : undefined;
        if (!highest) return [];
        const maxPowerV = string.reduce((sum, one) => sum + one.maxPowerV * one.series, 0);
        if (!exceeds(highest.outputV, maxPowerV)) return [];
        const values: Values = {
          maxPowerV,
          modules: string.reduce((sum, { series }) => sum + series, 0),
          controller: partInWords(highest),
          outputV: highest.outputV,
          source: sourceInWords(arrayAboveBattery),
        };
        return [
          { subject: array.name, at: atPart(array, "maxPowerV"), values, related: [relatedPart(highest)] },
        ];
      }),
    ),
  message({ maxPowerV, modules, controller, outputV, source }) {
    const [gives, needs] = formatDistinctWithUnit(maxPowerV, outputV, "V");
    const subject = modules > 1 ? `${modules} modules in series give` : "Gives";
    return `${subject} ${gives} at maximum power, ${controller} charges with ${needs} and only lowers the voltage (${source}): put more modules in series.`;
  },
});

interface Values {
  /** Of the whole string, at standard test conditions, V. */
  readonly maxPowerV: number;
  readonly modules: number;
  readonly controller: string;
  readonly outputV: number;
  readonly source: string;
}

function mostDemanding(controllers: readonly SolarControllerPart[]): SolarControllerPart | undefined {
  return [...controllers].sort((one, other) => other.outputV - one.outputV)[0];
}
