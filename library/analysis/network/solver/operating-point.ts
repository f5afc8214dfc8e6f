import { joinedBy } from "../topology/disjoint-sets.ts";
import { warmedCurrentA } from "./conductor-current.ts";
import {
  battery,
  constantCurrent,
  constantPower,
  converter,
  emptyConverterFlow,
  type Flow,
  leastRunningV,
  limitedSource,
  passingController,
  regulationShare,
  solarArray,
} from "./solve-devices.ts";
import type { Branch, ConverterBranch, Netlist, PowerBranch } from "./solve-netlist.ts";
import type { SparseSystem } from "./sparse-lu.ts";

/**
 * Solves Kirchhoff's current law at every node of a netlist: nodal analysis with Newton's method.
 *
 * A constant power can be drawn at two voltages. The search looks for the upper one, the only one that is stable. It starts
 * above it, at the voltages without such loads. From there each Newton step comes down towards the solution and does not pass
 * it, because the current of a constant power is convex in the voltage. Sources with limits have corners, which a step can
 * overshoot. The line search then shortens the step to the point at which the power balance along it changes sign: the minimum
 * of the network's co-content (W. Millar, "Some general theorems for non-linear systems possessing resistance", Phil. Mag. 42,
 * 1951). If the Jacobian is not positive definite, constant powers become constant currents for one step: that still goes
 * downhill. A voltage that collapses on that path has no operating point.
 */
export interface OperatingPoint {
  readonly state: "found";
  /** By node, V, towards the reference of its island: the sum of a coarse and a fine part, see {@link NodeVoltages}. */
  readonly voltages: NodeVoltages;
  readonly residualA: number;
  readonly largestA: number;
  readonly iterations: number;
}

interface NoOperatingPoint {
  /**
   * `collapsed`: a constant power pulled its voltage down without limit. `not-converged`: no solution within the
   * allowed steps.
   */
  readonly state: "collapsed" | "not-converged";
  readonly iterations: number;
}

/**
 * A voltage in two parts. The coarse one is a whole number of 2⁻¹⁴ V, which makes its differences exact; the fine one is
 * the small rest. So the difference between the ends of a micro-ohm, at 12 V, keeps all its digits.
 */
export interface NodeVoltages {
  readonly coarse: Float64Array;
  readonly fine: Float64Array;
}

export function voltageOver({ coarse, fine }: NodeVoltages, { a, b }: Branch): number {
  return coarse[a]! - coarse[b]! + (fine[a]! - fine[b]!);
}

/** By how much the voltage over a branch is above a level; subtracted from the coarse part, where it costs no digits. */
export function voltageAbove({ coarse, fine }: NodeVoltages, { a, b }: Branch, levelV: number): number {
  return coarse[a]! - coarse[b]! - levelV + (fine[a]! - fine[b]!);
}

export interface OperatingPointSolver {
  /**
   * @param loadScale Factor on every constant power, 0 to 1.
   * @param from Starting voltages, instead of those without constant powers.
   */
  solve(loadScale: number, from?: NodeVoltages): OperatingPoint | NoOperatingPoint;
  /** Uses these as the no-load voltages instead of the initial estimate. */
  takeAsUnloaded(voltages: NodeVoltages): void;
  /**
   * Constant powers and converters that do not run at the no-load voltage: it is too low, or reversed at a converter.
   * They draw and feed nothing.
   */
  notRunning(): ReadonlySet<PowerBranch | ConverterBranch>;
  /** Makes these the voltages at which {@link sensitivity} is evaluated. */
  goTo(voltages: NodeVoltages): void;
  /** By node: the derivative of the voltage with respect to the share of constant powers, V. */
  sensitivity(loadScale: number): Float64Array;
}

export function operatingPointSolver(netlist: Netlist, system: SparseSystem): OperatingPointSolver {
  const { values: jacobian } = system;
  const size = netlist.nodes;
  const places = stampIndices(netlist, system);
  const residualsA = new Float64Array(size);
  const step = new Float64Array(size);
  const from = { coarse: new Float64Array(size), fine: new Float64Array(size) };
  const at = { coarse: new Float64Array(size), fine: new Float64Array(size) };
  const flow: Flow = { currentA: 0, siemens: 0 };
  const through = emptyConverterFlow();
  const highestV = highestSourceV(netlist);
  const draws = drawsOf(netlist);
  const lone = soleSources(netlist);
  /** By index of `draws`: the no-load voltage; 0 for a draw that does not run at it. */
  const unloadedV = new Float64Array(draws.length);
  let largestA = 0;

  // Conductors are most of all branches and take most of the time: flat arrays instead of objects halve it.
  const cables = flatConductors(netlist.conductors);

  /** Adds the stamp of a branch with two terminals to the residuals and the Jacobian. */
  function stamp({ a, b }: Branch, place: number, currentA: number, siemens: number): void {
    if (a === b) return;
    residualsA[a]! += currentA;
    residualsA[b]! -= currentA;
    jacobian[a]! += siemens;
    jacobian[b]! += siemens;
    jacobian[places[place]!]! -= siemens;
    jacobian[places[place + 1]!]! -= siemens;
    const size = Math.abs(currentA);
    if (size > largestA) largestA = size;
  }

  function stampConductors(): void {
    // Local names: looking the arrays up anew in each iteration would cost as much as the arithmetic.
    const { a: from, b: to, ambientOhm, warmingOhmPerA2, hottestSiemens, hottestV } = cables;
    const { coarse, fine } = at;
    const [sums, slopes, entries] = [residualsA, jacobian, places];
    let largest = largestA;
    for (let cable = 0; cable < from.length; cable++) {
      const a = from[cable]!;
      const b = to[cable]!;
      if (a === b) continue;
      const voltageV = coarse[a]! - coarse[b]! + (fine[a]! - fine[b]!);
      let siemens = hottestSiemens[cable]!;
      let currentA = voltageV * siemens;
      if (Math.abs(voltageV) < hottestV[cable]!) {
        const warming = warmingOhmPerA2[cable]!;
        currentA = warmedCurrentA(voltageV, ambientOhm[cable]!, warming);
        siemens = 1 / (ambientOhm[cable]! + 3 * warming * currentA * currentA);
      }
      sums[a]! += currentA;
      sums[b]! -= currentA;
      slopes[a]! += siemens;
      slopes[b]! += siemens;
      slopes[entries[2 * cable]!]! -= siemens;
      slopes[entries[2 * cable + 1]!]! -= siemens;
      const size = Math.abs(currentA);
      if (size > largest) largest = size;
    }
    largestA = largest;
  }

  /**
   * Sums of currents out of each node, and the Jacobian. "linear": sources hold their voltage at any current, constant
   * powers draw nothing. "regularised": constant powers and sources at their limit get the slope of a resistance.
   */
  function assemble(how: "linear" | "exact" | "regularised", loadScale: number): void {
    residualsA.fill(0);
    jacobian.fill(0);
    largestA = 0;
    stampConductors();
    let place = 2 * netlist.conductors.length;
    for (const branch of netlist.resistors) {
      stamp(branch, place, voltageOver(at, branch) / branch.ohm, 1 / branch.ohm);
      place += 2;
    }
    for (const branch of netlist.batteries) {
      battery(branch, voltageAbove(at, branch, branch.emfV), flow);
      stamp(branch, place, flow.currentA, flow.siemens);
      place += 2;
    }
    for (const branch of netlist.currents) {
      const voltageV = voltageOver(at, branch);
      constantCurrent(branch, voltageV, flow);
      const asResistance = branch.currentA / highestV;
      if (how === "linear") {
        flow.siemens = asResistance;
        flow.currentA = asResistance * voltageV;
      } else if (how === "regularised") flow.siemens = Math.max(flow.siemens, asResistance);
      stamp(branch, place, flow.currentA, flow.siemens);
      place += 2;
    }
    for (const branch of netlist.sources) {
      const voltageV = voltageOver(at, branch);
      limitedSource(branch, voltageV, flow);
      if (how === "linear") holdVoltage(branch, voltageV, flow);
      else if (how === "regularised" || (lone.has(branch) && flow.currentA === 0)) {
        flow.siemens = Math.max(flow.siemens, branch.limitA / branch.outputV);
      }
      stamp(branch, place, flow.currentA, flow.siemens);
      place += 2;
    }
    for (const branch of netlist.arrays) {
      const voltageV = voltageOver(at, branch);
      solarArray(branch, voltageV, flow);
      if (how === "linear") {
        flow.siemens = branch.cornerA / (branch.openCircuitV - branch.cornerV);
        flow.currentA = flow.siemens * (voltageV - branch.openCircuitV);
      } else if (how === "regularised") {
        flow.siemens = Math.max(flow.siemens, branch.cornerA / branch.openCircuitV);
      }
      stamp(branch, place, flow.currentA, flow.siemens);
      place += 2;
    }
    netlist.powers.forEach((branch, index) => {
      if (how !== "linear" && isRunning(index)) {
        constantPower(loadScale * branch.powerW, voltageOver(at, branch), flow);
        if (how === "regularised") flow.siemens = Math.max(flow.siemens, 0);
        stamp(branch, place, flow.currentA, flow.siemens);
      }
      place += 2;
    });
    netlist.converters.forEach((branch, index) => {
      stampConverter(branch, { place, how, loadScale, running: isRunning(netlist.powers.length + index) });
      place += 16;
    });
    for (const reference of netlist.references) {
      // Currents of an island sum up to zero, so this conductance to ground carries none: it only fixes the zero.
      jacobian[reference]! += jacobian[reference]!;
    }
    for (let node = 0; node < size; node++) if (jacobian[node] === 0) jacobian[node] = 1;
  }

  function stampConverter(
    branch: ConverterBranch,
    of: { place: number; how: "linear" | "exact" | "regularised"; loadScale: number; running: boolean },
  ): void {
    const { input, output } = branch;
    const inputV = voltageOver(at, input);
    const outputV = voltageOver(at, output);
    if (of.how === "linear") {
      holdVoltage(branch, outputV, flow);
      through.inputA = 0;
      through.inputByInputV = 0;
      through.inputByOutputV = 0;
      through.outputByInputV = 0;
      through.outputA = -flow.currentA;
      through.outputByOutputV = -flow.siemens;
    } else if (branch.passes) passingController(branch, { inputV, outputV }, through, flow);
    else if (!of.running) return;
    else converter(branch, { inputV, outputV, share: of.loadScale }, through, flow);
    if (of.how === "exact" && lone.has(branch) && through.outputA === 0) {
      through.outputByOutputV = -branch.limitA / branch.outputV;
    }
    if (of.how === "regularised") {
      through.inputByInputV = Math.max(0, through.inputByInputV);
      through.inputByOutputV = 0;
      through.outputByInputV = 0;
      through.outputByOutputV = Math.min(through.outputByOutputV, -branch.limitA / branch.outputV);
    }
    residualsA[input.a]! += through.inputA;
    residualsA[input.b]! -= through.inputA;
    residualsA[output.a]! -= through.outputA;
    residualsA[output.b]! += through.outputA;
    largestA = Math.max(largestA, Math.abs(through.inputA), Math.abs(through.outputA));
    // Rows: input a, input b, output a, output b; columns the same. The current out of a row's second node has the other sign.
    for (let entry = 0; entry < 16; entry++) {
      const row = entry >> 2;
      const column = entry & 3;
      const slope =
        row < 2
          ? column < 2
            ? through.inputByInputV
            : through.inputByOutputV
          : column < 2
            ? -through.outputByInputV
            : -through.outputByOutputV;
      jacobian[places[of.place + entry]!]! += (row ^ column) & 1 ? -slope : slope;
    }
  }

  function isRunning(draw: number): boolean {
    return unloadedV[draw]! !== 0;
  }

  /** A controller that passes current on draws no constant power. */
  function isPower(draw: number): boolean {
    return draw < netlist.powers.length || !netlist.converters[draw - netlist.powers.length]!.passes;
  }

  function goToStart(): void {
    at.coarse.fill(0);
    at.fine.fill(0);
    // The conductors' own warming makes even this slightly non-linear; one step is near enough to start from.
    assemble("linear", 0);
    system.factor();
    for (let node = 0; node < size; node++) step[node] = -residualsA[node]!;
    system.solve(step);
    move(at, at, step, 1);
  }

  function goTo({ coarse, fine }: NodeVoltages): void {
    at.coarse.set(coarse);
    at.fine.set(fine);
  }

  function takeAsUnloaded(voltages: NodeVoltages): void {
    goTo(voltages);
    noteUnloaded();
  }

  /** Notes which constant powers run at all, and on which side of zero. */
  function noteUnloaded(): void {
    draws.forEach((draw, index) => {
      const voltageV = voltageOver(at, draw);
      const isConverter = index >= netlist.powers.length;
      const runs =
        !isPower(index) || (isConverter ? voltageV >= leastRunningV : Math.abs(voltageV) >= leastRunningV);
      unloadedV[index] = runs ? voltageV || 1 : 0;
    });
  }

  /** The longest step, as a multiple of the Newton step, at which every constant power keeps at least 0.4 of its voltage. */
  function longestStep(): number {
    let longest = 1e6;
    for (let index = 0; index < draws.length; index++) {
      if (unloadedV[index] === 0 || !isPower(index)) continue;
      const { a, b } = draws[index]!;
      const voltageV = voltageOver(at, draws[index]!);
      const change = (step[a]! - step[b]!) / voltageV;
      if (change < 0) longest = Math.min(longest, -0.6 / change);
    }
    return longest;
  }

  function anyCollapsed(): boolean {
    for (let index = 0; index < draws.length; index++) {
      if (unloadedV[index] === 0 || !isPower(index)) continue;
      if (voltageOver(at, draws[index]!) / unloadedV[index]! < fallenShare) return true;
    }
    return false;
  }

  function dot(): number {
    let sum = 0;
    for (let node = 0; node < size; node++) sum += residualsA[node]! * step[node]!;
    return sum;
  }

  function residual(): number {
    let largest = 0;
    for (let node = 0; node < size; node++) {
      const leftA = Math.abs(residualsA[node]!);
      if (Number.isNaN(leftA)) return leftA;
      if (leftA > largest) largest = leftA;
    }
    return largest;
  }

  /**
   * Goes along the step, and shortens it if the power balance along it has changed sign. From a concave region (a hill), where
   * the slope grows along the step, it lengthens the step: just below the limit of a constant power each would be tiny.
   */
  function lineSearch(loadScale: number, isIndefinite: boolean): void {
    const before = dot();
    from.coarse.set(at.coarse);
    from.fine.set(at.fine);
    const longest = longestStep();
    let length = Math.min(1, longest);
    move(from, at, step, length);
    assemble("exact", loadScale);
    while (isIndefinite && 4 * length <= longest && before < 0 && dot() < turnedShare * before) {
      length *= 4;
      move(from, at, step, length);
      assemble("exact", loadScale);
    }
    if (!(before < 0)) return;
    let low = 0;
    let lowSlope = before;
    let high = length;
    let highSlope = dot();
    if (highSlope <= -turnedShare * before) return;
    for (let trial = 0; trial < mostTrials; trial++) {
      const width = high - low;
      const secant = low - (width * lowSlope) / (highSlope - lowSlope);
      // A corner close to one end draws the secant to the other; occasional halving gets past that.
      length =
        trial % 3 === 2 ? low + width / 2 : Math.min(Math.max(secant, low + width / 64), high - width / 64);
      move(from, at, step, length);
      assemble("exact", loadScale);
      const slope = dot();
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

  function solve(loadScale: number, begin?: NodeVoltages): OperatingPoint | NoOperatingPoint {
    if (begin) goTo(begin);
    else {
      goToStart();
      noteUnloaded();
    }
    assemble("exact", loadScale);
    let before = Number.POSITIVE_INFINITY;
    let leastPivot = Number.NaN;
    for (let iterations = 1; iterations <= mostIterations; iterations++) {
      const residualA = residual();
      if (Number.isNaN(residualA)) break;
      const measureA = measureOf(largestA);
      const isRounding = residualA <= nearShare * measureA && residualA > before / 2;
      if (residualA <= solvedShare * measureA || isRounding) {
        if (Number.isNaN(leastPivot)) leastPivot = system.factor();
        if (leastPivot < -surelyNegative && isUnstable(loadScale)) return { state: "collapsed", iterations };
        return found(residualA, iterations);
      }
      before = residualA;
      leastPivot = system.factor();
      const isHill = leastPivot <= 0;
      if (isHill) {
        assemble("regularised", loadScale);
        system.factor();
      }
      for (let node = 0; node < size; node++) step[node] = -residualsA[node]!;
      system.solve(step);
      lineSearch(loadScale, isHill);
      if (loadScale > 0 && anyCollapsed()) return { state: "collapsed", iterations };
    }
    return { state: "not-converged", iterations: mostIterations };
  }

  /**
   * The solution is unstable: it is the lower-voltage branch of a constant-power load. Called if a pivot is negative.
   * Without converters the matrix is symmetric, and that is enough (Sylvester's law of inertia). Converters couple one way, and
   * then one order of elimination can have two negative pivots while another has none. Then two signs decide: the determinant
   * changes its sign at the meeting point of the two voltages, and the lower voltage, P·R/E at first, rises with the power.
   */
  function isUnstable(loadScale: number): boolean {
    return netlist.converters.length === 0 || system.hasNegativeDeterminant() || anyRises(loadScale);
  }

  /** A lower voltage rises at least by the same share as the power; an upper one falls, or is hardly moved by others. */
  function anyRises(loadScale: number): boolean {
    const change = sensitivity(loadScale);
    return draws.some((draw, index) => {
      if (unloadedV[index] === 0 || !isPower(index)) return false;
      const riseV = loadScale * (change[draw.a]! - change[draw.b]!);
      return riseV / voltageOver(at, draw) > 0.5;
    });
  }

  function found(residualA: number, iterations: number): OperatingPoint {
    const voltages = { coarse: at.coarse.slice(), fine: at.fine.slice() };
    return { state: "found", voltages, residualA, largestA, iterations };
  }

  function sensitivity(loadScale: number): Float64Array {
    assemble("exact", 1);
    const full = residualsA.slice();
    assemble("exact", 0);
    const change = Float64Array.from(full, (sum, node) => residualsA[node]! - sum);
    assemble("exact", loadScale);
    system.factor();
    system.solve(change);
    return change;
  }

  function notRunning(): ReadonlySet<PowerBranch | ConverterBranch> {
    return new Set([
      ...netlist.powers.filter((_, index) => !isRunning(index)),
      ...netlist.converters.filter((_, index) => !isRunning(netlist.powers.length + index)),
    ]);
  }

  return { solve, takeAsUnloaded, notRunning, goTo, sensitivity };
}

/**
 * Scale of the residual at a node, A: the largest current. If hardly any flows, as from a full bank with all loads off,
 * the largest is itself rounding, and a milliampere takes its place.
 */
export function measureOf(largestA: number): number {
  return Math.max(largestA, 0.001);
}

/** Newton steps; six are usual, and each unusual one halves some interval. */
const mostIterations = 80;
/** As a share of {@link measureOf}: the residual is no more than rounding, or nearly so and no longer falling. */
const solvedShare = 2e-12;
const nearShare = 1e-10;
/** Limit on the power balance at the end of a step, as a share of its initial value. */
const turnedShare = 0.5;
/** Every two trials at least halve the step. */
const mostTrials = 60;
/** Relative to the original diagonal; larger than rounding error. */
const surelyNegative = 1e-9;
/**
 * As a share of the no-load voltage. In a network of resistances no operating point lies below half of that. A step that was
 * merely too long does not end so far below it.
 */
const fallenShare = 0.001;

/** Conductors as arrays of numbers, with the values of their laws that each iteration needs. */
function flatConductors(conductors: Netlist["conductors"]) {
  const count = conductors.length;
  const flat = {
    a: new Int32Array(count),
    b: new Int32Array(count),
    ambientOhm: new Float64Array(count),
    warmingOhmPerA2: new Float64Array(count),
    hottestSiemens: new Float64Array(count),
    hottestV: new Float64Array(count),
  };
  for (let at = 0; at < count; at++) {
    const { a, b, law } = conductors[at]!;
    flat.a[at] = a;
    flat.b[at] = b;
    flat.ambientOhm[at] = law.ambientOhm;
    flat.warmingOhmPerA2[at] = law.warmingOhmPerA2;
    flat.hottestSiemens[at] = 1 / law.hottestOhm;
    flat.hottestV[at] = law.ampacityA * law.hottestOhm;
  }
  return flat;
}

/** At least 1 V. */
function highestSourceV({ batteries, sources, converters, arrays }: Netlist): number {
  let highestV = 1;
  for (const { emfV } of batteries) highestV = Math.max(highestV, emfV);
  for (const { outputV } of sources) highestV = Math.max(highestV, outputV);
  for (const { outputV } of converters) highestV = Math.max(highestV, outputV);
  for (const { openCircuitV } of arrays) highestV = Math.max(highestV, openCircuitV);
  return highestV;
}

/** The branches that draw constant power: those of `powers`, then the inputs of `converters`. */
function drawsOf({ powers, converters }: Netlist): readonly Branch[] {
  return [...powers, ...converters.map(({ input }) => input)];
}

type SoleSource = Netlist["sources"][number] | ConverterBranch;

/**
 * Sources that alone hold the voltage of a component, because it has no battery and no solar array. While they give no
 * current, that voltage has no slope and a step has no end; they then get the slope of a resistance. This changes only the
 * step, not the current.
 */
function soleSources(netlist: Netlist): ReadonlySet<SoleSource> {
  const { conductors, resistors, batteries, arrays, sources, converters } = netlist;
  if (sources.length === 0 && converters.length === 0) return new Set();
  const pieces = joinedBy(netlist.nodes, conductors, resistors, batteries, arrays);
  const isLone = ({ a, b }: Branch) => pieces.find(a) !== pieces.find(b);
  return new Set([...sources.filter(isLone), ...converters.filter(({ output }) => isLone(output))]);
}

/** As in "linear": holds its voltage at any current. */
function holdVoltage(of: { outputV: number; limitA: number }, voltageV: number, flow: Flow): void {
  flow.siemens = of.limitA / (regulationShare * of.outputV);
  flow.currentA = flow.siemens * (voltageV - of.outputV);
}

/** `to` = `from` + `length` · `step`, with coarse and fine parts normalised. `to` and `from` may be the same. */
function move(from: NodeVoltages, to: NodeVoltages, step: Float64Array, length: number): void {
  for (let node = 0; node < step.length; node++) {
    const fine = from.fine[node]! + length * step[node]!;
    const carry = Math.round(fine * coarseParts) / coarseParts;
    to.coarse[node] = from.coarse[node]! + carry;
    to.fine[node] = fine - carry;
  }
}

const coarseParts = 2 ** 14;

/** The voltages with `addedV` added, by node. */
export function moved(voltages: NodeVoltages, addedV: Float64Array): NodeVoltages {
  const to = { coarse: voltages.coarse.slice(), fine: voltages.fine.slice() };
  move(voltages, to, addedV, 1);
  return to;
}

/** The Jacobian entries of each branch, in the order of stamping. */
function stampIndices(netlist: Netlist, { entryAt }: SparseSystem): Int32Array {
  const { conductors, resistors, batteries, currents, sources, arrays, powers, converters } = netlist;
  const pairs = [conductors, resistors, batteries, currents, sources, arrays, powers];
  const count = pairs.reduce((sum, branches) => sum + 2 * branches.length, 16 * converters.length);
  const places = new Int32Array(count);
  let place = 0;
  for (const branches of pairs) {
    for (const { a, b } of branches) {
      places[place] = entryAt(a, b);
      places[place + 1] = entryAt(b, a);
      place += 2;
    }
  }
  for (const { input, output } of converters) {
    const nodes = [input.a, input.b, output.a, output.b];
    for (const row of nodes) for (const column of nodes) places[place++] = entryAt(row, column);
  }
  return places;
}
