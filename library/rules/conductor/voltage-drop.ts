import { strandFactor, temperatureCoefficient } from "../../standards/copper.ts";
import { criticalDropLimit, ordinaryDropLimit } from "../../standards/drop-limits.ts";
import { resistanceOfAwg } from "../../standards/resistance-awg.ts";
import { resistanceOfClass5 } from "../../standards/resistance-iec60228.ts";
import { exceeds, tellApartWithUnit, withUnit } from "../figures.ts";
import { atProperty, defineRule, perCircuit } from "../rule.ts";
import { sizedFixes } from "../sized-fix.ts";
import { sourceInWords, unconfirmed } from "../source-in-words.ts";
import { wayOut } from "../way-out.ts";
import { lengthInWords, sizePath } from "../written-at.ts";

export const voltageDrop = defineRule<Values>({
  id: "conductor/voltage-drop",
  title: "Too much voltage lost on the way",
  severity: "warning",
  why: "What is lost in the conductor is missing at the device: lamps dim, pumps and fridges stall or cut out, inverters shut down early.",
  sources: [
    criticalDropLimit.source,
    ordinaryDropLimit.source,
    resistanceOfAwg.source,
    resistanceOfClass5.source,
    strandFactor.source,
    temperatureCoefficient.source,
  ],
  fixable: true,
  acceptable: true,
  // Needs the drop at the working temperature. An error where the device's own minimum is not met, else a warning.
  check: (plan) =>
    perCircuit(plan, ({ circuit, result: { drop } }) => {
      // One conductor has no device at its end; the way that it is a part of is judged as a whole.
      if (circuit.word === "cable") return [];
      const { minimumV } = circuit;
      const starved = minimumV !== undefined && exceeds(minimumV, drop.arrivingV);
      if (!starved && !exceeds(drop.dropPercent, drop.dropLimitPercent)) return [];
      const fixes = sizedFixes(circuit);
      const values: Values = {
        dropV: drop.dropV,
        dropPercent: drop.dropPercent,
        dropLimitPercent: drop.dropLimitPercent,
        limitSource: sourceInWords(drop.dropLimitSource),
        systemV: circuit.systemV,
        arrivingV: drop.arrivingV,
        ...(starved ? { minimumV } : {}),
        roundTrip: lengthInWords(circuit, drop.roundTripM),
        conductorC: drop.resistanceAtC,
        unconfirmed: drop.source.confirmed === "memory",
        atLeast: drop.overloaded,
        wayOut: wayOut(fixes, "no made size is enough; shorten the run, or set parallel"),
      };
      return [
        {
          at: atProperty(circuit, ...sizePath(circuit)),
          severity: starved ? "error" : "warning",
          values,
          fixes,
        },
      ];
    }),
  message(values) {
    const { dropV, dropPercent, dropLimitPercent, systemV, arrivingV, minimumV, roundTrip, conductorC } =
      values;
    const recalled = values.unconfirmed ? ` (resistance: ${unconfirmed})` : "";
    const how = `over ${roundTrip} of wire at ${withUnit(conductorC, "°C")}${recalled}`;
    const atLeast = values.atLeast ? "at least " : "";
    if (minimumV !== undefined) {
      const [arriving, needed] = tellApartWithUnit(arrivingV, minimumV, "V");
      return `Only ${arriving} of ${withUnit(systemV, "V")} arrive (${atLeast}${withUnit(dropV, "V")} lost ${how}), the device needs ${needed}: ${values.wayOut}.`;
    }
    const [percent, limit] = tellApartWithUnit(dropPercent, dropLimitPercent, "%");
    return `Loses ${atLeast}${withUnit(dropV, "V")}, ${percent} of ${withUnit(systemV, "V")}, ${how}; the limit is ${limit} (${values.limitSource}): ${values.wayOut}.`;
  },
});

interface Values {
  readonly dropV: number;
  /** Of the nominal voltage. */
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  readonly limitSource: string;
  readonly systemV: number;
  readonly arrivingV: number;
  /** Present where the device's own minimum is not met. */
  readonly minimumV?: number;
  /** Both conductors together, in the plan's unit. */
  readonly roundTrip: string;
  /** The temperature at which the resistance was taken, °C. */
  readonly conductorC: number;
  /** The resistance was recalled, not read. */
  readonly unconfirmed: boolean;
  /** The conductor is overloaded: it gets hotter than the temperature used, and loses more. */
  readonly atLeast: boolean;
  readonly wayOut: string;
}
