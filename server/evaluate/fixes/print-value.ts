import { isNamedInPlan, type Settable } from "../../../library/rules/finding.ts";

export type Quote = '"' | "'";

/** A value as a builder would write it in TypeScript. */
export function printValue(value: Settable, quote: Quote): string {
  if (typeof value === "string") return quoted(value, quote);
  if (typeof value !== "object") return String(value);
  if (isNamedInPlan(value)) return value.inText;
  const properties = Object.entries(value).map(
    ([name, inner]) => `${printName(name, quote)}: ${printValue(inner, quote)}`,
  );
  return properties.length === 0 ? "{}" : `{ ${properties.join(", ")} }`;
}

/** A property's name; rule ids and similar names need quotes. */
export function printName(name: string, quote: Quote): string {
  return /^[A-Za-z_$][\w$]*$/.test(name) ? name : quoted(name, quote);
}

function quoted(text: string, quote: Quote): string {
  const inner = JSON.stringify(text).slice(1, -1);
  return quote === '"' ? `"${inner}"` : `'${inner.replaceAll('\\"', '"').replaceAll("'", "\\'")}'`;
}
