import type { NetworkConductor } from "../../../model/network.ts";
import { type ConductorLaw, conductorLaws, resistanceOf } from "./conductor-current.ts";
import { leastRunningV } from "./solve-devices.ts";

/** A loop without branches: the same current in all of it. */
export interface LoopOfOneCurrent {
  readonly conductors: readonly NetworkConductor[];
  /** Of everything else in it, batteries too, Ω. */
  readonly ohm: number;
  /** Of the batteries at rest, V. */
  readonly emfV: number;
}

export type LoopDraw =
  | { readonly as: "current"; readonly currentA: number }
  | { readonly as: "power"; readonly powerW: number }
  | { readonly as: "resistance"; readonly ohm: number };

/**
 * The current that a device draws from a loop, A: the solution that nodal analysis of the loop has, in far fewer steps.
 *
 *     E = I · (R + Σ Rₖ(I)) + U(I)     Rₖ of each conductor, warmed by the current; U over the device: P / I, Rd · I, or any
 *
 * Undefined unless at least half of the voltage is left for the device: nearer to the limit of the loop, the general solver decides
 * whether there is an operating point.
 */
export function currentInLoop(loop: LoopOfOneCurrent, draw: LoopDraw): number | undefined {
  const laws = conductorLaws(loop.conductors);
  const currentA = draw.as === "current" ? draw.currentA : settledCurrent(loop, laws, draw);
  if (currentA === undefined) return undefined;
  const leftV = loop.emfV - dropIn(loop, laws, currentA).dropV;
  return leftV >= Math.max(loop.emfV / 2, leastRunningV) ? currentA : undefined;
}

/** Newton's method from the current at full voltage. */
function settledCurrent(
  loop: LoopOfOneCurrent,
  laws: readonly ConductorLaw[],
  draw: Exclude<LoopDraw, { as: "current" }>,
): number | undefined {
  let currentA = draw.as === "power" ? draw.powerW / loop.emfV : loop.emfV / (loop.ohm + draw.ohm);
  for (let step = 0; step < mostSteps; step++) {
    const { dropV, slope } = dropIn(loop, laws, currentA);
    const leftV = loop.emfV - dropV;
    const changeA =
      draw.as === "power"
        ? (draw.powerW - leftV * currentA) / (leftV - slope * currentA)
        : (leftV - draw.ohm * currentA) / (slope + draw.ohm);
    currentA += changeA;
    if (!(currentA >= 0)) return undefined;
    if (Math.abs(changeA) <= enough * currentA) return currentA;
  }
  return undefined;
}

const mostSteps = 40;
/** Of the current; the next step would leave only rounding. */
const enough = 1e-9;

/** The drop in the loop at a current, and its derivative, Ω. */
function dropIn({ ohm }: LoopOfOneCurrent, laws: readonly ConductorLaw[], currentA: number) {
  let dropV = ohm * currentA;
  let slope = ohm;
  for (const law of laws) {
    const warmed = resistanceOf(law, currentA);
    dropV += warmed * currentA;
    slope += currentA >= law.ampacityA ? warmed : 3 * warmed - 2 * law.ambientOhm;
  }
  return { dropV, slope };
}
