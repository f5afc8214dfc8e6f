import { joinedBy } from "../../../model/disjoint-sets.ts";
import { warmedCurrentA } from "./conductor-current.ts";
import type {
  ArrayBranch,
  BatteryBranch,
  Branch,
  ConverterBranch,
  CurrentBranch,
  Netlist,
  PowerBranch,
  ResistorBranch,
  SourceBranch,
} from "./netlist.ts";
import { type NodeVoltages, voltageAbove, voltageOver, zeroVoltages } from "./node-voltages.ts";
import {
  battery,
  type ConverterFlow,
  constantCurrent,
  constantPower,
  converter,
  emptyConverterFlow,
  type Flow,
  limitedSource,
  passingController,
  regulationShare,
  solarArray,
} from "./solve-devices.ts";
import type { SparseSystem } from "./sparse-lu.ts";

/**
 * The equations of nodal analysis: Kirchhoff's current law at every node of a netlist, F(V) = 0, and its Jacobian dF/dV. Each
 * branch adds its stamp. With I the current from a to b through the branch and g = dI/dU its slope:
 *
 *           column a   column b   residual
 *     row a    +g         −g         +I
 *     row b    −g         +g         −I
 *
 * Only voltages are unknown. Modified nodal analysis adds branch currents for ideal voltage sources; here every source has a
 * resistance, so there is none.
 */
export interface NodalState {
  readonly netlist: Netlist;
  readonly system: SparseSystem;
  /** By node: the voltages at which the equations are assembled, towards the reference of each island. */
  readonly voltages: NodeVoltages;
  /** By node: the sum of currents that leave it, A. */
  readonly residualsA: Float64Array;
  /** The values of {@link system}: the diagonal by node, then the other entries. */
  readonly jacobian: Float64Array;
  /** The greatest current of any branch, A. */
  largestA: number;
  /** By node: the Newton step, V; and the voltages at which a line search along it starts. */
  readonly step: Float64Array;
  readonly lineStart: NodeVoltages;
  readonly conductors: FlatConductors;
  readonly resistors: readonly Stamp<ResistorBranch>[];
  readonly batteries: readonly Stamp<BatteryBranch>[];
  readonly currents: readonly Stamp<CurrentBranch>[];
  readonly sources: readonly Stamp<SourceBranch>[];
  readonly arrays: readonly Stamp<ArrayBranch>[];
  /** Constant powers, then converters: the branches whose current falls while the voltage rises. */
  readonly draws: readonly Draw[];
  readonly soleSources: ReadonlySet<SoleSource>;
  readonly highestSourceV: number;
  /** Reused for each branch, see {@link Flow}. */
  readonly flow: Flow;
  readonly converterFlow: ConverterFlow;
}

/** A branch with its nodes and the positions of its entries beside the Jacobian's diagonal. One shape for all kinds of branch. */
interface Stamp<Of extends Branch> extends Branch {
  readonly of: Of;
  /** Row a, column b; and row b, column a. */
  readonly ab: number;
  readonly ba: number;
}

/** A load of constant power, or a converter: its input draws the power that its output feeds. */
type Draw = PowerDraw | ConverterDraw;

interface DrawAt {
  /** Between these it draws. */
  readonly input: Branch;
  /** Its current is a power by a voltage. False for a controller that passes current on. */
  readonly isConstantPower: boolean;
  /** The no-load voltage at its input, V; 0 if the draw does not run at it, and then draws and feeds nothing. */
  unloadedV: number;
}

interface PowerDraw extends DrawAt {
  readonly kind: "power";
  readonly of: PowerBranch;
  readonly input: Stamp<PowerBranch>;
}

interface ConverterDraw extends DrawAt {
  readonly kind: "converter";
  readonly of: ConverterBranch;
  /** Positions of its 16 entries in the Jacobian, by row: input a, input b, output a, output b; columns the same. */
  readonly entries: Int32Array;
}

export function nodalState(netlist: Netlist, system: SparseSystem): NodalState {
  const { nodes, conductors, resistors, batteries, currents, sources, arrays } = netlist;
  return {
    netlist,
    system,
    voltages: zeroVoltages(nodes),
    residualsA: new Float64Array(nodes),
    jacobian: system.values,
    largestA: 0,
    step: new Float64Array(nodes),
    lineStart: zeroVoltages(nodes),
    conductors: flatConductors(conductors, system),
    resistors: stampsOf(resistors, system),
    batteries: stampsOf(batteries, system),
    currents: stampsOf(currents, system),
    sources: stampsOf(sources, system),
    arrays: stampsOf(arrays, system),
    draws: drawsOf(netlist, system),
    soleSources: soleSources(netlist),
    highestSourceV: highestSourceV(netlist),
    flow: { currentA: 0, siemens: 0 },
    converterFlow: emptyConverterFlow(),
  };
}

/**
 * `exact`: the equations themselves. `linear`: sources hold their voltage at any current, constant powers draw nothing.
 * `regularised`: constant powers and sources at their limit get the slope of a resistance; the residuals are exact.
 */
type Assembly = "linear" | "exact" | "regularised";

/**
 * Computes residuals and Jacobian at the present voltages.
 *
 * @param loadScale Factor on every constant power, 0 to 1.
 */
export function assemble(state: NodalState, how: Assembly, loadScale: number): void {
  const { residualsA, jacobian, netlist } = state;
  residualsA.fill(0);
  jacobian.fill(0);
  state.largestA = 0;
  stampConductors(state);
  stampResistors(state);
  stampBatteries(state);
  stampCurrents(state, how);
  stampSources(state, how);
  stampArrays(state, how);
  stampDraws(state, how, loadScale);
  for (const reference of netlist.references) {
    // Currents of an island sum up to zero, so this conductance to ground carries none: it only fixes the zero.
    jacobian[reference]! += jacobian[reference]!;
  }
  for (let node = 0; node < residualsA.length; node++) if (jacobian[node] === 0) jacobian[node] = 1;
}

/** Adds the stamp of a branch. */
function stamp(state: NodalState, { a, b, ab, ba }: Stamp<Branch>, currentA: number, siemens: number): void {
  if (a === b) return;
  const { residualsA, jacobian } = state;
  residualsA[a]! += currentA;
  residualsA[b]! -= currentA;
  jacobian[a]! += siemens;
  jacobian[b]! += siemens;
  jacobian[ab]! -= siemens;
  jacobian[ba]! -= siemens;
  const size = Math.abs(currentA);
  if (size > state.largestA) state.largestA = size;
}

/** The stamps of all conductors, written out: they are most of all branches and take most of the time. */
function stampConductors(state: NodalState): void {
  // Local names: looking the arrays up anew for each conductor would cost as much as the arithmetic.
  const { residualsA, jacobian } = state;
  const { coarse, fine } = state.voltages;
  const { a: from, b: to, ab, ba, ambientOhm, warmingOhmPerA2, hottestSiemens, hottestV } = state.conductors;
  let largestA = state.largestA;
  for (let index = 0; index < from.length; index++) {
    const a = from[index]!;
    const b = to[index]!;
    if (a === b) continue;
    const voltageV = coarse[a]! - coarse[b]! + (fine[a]! - fine[b]!);
    let siemens = hottestSiemens[index]!;
    let currentA = voltageV * siemens;
    if (Math.abs(voltageV) < hottestV[index]!) {
      const warming = warmingOhmPerA2[index]!;
      currentA = warmedCurrentA(voltageV, ambientOhm[index]!, warming);
      siemens = 1 / (ambientOhm[index]! + 3 * warming * currentA * currentA);
    }
    residualsA[a]! += currentA;
    residualsA[b]! -= currentA;
    jacobian[a]! += siemens;
    jacobian[b]! += siemens;
    jacobian[ab[index]!]! -= siemens;
    jacobian[ba[index]!]! -= siemens;
    const size = Math.abs(currentA);
    if (size > largestA) largestA = size;
  }
  state.largestA = largestA;
}

function stampResistors(state: NodalState): void {
  for (const branch of state.resistors) {
    const { ohm } = branch.of;
    stamp(state, branch, voltageOver(state.voltages, branch) / ohm, 1 / ohm);
  }
}

function stampBatteries(state: NodalState): void {
  const { flow, voltages } = state;
  for (const branch of state.batteries) {
    battery(branch.of, voltageAbove(voltages, branch, branch.of.emfV), flow);
    stamp(state, branch, flow.currentA, flow.siemens);
  }
}

function stampCurrents(state: NodalState, how: Assembly): void {
  const { flow, voltages } = state;
  for (const branch of state.currents) {
    const { of } = branch;
    const voltageV = voltageOver(voltages, branch);
    constantCurrent(of, voltageV, flow);
    const asResistance = of.currentA / state.highestSourceV;
    if (how === "linear") {
      flow.siemens = asResistance;
      flow.currentA = asResistance * voltageV;
    } else if (how === "regularised") flow.siemens = Math.max(flow.siemens, asResistance);
    stamp(state, branch, flow.currentA, flow.siemens);
  }
}

function stampSources(state: NodalState, how: Assembly): void {
  const { flow, voltages } = state;
  for (const branch of state.sources) {
    const { of } = branch;
    const voltageV = voltageOver(voltages, branch);
    limitedSource(of, voltageV, flow);
    if (how === "linear") holdVoltage(of, voltageV, flow);
    else if (how === "regularised" || (flow.currentA === 0 && state.soleSources.has(of))) {
      flow.siemens = Math.max(flow.siemens, of.limitA / of.outputV);
    }
    stamp(state, branch, flow.currentA, flow.siemens);
  }
}

function stampArrays(state: NodalState, how: Assembly): void {
  const { flow, voltages } = state;
  for (const branch of state.arrays) {
    const { of } = branch;
    const voltageV = voltageOver(voltages, branch);
    solarArray(of, voltageV, flow);
    if (how === "linear") {
      flow.siemens = of.cornerA / (of.openCircuitV - of.cornerV);
      flow.currentA = flow.siemens * (voltageV - of.openCircuitV);
    } else if (how === "regularised") {
      flow.siemens = Math.max(flow.siemens, of.cornerA / of.openCircuitV);
    }
    stamp(state, branch, flow.currentA, flow.siemens);
  }
}

function stampDraws(state: NodalState, how: Assembly, loadScale: number): void {
  const { flow, voltages } = state;
  for (const draw of state.draws) {
    if (draw.kind === "converter") stampConverter(state, draw, how, loadScale);
    else if (how !== "linear" && draw.unloadedV !== 0) {
      constantPower(loadScale * draw.of.powerW, voltageOver(voltages, draw.input), flow);
      if (how === "regularised") flow.siemens = Math.max(flow.siemens, 0);
      stamp(state, draw.input, flow.currentA, flow.siemens);
    }
  }
}

/**
 * A converter is two branches, each of which follows the voltages of both. With I and O the currents of input and output, the
 * entries of the rows of the input are dI/dU_in and dI/dU_out, of those of the output −dO/dU_in and −dO/dU_out.
 */
function stampConverter(state: NodalState, draw: ConverterDraw, how: Assembly, loadScale: number): void {
  const { flow, converterFlow: through, voltages, residualsA, jacobian } = state;
  const { of, entries } = draw;
  const { input, output } = of;
  const inputV = voltageOver(voltages, input);
  const outputV = voltageOver(voltages, output);
  if (how === "linear") {
    holdVoltage(of, outputV, flow);
    through.inputA = 0;
    through.inputByInputV = 0;
    through.inputByOutputV = 0;
    through.outputByInputV = 0;
    through.outputA = -flow.currentA;
    through.outputByOutputV = -flow.siemens;
  } else if (of.passes) passingController(of, { inputV, outputV }, through, flow);
  else if (draw.unloadedV === 0) return;
  else converter(of, { inputV, outputV, share: loadScale }, through, flow);
  if (how === "exact" && through.outputA === 0 && state.soleSources.has(of)) {
    through.outputByOutputV = -of.limitA / of.outputV;
  }
  if (how === "regularised") {
    through.inputByInputV = Math.max(0, through.inputByInputV);
    through.inputByOutputV = 0;
    through.outputByInputV = 0;
    through.outputByOutputV = Math.min(through.outputByOutputV, -of.limitA / of.outputV);
  }
  residualsA[input.a]! += through.inputA;
  residualsA[input.b]! -= through.inputA;
  residualsA[output.a]! -= through.outputA;
  residualsA[output.b]! += through.outputA;
  state.largestA = Math.max(state.largestA, Math.abs(through.inputA), Math.abs(through.outputA));
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
    // The current out of a row's second node has the other sign.
    jacobian[entries[entry]!]! += (row ^ column) & 1 ? -slope : slope;
  }
}

/** A source as in the linear assembly: it holds its voltage at any current. */
function holdVoltage(of: { outputV: number; limitA: number }, voltageV: number, flow: Flow): void {
  flow.siemens = of.limitA / (regulationShare * of.outputV);
  flow.currentA = flow.siemens * (voltageV - of.outputV);
}

/** The greatest residual, A; NaN if any is. */
export function largestResidualA({ residualsA }: NodalState): number {
  let largestA = 0;
  for (let node = 0; node < residualsA.length; node++) {
    const sizeA = Math.abs(residualsA[node]!);
    if (Number.isNaN(sizeA)) return sizeA;
    if (sizeA > largestA) largestA = sizeA;
  }
  return largestA;
}

/**
 * Scale of the residual at a node, A: the largest current. If hardly any flows, as from a full bank with all loads off,
 * the largest is itself rounding, and a milliampere takes its place.
 */
export function measureOf(largestA: number): number {
  return Math.max(largestA, 0.001);
}

/** Conductors as arrays of numbers, with the values of their laws that each assembly needs: half the time of objects. */
interface FlatConductors {
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Positions in the Jacobian, as in {@link Stamp}. */
  readonly ab: Int32Array;
  readonly ba: Int32Array;
  readonly ambientOhm: Float64Array;
  readonly warmingOhmPerA2: Float64Array;
  readonly hottestSiemens: Float64Array;
  /** The voltage over the conductor at its ampacity, V. */
  readonly hottestV: Float64Array;
}

function flatConductors(conductors: Netlist["conductors"], { entryAt }: SparseSystem): FlatConductors {
  const count = conductors.length;
  const flat = {
    a: new Int32Array(count),
    b: new Int32Array(count),
    ab: new Int32Array(count),
    ba: new Int32Array(count),
    ambientOhm: new Float64Array(count),
    warmingOhmPerA2: new Float64Array(count),
    hottestSiemens: new Float64Array(count),
    hottestV: new Float64Array(count),
  };
  for (let index = 0; index < count; index++) {
    const { a, b, law } = conductors[index]!;
    flat.a[index] = a;
    flat.b[index] = b;
    flat.ab[index] = entryAt(a, b);
    flat.ba[index] = entryAt(b, a);
    flat.ambientOhm[index] = law.ambientOhm;
    flat.warmingOhmPerA2[index] = law.warmingOhmPerA2;
    flat.hottestSiemens[index] = 1 / law.hottestOhm;
    flat.hottestV[index] = law.ampacityA * law.hottestOhm;
  }
  return flat;
}

function stampsOf<Of extends Branch>(branches: readonly Of[], system: SparseSystem): readonly Stamp<Of>[] {
  return branches.map((of) => stampOf(of, system));
}

function stampOf<Of extends Branch>(of: Of, { entryAt }: SparseSystem): Stamp<Of> {
  const { a, b } = of;
  return { of, a, b, ab: entryAt(a, b), ba: entryAt(b, a) };
}

function drawsOf({ powers, converters }: Netlist, system: SparseSystem): readonly Draw[] {
  return [
    ...powers.map(
      (of): PowerDraw => ({
        kind: "power",
        of,
        input: stampOf(of, system),
        isConstantPower: true,
        unloadedV: 0,
      }),
    ),
    ...converters.map((of): ConverterDraw => {
      const { input, output, passes } = of;
      const nodes = [input.a, input.b, output.a, output.b];
      const entries = nodes.flatMap((row) => nodes.map((column) => system.entryAt(row, column)));
      return {
        kind: "converter",
        of,
        input,
        isConstantPower: !passes,
        unloadedV: 0,
        entries: Int32Array.from(entries),
      };
    }),
  ];
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

type SoleSource = SourceBranch | ConverterBranch;

/**
 * Sources that alone hold the voltage of a component, because it has no battery and no solar array. While they give no
 * current, that voltage has no slope and a step has no end; they then get the slope of a resistance. This changes only the
 * step, not the current.
 */
function soleSources(netlist: Netlist): ReadonlySet<SoleSource> {
  const { conductors, resistors, batteries, arrays, sources, converters } = netlist;
  if (sources.length === 0 && converters.length === 0) return new Set();
  const components = joinedBy(netlist.nodes, conductors, resistors, batteries, arrays);
  const isSole = ({ a, b }: Branch) => components.find(a) !== components.find(b);
  return new Set([...sources.filter(isSole), ...converters.filter(({ output }) => isSole(output))]);
}
