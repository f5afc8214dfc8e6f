import { shortestM } from "../../../model/length-limits.ts";
import type { NetworkConductor } from "../../../model/network.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { adiabaticCopper } from "../../../standards/short-circuit-copper.ts";
import { ampacityOf } from "../../ampacity.ts";
import type { Ampacity } from "../../circuit-result.ts";
import { crossSectionMm2 } from "../../copper-area.ts";
import { resistanceAt, wireResistance } from "../../resistance.ts";

/**
 * Voltage over a conductor and current in it, its own warming included.
 *
 *     U = I · (a + b · I²)  up to I_max,  U = I · R_max  above     U voltage over it, V; I current, A
 *
 * a resistance at the ambient, Ω; b the resistance that warming adds, Ω/A²; I_max ampacity; R_max resistance at the temperature
 * of the table's column. The equation combines the conductor's temperature, T = Ta + (Tr − Ta) · (I / I_max)², with
 * R = R20 · (1 + α · (T − 20)). Above I_max the steady temperature is unknown, and the column's counts, as for a circuit
 * alone. So the solver finds current and temperature in one step instead of alternating between them.
 *
 * A conductor of unknown length has the shortest there may be: voltages behind it are the greatest possible.
 */
export interface ConductorLaw {
  readonly ambientOhm: number;
  /** Ω/A². 0 if the ampacity cannot be judged: the conductor is then at the temperature of its place, and no warmer. */
  readonly warmingOhmPerA2: number;
  readonly ambientC: number;
  /** The table's column, °C; the ambient if no ampacity can be given. */
  readonly hottestC: number;
  /** Infinite if no ampacity can be given. */
  readonly ampacityA: number;
  readonly hottestOhm: number;
}

/** By conductor index. */
export function conductorLaws(conductors: readonly NetworkConductor[]): readonly ConductorLaw[] {
  return conductors.map(lawOf);
}

/** A conductor that an edit leaves as it was keeps its law. */
const lawOf = workedOutOnce((conductor: NetworkConductor) =>
  conductorLaw(conductor, ampacityOf(conductor.run)),
);

function conductorLaw({ run, lengthM }: NetworkConductor, ampacity: Ampacity): ConductorLaw {
  const wire = wireResistance(run.conductor);
  const ohm20C = ((wire?.ohmPerM20C ?? Number.NaN) * (lengthM ?? shortestM)) / run.conductor.parallel;
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
  const { byInsulationA: ampacityA, columnC } = ampacity;
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
 * The law for the seconds of a start, after a steady current: no heat leaves the conductor, and it is no warmer than its current makes
 * it in that time.
 *
 *     R = R0 · (1 + I² · t / (K · S)²)     first order of IEC 60949; R at most that of the table's column
 *
 * R0 resistance before the start, Ω; I current of the start, A; t its time, s; K = 226 A·√s/mm²; S cross-section of all wires, mm². The
 * terms left out are below 2 % of the resistance until the conductor is 50 °C warmer.
 */
export function lawDuringStart(
  law: ConductorLaw,
  { run }: Pick<NetworkConductor, "run">,
  { beforeA, startS }: { readonly beforeA: number; readonly startS: number },
): ConductorLaw {
  if (law.ampacityA === Number.POSITIVE_INFINITY) return law;
  const ambientOhm = resistanceOf(law, beforeA);
  const withstandA = adiabaticCopper.bigK * crossSectionMm2(run.conductor) * run.conductor.parallel;
  const warmingOhmPerA2 = (ambientOhm * startS) / (withstandA * withstandA);
  return {
    ...law,
    ambientOhm,
    warmingOhmPerA2,
    ambientC: temperatureOf(law, beforeA),
    // Above this current it is as warm as its column by the end.
    ampacityA: Math.max(
      Math.sqrt(Math.max(0, law.hottestOhm - ambientOhm) / warmingOhmPerA2),
      Number.MIN_VALUE,
    ),
  };
}

/**
 * Minimum resistance of any conductor or connection, Ω: a tenth of a micro-ohm, a few millimetres of the thickest cable.
 * A zero length, or a rejected number that came through, would otherwise give an unbounded current.
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
 * the current of the cold conductor. The cubic is convex beyond 0, so the steps approach the root from above. Each leaves about
 * the square of the previous error: after a step of less than 1e-8 of the current only rounding remains.
 */
export function warmedCurrentA(voltageV: number, ambientOhm: number, warmingOhmPerA2: number): number {
  const coldA = voltageV / ambientOhm;
  if (warmingOhmPerA2 === 0) return coldA;
  let currentA = coldA;
  for (let step = 0; step < 40; step++) {
    const heatedOhm = warmingOhmPerA2 * currentA * currentA;
    // The residual of U, written to keep its digits when warming is small.
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
