import type { Termination } from "../plan/termination.ts";
import type { Citation } from "../standards/citation.ts";
import type { Protection, Run } from "./run.ts";

/**
 * A build as one network: parts, and the conductors between their terminals. Every default is filled in, every unit is SI
 * except trade sizes. Made only from valid records: one refused value could make any current wrong.
 */
export interface Network {
  /** The terminals of all parts. Conductors and results name a terminal by its index here. */
  readonly terminals: readonly NetworkTerminal[];
  readonly parts: readonly Part[];
  readonly conductors: readonly NetworkConductor[];
  /** Every fuse and breaker. Results name a device by its index here. */
  readonly devices: readonly ProtectiveDevice[];
  /** Never empty: those of the plan, or the built-in ones if it has none. */
  readonly scenarios: readonly Scenario[];
}

export interface NetworkTerminal {
  /** Index in {@link Network.parts}. */
  readonly part: number;
  /** As the plan writes it after the part: "positive", "stud", "inputPositive". */
  readonly name: string;
  /** Polarity as its part states it; for "either", the topology determines it. */
  readonly side: Side;
  /** How conductors are fastened to it; absent if not stated. */
  readonly termination?: Termination;
  /** As the maker of the part states it; no general value exists. */
  readonly torqueNm?: number;
}

export type Side = "positive" | "negative" | "either";

/** One conductor of one polarity between two terminals: a `cable`, or one of the two of a `circuit` with `from`. */
export interface NetworkConductor {
  /** Index of the record that made it. Both conductors of a circuit have the same one. */
  readonly record: number;
  readonly name: string;
  readonly role: "cable" | "positive" | "return";
  readonly from: number;
  readonly to: number;
  readonly lengthM: number;
  /**
   * Size, insulation, surroundings, protection, as every rule about one run reads them. Both conductors of a circuit share
   * one. Its `loadA` is the load stated in the plan, 0 for a cable; the solver calculates the actual current.
   */
  readonly run: Run;
  /** The device towards `from`, and the one towards `to`; none on a return. */
  readonly near: ProtectiveDevice | null;
  readonly far: ProtectiveDevice | null;
}

/** A fuse or breaker at its place in a network. */
export interface ProtectiveDevice extends Protection {
  /** Its own index in {@link Network.devices}. */
  readonly index: number;
  readonly place: DevicePlace;
}

/** At one end of a conductor; at the branch of a panel if that end is there. */
export interface DevicePlace {
  readonly at: "conductor";
  readonly conductor: number;
  readonly end: ConductorEnd;
}

export type ConductorEnd = "near" | "far";

export type Part =
  | BatteryPart
  | BusBarPart
  | FusePanelPart
  | DisconnectPart
  | ShuntPart
  | InverterPart
  | DcDcChargerPart
  | AlternatorPart
  | ShoreChargerPart
  | SolarArrayPart
  | SolarControllerPart
  | ChassisPart
  | LoadPart
  | OtherPart;

export type PartKind = Part["kind"];

interface PartBase<Kind extends string, TerminalName extends string> {
  readonly kind: Kind;
  /** Its own index in {@link Network.parts}. */
  readonly index: number;
  /** Index of the record that made it; a circuit's record for the load that the circuit states itself. */
  readonly record: number;
  readonly name: string;
  /** Terminal name to index in {@link Network.terminals}. */
  readonly terminals: Readonly<Record<TerminalName, number>>;
  /** The builder's source of its numbers: "data sheet p. 3". */
  readonly source?: string;
  /** In the build's currency. */
  readonly price?: number;
  readonly accept: Readonly<Record<string, string>>;
}

export type Chemistry = "LiFePO4" | "AGM" | "gel" | "flooded lead-acid";

export interface BatteryPart extends PartBase<"battery", "positive" | "negative"> {
  readonly chemistry: Chemistry;
  readonly nominalV: number;
  readonly capacityAh: number;
  readonly internal: InternalResistance;
  /** As the maker states it. Overrides the current that follows from the resistance. */
  readonly shortCircuitA?: number;
  /** At rest and fully charged, for the maximum fault current, V. */
  readonly fullV: number;
  readonly fullVSource: Citation;
  readonly maxDischargeA?: number;
  readonly maxChargeA?: number;
}

/** Stated: both ends are equal. Otherwise the usual range for the chemistry, scaled to voltage and capacity. */
export interface InternalResistance {
  readonly stated: boolean;
  /** For the maximum fault current, Ω. */
  readonly lowOhm: number;
  /** For the minimum fault current and in use, Ω. */
  readonly highOhm: number;
  readonly source: Citation;
}

interface BusBarPart extends PartBase<"busBar", "stud"> {
  readonly ratedA?: number;
  readonly studs?: number;
}

/** `feed` and `branch` are one piece of metal; the fuse of a branch belongs to the conductor that leaves it. */
export interface FusePanelPart extends PartBase<"fusePanel", "feed" | "branch" | "negative"> {
  readonly positions: number;
  readonly ratedA?: number;
  readonly branchRatedA?: number;
  readonly hasNegativeBus: boolean;
}

interface DisconnectPart extends PartBase<"disconnect", "line" | "load"> {
  readonly ratedA: number;
}

export interface ShuntPart extends PartBase<"shunt", "batterySide" | "systemSide"> {
  readonly ratedA: number;
  /** From its rating in A and mV, Ω. */
  readonly ohm: number;
}

export interface InverterPart extends PartBase<"inverter", "positive" | "negative"> {
  readonly continuousW: number;
  readonly surgeW?: number;
  readonly efficiencyPercent: number;
  readonly efficiencySource: Citation;
  readonly cutOffV: number;
  readonly cutOffVSource: Citation;
  readonly idleW: number;
  /** Load connected to it in use, W; its continuous power unless stated. */
  readonly loadW: number;
  readonly dropLimitPercent: number;
  readonly dropLimitStated: boolean;
}

export interface DcDcChargerPart
  extends PartBase<"dcDcCharger", "inputPositive" | "inputNegative" | "outputPositive" | "outputNegative"> {
  readonly outputA: number;
  readonly outputV: number;
  readonly efficiencyPercent: number;
  readonly efficiencySource: Citation;
  readonly inputMaxA?: number;
  /** Minimum input voltage for its full output. */
  readonly inputMinV: number;
  readonly inputMinVSource: Citation;
  /** False: both negatives are connected inside. */
  readonly isolated: boolean;
  /** For the supply path to its input. */
  readonly dropLimitPercent: number;
  readonly dropLimitStated: boolean;
}

export interface AlternatorPart extends PartBase<"alternator", "positive" | "negative"> {
  readonly ratedA: number;
  readonly outputV: number;
  /** Output that it may deliver for hours, in percent of its rating. */
  readonly continuousPercent: number;
  readonly continuousSource: Citation;
  readonly selfLimiting: boolean;
}

interface ShoreChargerPart extends PartBase<"shoreCharger", "positive" | "negative"> {
  readonly outputA: number;
  readonly outputV: number;
}

/** Data of one panel at standard test conditions, and the number of panels. */
export interface SolarArrayPart extends PartBase<"solarArray", "positive" | "negative"> {
  readonly openCircuitV: number;
  readonly shortCircuitA: number;
  readonly maxPowerV: number;
  readonly maxPowerA: number;
  /** Negative, percent of the open-circuit voltage for each kelvin; undefined: the table for crystalline silicon applies. */
  readonly openCircuitPercentPerC?: number;
  readonly lowestC?: number;
  readonly series: number;
  readonly parallel: number;
  /** Maximum fuse rating that the maker allows in series with a module, A. */
  readonly maxSeriesFuseA?: number;
  /** Rating of the fuse in each string, A. */
  readonly stringFuseA?: number;
}

export interface SolarControllerPart
  extends PartBase<"solarController", "solarPositive" | "solarNegative" | "positive" | "negative"> {
  readonly maxInputV: number;
  readonly outputA: number;
  readonly outputV: number;
  readonly tracking: boolean;
  readonly efficiencyPercent: number;
  readonly efficiencySource: Citation;
}

/** Metal that carries return current: its bonding conductor ends at `bond`, loads return at `metal`. */
export interface ChassisPart extends PartBase<"chassis", "bond" | "metal"> {
  readonly ohm: number;
}

export interface LoadPart extends PartBase<"load", "positive" | "negative"> {
  readonly draws: Draw;
  /** Minimum voltage at which the device still works, V. */
  readonly minimumV?: number;
  readonly critical: boolean;
  readonly continuous: boolean;
  readonly dropLimitPercent: number;
  readonly dropLimitStated: boolean;
  readonly systemV: number;
  /** Whether a circuit states it (its own two conductors end here), or a part of the plan. */
  readonly statedBy: "load" | "motor" | "circuit";
}

export type Draw =
  | { readonly as: "current"; readonly currentA: number }
  | { readonly as: "power"; readonly powerW: number }
  | { readonly as: "resistance"; readonly ohm: number }
  | { readonly as: "motor"; readonly runningA: number; readonly startingA: number };

/** A part with only its terminals and the connections inside it known. */
interface OtherPart extends PartBase<"part", string> {
  readonly joins: readonly Join[];
  readonly ratedA?: number;
}

export interface Join {
  /** Indices in {@link Network.terminals}. */
  readonly between: readonly [number, number];
  /** 0: one piece of metal. */
  readonly ohm: number;
}

/** An operating state for which the whole build is solved. */
export interface Scenario {
  /** Index of its record; absent for a built-in one. */
  readonly record?: number;
  readonly name: string;
  /** By part index: whether a load draws current, a source delivers, a disconnect is closed. True for every other part. */
  readonly on: readonly boolean[];
  /** By part index: whether a motor is starting. */
  readonly starting: readonly boolean[];
  /** By part index: the rest voltage of each battery, V; undefined for other parts. */
  readonly restV: readonly (number | undefined)[];
  /** Share of full sun on the modules, 0 to 1. */
  readonly sunShare: number;
  /** A motor starts: its current does not heat conductors for long, and counts for voltages only. */
  readonly momentary: boolean;
}
