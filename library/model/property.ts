import * as z from "zod";
import { grouped } from "./grouped.ts";
import { isNonPlain } from "./plain-values.ts";
import type {
  AmountUnit,
  Limits,
  ListElements,
  Properties,
  Property,
  PropertyTable,
  ValuesOf,
} from "./property-table.ts";
import type { Refusal, Serves } from "./run.ts";

/** An amount within limits. `allowed` states them: "a current above 0 and up to 2,000 A". */
export function amount(what: string, unit: AmountUnit, limits: Limits): Property<number> {
  const error = ({ input }: { readonly input?: unknown }) => wrongAmount(input, limits);
  const number = z.number({ error }).lte(limits.upTo, { error });
  const within = "above" in limits ? number.gt(limits.above, { error }) : number.gte(limits.from, { error });
  const upTo = unit === "" ? grouped(limits.upTo) : `${grouped(limits.upTo)} ${unit}`;
  const range =
    "above" in limits ? `above ${limits.above} and up to ${upTo}` : `from ${limits.from} to ${upTo}`;
  return { schema: within, allowed: `${what} ${range}`, unit, limits, affectsResults: true };
}

/** An {@link amount}, or 0. */
export function amountOrNone(
  what: string,
  unit: AmountUnit,
  limits: { readonly from: number; readonly upTo: number },
): Property<number> {
  const withNone = amount(what, unit, { ...limits, from: 0 });
  const { schema, allowed } = withNone;
  return {
    ...withNone,
    schema: schema.refine((value) => value === 0 || value >= limits.from, "is too small"),
    allowed: allowed.replace("from 0 to", `of 0, or from ${limits.from} to`),
  };
}

/** A count: a whole number within limits, both inclusive. */
export function count(limits: { readonly from: number; readonly upTo: number }): Property<number> {
  const number = amount("a whole number", "", limits);
  return { ...number, schema: number.schema.refine(Number.isInteger, "is not a whole number") };
}

/** One of some numbers or texts. `unlike` is the message for any other: "is not one of the sizes". */
export function oneOf<const Value extends string | number>(
  values: readonly Value[],
  unlike: string,
): Property<Value> {
  const wrong = (value: unknown) => {
    if (typeof value === "string" && (values as readonly unknown[]).includes(Number(value)))
      return "is text, and should be a number";
    return typeof value === "number" && !Number.isFinite(value) ? notANumber(value) : unlike;
  };
  return {
    schema: z.literal([...values], { error: ({ input }) => wrong(input) }),
    allowed: values.map((value) => JSON.stringify(value)).join(", "),
    affectsResults: true,
    texts: values.filter((value) => typeof value === "string"),
  };
}

export function yesOrNo(): Property<boolean> {
  const schema = z.boolean({ error: "is neither true nor false" });
  return { schema, allowed: "true or false", affectsResults: true };
}

/** True, false, or one of some texts for a special case of true. */
export function yesOrNoOr<const Value extends string>(texts: readonly Value[]): Property<boolean | Value> {
  const named = texts.map((text) => JSON.stringify(text));
  const error = "is neither true, false nor one of the names";
  const schema = z.union([z.boolean(), z.literal([...texts])], { error });
  return { schema, allowed: `true, false, ${named.join(" or ")}`, affectsResults: true, texts };
}

/** Text that is only shown. */
export function text(allowed: string): Property<string> {
  return { schema: z.string({ error: "is not text" }), allowed, affectsResults: false };
}

/** Text for the cells of lists and for labels. */
export function shortText(what: string, longest: number): Property<string> {
  const schema = z
    .string({ error: "is not text" })
    .min(1, { error: "is empty" })
    .max(longest, { error: "is too long" });
  return listsOnly({
    schema,
    allowed: `${what}, as text of up to ${longest} characters`,
    affectsResults: false,
  });
}

/** A list of objects of one kind. */
export function listOf<Shape extends Properties>(
  table: PropertyTable<Shape>,
  {
    allowed,
    most,
    contradictions,
  }: {
    readonly allowed: string;
    readonly most: number;
    /** Elements that contradict each other. */
    contradictions?(list: readonly ValuesOf<Shape>[]): readonly Refusal[];
  },
): Property<readonly ValuesOf<Shape>[]> {
  const list = z.array(table.schema, { error: notAList }).max(most, { error: "is too long" });
  const schema = contradictions ? list.refine((stated) => contradictions(stated).length === 0) : list;
  const elements = { table, most, ...(contradictions && { contradictions }) } as ListElements;
  return { schema, allowed, affectsResults: true, elements };
}

/** The same property, marked as serving only lists and labels. */
export function listsOnly<Value>(property: Property<Value>): Property<Value> {
  return serving("lists", property);
}

/** The same property, marked as serving only the balance of energy. */
export function ofBalance<Value>(property: Property<Value>): Property<Value> {
  return serving("balance", property);
}

/** The same property, marked as serving places, and the ways and lengths that follow from them. */
export function ofPlaces<Value>(property: Property<Value>): Property<Value> {
  return serving("places", property);
}

function serving<Value>(serves: Serves, property: Property<Value>): Property<Value> {
  return { ...property, affectsResults: false, serves };
}

function wrongAmount(value: unknown, limits: Limits): string {
  if (typeof value !== "number" || !Number.isFinite(value)) return notANumber(value);
  if (value > limits.upTo) return "is too large";
  const least = "above" in limits ? limits.above : limits.from;
  if (value < 0 && least >= 0) return "is negative";
  return value === 0 ? "is zero" : "is too small";
}

/** The error of a schema for lists. If a list was too long to be passed on, only that is known. */
export function notAList({ input }: { readonly input?: unknown }): string {
  return isNonPlain(input) && input.$strange.startsWith("a list of more than")
    ? "is too long"
    : "is not a list";
}

function notANumber(value: unknown): string {
  if (typeof value === "string") return "is text, not a number";
  const described = isNonPlain(value) ? value.$strange : typeof value === "number" ? String(value) : "";
  return /^-?Infinity$/.test(described) ? "is not a finite number" : "is not a number";
}
