import type { Circuit, Conductor } from "../model/circuit.ts";
import { resistanceOfAwg } from "../standards/resistance-awg.ts";

/**
 * Copper of a whole run, both conductors of a circuit and all wires in parallel: cross-section times length, mm²·m.
 * A cubic centimetre for each mm²·m, which is 8.89 g.
 */
export function copperMm2M(run: Pick<Circuit, "positiveM" | "negativeM">, conductor: Conductor): number {
  return crossSectionMm2(conductor) * conductor.parallel * (run.positiveM + run.negativeM);
}

/**
 * Of one wire. Metric sizes are named by it; that of an AWG size follows from the resistance of solid wire.
 *
 *     S = ρ / R     ρ = 1/58 Ω·mm²/m, annealed copper standard (IEC 60028); R in Ω/m
 */
export function crossSectionMm2(conductor: Conductor): number {
  return conductor.system === "metric" ? conductor.mm2 : (awgMm2.get(conductor.awg) ?? Number.NaN);
}

const awgMm2: ReadonlyMap<number | string, number> = new Map(
  resistanceOfAwg.rows.map(({ awg, solidOhmPerKm20C }) => [awg, 1000 / 58 / solidOhmPerKm20C]),
);
