import { chargingVoltage } from "../../standards/charging-practice.ts";
import { cutOffVoltage } from "../../standards/device-practice.ts";
import { converterDropLimit, statedDropLimit } from "../../standards/drop-limits.ts";
import type { BuildValues } from "../build-properties.ts";
import { workingVoltage } from "../part-properties.ts";
import type { DropLimit } from "../run.ts";
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

/** The drop limit of the supply of an inverter or charger. */
export function supplyDropLimit({ criticalDropPercent }: BuildValues): DropLimit {
  return {
    dropLimitPercent: criticalDropPercent ?? converterDropLimit.percentOfNominal,
    dropLimitStated: criticalDropPercent !== undefined,
    dropLimitSource: criticalDropPercent === undefined ? converterDropLimit.source : statedDropLimit,
  };
}

/**
 * The same for a charger whose plan states the least voltage at which it gives its full output: it may lose as much as leaves that
 * voltage of the nominal one. It raises the voltage again, so a lesser drop gains nothing.
 */
export function boosterDropLimit(
  inputMinV: number,
  { build, nominalV }: { readonly build: BuildValues; readonly nominalV: number },
): DropLimit {
  const usual = supplyDropLimit(build);
  const dropLimitPercent = (100 * (nominalV - inputMinV)) / nominalV;
  return dropLimitPercent > usual.dropLimitPercent
    ? { dropLimitPercent, dropLimitStated: true, dropLimitSource: statedDropLimit }
    : usual;
}

export function comparedDropLimit({
  dropLimitPercent: value,
}: Pick<DropLimit, "dropLimitPercent">): ComparedFigure {
  return { id: "dropLimitPercent", words: "drop limit", value: { value, unit: "%" } };
}
