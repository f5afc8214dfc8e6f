import type { NonPlainValue } from "./record.ts";

/** True for a value that plain data cannot carry, as the sandbox describes it. */
export function isNonPlain(value: unknown): value is NonPlainValue {
  return isObject(value) && typeof value.$strange === "string";
}

/** True for an object with properties: neither a list nor null. */
export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
