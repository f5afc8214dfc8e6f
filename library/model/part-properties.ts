import { acceptableRules } from "./acceptable-rules.ts";
import { price, termination, torque } from "./bench-properties.ts";
import { amount, type Property, text } from "./property.ts";
import { type Properties, type PropertyTable, propertyTable } from "./property-table.ts";
import type { Word } from "./record.ts";

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
  source: text("where the numbers come from, as text"),
  accept,
  termination,
  torqueNm: torque,
  price,
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
/** One cell has more than 1 V. */
export const nominalVoltage = amount("a voltage", "V", { from: 1, upTo: greatestNominalV });
/** A nominal 50 V is charged at about 60 V, and equalised at more. */
export const workingVoltage = amount("a voltage", "V", { from: 1, upTo: 100 });
/** A share such as 0.9 is a slip. */
export const efficiency = amount("an efficiency", "%", { from: 1, upTo: 100 });

/** The table of a DSL function that makes a part. */
export function partTable<Shape extends Properties>(
  word: Word,
  properties: Shape,
  { needed, choices = [] }: { needed: readonly string[]; choices?: PropertyTable["choices"] },
): PropertyTable<Shape> {
  return propertyTable(properties, { word, unknown: `is not a property of ${word}`, needed, choices });
}
