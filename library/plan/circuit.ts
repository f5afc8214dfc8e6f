import { frozenPlanData } from "./frozen-copy.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { ProtectionInput } from "./protection.ts";
import type { RuleId } from "./rule-id.ts";
import type { AwgSize, InsulationC, Mm2Size } from "./sizes.ts";
import type { NominalVoltage } from "./voltage.ts";

/**
 * A load, the pair of conductors that feeds it, and the fuse or breaker that protects them.
 * Give one load (`load` or `loadW`), one length (`oneWayFt`, `oneWayM`, or that of each conductor) and one size (`gauge` or `mm2`).
 *
 * Example: `circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50 })`
 *
 * @returns The circuit as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function circuit(input: CircuitInput): PlannedCircuit {
  return frozenPlanData(input, "circuit") as PlannedCircuit;
}

/** What {@link circuit} gives back: what it was given, frozen. */
export type PlannedCircuit = CircuitInput & { readonly kind: "circuit" };

/** What {@link circuit} is given: one load, one length, one size, and whatever else is known. */
export type CircuitInput = CircuitOptions & LoadInput & LengthInput & SizeInput;

/** The load, in amperes or in watts. */
export type LoadInput = LoadInWatts | LoadInAmperes;

/** How long the conductors are: one way, in feet or metres, or each conductor on its own. */
export type LengthInput = EachConductorInMetres | EachConductorInFeet | OneWayInMetres | OneWayInFeet;

/** How thick the conductors are: an AWG size or a metric one. */
export type SizeInput = MetricSize | Gauge;

interface LoadInAmperes {
  /**
   * Current that the load draws, A: the most it draws for longer than a moment. Above 0, up to 2,000.
   * Give `load` or `loadW`, not both; one of them is needed.
   *
   * Example: `load: 40`
   */
  readonly load: number;
  readonly loadW?: GiveOnlyOneOf.load_or_loadW;
}

interface LoadInWatts {
  /**
   * Power that the load draws, W. Above 0, up to 100,000. Turned into amperes at the device's own minimum voltage (`minimumV`)
   * if that is stated, else at the nominal voltage: A = W / V. Give `load` or `loadW`, not both; one of them is needed.
   *
   * Example: `loadW: 480`
   */
  readonly loadW: number;
  readonly load?: GiveOnlyOneOf.load_or_loadW;
}

interface OneWayInFeet {
  /**
   * Length of the run from the source to the load, one way, in feet. Above 0, up to 1,000. The return conductor is taken
   * to be as long again: `oneWayFt: 15` is 30 ft of wire. Give one kind of length only; one is needed.
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
   * Length of the run from the source to the load, one way, in metres. Above 0, up to 300. The return conductor is taken
   * to be as long again: `oneWayM: 4.5` is 9 m of wire. Give one kind of length only; one is needed.
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
   * Length of the positive conductor, in feet, where the return is not as long. Above 0, up to 1,000.
   * Give `negativeFt` with it, and no other length.
   *
   * Example: `positiveFt: 12, negativeFt: 3`
   */
  readonly positiveFt: number;
  /**
   * Length of the return (negative) conductor, in feet. Above 0, up to 1,000. Give `positiveFt` with it, and no other length.
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
   * Length of the positive conductor, in metres, where the return is not as long. Above 0, up to 300.
   * Give `negativeM` with it, and no other length.
   *
   * Example: `positiveM: 4, negativeM: 1`
   */
  readonly positiveM: number;
  /**
   * Length of the return (negative) conductor, in metres. Above 0, up to 300. Give `positiveM` with it, and no other length.
   *
   * Example: `positiveM: 4, negativeM: 1`
   */
  readonly negativeM: number;
  readonly oneWayFt?: OneLength;
  readonly oneWayM?: OneLength;
  readonly positiveFt?: OneLength;
  readonly negativeFt?: OneLength;
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
   * What metric sizes may carry is shown as an unconfirmed figure: the table was recalled, not seen.
   *
   * Example: `mm2: 25`
   */
  readonly mm2: Mm2Size;
  readonly gauge?: GiveOnlyOneOf.gauge_or_mm2;
}

/** What may be said of a circuit besides its load, length and size. Every property may be left out. */
export interface CircuitOptions {
  /**
   * What the circuit is called, in findings, lists and labels. Shown up to 80 characters.
   *
   * Left out: taken as the name of the variable that holds the circuit, or its place in the file.
   *
   * Example: `name: "Reading lamps"`
   */
  readonly name?: string;
  /**
   * The fuse or breaker that protects the conductors: its rating in A, above 0 and up to 6,000, or an object with
   * `ratingA`, `family`, `distanceIn` or `distanceMm`, and `interruptingA`.
   *
   * Left out: taken as no protection at all, which is an error.
   *
   * Example: `protect: 50`, or `protect: { ratingA: 50, family: "ISO 8820-3 Type E", distanceIn: 6 }`
   */
  readonly protect?: number | ProtectionInput;
  /**
   * The fuse or breaker at the far end, where the far end can feed too (see `fedFromBothEnds`). Written like `protect`.
   *
   * Left out: taken as none there.
   *
   * Example: `protectFarEnd: 50`
   */
  readonly protectFarEnd?: number | ProtectionInput;
  /**
   * Nominal voltage of this circuit, V: 12, 24, 48, or another number from 1 to 50.
   *
   * Left out: taken from `build`, else as 12 V.
   *
   * Example: `voltage: 24`
   */
  readonly voltage?: NominalVoltage;
  /**
   * Whether the device matters or minds a low voltage: inverter, charge controller, pump, navigation or safety equipment,
   * feeder of a panel. The drop limit is then 3 %.
   *
   * Left out: taken as false, with a drop limit of 10 %. `build` can change both limits.
   *
   * Example: `critical: true`
   */
  readonly critical?: boolean;
  /**
   * The most that may be lost on the way to this load and back, in percent of the nominal voltage. Above 0, up to 20.
   *
   * Left out: taken from `build`, else as 3 % when `critical`, and 10 % when not.
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
   * The least voltage at which the device still works, V, from its data sheet. From 1 up to the nominal voltage.
   * A load in watts is turned into amperes at this voltage.
   *
   * Left out: taken as not known, and only the drop in percent is checked.
   *
   * Example: `minimumV: 10.5`
   */
  readonly minimumV?: number;
  /**
   * Temperature rating of the insulation, °C, as printed on it: 60, 70, 75, 80, 85, 90, 105, 125 or 200.
   * Where the ampacity table has no column for it, the next lower one counts.
   *
   * Left out: taken from `build`, else as 75 °C, and a hint says so.
   *
   * Example: `insulationC: 105`
   */
  readonly insulationC?: InsulationC;
  /**
   * Whether any part of the run lies in an engine space, where conductors carry less: what they carry at 50 °C (`gauge`) or
   * 60 °C (`mm2`). With `ambientC` as well, the smaller of the two figures counts.
   *
   * Left out: taken from `build`, else as false.
   *
   * Example: `engineSpace: true`
   */
  readonly engineSpace?: boolean;
  /**
   * Temperature of the air around the conductors, °C, on the hottest day in use. -50 to 200.
   *
   * Left out: taken from `build`, else as 30 °C, for which the ampacity tables are made.
   *
   * Example: `ambientC: 45`
   */
  readonly ambientC?: number;
  /**
   * How many other loaded conductors lie in the same bundle, sheath or duct as one of this circuit's conductors.
   * The circuit's own return counts: a pair on its own is 1. A whole number, 0 to 200. Many together carry less each.
   *
   * Left out: taken as the circuit's own conductors together: 1, or more with `parallel`.
   *
   * Example: `bundledWith: 5`
   */
  readonly bundledWith?: number;
  /**
   * Whether the conductors lie together in one sheath over their insulation, all the way, as in a multi-conductor cable.
   * Sizes down to 18 AWG or 0.75 mm² are then in order instead of 16 AWG or 1 mm², and protection up to 40 in from the
   * source instead of 7 in.
   *
   * Left out: taken as false.
   *
   * Example: `sheathed: true`
   */
  readonly sheathed?: boolean;
  /**
   * Whether the circuit starts at a battery terminal, and not at a bus bar or panel.
   * Its protection may then be up to 72 in from there.
   *
   * Left out: taken as false.
   *
   * Example: `fromBattery: true`
   */
  readonly fromBattery?: boolean;
  /**
   * How many equal wires side by side make up each conductor. A whole number, 1 to 8.
   *
   * Left out: taken as 1.
   *
   * Example: `parallel: 2`
   */
  readonly parallel?: number;
  /**
   * Whether current can come from both ends, as between two batteries, or a battery and a charger.
   * The conductors then need protection at both ends.
   *
   * Left out: taken as false.
   *
   * Example: `fedFromBothEnds: true`
   */
  readonly fedFromBothEnds?: boolean;
  /**
   * Findings that you accept for this circuit: the rule's id, and your reason. They are then shown as accepted, with
   * the reason, everywhere. An empty reason is an error.
   *
   * Left out: taken as nothing accepted.
   *
   * Example: `accept: { "conductor/voltage-drop": "used in summer only, dimmed" }`
   */
  readonly accept?: AcceptedFindings;
}

/** Rule id to the builder's reason. */
type AcceptedFindings = { readonly [Rule in RuleId]?: string };
