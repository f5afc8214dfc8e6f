import { solarWiringOf } from "../../analysis/solar-wiring.ts";
import type { SolarArrayPart, SolarControllerPart } from "../../model/network.ts";
import { arrayAboveBattery, arrayWithoutTracking } from "../../standards/machine-practice.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, formatRounded, withUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const arrayVoltage = defineRule<Values>({
  id: "solar/array-voltage",
  title: "Array voltage does not suit the bank",
  formerTitles: ["Array voltage below the charging voltage"],
  severity: "warning",
  why: "A solar controller lowers the voltage of its modules: an array below the charging voltage never fills the battery. Without tracking, the voltage above it is lost.",
  sources: [arrayAboveBattery, arrayWithoutTracking.source],
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
        if (!exceeds(highest.outputV, maxPowerV)) return lostWithoutTracking(array, controllers, maxPowerV);
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
  message(values) {
    if ("lostPercent" in values) {
      const { maxPowerV, controller, outputV, lostPercent, source } = values;
      return `Gives ${withUnit(maxPowerV, "V")} at maximum power, and ${controller} does not track: it pulls the modules down to ${withUnit(outputV, "V")} or less, and at least ${formatRounded(lostPercent)} % of their power is lost (${source}). Use modules of some 18 V for each 12 V, or a controller that tracks.`;
    }
    const { maxPowerV, modules, controller, outputV, source } = values;
    const [gives, needs] = formatDistinctWithUnit(maxPowerV, outputV, "V");
    const subject = modules > 1 ? `${modules} modules in series give` : "Gives";
    return `${subject} ${gives} at maximum power, ${controller} charges with ${needs} and only lowers the voltage (${source}): put more modules in series.`;
  },
});

type Values = TooLow | LostWithoutTracking;

interface LostWithoutTracking {
  readonly maxPowerV: number;
  readonly controller: string;
  readonly outputV: number;
  readonly lostPercent: number;
  readonly source: string;
}

/** A module for a bank of this voltage has some 25 % more than the charging voltage: for heat, and for the drop on the way. */
function lostWithoutTracking(
  array: SolarArrayPart,
  controllers: readonly SolarControllerPart[],
  maxPowerV: number,
): Found<Values>[] {
  const lowest = mostDemanding(controllers.filter(({ tracking }) => !tracking));
  if (!lowest || !exceeds(maxPowerV, arrayWithoutTracking.mostOfOutput * lowest.outputV)) return [];
  const values: LostWithoutTracking = {
    maxPowerV,
    controller: partInWords(lowest),
    outputV: lowest.outputV,
    lostPercent: 100 * (1 - lowest.outputV / maxPowerV),
    source: sourceInWords(arrayWithoutTracking.source),
  };
  const related = [relatedPart(lowest)];
  return [{ subject: array.name, at: atPart(array, "maxPowerV"), values, related }];
}

interface TooLow {
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
