import type { PlannedAlternator } from "./alternator.ts";
import type { PlannedBattery } from "./battery.ts";
import type { Colour } from "./colour.ts";
import type { PlannedDcDcCharger } from "./dc-dc-charger.ts";
import type { DuplexCable } from "./duplex.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { PlannedFusePanel } from "./fuse-panel.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { PlannedInverter } from "./inverter.ts";
import type { LoadPurpose, PlannedLoad } from "./load.ts";
import type { PlannedMotor } from "./motor.ts";
import type { PartWithPoles } from "./other-part.ts";
import type { PartPlace } from "./part-place.ts";
import type { BodySize } from "./place.ts";
import type { ProtectionInput } from "./protection.ts";
import type { AcceptedFindings } from "./rule-id.ts";
import type { RunOptions } from "./run-options.ts";
import type { PlannedShoreCharger } from "./shore-charger.ts";
import type { AwgSize, Mm2Size } from "./sizes.ts";
import type { PlannedSolarArray } from "./solar-array.ts";
import type { PlannedSolarController } from "./solar-controller.ts";
import type { PlannedStarterMotor } from "./starter-motor.ts";
import type { EitherTerminal, NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { Termination } from "./termination.ts";
import type { Use } from "./use.ts";
import type { NominalVoltage } from "./voltage.ts";

/**
 * A load, the pair of conductors that feeds it, and the fuse or breaker that protects them.
 * Give one load (`load` or `loadW`), one length (`oneWayFt`, `oneWayM`, or that of each conductor) and one size (`gauge` or
 * `mm2`). With `from`, the length may be left out: without it, its drop is not judged.
 *
 * Example: `circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50 })`
 *
 * @returns The circuit as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function circuit(input: CircuitInput): PlannedCircuit {
  return frozenPlanData(input, "circuit") as PlannedCircuit;
}

/** The result of {@link circuit}: its input, frozen. */
export type PlannedCircuit = CircuitInput & {
  readonly kind: "circuit";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link circuit}: one load, one length, one size, and optional properties. */
export type CircuitInput = CircuitOptions & LoadInput & LengthInput & SizeInput;

/** The load, in amperes or in watts, or the part that the circuit feeds. */
export type LoadInput = LoadIsPart | LoadInWatts | LoadInAmperes;

/** The length of the conductors: one way, in feet or metres, or each conductor on its own. With `from`, it may be left out. */
export type LengthInput =
  | EachConductorInMetres
  | EachConductorInFeet
  | OneWayInMetres
  | LengthLeftOut
  | OneWayInFeet;

/** The size of the conductors: an AWG size or a metric one. */
export type SizeInput = MetricSize | Gauge;

interface LoadInAmperes {
  /**
   * Current that the load draws, A: its maximum for longer than a moment. Above 0, up to 2,000.
   * Give `load`, `loadW` or `to`, and no other; one of them is needed.
   *
   * Example: `load: 40`
   */
  readonly load: number;
  readonly loadW?: GiveOnlyOneOf.load_or_loadW_or_to;
  readonly to?: GiveOnlyOneOf.load_or_loadW_or_to;
}

interface LoadInWatts {
  /**
   * Power that the load draws, W. Above 0, up to 100,000. Converted to amperes at the device's own minimum voltage (`minimumV`)
   * if that is stated: A = W / V. Else at the nominal voltage, and for ampacity and ratings at the lowest voltage in use. Give `load`, `loadW` or `to`, and no other; one of them is needed.
   *
   * Example: `loadW: 480`
   */
  readonly loadW: number;
  readonly load?: GiveOnlyOneOf.load_or_loadW_or_to;
  readonly to?: GiveOnlyOneOf.load_or_loadW_or_to;
}

interface LoadIsPart {
  /**
   * The part that the circuit feeds, if the plan states that part separately: an inverter, a charger, a motor, a fuse panel. It
   * has a plus and a minus, and both conductors of the circuit end there. Give `load`, `loadW` or `to`, and no other; one of them
   * is needed, and `from` with it.
   *
   * Example: `to: windlass`
   */
  readonly to: FedPart;
  readonly load?: GiveOnlyOneOf.load_or_loadW_or_to;
  readonly loadW?: GiveOnlyOneOf.load_or_loadW_or_to;
}

/**
 * A whole part at which a circuit may end: it has a plus and a minus. Chargers and controllers are fed at their input, panels
 * at their feed. A circuit of the output begins there: `from: charger.outputPositive`, `from: controller.positive`.
 */
export type FedPart =
  | PlannedAlternator
  | PlannedBattery
  | PlannedDcDcCharger
  | PlannedFusePanel
  | PlannedInverter
  | PlannedLoad
  | PlannedMotor
  | PlannedStarterMotor
  | PartWithPoles
  | PlannedShoreCharger
  | PlannedSolarArray
  | PlannedSolarController;

interface OneWayInFeet {
  /**
   * Length of the run from the source to the load, one way, in feet. From 0.03 to 1,000. The return conductor is taken
   * to be as long again: `oneWayFt: 15` is 30 ft of wire. Give one kind of length only; without `from`,
   * one is needed.
   *
   * Left out: taken as not known, and the drop is not judged. A circuit without `from` needs it.
   *
   * Example: `oneWayFt: 15`
   */
  readonly oneWayFt: number;
  readonly oneWayM?: OneLength;
  readonly positiveFt?: OneLength;
  readonly negativeFt?: OneLength;
  readonly positiveM?: OneLength;
  readonly negativeM?: OneLength;
}

interface OneWayInMetres {
  /**
   * Length of the run from the source to the load, one way, in metres. From 0.01 to 300. The return conductor is taken
   * to be as long again: `oneWayM: 4.5` is 9 m of wire. Give one kind of length only; without `from`,
   * one is needed.
   *
   * Left out: taken as not known, and the drop is not judged. A circuit without `from` needs it.
   *
   * Example: `oneWayM: 4.5`
   */
  readonly oneWayM: number;
  readonly oneWayFt?: OneLength;
  readonly positiveFt?: OneLength;
  readonly negativeFt?: OneLength;
  readonly positiveM?: OneLength;
  readonly negativeM?: OneLength;
}

interface EachConductorInFeet {
  /**
   * Length of the positive conductor, in feet, if the return has another length. From 0.03 to 1,000.
   * Give `negativeFt` with it, and no other length.
   *
   * Left out: taken as not known, and the drop is not judged. A circuit without `from` needs it.
   *
   * Example: `positiveFt: 12, negativeFt: 3`
   */
  readonly positiveFt: number;
  /**
   * Length of the return (negative) conductor, in feet. From 0.03 to 1,000. Give `positiveFt` with it, and no other length.
   *
   * Left out: taken as not known, and the drop is not judged. A circuit without `from` needs it.
   *
   * Example: `positiveFt: 12, negativeFt: 3`
   */
  readonly negativeFt: number;
  readonly oneWayFt?: OneLength;
  readonly oneWayM?: OneLength;
  readonly positiveM?: OneLength;
  readonly negativeM?: OneLength;
}

interface EachConductorInMetres {
  /**
   * Length of the positive conductor, in metres, if the return has another length. From 0.01 to 300.
   * Give `negativeM` with it, and no other length.
   *
   * Left out: taken as not known, and the drop is not judged. A circuit without `from` needs it.
   *
   * Example: `positiveM: 4, negativeM: 1`
   */
  readonly positiveM: number;
  /**
   * Length of the return (negative) conductor, in metres. From 0.01 to 300. Give `positiveM` with it, and no other length.
   *
   * Left out: taken as not known, and the drop is not judged. A circuit without `from` needs it.
   *
   * Example: `positiveM: 4, negativeM: 1`
   */
  readonly negativeM: number;
  readonly oneWayFt?: OneLength;
  readonly oneWayM?: OneLength;
  readonly positiveFt?: OneLength;
  readonly negativeFt?: OneLength;
}

/** Only a circuit in a network, because other results need none. */
interface LengthLeftOut {
  readonly from: PositiveTerminal | EitherTerminal;
  readonly oneWayFt?: OneLength;
  readonly oneWayM?: OneLength;
  readonly positiveFt?: OneLength;
  readonly negativeFt?: OneLength;
  readonly positiveM?: OneLength;
  readonly negativeM?: OneLength;
}

type OneLength = GiveOnlyOneOf.oneWayFt_or_oneWayM_or_both_conductors;

interface Gauge {
  /**
   * Size of the conductors, AWG: 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "3/0" or "4/0", thickest last.
   * Give `gauge` or `mm2`, not both; one of them is needed. The two systems are never converted into each other.
   *
   * Example: `gauge: 4`
   */
  readonly gauge: AwgSize;
  readonly mm2?: GiveOnlyOneOf.gauge_or_mm2;
}

interface MetricSize {
  /**
   * Cross-section of the conductors, mm²: 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120 or 150.
   * Give `gauge` or `mm2`, not both; one of them is needed. The two systems are never converted into each other.
   * The ampacity of metric sizes is shown as an unconfirmed figure: the table was recalled, not seen.
   *
   * Example: `mm2: 25`
   */
  readonly mm2: Mm2Size;
  readonly gauge?: GiveOnlyOneOf.gauge_or_mm2;
}

/** The properties of a circuit besides its load, length and size. Every property may be left out. */
export interface CircuitOptions extends RunOptions {
  /**
   * Name of the circuit, in findings, lists and labels. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds the circuit, or its place in the file.
   *
   * Example: `name: "Reading lamps"`
   */
  readonly name?: string;
  /**
   * The terminal where its positive conductor begins, in a build with parts: `panel.branch`, `bus.stud`, `house.positive`.
   * The circuit is then calculated with the rest of the network.
   *
   * Left out: taken as a circuit that is checked alone.
   *
   * Example: `from: panel.branch`
   */
  readonly from?: PositiveTerminal | EitherTerminal;
  /**
   * The terminal where its return conductor ends: `panel.negative`, `negativeBus.stud`, `body.metal`. Only together with `from`.
   *
   * Left out: taken as the negative terminal of the part that `from` belongs to, if it has one.
   *
   * Example: `returnTo: negativeBus.stud`
   */
  readonly returnTo?: NegativeTerminal | EitherTerminal;
  /**
   * The fuse or breaker that protects the conductors: its rating in A, above 0 and up to 6,000, or an object with
   * `ratingA`, `family`, `distanceIn` or `distanceMm`, `interruptingA`, `ratedV` and `price`.
   *
   * Left out: taken as no protection at all, which is an error.
   *
   * Example: `protect: 50`, or `protect: { ratingA: 50, family: "ISO 8820-3 Type E", distanceIn: 6 }`
   */
  readonly protect?: number | ProtectionInput;
  /**
   * The fuse or breaker at the far end, for a circuit that can be fed from there too (see `fedFromBothEnds`).
   * Written like `protect`.
   *
   * Left out: taken as none there.
   *
   * Example: `protectFarEnd: 50`
   */
  readonly protectFarEnd?: number | ProtectionInput;
  /**
   * Nominal voltage of this circuit, V: 12, 24, 48, or another number from 1 to 50; or 51.2. 12.8, 25.6 and 51.2 V
   * are labels of LiFePO4 batteries, and mean 12, 24 and 48 V.
   *
   * Left out: taken from `build`, else as 12 V.
   *
   * Example: `voltage: 24`
   */
  readonly voltage?: NominalVoltage;
  /**
   * Whether the device is vital or sensitive to low voltage: inverter, charge controller, pump, navigation or safety
   * equipment, feeder of a panel. The drop limit is then 3 %.
   *
   * Left out: taken as false, with a drop limit of 10 %. `build` can change both limits.
   *
   * Example: `critical: true`
   */
  readonly critical?: boolean;
  /**
   * The use of the device: "bilge pump" for one that runs by itself, "alarm", or "other". A bilge pump should stay on with the main
   * switch off, and an alarm have a fuse of its own.
   * If the circuit ends at a part (`to`), that part states it.
   *
   * Left out: taken from the name, if that contains these words in English.
   *
   * Example: `purpose: "bilge pump"`
   */
  readonly purpose?: LoadPurpose;
  /**
   * How long it runs, for the balance of energy of a `period`.
   *
   * Left out: taken as not known, or from the part at its end, and the balance leaves it out.
   *
   * Example: `use: { hoursPerDay: 4, when: "dark" }`
   */
  readonly use?: Use;
  /**
   * Maximum voltage drop on the way to this load and back, in percent of the nominal voltage. Above 0, up to 20. For a circuit
   * that ends at a part, it counts for the whole supply path of that part.
   *
   * Left out: taken from the part at its end, else from `build`, else as 3 % when `critical`, and 10 % when not.
   *
   * Example: `dropLimitPercent: 5`
   */
  readonly dropLimitPercent?: number;
  /**
   * Whether the load runs for three hours or longer at a time. Protection then aims at 125 % of the load.
   *
   * Left out: taken from `build`, else as true.
   *
   * Example: `continuous: false`
   */
  readonly continuous?: boolean;
  /**
   * Minimum voltage at which the device still works, V, from its data sheet. From 1 up to the nominal voltage.
   * A load in watts is converted to amperes at this voltage. If the circuit ends at a part (`to`), that part states it.
   *
   * Left out: taken as not known, and only the drop in percent is checked. For the current of a load in watts, taken as 1.75 V a
   * lead-acid cell, or 3 V a cell of LiFePO4.
   *
   * Example: `minimumV: 10.5`
   */
  readonly minimumV?: number;
  /**
   * Greatest voltage that the device withstands, V, from its nameplate: 32 for one made for 10 to 32 V. From 1 to 200, and not below
   * `minimumV`. If the circuit ends at a part (`to`), that part states it.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `maximumV: 32`
   */
  readonly maximumV?: number;
  /**
   * Whether the conductors lie together in one sheath over their insulation, all the way, as in a multi-conductor cable.
   * Sizes down to 18 AWG or 0.75 mm² are then allowed instead of 16 AWG or 1 mm², and protection up to 40 in from the
   * source instead of 7 in. "flat duplex" or "round duplex" means that the positive and the return are the two conductors of one
   * such cable: lists have it as one piece of a kind of its own, such as 2 × 14 AWG.
   *
   * Left out: taken as false.
   *
   * Example: `sheathed: true`, or `sheathed: "flat duplex"`
   */
  readonly sheathed?: boolean | DuplexCable;
  /**
   * Number of other loaded conductors in the same bundle, sheath or duct as one of this circuit's conductors.
   * The circuit's own return counts: a pair on its own is 1. A whole number, 0 to 200. The more there are, the less each may
   * carry.
   *
   * Left out: taken as the circuit's own conductors together: 1, or more with `parallel`.
   *
   * Example: `bundledWith: 5`
   */
  readonly bundledWith?: number;
  /**
   * Whether the circuit starts at a battery terminal, and not at a bus bar or panel.
   * Its protection may then be up to 72 in from that terminal. Only for a circuit without `from`; for others `from` shows it.
   *
   * Left out: taken as true if `from` is a terminal of a battery, else as false.
   *
   * Example: `fromBattery: true`
   */
  readonly fromBattery?: boolean;
  /**
   * Whether current can come from both ends, as between two batteries, or a battery and a charger.
   * The conductors then need protection at both ends. Only for a circuit without `from`; for others the network shows it.
   *
   * Left out: taken as false.
   *
   * Example: `fedFromBothEnds: true`
   */
  readonly fedFromBothEnds?: boolean;
  /**
   * Colour of the return (negative) conductor, in up to 40 characters.
   *
   * Left out: taken from `negativeColour` of `build`, else as "black".
   *
   * Example: `returnColour: "yellow"`
   */
  readonly returnColour?: Colour;
  /**
   * The place of the load that the circuit states itself: a surface, with the distance of its left and top edge from those of the
   * surface; or the free end of a channel. If the circuit ends at a part (`to`), that part states it.
   *
   * Left out: taken as not known. A circuit without a length then has none.
   *
   * Example: `at: { endOf: mastConduit }`
   */
  readonly at?: PartPlace;
  /**
   * The outline of the load that the circuit states itself, and its depth, in millimetres or inches. If the circuit ends at a part
   * (`to`), that part states it.
   *
   * Left out: taken as not known: whether it fits is not judged.
   *
   * Example: `size: { widthMm: 80, heightMm: 80 }`
   */
  readonly size?: BodySize;
  /**
   * How its conductors are fastened at the load that the circuit states itself: by a ring on a stud or screw ("#6", "#8", "#10",
   * "1/4 in", "5/16 in", "3/8 in", "1/2 in", "M3.5", "M4", "M5", "M6", "M8", "M10", "M12"), in a "screw clamp", or on a
   * "6.3 mm tab". If the circuit ends at a part (`to`), that part states it.
   *
   * Left out: taken as not known, and lists give the usual fitting, marked so.
   *
   * Example: `termination: "6.3 mm tab"`
   */
  readonly termination?: Termination;
  /**
   * The largest conductor that the terminals of the load that the circuit states itself take, AWG: 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "3/0" or "4/0". Each of
   * several wires in parallel counts by itself. If the circuit ends at a part (`to`), that part states it. Give `largestGauge` or `largestMm2`, not both.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `largestGauge: 6`
   */
  readonly largestGauge?: AwgSize;
  /**
   * The same as a cross-section, mm²: 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120 or 150.
   * Give `largestGauge` or `largestMm2`, not both.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `largestMm2: 16`
   */
  readonly largestMm2?: Mm2Size;
  /**
   * Rating of the largest fuse or breaker that the load's maker permits on its feed, A. Above 0, up to 6,000.
   * If the manual names one rating, it is that one. If the circuit ends at a part (`to`), that part states it.
   *
   * Left out: taken as not known, and only its conductor and its load limit the rating.
   *
   * Example: `maxFuseA: 40`
   */
  readonly maxFuseA?: number;
  /**
   * Findings that you accept for this circuit: the rule's id, and your reason. They are then shown as accepted, with
   * the reason, everywhere. An empty reason is an error.
   *
   * Left out: taken as none.
   *
   * Example: `accept: { "conductor/voltage-drop": "used in summer only, dimmed" }`
   */
  readonly accept?: AcceptedFindings;
}
