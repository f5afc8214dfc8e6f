import type { ConductorLaw } from "./conductor-current.ts";
import type { ArrayCurve, ConverterLaw, LimitedSource } from "./solve-devices.ts";

/**
 * A network in one scenario as plain nodes and branches. Devices that are switched off are absent, terminals on one piece of
 * metal are one node, and branches that can carry no current are left out. The solver works on this, and the external simulator
 * that checks it is given the same list.
 */
export interface Netlist {
  readonly nodes: number;
  /** By terminal index. */
  readonly nodeOf: Int32Array;
  /** One node of each island; the zero of its voltages during the solution. */
  readonly references: readonly number[];
  /** By node: whether a source reaches it. */
  readonly live: Uint8Array;
  /** By node: nodes with the same number are in one island, and a voltage between them has a meaning. */
  readonly islandOf: Int32Array;
  /** By conductor index, whether or not current can flow in it. */
  readonly laws: readonly ConductorLaw[];
  readonly conductors: readonly ConductorBranch[];
  readonly resistors: readonly ResistorBranch[];
  readonly batteries: readonly BatteryBranch[];
  readonly currents: readonly CurrentBranch[];
  readonly powers: readonly PowerBranch[];
  readonly sources: readonly SourceBranch[];
  readonly arrays: readonly ArrayBranch[];
  readonly converters: readonly ConverterBranch[];
}

/** Two nodes: voltage counts from `a` to `b`, and current flows in at `a`. For a device `a` is the positive one. */
export interface Branch {
  readonly a: number;
  readonly b: number;
}

export interface ConductorBranch extends Branch {
  readonly conductor: number;
  readonly law: ConductorLaw;
}

export interface ResistorBranch extends Branch {
  readonly part: number;
  readonly ohm: number;
  readonly isLoad: boolean;
}

/** Also a limited source without a current path: it only sets a voltage. */
export interface BatteryBranch extends Branch {
  readonly part: number;
  readonly emfV: number;
  readonly ohm: number;
}

export interface CurrentBranch extends Branch {
  readonly part: number;
  readonly currentA: number;
}

export interface PowerBranch extends Branch {
  readonly part: number;
  readonly powerW: number;
}

export interface SourceBranch extends Branch, LimitedSource {
  readonly part: number;
}

export interface ArrayBranch extends Branch, ArrayCurve {
  readonly part: number;
}

export interface ConverterBranch extends ConverterLaw {
  readonly part: number;
  readonly input: Branch;
  readonly output: Branch;
  /** A solar controller that does not track: current in is current out, and efficiency has no effect. */
  readonly passes: boolean;
}
