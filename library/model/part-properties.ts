import type { TerminalC } from "../plan/sizes.ts";
import { acceptableRules } from "./acceptable-rules.ts";
import { loadPurposes, terminalRatingsC } from "./allowed-values.ts";
import { price, termination, torque } from "./bench-properties.ts";
import { placementOfPart } from "./placement/place-properties.ts";
import { amount, amountOrNone, oneOf, text } from "./property.ts";
import type { Property } from "./property-table.ts";
import { propertyTable } from "./property-table.ts";

/*
 * Properties shared by several parts. The maxima catch slips (a decimal point, another unit) and keep every figure finite.
 * For a build that really needs more, raise the number here and in the manual in `library/plan`.
 */

const acceptParts = propertyTable(
  Object.fromEntries(acceptableRules.map((rule) => [rule, text("your reason, as text")])),
  { unknown: "is not a rule that can be accepted", choices: [] },
);

/** Findings that the builder accepts. */
export const accept = {
  schema: acceptParts.schema,
  allowed: 'an object from rule to reason, such as { "conductor/voltage-drop": "used in summer only" }',
  affectsResults: false,
  parts: acceptParts,
} as Property<Readonly<Record<string, string | undefined>>>;

/** Properties of every part. */
export const ofEveryPart = {
  name: text("a name, as text"),
  source: text("the source of the numbers, as text"),
  accept,
  termination,
  torqueNm: torque,
  price,
  ...placementOfPart,
};

/** No conductor of the tables carries more than about 560 A, and more than a few in parallel are not seen. */
export const greatestCurrentA = 2_000;

/** The tables are for less than 50 V (33 CFR 183.425) and up to 50 V (ISO 10133, scope). */
export const greatestNominalV = 50;

/** Current of a load. */
export const loadCurrent = amount("a current", "A", { above: 0, upTo: greatestCurrentA });
/** Output or rated current of a part: parts with several runs carry more than one run does. */
export const current = amount("a current", "A", { above: 0, upTo: 10_000 });
export const rating = amount("a rating", "A", { above: 0, upTo: 10_000 });
export const power = amount("a power", "W", { above: 0, upTo: greatestCurrentA * greatestNominalV });
/** Sixteen cells of LiFePO4 are sold with this label, and with that of 48 V. */
const greatestLabelV = 51.2;
/** One cell has more than 1 V. */
export const nominalVoltage = voltageUpTo50("a voltage");
/** A nominal 50 V is charged at about 60 V, and equalised at more. */
export const workingVoltage = amount("a voltage", "V", { from: 1, upTo: 100 });
/** Converters for 110 V exist; mains voltage is a slip. */
export const withstoodVoltage = amount("a voltage", "V", { from: 1, upTo: 200 });
/** A share such as 0.9 is a slip. */
export const efficiency = amount("an efficiency", "%", { from: 1, upTo: 100 });

/** Temperature rating of terminals. */
export const terminalC: Property<TerminalC> = {
  ...oneOf(terminalRatingsC, "is not a temperature rating of terminals"),
  unit: "°C",
};

/** The minimum is colder than any campsite; the maximum is warmer than the coldest day anywhere. */
export const coldestDay = amount("a temperature", "°C", { from: -60, upTo: 50 });
/** Twice the loosest limit in use. A builder who knowingly exceeds it accepts the finding. */
export const dropPercent = amount("a share of the nominal voltage", "%", { above: 0, upTo: 20 });

/** A nominal voltage, or the label of a battery of LiFePO4 that makes a system of 48 V. */
export function voltageUpTo50(what: string): Property<number> {
  const upToLabel = amount(what, "V", { from: 1, upTo: greatestLabelV });
  return {
    ...upToLabel,
    schema: upToLabel.schema.refine(
      (value) => value <= greatestNominalV || value === greatestLabelV,
      "is too large",
    ),
    allowed: `${what} from 1 to ${greatestNominalV} V, or ${greatestLabelV} V`,
  };
}

/**
 * Two ends without any resistance are one piece of metal. Below 1 µΩ, as of a few millimetres of busbar, they practically are.
 * Currents would then follow from voltage differences too small for floating-point accuracy.
 */
export function resistanceOrNone(upTo: number): Property<number> {
  return amountOrNone("a resistance", "mΩ", { from: 0.001, upTo });
}

/** The use of a device that draws current. */
export const loadPurpose = oneOf(loadPurposes, "is not one of the uses");

/** The temperature of the air at a place. 200 °C is the highest temperature rating of insulation in the tables. */
export const ambient = amount("a temperature", "°C", { from: -50, upTo: 200 });
