import { assemble, largestResidualA, measureOf, type NodalState } from "./nodal-equations.ts";
import { copyVoltages, move, voltageOver } from "./node-voltages.ts";

/**
 * Newton's method on the equations of a {@link NodalState}, with a line search.
 *
 * A constant power can be drawn at two voltages. The search looks for the upper one, the only one that is stable. It starts
 * above it, at the voltages without such loads. From there each Newton step comes down towards the solution and does not pass
 * it, because the current of a constant power is convex in the voltage. Sources with limits have corners, which a step can
 * overshoot. The line search then shortens the step to the point at which the power balance along it changes sign: the minimum
 * of the network's co-content (W. Millar, "Some general theorems for non-linear systems possessing resistance", Phil. Mag. 42,
 * 1951). If the Jacobian is not positive definite, constant powers become constant currents for one step: that still goes
 * downhill. A voltage that collapses on that path has no operating point.
 */
type NewtonResult =
  | { readonly state: "found"; readonly iterations: number; readonly residualA: number }
  | NoSolution;

export interface NoSolution {
  /**
   * `collapsed`: a constant power pulled its voltage down without limit. `not-converged`: no solution within the
   * allowed steps.
   */
  readonly state: "collapsed" | "not-converged";
  readonly iterations: number;
}

/** Iterates from the present voltages to the solution; `unloadedV` of the draws must be known. */
export function iterate(state: NodalState, loadScale: number): NewtonResult {
  const { system } = state;
  assemble(state, "exact", loadScale);
  let before = Number.POSITIVE_INFINITY;
  let leastPivot = Number.NaN;
  for (let iterations = 1; iterations <= mostIterations; iterations++) {
    const residualA = largestResidualA(state);
    if (Number.isNaN(residualA)) break;
    const measureA = measureOf(state.largestA);
    const isRounding = residualA <= nearShare * measureA && residualA > before / 2;
    if (residualA <= solvedShare * measureA || isRounding) {
      if (Number.isNaN(leastPivot)) leastPivot = system.factor();
      if (leastPivot < -surelyNegative && isUnstable(state, loadScale))
        return { state: "collapsed", iterations };
      return { state: "found", iterations, residualA };
    }
    before = residualA;
    leastPivot = system.factor();
    const isIndefinite = leastPivot <= 0;
    if (isIndefinite) {
      assemble(state, "regularised", loadScale);
      system.factor();
    }
    solveForStep(state);
    lineSearch(state, loadScale, isIndefinite);
    if (loadScale > 0 && anyCollapsed(state)) return { state: "collapsed", iterations };
  }
  return { state: "not-converged", iterations: mostIterations };
}

/** Newton steps; six are usual, and each unusual one halves some interval. */
const mostIterations = 80;
/** As a share of {@link measureOf}: the residual is no more than rounding, or nearly so and no longer falling. */
const solvedShare = 2e-12;
const nearShare = 1e-10;
/** Relative to the original diagonal; larger than rounding error. */
const surelyNegative = 1e-9;

/**
 * One step of the linear assembly from zero: the voltages without constant powers, at which the iteration starts. The
 * conductors' own warming makes even these equations slightly non-linear; one step is near enough.
 */
export function stepToLinearSolution(state: NodalState): void {
  const { voltages, step } = state;
  voltages.coarse.fill(0);
  voltages.fine.fill(0);
  assemble(state, "linear", 0);
  state.system.factor();
  solveForStep(state);
  move(voltages, voltages, step, 1);
}

/** The Newton step: J · step = −F, with the latest factors of J. */
function solveForStep({ system, step, residualsA }: NodalState): void {
  for (let node = 0; node < step.length; node++) step[node] = -residualsA[node]!;
  system.solve(step);
}

/**
 * Goes along the step, and shortens it if the power balance along it has changed sign. From a concave region (the Jacobian is
 * indefinite), where the slope grows along the step, it lengthens the step: just below the limit of a constant power each would
 * be tiny. Leaves the exact equations assembled at its end.
 */
function lineSearch(state: NodalState, loadScale: number, isIndefinite: boolean): void {
  const before = powerBalance(state);
  copyVoltages(state.voltages, state.lineStart);
  const longest = longestStep(state);
  let length = Math.min(1, longest);
  goAlong(state, length, loadScale);
  while (isIndefinite && 4 * length <= longest && before < 0 && powerBalance(state) < turnedShare * before) {
    length *= 4;
    goAlong(state, length, loadScale);
  }
  if (!(before < 0)) return;
  let low = 0;
  let lowSlope = before;
  let high = length;
  let highSlope = powerBalance(state);
  if (highSlope <= -turnedShare * before) return;
  for (let trial = 0; trial < mostTrials; trial++) {
    const width = high - low;
    const secant = low - (width * lowSlope) / (highSlope - lowSlope);
    // A corner close to one end draws the secant to the other; occasional halving gets past that.
    length =
      trial % 3 === 2 ? low + width / 2 : Math.min(Math.max(secant, low + width / 64), high - width / 64);
    goAlong(state, length, loadScale);
    const slope = powerBalance(state);
    if (Math.abs(slope) <= -turnedShare * before) return;
    if (slope < 0) {
      low = length;
      lowSlope = slope;
    } else {
      high = length;
      highSlope = slope;
    }
  }
}

/** Limit on the power balance at the end of a step, as a share of its initial value. */
const turnedShare = 0.5;
/** Every two trials at least halve the step. */
const mostTrials = 60;

/** To a point on the line, at this multiple of the Newton step. */
function goAlong(state: NodalState, length: number, loadScale: number): void {
  move(state.lineStart, state.voltages, state.step, length);
  assemble(state, "exact", loadScale);
}

/** The slope of the co-content along the step, F · step. */
function powerBalance({ residualsA, step }: NodalState): number {
  let sum = 0;
  for (let node = 0; node < step.length; node++) sum += residualsA[node]! * step[node]!;
  return sum;
}

/** The longest step, as a multiple of the Newton step, at which every constant power keeps at least 0.4 of its voltage. */
function longestStep({ draws, step, voltages }: NodalState): number {
  let longest = 1e6;
  for (const { input, isConstantPower, unloadedV } of draws) {
    if (unloadedV === 0 || !isConstantPower) continue;
    const change = (step[input.a]! - step[input.b]!) / voltageOver(voltages, input);
    if (change < 0) longest = Math.min(longest, -0.6 / change);
  }
  return longest;
}

function anyCollapsed({ draws, voltages }: NodalState): boolean {
  for (const { input, isConstantPower, unloadedV } of draws) {
    if (unloadedV === 0 || !isConstantPower) continue;
    if (voltageOver(voltages, input) / unloadedV < collapsedShare) return true;
  }
  return false;
}

/**
 * As a share of the no-load voltage. In a network of resistances no operating point lies below half of that. A step that was
 * merely too long does not end so far below it.
 */
const collapsedShare = 0.001;

/**
 * The solution is unstable: it is the lower-voltage branch of a constant-power load. Called if a pivot is negative.
 * Without converters the matrix is symmetric, and that is enough (Sylvester's law of inertia). Converters couple one way, and
 * then one order of elimination can have two negative pivots while another has none. Then two signs decide: the determinant
 * changes its sign at the meeting point of the two voltages, and the lower voltage, P·R/E at first, rises with the power.
 */
function isUnstable(state: NodalState, loadScale: number): boolean {
  const { netlist, system } = state;
  return netlist.converters.length === 0 || system.hasNegativeDeterminant() || anyRises(state, loadScale);
}

/** A lower voltage rises at least by the same share as the power; an upper one falls, or is hardly moved by others. */
function anyRises(state: NodalState, loadScale: number): boolean {
  const change = sensitivity(state, loadScale);
  return state.draws.some(({ input, isConstantPower, unloadedV }) => {
    if (unloadedV === 0 || !isConstantPower) return false;
    const riseV = loadScale * (change[input.a]! - change[input.b]!);
    return riseV / voltageOver(state.voltages, input) > 0.5;
  });
}

/**
 * By node: the derivative of the voltage with respect to the load scale s at the present voltages, V. J · dV/ds = −∂F/∂s; the
 * residuals are linear in s, so their difference between 0 and 1 is that derivative.
 */
export function sensitivity(state: NodalState, loadScale: number): Float64Array {
  const { residualsA, system } = state;
  assemble(state, "exact", 1);
  const loadedA = residualsA.slice();
  assemble(state, "exact", 0);
  const change = Float64Array.from(loadedA, (sumA, node) => residualsA[node]! - sumA);
  assemble(state, "exact", loadScale);
  system.factor();
  system.solve(change);
  return change;
}
