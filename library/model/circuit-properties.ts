import { awgSizes, duplexCables, insulationRatingsC, mm2Sizes } from "./allowed-values.ts";
import { colour, label, termination } from "./bench-properties.ts";
import { largestGauge, largestMm2, oneLargestConductor } from "./largest-conductor.ts";
import { lengthLimitsFt, lengthLimitsM } from "./length-limits.ts";
import {
  accept,
  ambient,
  dropPercent,
  greatestCurrentA,
  greatestNominalV,
  loadPurpose,
  voltageUpTo50,
  withstoodVoltage,
} from "./part-properties.ts";
import { bodySize, partPlace, wayOfRun } from "./placement/place-properties.ts";
import { amount, count, oneOf, text, yesOrNo, yesOrNoOr } from "./property.ts";
import { type Choice, propertyTable, type ValuesOf } from "./property-table.ts";
import { protection, ratingOfDevice } from "./protection-properties.ts";
import { reference, terminal } from "./terminal-property.ts";
import { use } from "./use-properties.ts";

/*
 * Allowed values of each property of `circuit`. The maxima catch slips (a decimal point, another unit) and keep every figure
 * finite. For a build that really needs more, raise the number here and in the manual in `library/plan`.
 */

export const greatestLoadA = greatestCurrentA;

/** The tables are for less than 50 V (33 CFR 183.425) and up to 50 V (ISO 10133, scope). One cell has more than 1 V. */
export const voltage = voltageUpTo50("12, 24, 48 or another voltage");

export const insulation = oneOf(insulationRatingsC, "is not an insulation rating in the tables");

export const feet = amount("a length", "ft", lengthLimitsFt);
export const metres = amount("a length", "m", lengthLimitsM);

const properties = {
  name: text("a name, as text"),
  from: terminal,
  returnTo: terminal,
  to: reference("a part of this plan with a positive and a negative terminal"),
  load: amount("a current", "A", { above: 0, upTo: greatestLoadA }),
  // The maximum load at the maximum voltage; the load in amperes is checked again once the voltage is known.
  loadW: amount("a power", "W", { above: 0, upTo: greatestLoadA * greatestNominalV }),
  voltage,
  oneWayFt: feet,
  oneWayM: metres,
  positiveFt: feet,
  negativeFt: feet,
  positiveM: metres,
  negativeM: metres,
  gauge: oneOf(awgSizes, "is not one of the sizes"),
  mm2: oneOf(mm2Sizes, "is not one of the sizes"),
  protect: protection,
  protectFarEnd: protection,
  critical: yesOrNo(),
  purpose: loadPurpose,
  use,
  dropLimitPercent: dropPercent,
  continuous: yesOrNo(),
  insulationC: insulation,
  engineSpace: yesOrNo(),
  ambientC: ambient,
  // Every source has one factor from the 25th conductor on; 200 is enough for any bundle.
  bundledWith: count({ from: 0, upTo: 200 }),
  sheathed: yesOrNoOr(duplexCables),
  fromBattery: yesOrNo(),
  minimumV: amount("a voltage", "V", { from: 1, upTo: 50 }),
  maximumV: withstoodVoltage,
  // One stud does not hold more lugs, and a slip here would make the ampacity of the conductor far too high.
  parallel: count({ from: 1, upTo: 8 }),
  fedFromBothEnds: yesOrNo(),
  accept,
  colour,
  returnColour: colour,
  label,
  termination,
  largestGauge,
  largestMm2,
  maxFuseA: ratingOfDevice,
  at: partPlace,
  size: bodySize,
  ...wayOfRun,
};

export type CircuitValues = ValuesOf<typeof properties>;

const common = { word: "circuit", unknown: "is not a property of circuit" } as const;
const oneLength: Choice = {
  ways: [["oneWayFt"], ["oneWayM"], ["positiveFt", "negativeFt"], ["positiveM", "negativeM"]],
};
const sizes: readonly Choice[] = [{ ways: [["gauge"], ["mm2"]], needed: "a size" }, oneLargestConductor];

/** Allowed values of each property of `circuit`. */
export const circuitProperties = propertyTable(properties, {
  ...common,
  choices: [
    { ways: [["load"], ["loadW"]], needed: "a load" },
    { ...oneLength, needed: "a length" },
    ...sizes,
  ],
});

/** The same for a circuit that starts at a terminal. It may end at a part instead of stating its load, and leave out its length. */
export const wiredCircuitProperties = propertyTable(properties, {
  ...common,
  choices: [
    { ways: [["load"], ["loadW"], ["to"]], needed: "a load, or the part where it ends," },
    oneLength,
    ...sizes,
  ],
});
