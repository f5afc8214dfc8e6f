import { metresPerFoot } from "../../model/length-limits.ts";
import type { LengthProperty, Run } from "../../model/run.ts";
import type { Change, ProposedFix } from "../finding.ts";

/**
 * Lengths of a plan read in a different unit from the one they are written in.
 * The bounds are common practice, no source: campers, small boats and huts.
 */

/** One way, m. Boats up to 24 m, campers and huts seldom have a longer run, and size it for its length if they do. */
export const longestUsualM = 30;
/** Anything shorter, one way, is not a run either, m. */
const shortestUsualM = 0.3;

/** A number of a plan in the unit that was perhaps meant. */
export interface LengthReading {
  readonly unit: "mm" | "cm" | "in";
  /** In feet or in metres, as {@link inFeet} states. */
  readonly length: number;
  readonly lengthM: number;
  /** The unit of its property: inches are a part of a foot, millimetres and centimetres of a metre. */
  readonly inFeet: boolean;
}

/** The lengths of a circuit as written: property and number. */
export type Lengths = readonly (readonly [LengthProperty, number])[];

export function lengthsOf(circuit: Run): Lengths {
  return Object.entries(circuit.lengthsGiven) as [LengthProperty, number][];
}

/** The smaller units that make the number a usual run. Feet are mistaken for inches, seldom for millimetres. */
export function readingsOf(property: LengthProperty, given: number): LengthReading[] {
  const units = isInFeet(property) ? (["in", "mm"] as const) : (["mm", "cm"] as const);
  return units
    .map((unit) => convert(given, unit))
    .filter(({ lengthM }) => lengthM >= shortestUsualM && lengthM <= longestUsualM);
}

/** A suggestion: only the builder knows the measured length. */
export function readLengthsAs(record: number, lengths: Lengths, reading: LengthReading): ProposedFix {
  const changes = lengths.flatMap(([property, given]): Change[] => {
    const value = convert(given, reading.unit).length;
    if (isInFeet(property) === reading.inFeet) return [{ do: "set", record, path: [property], value }];
    return [
      { do: "remove", record, path: [property] },
      { do: "set", record, path: [inTheOtherUnit[property]], value },
    ];
  });
  return { title: `Read the number as ${unitInWords[reading.unit]}`, kind: "suggestion", changes };
}

function convert(given: number, unit: LengthReading["unit"]): LengthReading {
  if (unit === "in")
    return {
      unit,
      length: tidy(given / inchesPerFoot),
      lengthM: (given / inchesPerFoot) * metresPerFoot,
      inFeet: true,
    };
  const lengthM = given / (unit === "mm" ? 1000 : 100);
  return { unit, length: tidy(lengthM), lengthM, inFeet: false };
}

/** Rounds a length for a plan: no one measures finer than a millimetre, or a thousandth of a foot. */
function tidy(length: number): number {
  return Math.round(length * 1000) / 1000;
}

export function isLengthProperty(property: string): property is LengthProperty {
  return Object.hasOwn(inTheOtherUnit, property);
}

export function isInFeet(property: LengthProperty): boolean {
  return property.endsWith("Ft");
}

export function lengthInM(property: LengthProperty, length: number): number {
  return isInFeet(property) ? length * metresPerFoot : length;
}

const inchesPerFoot = 12;

export const inTheOtherUnit: Record<LengthProperty, LengthProperty> = {
  oneWayFt: "oneWayM",
  oneWayM: "oneWayFt",
  positiveFt: "positiveM",
  positiveM: "positiveFt",
  negativeFt: "negativeM",
  negativeM: "negativeFt",
  lengthFt: "lengthM",
  lengthM: "lengthFt",
};

const unitInWords: Record<LengthReading["unit"], string> = {
  mm: "millimetres",
  cm: "centimetres",
  in: "inches",
};
