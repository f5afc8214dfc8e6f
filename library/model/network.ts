import type { FuseFamily, TerminalC } from "../plan/sizes.ts";
import type { Termination } from "../plan/termination.ts";
import type { RestFrom } from "./battery-figures.ts";
import type { Side } from "./parts/define-part.ts";
import type { Part } from "./parts/index.ts";
import type { Conductor, Protection, Run } from "./run.ts";

/* The parts of a network, with the types that they follow from in their descriptors. */
export type { AlternatorPart } from "./parts/alternator.ts";
export type { BatteryPart } from "./parts/battery.ts";
export type { ChassisPart } from "./parts/chassis.ts";
export type { Draw } from "./parts/consumer.ts";
export type { DcDcChargerPart } from "./parts/dc-dc-charger.ts";
export type { FusePanelPart } from "./parts/fuse-panel.ts";
export type { Part, PartKind } from "./parts/index.ts";
export type { InverterPart } from "./parts/inverter.ts";
export type { LoadPart } from "./parts/load.ts";
export type { Join } from "./parts/other-part.ts";
export type { ShuntPart } from "./parts/shunt.ts";
export type { SolarArrayPart } from "./parts/solar-array.ts";
export type { SolarControllerPart } from "./parts/solar-controller.ts";

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
  /** The largest single wire that it takes; absent if not stated. */
  readonly largest?: Conductor;
  /** The family of fuses that it takes, of the branches of a fuse panel; absent if not stated. */
  readonly fuseFamily?: FuseFamily;
  /** As the maker of the part states it; no general value exists. */
  readonly torqueNm?: number;
  /** Temperature rating, °C; absent if not stated. */
  readonly ratedC?: TerminalC;
}

/** One conductor of one polarity between two terminals: a `cable`, or one of the two of a `circuit` with `from`. */
export interface NetworkConductor {
  /** Index of the record that made it. Both conductors of a circuit have the same one. */
  readonly record: number;
  readonly name: string;
  readonly role: "cable" | "positive" | "return";
  readonly from: number;
  readonly to: number;
  /** Undefined if it is unknown: the plan states none, and no way shows it. */
  readonly lengthM: number | undefined;
  /**
   * Size, insulation, surroundings, protection, as every rule about one run reads them. Both conductors of a circuit share
   * one. Its `loadA` is the load stated in the plan, 0 for a cable; the solver calculates the actual current.
   */
  readonly run: Run;
  /** The device towards `from`, and the one towards `to`; none on a return. */
  readonly near: ConductorDevice | null;
  readonly far: ConductorDevice | null;
}

/** A fuse or breaker at its place in a network. */
export interface ProtectiveDevice extends Protection {
  /** Its own index in {@link Network.devices}. */
  readonly index: number;
  readonly place: DevicePlace;
}

/** One at an end of a conductor. */
export interface ConductorDevice extends ProtectiveDevice {
  readonly place: Extract<DevicePlace, { readonly at: "conductor" }>;
}

/** At one end of a conductor, which may be the branch of a panel; or a part of its own, between its terminals. */
type DevicePlace =
  | { readonly at: "conductor"; readonly conductor: number; readonly end: ConductorEnd }
  | { readonly at: "part"; readonly part: number };

export type ConductorEnd = "near" | "far";

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
  /** By part index: the basis of that voltage; undefined for parts other than batteries. */
  readonly restFrom: readonly (RestFrom | undefined)[];
  /** Share of full sun on the modules, 0 to 1. */
  readonly sunShare: number;
  /** By part index: the inputs that a selector switch connects, by the names of their terminals; absent: all of them. */
  readonly selected?: ReadonlyMap<number, readonly string[]>;
  /** It differs from another scenario only in the position of one switch, which no scenario states. */
  readonly furtherPosition?: true;
  /** A motor starts in it that no scenario starts. Only the voltage of that motor is judged. */
  readonly furtherStart?: true;
  /** A motor starts: its current does not heat conductors for long, and counts for voltages only. */
  readonly momentary: boolean;
  /**
   * The devices whose constant power draws the current of the lowest voltage at which they work, at any voltage of the network. Set by the
   * analysis, for ampacity and ratings; a scenario of the plan has none.
   */
  readonly lowVoltage?: "loads" | "all devices";
}

/** The conductor that a device is in; undefined for a part of its own. */
export function conductorWith(
  { conductors }: Network,
  { place }: ProtectiveDevice,
): NetworkConductor | undefined {
  return place.at === "conductor" ? conductors[place.conductor] : undefined;
}

/** The device that a part is; undefined for a part that is none. */
export function deviceInPart({ devices }: Network, part: number): ProtectiveDevice | undefined {
  return devices.find(({ place }) => place.at === "part" && place.part === part);
}
