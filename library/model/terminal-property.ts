import * as z from "zod";
import { isWord } from "./describe-value.ts";
import { isObject } from "./plain-values.ts";
import { notAList, type Property } from "./property.ts";
import type { WrittenReference, WrittenTerminal } from "./record.ts";
import { isPartWord } from "./terminals.ts";

/**
 * A terminal of a part. Only its shape is checked here. Code with the whole plan checks that the part exists and has such a
 * terminal.
 */
export const terminal: Property<WrittenTerminal> = {
  schema: z.custom<WrittenTerminal>(isTerminal, { error: ({ input }) => notATerminal(input) }),
  allowed: "a terminal of a part of this plan, such as house.positive",
  affectsResults: true,
};

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
    isWord(value.of) &&
    typeof value.terminal === "string"
  );
}

function isReference(value: unknown): value is WrittenReference {
  return isObject(value) && isWord(value.kind) && isIndex(value.id);
}

function notATerminal(value: unknown): string {
  return isReference(value) && isPartWord(value.kind)
    ? "is the whole part, not one of its terminals"
    : "is not a terminal of a part";
}

function notAReference(value: unknown, what: string): string {
  return isTerminal(value) ? "is one terminal, not the whole part" : `is not ${what}`;
}

function isIndex(value: unknown): boolean {
  return Number.isInteger(value) && (value as number) >= 0;
}
