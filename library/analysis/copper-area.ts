import { shortestM } from "../model/length-limits.ts";
import type { Conductor, Run } from "../model/run.ts";
import { copperDensity } from "../standards/copper.ts";
import { resistanceOfAwg } from "../standards/resistance-awg.ts";

/**
 * Copper of a whole run, both conductors of a circuit and all wires in parallel: cross-section times length, mm²·m.
 * A cubic centimetre for each mm²·m. A run without a known length counts as the shortest there may be: it never decides a choice for
 * the sake of copper.
 */
export function copperMm2M(run: Pick<Run, "positiveM" | "negativeM">, conductor: Conductor): number {
  const { positiveM = shortestM, negativeM = 0 } = run;
  return crossSectionMm2(conductor) * conductor.parallel * (positiveM + negativeM);
}

/** Half of both conductors together, m; undefined if it is unknown. */
export function oneWayM({ positiveM, negativeM }: Pick<Run, "positiveM" | "negativeM">): number | undefined {
  return positiveM === undefined || negativeM === undefined ? undefined : (positiveM + negativeM) / 2;
}

/**
 * Mass of copper, kg.
 *
 *     m = ρ · S · l     a mm²·m is a cubic centimetre, a thousandth of a cubic decimetre
 */
export function copperKg(mm2M: number): number {
  return (copperDensity.kgPerDm3 * mm2M) / 1_000;
}

/**
 * Cross-section of one wire. It names metric sizes; for an AWG size it follows from the resistance of solid wire.
 *
 *     S = ρ / R     ρ = 1/58 Ω·mm²/m, annealed copper standard (IEC 60028); R in Ω/m
 */
export function crossSectionMm2(conductor: Conductor): number {
  return conductor.system === "metric" ? conductor.mm2 : (awgMm2.get(conductor.awg) ?? Number.NaN);
}

const awgMm2: ReadonlyMap<number | string, number> = new Map(
  resistanceOfAwg.rows.map(({ awg, solidOhmPerKm20C }) => [awg, 1000 / 58 / solidOhmPerKm20C]),
);
