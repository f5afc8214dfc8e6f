/** True for a value that plain data cannot carry, as the sandbox describes it. */
export function isNonPlain(value: unknown): value is NonPlainValue {
  return isObject(value) && typeof value.$strange === "string";
}

/** True for an object with properties: neither a list nor null. */
export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/**
 * A value that plain data cannot carry (NaN, a function, a class instance …), as it arrives from the sandbox.
 * `$strange` describes it for people: "NaN", "a function", "an object of class Date".
 */
export interface NonPlainValue {
  readonly $strange: string;
}

/**
 * Path from a DSL function's argument to a value in it: `["gauge"]`, `["protect", "ratingA"]`,
 * `["accept", "conductor/ampacity"]`; `[]` is the argument itself.
 */
export type PropertyPath = readonly string[];
