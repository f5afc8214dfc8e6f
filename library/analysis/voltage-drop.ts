import type { Measured, Run } from "../model/run.ts";
import { dropLimitTolerance } from "../standards/drop-limits.ts";
import type { Ampacity, Drop, KnownDrop } from "./circuit-result.ts";
import { conductorTemperatureC } from "./conductor-temperature.ts";
import type { SupplyPath } from "./network-result.ts";
import { resistanceAt, wireResistance } from "./resistance.ts";
import { withoutDust } from "./rounding-dust.ts";

/**
 * Voltage drop of a circuit over its round trip, at the temperature its conductors reach at the load.
 *
 * Above the ampacity the temperature is limited to the insulation's rating (the table's column), and if no ampacity can be
 * given, to the place's temperature. The steady temperature is unknown there, the drop is at least the one given, and
 * `overloaded` reports this. Without a known length there is no drop.
 */
export function dropOf(circuit: Measured, ampacity: Ampacity): KnownDrop;
export function dropOf(circuit: Run, ampacity: Ampacity): Drop;
export function dropOf(circuit: Run, ampacity: Ampacity): Drop {
  const { conductor, loadA, systemV, dropLimitPercent, dropLimitSource } = circuit;
  const wire = wireResistance(conductor);
  // The model accepts only sizes in the tables.
  if (!wire) throw new Error(`No resistance for ${JSON.stringify(conductor)}.`);
  const conductorC = ampacity.judged
    ? conductorTemperatureC({
        ambientC: ampacity.ambientC,
        ratingC: ampacity.columnC,
        currentA: loadA,
        ampacityA: ampacity.byInsulationA,
      })
    : ampacity.ambientC;
  const resistanceAtC = ampacity.judged ? Math.min(conductorC, ampacity.columnC) : conductorC;
  const basis = {
    dropLimitPercent,
    dropLimitSource,
    conductorC,
    resistanceAtC,
    overloaded: !ampacity.judged || withoutDust(loadA) > ampacity.ampacityA,
    ohmPerM20C: wire.ohmPerM20C,
    strandFactor: wire.strandFactor,
    source: wire.source,
  };
  const { positiveM, negativeM } = circuit;
  if (positiveM === undefined || negativeM === undefined) return { judged: false, ...basis };
  const roundTripM = positiveM + negativeM;
  const roundTripOhm = roundTripResistance({
    ohmPerM: resistanceAt(wire.ohmPerM20C, resistanceAtC),
    roundTripM,
    parallel: conductor.parallel,
  });
  const dropV = voltageDropV(loadA, roundTripOhm);
  return {
    judged: true,
    dropV,
    dropPercent: (100 * dropV) / systemV,
    arrivingV: systemV - dropV,
    roundTripOhm,
    roundTripM,
    ...basis,
  };
}

/**
 * Whether a drop meets its limit, in percent of the nominal voltage: check, repair, completion and difference all ask here. For a drop
 * that is the least, true means only that it is not known to exceed the limit.
 */
export function meetsDropLimit({
  dropPercent,
  dropLimitPercent,
}: Pick<KnownDrop, "dropPercent" | "dropLimitPercent">): boolean {
  return dropPercent <= greatestDropPercent(dropLimitPercent) * (1 + solverBlur);
}

/**
 * The verdict on the drop of a supply path. One with an unknown length exceeds its limit if its known part does, and is not judged if
 * not.
 */
export function dropVerdict(
  way: Pick<SupplyPath, "dropPercent" | "dropLimitPercent" | "withoutLength">,
): "met" | "exceeded" | "not judged" {
  if (!meetsDropLimit(way)) return "exceeded";
  return way.withoutLength.length > 0 ? "not judged" : "met";
}

/** The greatest drop that still meets a limit, in percent of the nominal voltage. */
export function greatestDropPercent(dropLimitPercent: number): number {
  return dropLimitPercent + dropLimitTolerance.percentagePoints;
}

/** Relative accuracy of the solver's results. */
const solverBlur = 1e-9;

/**
 *     U = I · R     U drop, V; I current, A; R resistance of the whole round trip, Ω
 *
 * Ohm's law for direct current. FAA AC 43.13-1B, 11-66 writes it "resistance per foot × length × current".
 */
export function voltageDropV(currentA: number, roundTripOhm: number): number {
  return currentA * roundTripOhm;
}

/**
 *     R = r · L / n     R of the round trip, Ω; r of one wire, Ω/m; L of both conductors together, m; n wires in parallel
 *
 * Wires in parallel are of one size and one length.
 */
export function roundTripResistance(of: { ohmPerM: number; roundTripM: number; parallel: number }): number {
  return (of.ohmPerM * of.roundTripM) / of.parallel;
}
