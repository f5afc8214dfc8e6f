import type { Estimate } from "../model/estimate.ts";
import type { Citation } from "../standards/citation.ts";
import type { LoadForHours } from "./load-for-hours.ts";
import type { NetworkTopology } from "./network/topology/network-topology.ts";

/** All results for a network. All numbers are unrounded; rounding is left to the display. */
export interface NetworkResult {
  readonly topology: NetworkTopology;
  /** In the order of the network's scenarios. */
  readonly scenarios: readonly ScenarioResult[];
  /** By conductor index. */
  readonly conductors: readonly ConductorWorst[];
  /** By part index. */
  readonly parts: readonly PartWorst[];
  /** For every load, inverter and charger input that a bank feeds: the drop on the whole supply path from the bank. */
  readonly supplyPaths: readonly SupplyPath[];
  readonly faults: FaultResult;
  /**
   * If a current divides by unknown lengths: the worst with the shortest length for each, so with the current divided. In
   * {@link conductors} and {@link parts}, each of the ways carries all of it.
   */
  readonly divided?: Pick<NetworkResult, "conductors" | "parts">;
}

export type ScenarioResult = SolvedScenario | UnsolvedScenario;

export interface SolvedScenario {
  readonly state: "solved";
  /** Index in the network's scenarios. */
  readonly scenario: number;
  /** By terminal index, against the most negative battery terminal of its island, V; NaN if no source reaches it. */
  readonly terminalV: readonly number[];
  /** By conductor index, A; positive from `from` to `to`. */
  readonly conductorA: readonly number[];
  /** By conductor index: the temperature at that current, °C, as for a circuit alone: not above the table's column. */
  readonly conductorC: readonly number[];
  /** By conductor index, at that temperature, Ω. */
  readonly conductorOhm: readonly number[];
  /**
   * By part index, A, out of the part's positive terminal into the network: positive if it feeds (a battery that
   * discharges, a charger's output), negative if it draws (a load, a battery that is charged). For parts that only pass
   * current on: the current that passes from their first terminal to their second, or through a bus in all; with more
   * terminals, into the one with the greatest current.
   */
  readonly partA: readonly number[];
  /** Input current of chargers and controllers, A. By part index; 0 for others. */
  readonly inputA: readonly number[];
  /** Voltage of each part between its positive and its negative terminal (its output for chargers), V; NaN if it has none. */
  readonly partV: readonly number[];
  /** The greatest sum of currents at any node, A: 0 by Kirchhoff's current law. */
  readonly residualA: number;
  readonly largestA: number;
  readonly iterations: number;
}

/** No operating point: some loads would pull the voltage down without limit. */
export interface UnsolvedScenario {
  readonly state: "unsolved";
  readonly scenario: number;
  readonly why: "collapse" | "not-converged";
  /** The greatest share of every constant power that still has an operating point, 0 to 1. */
  readonly reachedShare: number;
  /** Parts of constant power at which the voltage falls the furthest just before, worst first. */
  readonly culprits: readonly number[];
}

export interface ConductorWorst {
  /**
   * Over all scenarios that last, so without those with a starting motor; and never less than with any single device alone. Undefined
   * if it is unknown, because a scenario could not be solved.
   */
  readonly worst: WorstOf | undefined;
  /**
   * For its ampacity and the ratings of its devices: the constant powers of loads draw the current of the lowest voltage at which
   * they work, if that is more. Inverters and chargers count as in `worst`: the rules about their supply judge them at that voltage.
   * With an unknown length in the network, they count like loads.
   */
  readonly design: WorstOf | undefined;
  /** The load that asks for the greatest rating of a device that must carry it for hours. */
  readonly forHours: LoadForHours | undefined;
  /** Current and design current as the least that flows at some time: in the scenarios that were solved, and with any single device. */
  readonly least: { readonly worst: WorstOf | undefined; readonly design: WorstOf | undefined };
}

/**
 * In `feeds` and `draws` all constant powers, inverters and chargers among them, draw the current of the lowest voltage at which they
 * work, if that is more; for a fuse or breaker only those of loads, as in {@link ConductorWorst.design}.
 */
export interface PartWorst {
  /** The greatest current it feeds or passes on, A, and its occasion. Starting motors count only in `surge`. */
  readonly feeds: WorstOf | undefined;
  /** The greatest current it draws, at its input for chargers, A. */
  readonly draws: WorstOf | undefined;
  /**
   * The load that asks for the greatest rating of a device that must carry it for hours, fed or drawn, with the batteries at the voltage
   * of the scenario.
   */
  readonly forHours: LoadForHours | undefined;
  readonly surge: WorstOf | undefined;
  /** The least that it passes on, feeds or draws at some time: in the scenarios that were solved, and with any single device. */
  readonly least: WorstOf | undefined;
  /** The lowest voltage between its terminals, V, starting motors included. */
  readonly lowestV: { readonly voltageV: number; readonly scenario: number } | undefined;
}

export type WorstOf = WorstInScenario | WorstAlone;

export interface WorstInScenario {
  readonly currentA: number;
  readonly scenario: number;
  /** The figures behind it that the plan does not state; absent if there are none. */
  readonly estimate?: Estimate;
  readonly alone?: undefined;
}

/** The current of one device: no scenario leads to a greater one here. */
export interface WorstAlone {
  readonly currentA: number;
  readonly scenario?: undefined;
  /** Index of the part whose current it is. */
  readonly alone: number;
  readonly estimate?: Estimate;
}

/** The voltage drop between a bank's terminals and a device, both polarities together, in the worst scenario. */
export interface SupplyPath {
  /** The device. */
  readonly part: number;
  readonly battery: number;
  readonly scenario: number;
  readonly dropV: number;
  /** Relative to the system's nominal voltage. */
  readonly dropPercent: number;
  readonly dropLimitPercent: number;
  readonly dropLimitSource: Citation;
  /**
   * The conductors of unknown length on the path, and those with which one on it shares the current, by their indices. The real drop is
   * then greater than {@link dropV}, which has the shortest length for each. Empty: the drop is known.
   */
  readonly withoutLength: readonly number[];
  /** At the device, V. */
  readonly arrivingV: number;
  /** The figures behind it that the plan does not state; absent if there are none. */
  readonly estimate?: Estimate;
  /** The drop of each conductor on the path, from the bank outwards, positive side first; conductor index and V. */
  readonly legs: readonly { readonly conductor: number; readonly dropV: number }[];
}

/** Currents of dead shorts. */
export interface FaultResult {
  /** In the order of the network's devices. Those that no source reaches, or that are already in a short, are left out. */
  readonly devices: readonly DeviceFault[];
  /** By conductor index. */
  readonly conductors: readonly ConductorFault[];
  /** In conductors on the negative side. */
  readonly returns: readonly ReturnFault[];
}

export interface DeviceFault {
  /** Index in the network's devices. */
  readonly device: number;
  /**
   * The maximum fault through it, A: short right behind it to the bank's negative terminal, cold copper, full bank,
   * the low end of the internal resistance, every source that can feed it.
   */
  readonly greatestA: number;
  /** Parts that feed that short through it, greatest share first; the 16 strongest ones if there are more. */
  readonly sources: readonly number[];
  /** True if part of it follows from an internal resistance that is not stated. */
  readonly estimated: boolean;
  /**
   * The minimum fault through it for a short at the far end of anything it protects (up to the next device), A: return
   * conductor included, copper at its limit temperature, high end of the internal resistance. Undefined: no battery feeds it,
   * or it protects no conductor. If several devices feed the same short, as fuses of parallel batteries, its own share.
   */
  readonly least:
    | {
        readonly currentA: number;
        readonly conductor: number;
        /** It depends on an unknown length: the real one may be less. */
        readonly isAtMost?: true;
      }
    | undefined;
  /** More than 64 devices feed the same short, and the minimum fault through this one is not computed. */
  readonly leastNotWorkedOut?: true;
  /** Conductors behind it, up to the next device. */
  readonly behind: readonly number[];
}

export interface ConductorFault {
  /** The maximum fault in it for a short at its own beginning, A; undefined if no source reaches it. */
  readonly greatestA: number | undefined;
  /** The minimum fault in it, for a short at either of its ends, A; absent if no battery reaches it. */
  readonly leastA?: number;
  /** {@link leastA} depends on an unknown length: the real one may be less. */
  readonly leastIsAtMost?: true;
  /** Devices between it and the sources, indices in {@link FaultResult.devices}; the nearest one in each direction. */
  readonly protectedBy: readonly number[];
  readonly estimated: boolean;
}

/** A short between the poles of a part, whose current comes back through a conductor on the negative side. */
export interface ReturnFault {
  readonly conductor: number;
  /** The part whose poles the short connects. */
  readonly part: number;
  /** Copper cold and hot, batteries at their strongest and weakest; the greatest with the resistance of this conductor alone. */
  readonly greatestA: number;
  readonly leastA: number;
  readonly estimated: boolean;
  /** The devices that open it, indices in {@link FaultResult.devices}. */
  readonly protectedBy: readonly number[];
}
