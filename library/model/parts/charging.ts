import { chargingVoltage } from "../../standards/charging-practice.ts";
import { cutOffVoltage } from "../../standards/device-practice.ts";
import type { BuildValues } from "../build-properties.ts";
import { workingVoltage } from "../part-properties.ts";
import { dropLimitOf } from "../read-run.ts";
import type { Bound } from "./contradiction.ts";
import type { ComparedFigure } from "./define-part.ts";
import { defaulted } from "./part-property.ts";

/* Figures that several kinds of charging and switching devices share. */

/** The voltage that a charger holds at its output. */
export function outputVoltage(positive = "positive", negative = "negative") {
  return defaulted(
    workingVoltage,
    ({ nominalV }) => (chargingVoltage.for12V * nominalV(positive, negative)) / 12,
    {
      words: "output voltage",
      summary: true,
      source: chargingVoltage.source,
    },
  );
}

/** The cut-off voltage of a device that spares its battery. */
export function cutOffV(nominalV: number): number {
  return (cutOffVoltage.for12V * nominalV) / 12;
}

/** A system of this nominal voltage never exceeds this: a device with a higher minimum would never run. */
export function chargedWith(what: string, nominalV: number): Bound {
  return { what, value: (chargingVoltage.for12V * nominalV) / 12, unit: "V" };
}

/** The system voltage for a charger's voltage: the next lower of 12, 24 and 48 V; below 12 V, the charger's voltage itself. */
export function nominalOfCharger(outputV: number | undefined): number | undefined {
  return outputV === undefined
    ? undefined
    : ([48, 24, 12].find((nominalV) => nominalV <= outputV) ?? outputV);
}

/** Inverters and chargers are among the devices with the closer limit of ISO 10133. */
export function closerDropLimit(build: BuildValues): DropLimit {
  const { critical: _, ...limit } = dropLimitOf({ critical: true }, build);
  return limit;
}

interface DropLimit {
  readonly dropLimitPercent: number;
  readonly dropLimitStated: boolean;
}

export function comparedDropLimit({ dropLimitPercent: value }: DropLimit): ComparedFigure {
  return { id: "dropLimitPercent", words: "drop limit", value: { value, unit: "%" } };
}
