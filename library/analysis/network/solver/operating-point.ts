import type { ConverterBranch, Netlist, PowerBranch } from "./netlist.ts";
import { iterate, type NoSolution, sensitivity, stepToLinearSolution } from "./newton.ts";
import { type NodalState, nodalState } from "./nodal-equations.ts";
import { copyOf, copyVoltages, type NodeVoltages, voltageOver } from "./node-voltages.ts";
import { leastRunningV } from "./solve-devices.ts";
import type { SparseSystem } from "./sparse-lu.ts";

/** A solution of Kirchhoff's current law at every node of a netlist. */
export interface OperatingPoint {
  readonly state: "found";
  /** By node, V, towards the reference of its island: the sum of a coarse and a fine part, see {@link NodeVoltages}. */
  readonly voltages: NodeVoltages;
  readonly residualA: number;
  readonly largestA: number;
  readonly iterations: number;
}

export interface OperatingPointSolver {
  /**
   * @param loadScale Factor on every constant power, 0 to 1.
   * @param from Starting voltages, instead of those without constant powers.
   */
  solve(loadScale: number, from?: NodeVoltages): OperatingPoint | NoSolution;
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

/** Solves a netlist repeatedly, for continuation in the share of constant powers: the same state serves every solution. */
export function operatingPointSolver(netlist: Netlist, system: SparseSystem): OperatingPointSolver {
  const state = nodalState(netlist, system);
  const goTo = (voltages: NodeVoltages) => copyVoltages(voltages, state.voltages);
  return {
    solve(loadScale, from) {
      if (from) goTo(from);
      else {
        stepToLinearSolution(state);
        noteUnloaded(state);
      }
      const result = iterate(state, loadScale);
      return result.state === "found" ? operatingPoint(state, result) : result;
    },
    takeAsUnloaded(voltages) {
      goTo(voltages);
      noteUnloaded(state);
    },
    notRunning: () => new Set(state.draws.filter(({ unloadedV }) => unloadedV === 0).map(({ of }) => of)),
    goTo,
    sensitivity: (loadScale) => sensitivity(state, loadScale),
  };
}

/** Takes the present voltages as those without load: which draws run at all, and on which side of zero. */
function noteUnloaded({ draws, voltages }: NodalState): void {
  for (const draw of draws) {
    const voltageV = voltageOver(voltages, draw.input);
    // A converter does not run with reversed polarity; a controller that passes current on has no least voltage.
    const runs =
      !draw.isConstantPower ||
      (draw.kind === "converter" ? voltageV >= leastRunningV : Math.abs(voltageV) >= leastRunningV);
    draw.unloadedV = runs ? voltageV || 1 : 0;
  }
}

function operatingPoint(
  { voltages, largestA }: NodalState,
  { residualA, iterations }: { residualA: number; iterations: number },
): OperatingPoint {
  return { state: "found", voltages: copyOf(voltages), residualA, largestA, iterations };
}
