import type { RuleId } from "../../plan/rule-id.ts";
import type { Citation } from "../../standards/citation.ts";
import type { BuildValues } from "../build-properties.ts";
import type { Property } from "../property-table.ts";
import type { Phrase } from "./phrase.ts";

/**
 * A property of a kind of part: its values, its presence in the part of the model, and its place in lists.
 * - `required`: the plan must state it, and the part has it.
 * - `optional`: the part has it if the plan states it.
 * - `defaulted`: the part always has it.
 * - `needed input`, `input`: a function of the descriptor makes figures of it; the first must be stated.
 */
export interface PartProperty<Value = unknown, P extends Presence = Presence>
  extends Property<Value>,
    PropertyDetails {
  readonly presence: P;
  /** The value of a part whose plan does not state it; undefined if there is none for that part either. */
  taken?(context: DefaultContext): Value | undefined;
}

type Presence = "required" | "optional" | "defaulted" | "needed input" | "input";

/** How lists, ratings and rules show a property. Without `words`, only the descriptor itself shows it. */
export interface PropertyDetails {
  /** Its noun: "output voltage". Lists put its amount behind it. */
  readonly words?: string;
  /** True: its amount or text is in the short summary of the part: "12 V". A text is put behind the amount: "12 positions". */
  readonly summary?: true | string;
  /** The same, for lists from which a part is bought. Parts that differ in it are different things to buy, as with `summary`. */
  readonly details?: true | string;
  /** The source of its default. With a source, or if `assumed` is given, a default is listed as an assumption. */
  readonly source?: Citation;
  readonly assumed?: Assumed;
  /** The current that it limits. */
  readonly limitOf?: CurrentLimit;
  /** The subject that is not judged if it is missing: "Number of studs of a bus bar". */
  readonly silentWithout?: string;
}

/** The text of a default in the list of assumptions, if its noun and amount are not enough. */
interface Assumed {
  /** Instead of `words`. */
  readonly words?: string;
  readonly as?: Phrase;
  /** Behind the amount: " of its rating". */
  readonly behind?: string;
}

export interface CurrentLimit {
  readonly current: "gives" | "takes" | "carries";
  /** The name of the limit in front of its amount: "may give", "rating". */
  readonly words: string;
  /** The device holds it by itself: no current of the network exceeds it. */
  readonly heldByItself?: true;
  /** The property with the percentage that the part may deliver for hours. */
  readonly forHours?: string;
  /** The id of the rule that judges it. Left out: `part/rating` does, unless the device holds it by itself. */
  readonly judgedBy?: RuleId;
}

/** The values that a default may depend on. */
export interface DefaultContext {
  readonly build: BuildValues;
  /** The voltage of the build, or the usual one, V. */
  readonly buildV: number;
  /** Nominal voltage between two of its terminals, V: "positive" and "negative", unless others are given. */
  nominalV(positive?: string, negative?: string): number;
  /** The lowest voltage at which devices draw current between two of its terminals, as the batteries there end, V. */
  lowestV(positive?: string, negative?: string): number;
  /** Nominal voltage of the island that one of its terminals is in, V. */
  islandV(terminal: string): number;
  /** A required amount of the same part. */
  amount(property: string): number;
  /** A valid value that the plan states for the same part; undefined if it states none. */
  stated(property: string): unknown;
}

type Details<Value> = PropertyDetails & { taken?(context: DefaultContext): NoInfer<Value> | undefined };

export function required<Value>(
  property: Property<Value>,
  details: PropertyDetails = {},
): PartProperty<Value, "required"> {
  return { ...property, ...details, presence: "required" };
}

export function optional<Value>(
  property: Property<Value>,
  details: Details<Value> = {},
): PartProperty<Value, "optional"> {
  return { ...property, ...details, presence: "optional" };
}

/** `taken`: the default, or a function for one that depends on the voltage of the system or on other values. */
export function defaulted<Value>(
  property: Property<Value>,
  taken: NoInfer<Value> | ((context: DefaultContext) => NoInfer<Value>),
  details: PropertyDetails = {},
): PartProperty<Value, "defaulted"> {
  const fixed = (typeof taken === "function" ? taken : () => taken) as (context: DefaultContext) => Value;
  return { ...property, ...details, presence: "defaulted", taken: fixed };
}

export function input<Value>(
  property: Property<Value>,
  details: PropertyDetails = {},
): PartProperty<Value, "input"> {
  return { ...property, ...details, presence: "input" };
}

export function neededInput<Value>(
  property: Property<Value>,
  details: PropertyDetails = {},
): PartProperty<Value, "needed input"> {
  return { ...property, ...details, presence: "needed input" };
}

export type PartProperties = Readonly<Record<string, PartProperty>>;

type ValueOf<One> = One extends Property<infer Value> ? Value : never;

/** The values of a sound part as its plan states them, with defaults. */
export type GivenValues<P extends PartProperties> = {
  readonly [Name in keyof P]:
    | ValueOf<P[Name]>
    | (P[Name]["presence"] extends "optional" | "input" ? undefined : never);
};

/** The properties that a part of the model has. */
export type KeptValues<P extends PartProperties> = {
  readonly [Name in keyof P as P[Name]["presence"] extends "required" | "defaulted" ? Name : never]: ValueOf<
    P[Name]
  >;
} & {
  readonly [Name in keyof P as P[Name]["presence"] extends "optional" ? Name : never]?: ValueOf<P[Name]>;
};
