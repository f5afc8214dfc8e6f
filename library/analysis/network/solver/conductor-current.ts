import type { NetworkConductor } from "../../../model/network.ts";
import { ampacityOf } from "../../ampacity.ts";
import type { Ampacity } from "../../circuit-result.ts";
import { resistanceAt, wireResistance } from "../../resistance.ts";

/**
 * Voltage over a conductor and current in it, its own warming included.
 *
 *     U = I · (a + b · I²)  up to I_max,  U = I · R_max  above     U voltage over it, V; I current, A
 *
 * a resistance at the ambient, Ω; b what warming adds, Ω/A²; I_max ampacity; R_max resistance at the temperature of the
 * table's column. The equation is the one of the conductor's temperature, T = Ta + (Tr − Ta) · (I / I_max)², put into
 * R = R20 · (1 + α · (T − 20)). Above I_max no steady temperature can be told, and the column's counts: as for a
 * circuit alone. So current and temperature are found in one step, not in turns.
 */
export interface ConductorLaw {
  readonly ambientOhm: number;
  /** Ω/A². 0 where the ampacity cannot be judged: then the conductor is taken as warm as its place, and no warmer. */
  readonly warmingOhmPerA2: number;
  readonly ambientC: number;
  /** The table's column, °C; the ambient where no ampacity can be given. */
  readonly hottestC: number;
  /** Infinite where no ampacity can be given. */
  readonly ampacityA: number;
  readonly hottestOhm: number;
}

/** By conductor index. Both conductors of a circuit share one run, whose ampacity is worked out once. */
export function conductorLaws(conductors: readonly NetworkConductor[]): readonly ConductorLaw[] {
  const ampacities = new Map<NetworkConductor["run"], Ampacity>();
  return conductors.map((conductor) => {
    const { run } = conductor;
    const ampacity = ampacities.get(run) ?? ampacityOf(run);
    ampacities.set(run, ampacity);
    return conductorLaw(conductor, ampacity);
  });
}

function conductorLaw({ run, lengthM }: NetworkConductor, ampacity: Ampacity): ConductorLaw {
  const wire = wireResistance(run.conductor);
  const ohm20C = ((wire?.ohmPerM20C ?? Number.NaN) * lengthM) / run.conductor.parallel;
  const { ambientC } = ampacity;
  const ambientOhm = noLessThanLeast(resistanceAt(ohm20C, ambientC));
  if (!ampacity.judged) {
    return {
      ambientOhm,
      warmingOhmPerA2: 0,
      ambientC,
      hottestC: ambientC,
      ampacityA: Number.POSITIVE_INFINITY,
      hottestOhm: ambientOhm,
    };
  }
  const { ampacityA, columnC } = ampacity;
  const hottestOhm = Math.max(ambientOhm, resistanceAt(ohm20C, columnC));
  return {
    ambientOhm,
    warmingOhmPerA2: (hottestOhm - ambientOhm) / (ampacityA * ampacityA),
    ambientC,
    hottestC: columnC,
    ampacityA,
    hottestOhm,
  };
}

/**
 * Nothing has less than this, Ω: a tenth of a micro-ohm, a few millimetres of the thickest cable. A length of nothing, or a
 * refused number that came through, would otherwise be a current without bounds.
 */
const leastOhm = 1e-7;

export function noLessThanLeast(ohm: number): number {
  return Math.max(ohm, leastOhm);
}

export function currentOf(law: ConductorLaw, voltageV: number): number {
  return Math.abs(voltageV) >= law.ampacityA * law.hottestOhm
    ? voltageV / law.hottestOhm
    : warmedCurrentA(voltageV, law.ambientOhm, law.warmingOhmPerA2);
}

/**
 * The current at a voltage below that of the ampacity: the one real root of b · I³ + a · I − U = 0, by Newton's method from
 * the current of the cold conductor. The cubic is convex beyond 0, so the steps come down on the root from above, each with
 * about the square of the error before: after one of less than 1e-8 of the current nothing is left but rounding.
 */
export function warmedCurrentA(voltageV: number, ambientOhm: number, warmingOhmPerA2: number): number {
  const coldA = voltageV / ambientOhm;
  if (warmingOhmPerA2 === 0) return coldA;
  let currentA = coldA;
  for (let step = 0; step < 40; step++) {
    const heatedOhm = warmingOhmPerA2 * currentA * currentA;
    // What is left of U, written so that it keeps its digits when warming is little.
    const changeA = (ambientOhm * (currentA - coldA) + heatedOhm * currentA) / (ambientOhm + 3 * heatedOhm);
    currentA -= changeA;
    if (Math.abs(changeA) <= 1e-8 * Math.abs(currentA)) break;
  }
  return currentA;
}

/** °C, not above the table's column. */
export function temperatureOf(law: ConductorLaw, currentA: number): number {
  const share = Math.min(1, Math.abs(currentA) / law.ampacityA);
  return law.ambientC + (law.hottestC - law.ambientC) * share * share;
}

/** Ω, at the temperature that the current causes. */
export function resistanceOf(law: ConductorLaw, currentA: number): number {
  return Math.abs(currentA) >= law.ampacityA
    ? law.hottestOhm
    : law.ambientOhm + law.warmingOhmPerA2 * currentA * currentA;
}
