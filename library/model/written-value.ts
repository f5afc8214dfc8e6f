import { cutTo, harmlessText } from "./display-name.ts";
import type { Strange } from "./record.ts";

/** A value of a plan as a person would write it, short enough for a message: `"12"`, `-4`, `NaN`, `an object`. */
export function writtenValue(value: unknown): string {
  if (typeof value === "string") return JSON.stringify(cutTo(40, harmlessText(value)));
  if (isStrange(value)) return cutTo(60, harmlessText(value.$strange));
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "an object";
  if (typeof value === "function") return "a function";
  return String(value);
}

/** What plain data could not carry, as the sandbox describes it. */
export function isStrange(value: unknown): value is Strange {
  return isObject(value) && typeof value.$strange === "string";
}

/** Something with properties: neither a list nor null. */
export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
