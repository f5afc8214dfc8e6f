import type { DuplexCable } from "../plan/duplex.ts";
import type { LoadPurpose } from "../plan/load.ts";
import type { AwgSize, FuseFamily, InsulationC, Mm2Size, TerminalC } from "../plan/sizes.ts";
import type { Termination } from "../plan/termination.ts";
import type { Citation } from "../standards/citation.ts";
import type { Gate } from "../standards/time-current-gates.ts";
import type { CoolestTerminal } from "./coolest-terminal.ts";
import type { Estimate } from "./estimate.ts";
import type { LengthUnit } from "./length-unit.ts";
import type { UseValues } from "./use-values.ts";

/** A circuit or cable as it is judged: every default filled in, every unit in SI except trade sizes. */
export type Run = CircuitRun | CableRun;

/** A run whose length is known. */
export type Measured<Any extends Run = Run> = Any & {
  readonly positiveM: number;
  readonly negativeM: number;
};

/** A protected pair of conductors and its load. */
export interface CircuitRun extends RunBase, OfCircuit {
  readonly word: "circuit";
}

interface OfCircuit {
  /** Whether the plan states `load` or `loadW`; false for a circuit that ends at a part. */
  readonly statesLoad: boolean;
  /** Present if the load was given in watts. */
  readonly loadW?: number;
  /** The voltage at which watts were converted to amperes: the device's minimum if stated, else nominal. */
  readonly loadAtV: number;
  /** The lowest voltage at which the device draws, V: its minimum if stated, else the usual one of the battery. */
  readonly lowestV: number;
  /** Minimum voltage at which the device still works, V. */
  readonly minimumV?: number;
  /** Greatest voltage that the device withstands, V. */
  readonly maximumV?: number;
  readonly critical: boolean;
  /** Its use, if the plan states it. */
  readonly purpose?: LoadPurpose;
  /** How long its load runs; the balance of energy alone reads it. */
  readonly use?: UseValues;
  /** Colour of its return. */
  readonly returnColour?: string;
  /** Its two conductors are those of one such cable. */
  readonly duplex?: DuplexCable;
  /** How its conductors end at the load that it states itself. */
  readonly termination?: Termination;
}

/** One conductor between two terminals: judged by the same rules, except those about drop. */
export interface CableRun extends RunBase, Absent<OfCircuit> {
  readonly word: "cable";
}

type Absent<Properties> = { readonly [Name in keyof Properties]?: never };

/** The device whose current alone decides. */
interface SoleDevice {
  readonly record: number;
  readonly name: string;
  /** No scenario that lasts has it on. */
  readonly onInNone: boolean;
}

/** The maximum voltage drop on the way to a device. */
export interface DropLimit {
  /** Percent of the nominal voltage. */
  readonly dropLimitPercent: number;
  /** The plan states it, for the device, its circuit or the build. */
  readonly dropLimitStated: boolean;
  readonly dropLimitSource: Citation;
}

interface RunBase extends DropLimit {
  /** Index of its record in the list of {@link PlanRecord}s. */
  readonly record: number;
  /**
   * It is in a network: its current was calculated there, and {@link loadA} is the maximum of that current and the load that
   * the circuit itself states.
   */
  readonly inNetwork: boolean;
  readonly name: string;
  /** False: the name is that of its variable, or its place in the plan. */
  readonly nameStated: boolean;
  /** Current of the load, A; 0 for a cable, until the network is solved. */
  readonly loadA: number;
  /** The figures behind {@link loadA} that the plan does not state; absent if there are none. */
  readonly loadEstimate?: Estimate;
  /**
   * The load in a network that asks for the greatest rating of a device that carries it for hours: {@link continuousA} of it is
   * drawn by devices that run so long. Absent if all of it is, or if the run itself states that it does not.
   */
  readonly forHours?: { readonly currentA: number; readonly continuousA: number };
  /**
   * Current with constant powers at the lowest voltage at which they work, A; for ampacity and ratings, not for the drop. Absent
   * if it is not above {@link loadA}.
   */
  readonly lowVoltageA?: number;
  /** The figures behind the design current that the plan does not state; absent if there are none. */
  readonly estimate?: Estimate;
  /** Present if {@link loadA} is the current of another device alone, and no scenario leads to as much. */
  readonly loadIsOf?: SoleDevice | undefined;
  /**
   * The greatest current is unknown, because the network could not be solved here. {@link loadA} is the least that flows: a limit that
   * is exceeded at this current is exceeded, and one that is not is not judged.
   */
  readonly loadIsLeast?: true;
  readonly systemV: number;
  /** The lengths as the plan writes them, each in the unit of its property: `{ oneWayFt: 15 }`. Empty if it states none. */
  readonly lengthsGiven: Readonly<Partial<Record<LengthProperty, number>>>;
  /** Where {@link positiveM} and {@link negativeM} come from: stated in the plan, or the way along which the run is laid. */
  readonly lengthsFrom: "plan" | "way" | "unknown";
  /** The unit in which its lengths are shown: that in which they are stated; of a way, that of the plan. */
  readonly lengthUnit: LengthUnit;
  /** Length of the positive conductor, m; undefined if it is unknown. */
  readonly positiveM: number | undefined;
  /** Length of the return (negative) conductor, m; 0 for a cable, and undefined if {@link positiveM} is. */
  readonly negativeM: number | undefined;
  readonly conductor: Conductor;
  readonly insulationC: InsulationC;
  /** False: the insulation is not stated, and 75 °C was assumed. */
  readonly insulationStated: boolean;
  /** Absent if no terminal at an end of its conductors states a temperature rating. */
  readonly coolestTerminal?: CoolestTerminal;
  /** The terminals at the ends of its conductors that state the largest one that they take; absent if none does. */
  readonly terminalSizes?: readonly TerminalSize[];
  readonly engineSpace: boolean;
  /** Ambient, °C. 30 unless stated (outside engine spaces). */
  readonly ambientC: number;
  readonly ambientStated: boolean;
  /**
   * The places that its way passes through, if some of them have surroundings of their own: the worst of them decides. Absent if the
   * surroundings are the same everywhere.
   */
  readonly places?: readonly PlaceOfRun[];
  /** The name of the place on its way whose surroundings these are, if its ampacity is that of one place. */
  readonly place?: string;
  /** Other loaded conductors in the same bundle, sheath or duct as one of its conductors. */
  readonly bundledWith: number;
  readonly bundledWithStated: boolean;
  readonly sheathed: boolean;
  readonly continuous: boolean;
  readonly continuousStated: boolean;
  /** A circuit outside a network states it; in a network the topology decides. */
  readonly fedFromBothEnds: boolean;
  /** It starts at a battery terminal, not at a bus or panel. */
  readonly fromBattery: boolean;
  /**
   * The greatest rating of a device in a conductor that leaves a machine without its own current limit, A: 33 CFR 183.460(b).
   * Absent for every other run.
   */
  readonly machineMaxA?: number;
  /** The largest fuse that the maker of the device at its end permits, A; absent if not stated. */
  readonly maxFuseA?: number;
  /** It is the main feed of an engine's starter motor, in which 33 CFR 183.455(e) and 183.460(a) ask for no protection. */
  readonly crankingFeed?: true;
  /** It ends at a battery terminal; the device at its far end is then the one near a battery. */
  readonly toBattery: boolean;
  /** null: no protection is stated. */
  readonly protection: Protection | null;
  readonly protectionFarEnd: Protection | null;
  /** Colour of the insulation: of the positive conductor of a circuit, or of a cable. Absent: the build's colour for its side. */
  readonly colour?: string;
  /** Text printed on its labels, beside the number. Absent: its name. */
  readonly label?: string;
  /** Rule id to the builder's reason. Reasons may be empty: a rule reports that. */
  readonly accept: Readonly<Record<string, string>>;
  /** True if some other property of this circuit was refused; such a circuit is judged by its valid properties. */
  readonly partlyInvalid: boolean;
}

export type LengthProperty =
  | "oneWayFt"
  | "oneWayM"
  | "positiveFt"
  | "negativeFt"
  | "positiveM"
  | "negativeM"
  | "lengthFt"
  | "lengthM";

/** A channel or surface that a run passes through, with the surroundings of its conductors there. */
export interface PlaceOfRun {
  readonly name: string;
  readonly engineSpace: boolean;
  readonly ambientC: number;
  readonly ambientStated: boolean;
}

/** Conductor of one polarity: `parallel` wires of one size. */
export type Conductor = { readonly parallel: number } & (
  | { readonly system: "awg"; readonly awg: AwgSize }
  | { readonly system: "metric"; readonly mm2: Mm2Size }
);

/** The largest conductor that a terminal takes. */
export interface TerminalSize {
  /** Of a single wire. */
  readonly largest: Conductor;
  /** The name of its part, "its fuse" or "its breaker"; absent for the load that a circuit states itself. */
  readonly of?: string;
}

export interface Protection {
  readonly ratingA: number;
  /** As the plan writes it: `protect: 50`, or `protect: { ratingA: 50 }`. Findings and fixes name the rating accordingly. */
  readonly writtenAs: "number" | "object";
  readonly family?: FuseFamily;
  /** The name of the fuse panel that states the family of its fuses; absent if the device states its own. */
  readonly familyStatedAt?: string;
  /** Distance from the source of power, measured along the conductor, m. */
  readonly distanceM?: number;
  /** The same as the plan writes it, in the unit of its property: `{ distanceIn: 7 }`. Present if distanceM is. */
  readonly distanceGiven?: Readonly<Partial<Record<"distanceIn" | "distanceMm", number>>>;
  readonly interruptingA?: number;
  /** Direct voltage for which its interrupting rating is stated, V; absent if not stated. */
  readonly interruptingAtV?: number;
  /** Rated direct voltage, as marked on it, V. */
  readonly ratedV?: number;
  /** Rated current of its holder, as marked on it, A. */
  readonly holderRatedA?: number;
  /** As the builder states them; those of a fuse follow from its family otherwise. */
  readonly opening?: OpeningTimes;
  /** Temperature rating of its terminals, °C. */
  readonly terminalC?: TerminalC;
  /** Temperature of the air around it, °C, if the plan states it for the device itself. */
  readonly ambientC?: number;
  /** I²t that it lets through in a short up to its interrupting rating, as the builder states it, A²·s. */
  readonly letThroughA2s?: number;
  /** I²t that it withstands while a device upstream opens, as the builder states it, A²·s. */
  readonly withstandA2s?: number;
  readonly testedBehind?: TestedBehind;
  /** Price of one, in the build's currency. */
  readonly price?: number;
}

/** The statements on a device in a short. */
export type BehaviourInShort = Pick<
  Protection,
  "interruptingAtV" | "opening" | "letThroughA2s" | "withstandA2s" | "testedBehind"
>;

/** A combination that the makers tested: behind a device of this family, rated this or less, it interrupts this much. */
export interface TestedBehind {
  readonly family: FuseFamily;
  readonly ratingA: number;
  readonly interruptingA: number;
}

/** Opening times at multiples of the rating, in ascending order of current. */
export interface OpeningTimes {
  readonly gates: readonly Gate[];
  readonly source: Citation;
}

/**
 * One value of a plan that cannot be used. Never thrown: it is returned beside the usable values. As a sentence:
 * path, given (if any), wrong, allowed; for an empty path the name replaces both: "Lamp: a size is missing; allowed: …".
 */
export interface InvalidValue {
  readonly record: number;
  /** `[]` for a property that is missing. */
  readonly path: import("./plain-values.ts").PropertyPath;
  /** The name of the circuit, or "the build". */
  readonly name: string;
  /** The given value, as a person would write it: `"12"`, `NaN`, `-4`. Absent if it is missing, or if its name is wrong. */
  readonly given: string | undefined;
  /** The allowed values: "a length above 0 and up to 1,000 ft". */
  readonly allowed: string;
  /** The plain statement of the error: "is not a number", "a size is missing", "is not a property of circuit". */
  readonly wrong: string;
  /** The nearest property, rule id or text value that exists, for a misspelt one. Names with another unit are never offered. */
  readonly nearest?: string;
  /** The network connected with it is not judged as a whole until this is corrected. Not set if there is no network. */
  readonly stopsNetwork?: true;
  /** The network is judged without this circuit until this is corrected. */
  readonly leavesOutCircuit?: true;
  /** If it leaves no network unread: the results that it serves instead. */
  readonly serves?: Serves;
}

/**
 * - `lists`: lists and labels. An error prevents no check.
 * - `balance`: the balance of energy. While it is refused, the bank that it belongs to has none.
 * - `places`: places, the ways between them, and the lengths and surroundings that runs take from their ways. While it is refused, they
 *   are found without it, or not at all.
 */
export type Serves = "lists" | "balance" | "places";

/** An invalid value of one record. */
export type Refusal = Omit<InvalidValue, "record" | "name">;
