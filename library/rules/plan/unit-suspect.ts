import { sizesAbove } from "../../analysis/made-sizes.ts";
import { protectionRangeOf } from "../../analysis/protection-range.ts";
import { thinnestNeeded } from "../../analysis/sizing.ts";
import type { InvalidValue, LengthProperty } from "../../model/run.ts";
import type { ProposedFix } from "../finding.ts";
import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, type Found, type JudgedPlan, type JudgedRun } from "../rule.ts";
import { exceeds, formatExact, formatRounded, withUnit } from "../wording/format-number.ts";
import {
  inTheOtherUnit,
  isInFeet,
  isLengthProperty,
  type LengthReading,
  lengthInM,
  lengthsOf,
  longestUsualM,
  readingsOf,
  readLengthsAs,
} from "../wording/length-readings.ts";

export const unitSuspect = defineRule<Values>({
  id: "plan/unit-suspect",
  title: "Number that suggests another unit",
  formerTitles: ["Number that looks like another unit"],
  severity: "warning",
  why: "A length in the wrong unit, or watts taken for amperes, makes every figure of the circuit wrong, and a wrong figure that looks right is the one that gets built.",
  sources: [ownRequirement("The thresholds are on this page; no sensible build reaches them.")],
  fixable: true,
  acceptable: true,
  // Needs drop, ampacity and protection: a unit is doubted only if the circuit makes no sense as written and does in the other
  // unit.
  check: (plan) => [
    ...plan.circuits
      .filter(({ circuit }) => !circuit.partlyInvalid && !circuit.loadIsLeast)
      .flatMap((judged) => [...doubtfulLength(judged), ...doubtfulAmperes(judged), ...doubtfulWatts(judged)]),
    ...plan.model.invalid.flatMap(beyondAllLimits),
    ...loneUnit(plan),
  ],
  message: (values) => words(values),
});

/** A run is doubted only if it loses more than twice its limit: an honest long run comes nearer than that. */
const timesDropLimit = 2;
/** A load is doubted only at three times the limit of conductor and protection: no one undersizes both that far. */
const timesCarried = 3;
/** Conductors thinner than this are used for small loads for their strength, so their size proves little, A. */
const thickAmpacityA = 50;
/** Watts are doubted only on a conductor that as many amperes need, or at most so many sizes above it. */
const sizesOverAtMost = 2;
/** A unit is called odd only if at least so many other circuits agree on another one. */
const othersAtLeast = 3;

type Values =
  | {
      readonly doubt: "length";
      readonly property: string;
      readonly given: number;
      readonly inFeet: boolean;
      /** The drop with the length as written; undefined if the length is beyond judging. */
      readonly dropPercent: number | undefined;
      readonly readings: readonly { readonly unit: string; readonly length: string }[];
    }
  | {
      readonly doubt: "amperes";
      readonly given: number;
      /** The limit of conductor and protection; undefined if the load is beyond judging. */
      readonly carriedA: number | undefined;
      readonly reading: "W" | "mA";
      readonly readAsA: number | undefined;
    }
  | {
      readonly doubt: "watts";
      readonly given: number;
      readonly loadA: number;
      readonly ampacityA: number;
      readonly ratingA: number;
    }
  | {
      readonly doubt: "lone-unit";
      readonly property: string;
      readonly inFeet: boolean;
      readonly others: number;
    };

function words(values: Values): string {
  if (values.doubt === "length") {
    const { property, given, inFeet, dropPercent, readings } = values;
    const length = `${formatExact(given)} ${inFeet ? "ft" : "m"}`;
    const lost =
      dropPercent === undefined ? "is far beyond a small build" : `would lose ${withUnit(dropPercent, "%")}`;
    const ways = readings.map(
      (reading) => `${formatExact(given)} ${reading.unit} would be ${reading.length}`,
    );
    return `${property}: ${length} ${lost}; ${ways.join(", ")}. Is the unit right?`;
  }
  if (values.doubt === "amperes") {
    const { given, carriedA, reading, readAsA } = values;
    const tooMuch =
      carriedA === undefined
        ? "is far beyond a small build"
        : `is ${formatRounded(given / carriedA)} times the current that the circuit is made for`;
    const number = reading === "W" ? `${formatExact(given)} W (loadW)` : `${formatExact(given)} mA`;
    const way =
      readAsA === undefined ? `watts are written loadW` : `${number} would be ${withUnit(readAsA, "A")}`;
    return `load: ${formatExact(given)} A ${tooMuch}; ${way}. Is the unit right?`;
  }
  if (values.doubt === "watts") {
    const { given, loadA, ampacityA, ratingA } = values;
    return `loadW: ${formatExact(given)} W is only ${withUnit(loadA, "A")}, on a conductor for ${withUnit(ampacityA, "A")} behind ${withUnit(ratingA, "A")}; ${formatExact(given)} A (load) would fit both. Is the unit right?`;
  }
  const { property, inFeet, others } = values;
  const [here, there] = inFeet ? ["feet", "metres"] : ["metres", "feet"];
  return `${property} is in ${here}, the lengths of the ${others} other circuits are in ${there}. Is the unit right?`;
}

/** A run longer than any usual one that loses far too much, and is in order if its number is in a smaller unit. */
function doubtfulLength({ circuit, result: { drop } }: JudgedRun): Found<Values>[] {
  if (!drop.judged) return [];
  const oneWayM = drop.roundTripM / 2;
  if (!exceeds(oneWayM, longestUsualM)) return [];
  if (!exceeds(drop.dropPercent, timesDropLimit * drop.dropLimitPercent)) return [];
  const [[property, given] = []] = lengthsOf(circuit);
  if (property === undefined || given === undefined) return [];
  // The drop is proportional to the length: the working temperature does not depend on it.
  const fits = ({ lengthM }: LengthReading) =>
    (drop.dropPercent * lengthM) / lengthInM(property, given) <= drop.dropLimitPercent;
  const readings = readingsOf(property, given).filter(fits);
  if (readings.length === 0) return [];
  return [
    {
      subject: circuit.name,
      at: atProperty(circuit, property),
      values: lengthValues({ property, given, readings, dropPercent: drop.dropPercent }),
      fixes: readings.map((reading) => readLengthsAs(circuit.record, lengthsOf(circuit), reading)),
    },
  ];
}

/** A load in amperes far above the limit of conductor and protection that fits both in watts or milliamperes. */
function doubtfulAmperes({ circuit, result: { ampacity } }: JudgedRun): Found<Values>[] {
  // If the plan states none, the load is from the network.
  if (!circuit.statesLoad) return [];
  const { loadA, loadW, loadAtV, record, protection } = circuit;
  if (loadW !== undefined || !ampacity.judged) return [];
  const { ampacityA } = ampacity;
  const mostA = Math.max(ampacityA, protection?.ratingA ?? 0);
  const leastA = Math.min(ampacityA, protection?.ratingA ?? ampacityA);
  if (!exceeds(loadA, timesCarried * mostA)) return [];
  const readings = [
    { reading: "W", readAsA: loadA / loadAtV, fix: readAsWatts(record) },
    { reading: "mA", readAsA: loadA / 1000, fix: readAsMilliamperes(record, loadA) },
  ] as const;
  const fitting = readings.find(({ readAsA }) => readAsA <= leastA);
  if (!fitting) return [];
  const { reading, readAsA, fix } = fitting;
  return [
    {
      subject: circuit.name,
      at: atProperty(circuit, "load"),
      values: { doubt: "amperes", given: loadA, carriedA: mostA, reading, readAsA },
      fixes: [fix],
    },
  ];
}

/** A load in watts behind exactly the rating that as many amperes would need, on a conductor chosen for as many. */
function doubtfulWatts({ circuit, result: { ampacity } }: JudgedRun): Found<Values>[] {
  const { loadA, loadW, record, protection } = circuit;
  if (loadW === undefined || !protection || !ampacity.judged || ampacity.ampacityA < thickAmpacityA)
    return [];
  // The smallest rating of its family suits a few watts too, and proves nothing.
  if (protectionRangeOf(circuit, ampacity).bestRatingA === protection.ratingA) return [];
  const asAmperes = { ...circuit, loadA: loadW };
  if (protectionRangeOf(asAmperes, ampacity).bestRatingA !== protection.ratingA) return [];
  const needed = thinnestNeeded(asAmperes);
  const sizesOver = needed ? sizesAbove(circuit.conductor, needed.conductor) : -1;
  if (sizesOver < 0 || sizesOver > sizesOverAtMost) return [];
  return [
    {
      subject: circuit.name,
      at: atProperty(circuit, "loadW"),
      values: {
        doubt: "watts",
        given: loadW,
        loadA,
        ampacityA: ampacity.ampacityA,
        ratingA: protection.ratingA,
      },
      fixes: [readAsAmperes(record)],
    },
  ];
}

/** Numbers too large for their property, and ordinary in another unit. The circuit itself could not be judged. */
function beyondAllLimits({ record, path, name, given }: InvalidValue): Found<Values>[] {
  const [property, ...inner] = path;
  const number = Number(given);
  // Every upper limit is more than 1, and every lower limit less.
  if (!Number.isFinite(number) || number <= 1 || property === undefined || inner.length > 0) return [];
  const at = { record, path };
  if (property === "load") {
    const values: Values = {
      doubt: "amperes",
      given: number,
      carriedA: undefined,
      reading: "W",
      readAsA: undefined,
    };
    return [{ subject: name, at, values, fixes: [readAsWatts(record)] }];
  }
  if (!isLengthProperty(property)) return [];
  const readings = readingsOf(property, number);
  if (readings.length === 0) return [];
  return [
    {
      subject: name,
      at,
      values: lengthValues({ property, given: number, readings, dropPercent: undefined }),
      fixes: readings.map((reading) => readLengthsAs(record, [[property, number]], reading)),
    },
  ];
}

/**
 * One circuit in feet in a plan of metres, or the reverse, with a conductor of the same system as the others. A length that follows
 * from a way has no unit of the plan.
 */
function loneUnit({ circuits }: JudgedPlan): Found<Values>[] {
  const all = circuits.map(({ circuit }) => circuit).filter(({ lengthsFrom }) => lengthsFrom === "plan");
  const inFeet = all.filter(({ lengthUnit }) => lengthUnit === "ft");
  const inMetres = all.filter(({ lengthUnit }) => lengthUnit === "m");
  const [few, many] = inFeet.length < inMetres.length ? [inFeet, inMetres] : [inMetres, inFeet];
  const [lone] = few;
  if (few.length !== 1 || lone === undefined || many.length < othersAtLeast) return [];
  // A metric conductor measured in metres, among others in AWG and feet, is consistent.
  if (many.some(({ conductor }) => conductor.system !== lone.conductor.system)) return [];
  const lengths = lengthsOf(lone);
  const [[property] = []] = lengths;
  if (property === undefined) return [];
  const fix: ProposedFix = {
    title: lone.lengthUnit === "ft" ? "Read the number as metres" : "Read the number as feet",
    kind: "suggestion",
    changes: lengths.map(([name]) => ({
      do: "rename",
      record: lone.record,
      path: [name],
      to: inTheOtherUnit[name],
    })),
  };
  return [
    {
      subject: lone.name,
      at: atProperty(lone, property),
      severity: "info",
      values: { doubt: "lone-unit", property, inFeet: lone.lengthUnit === "ft", others: many.length },
      fixes: [fix],
    },
  ];
}

function lengthValues(of: {
  property: LengthProperty;
  given: number;
  readings: readonly LengthReading[];
  dropPercent: number | undefined;
}): Values {
  return {
    doubt: "length",
    property: of.property,
    given: of.given,
    inFeet: isInFeet(of.property),
    dropPercent: of.dropPercent,
    readings: of.readings.map(({ unit, length, inFeet }) => ({
      unit,
      length: withUnit(length, inFeet ? "ft" : "m"),
    })),
  };
}

function readAsWatts(record: number): ProposedFix {
  return {
    title: "Read the number as watts",
    kind: "suggestion",
    changes: [{ do: "rename", record, path: ["load"], to: "loadW" }],
  };
}

function readAsMilliamperes(record: number, load: number): ProposedFix {
  return {
    title: "Read the number as milliamperes",
    kind: "suggestion",
    changes: [{ do: "set", record, path: ["load"], value: load / 1000 }],
  };
}

function readAsAmperes(record: number): ProposedFix {
  return {
    title: "Read the number as amperes",
    kind: "suggestion",
    changes: [{ do: "rename", record, path: ["loadW"], to: "load" }],
  };
}
