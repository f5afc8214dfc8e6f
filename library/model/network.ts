import type { Termination } from "../plan/termination.ts";
import type { Citation } from "../standards/citation.ts";
import type { Protection, Run } from "./run.ts";

/**
 * A build as one network: parts, and the conductors between their terminals. Every default is filled in, every unit is SI
 * except trade sizes. Made only of records that are wholly in order: one refused value could make any current wrong.
 */
export interface Network {
  /** The terminals of all parts. Conductors and results name a terminal by its index here. */
  readonly terminals: readonly NetworkTerminal[];
  readonly parts: readonly Part[];
  readonly conductors: readonly NetworkConductor[];
  /** Never empty: those of the plan, or the built-in ones where it names none. */
  readonly scenarios: readonly Scenario[];
}

export interface NetworkTerminal {
  /** Index in {@link Network.parts}. */
  readonly part: number;
  /** As the plan writes it behind the part: "positive", "stud", "inputPositive". */
  readonly name: string;
  /** What its part says of it; of "either" the topology tells. */
  readonly side: Side;
  /** How conductors are fastened to it; absent where the builder does not say. */
  readonly termination?: Termination;
  /** As the maker of the part states it; there is no general value. */
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
   * one. Its `loadA` is what the plan states, 0 for a cable; what flows is for the solver to say.
   */
  readonly run: Run;
  /** The device towards `from`, and the one towards `to`; none on a return. */
  readonly near: Protection | null;
  readonly far: Protection | null;
}

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
  /** Where the builder has its numbers from: "data sheet p. 3". */
  readonly source?: string;
  /** What the builder pays for it, in the build's currency. */
  readonly price?: number;
  readonly accept: Readonly<Record<string, string>>;
}

export type Chemistry = "LiFePO4" | "AGM" | "gel" | "flooded lead-acid";

export interface BatteryPart extends PartBase<"battery", "positive" | "negative"> {
  readonly chemistry: Chemistry;
  readonly nominalV: number;
  readonly capacityAh: number;
  readonly internal: InternalResistance;
  /** As the maker states it. Overrules what would follow from the resistance. */
  readonly shortCircuitA?: number;
  /** At rest and fully charged, for the greatest fault current, V. */
  readonly fullV: number;
  readonly fullVSource: Citation;
  readonly maxDischargeA?: number;
  readonly maxChargeA?: number;
}

/** Stated: both ends are the same. Otherwise the range usual for the chemistry, scaled to voltage and capacity. */
export interface InternalResistance {
  readonly stated: boolean;
  /** For the greatest fault current, Ω. */
  readonly lowOhm: number;
  /** For the least fault current and in use, Ω. */
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
  /** What hangs on it in use, W; its continuous power unless stated. */
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
  /** The least input voltage at which it still gives its full output. */
  readonly inputMinV: number;
  readonly inputMinVSource: Citation;
  /** False: both negatives are one inside. */
  readonly isolated: boolean;
  /** Of the way to its input. */
  readonly dropLimitPercent: number;
  readonly dropLimitStated: boolean;
}

export interface AlternatorPart extends PartBase<"alternator", "positive" | "negative"> {
  readonly ratedA: number;
  readonly outputV: number;
  /** What it may give for hours, in percent of its rating. */
  readonly continuousPercent: number;
  readonly continuousSource: Citation;
  readonly selfLimiting: boolean;
}

interface ShoreChargerPart extends PartBase<"shoreCharger", "positive" | "negative"> {
  readonly outputA: number;
  readonly outputV: number;
}

/** Data of one panel at standard test conditions, and how many there are. */
export interface SolarArrayPart extends PartBase<"solarArray", "positive" | "negative"> {
  readonly openCircuitV: number;
  readonly shortCircuitA: number;
  readonly maxPowerV: number;
  readonly maxPowerA: number;
  /** Negative, percent of the open-circuit voltage for each kelvin; undefined: the table for crystalline silicon counts. */
  readonly openCircuitPercentPerC?: number;
  readonly lowestC?: number;
  readonly series: number;
  readonly parallel: number;
  /** The greatest fuse that the maker allows in series with a panel, A. */
  readonly maxSeriesFuseA?: number;
  /** The fuse in each string, A. */
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

/** Metal that carries return current: `bond` is where its bonding conductor lands, `metal` where loads return. */
export interface ChassisPart extends PartBase<"chassis", "bond" | "metal"> {
  readonly ohm: number;
}

export interface LoadPart extends PartBase<"load", "positive" | "negative"> {
  readonly draws: Draw;
  /** The least voltage at which the device still works, V. */
  readonly minimumV?: number;
  readonly critical: boolean;
  readonly continuous: boolean;
  readonly dropLimitPercent: number;
  readonly dropLimitStated: boolean;
  readonly systemV: number;
  /** Whether a circuit states it (its own two conductors end here), or it stands in the plan as a part. */
  readonly statedBy: "load" | "motor" | "circuit";
}

export type Draw =
  | { readonly as: "current"; readonly currentA: number }
  | { readonly as: "power"; readonly powerW: number }
  | { readonly as: "resistance"; readonly ohm: number }
  | { readonly as: "motor"; readonly runningA: number; readonly startingA: number };

/** A part of which only the terminals are known, and what joins them inside. */
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

/** A state of the whole build, in which it is solved. */
export interface Scenario {
  /** Index of its record; absent for a built-in one. */
  readonly record?: number;
  readonly name: string;
  /** By part index: whether a load draws, a source gives, a disconnect is closed. True for every other part. */
  readonly on: readonly boolean[];
  /** By part index: whether a motor is just starting. */
  readonly starting: readonly boolean[];
  /** By part index: the voltage of each battery at rest, V; undefined for other parts. */
  readonly restV: readonly (number | undefined)[];
  /** Share of full sun on the panels, 0 to 1. */
  readonly sunShare: number;
  /** A motor starts: what flows heats no conductor for long, so it counts for voltages only. */
  readonly momentary: boolean;
}
