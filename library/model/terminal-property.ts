import * as z from "zod";
import { isObject } from "./plain-values.ts";
import { notAList } from "./property.ts";
import type { Property } from "./property-table.ts";

/**
 * How a record refers to a terminal of a part: `from: house.positive`. `part` counts all DSL calls of the plan from 0, and is
 * therefore the index of the part's record.
 */
export interface WrittenTerminal {
  readonly kind: "terminal";
  readonly part: number;
  /** The DSL function that made the part. */
  readonly of: string;
  readonly terminal: string;
}

/** How a record refers to a whole part or circuit: `off: [fridge]`. It has more properties than these. */
export interface WrittenReference {
  /** The DSL function that made it. */
  readonly kind: string;
  readonly id: number;
}

/**
 * A terminal of a part. Only its shape is checked here. Code with the whole plan checks that the part exists and has such a
 * terminal.
 */
export const terminal: Property<WrittenTerminal> = {
  schema: z.custom<WrittenTerminal>(isTerminal, { error: ({ input }) => notATerminal(input) }),
  allowed: "a terminal of a part of this plan, such as house.positive",
  affectsResults: true,
};

/** A list of terminals. */
export function terminals(what: string): Property<readonly WrittenTerminal[]> {
  return {
    schema: z.array(terminal.schema, { error: notAList }),
    allowed: `a list of ${what}, such as [selector.input1]`,
    affectsResults: true,
  };
}

/** A whole part. `what` describes it: "a part with a positive and a negative terminal". */
export function reference(what: string): Property<WrittenReference> {
  return { schema: referenceTo("a part"), allowed: what, affectsResults: true };
}

/** A list of whole parts or circuits. */
export function references(what: string): Property<readonly WrittenReference[]> {
  return {
    schema: z.array(referenceTo(`one of the ${what}`), { error: notAList }),
    allowed: `a list of ${what}, such as [pump, fridge]`,
    affectsResults: true,
  };
}

function referenceTo(what: string): z.ZodType<WrittenReference> {
  return z.custom<WrittenReference>(isReference, { error: ({ input }) => notAReference(input, what) });
}

function isTerminal(value: unknown): value is WrittenTerminal {
  return (
    isObject(value) &&
    value.kind === "terminal" &&
    isIndex(value.part) &&
    isName(value.of) &&
    typeof value.terminal === "string"
  );
}

function isReference(value: unknown): value is WrittenReference {
  return isObject(value) && isName(value.kind) && isIndex(value.id);
}

function notATerminal(value: unknown): string {
  return isReference(value) && !makesNoPart.test(value.kind)
    ? "is the whole part, not one of its terminals"
    : "is not a terminal of a part";
}

function notAReference(value: unknown, what: string): string {
  return isTerminal(value) ? "is one terminal, not the whole part" : `is not ${what}`;
}

/** Results of functions that make no part. Not read from the descriptors, which use these properties. */
const makesNoPart = /^(circuit|build|cable|scenario|period|surface|channel|compartment)$/;

/** Any name of a function: whether a part or circuit of that name has the number is checked with the whole plan. */
function isName(value: unknown): value is string {
  return typeof value === "string" && /^[A-Za-z]{1,40}$/.test(value);
}

function isIndex(value: unknown): boolean {
  return Number.isInteger(value) && (value as number) >= 0;
}
