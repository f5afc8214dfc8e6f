import type { Network } from "../../../model/network.ts";

/**
 * Whether two networks differ in nothing but what loads draw: what hangs together, what protects it and what a short draws is
 * then the same. Terminals, parts and conductors are compared in their order, for results are told by it; scenarios have no
 * say. Anything that is not known to make no difference makes one: names too, and where a figure comes from.
 */
export function hasSameTopology(one: Network, other: Network): boolean {
  return (
    isSame(one.terminals, other.terminals, nothing) &&
    isSame(one.parts, other.parts, drawn) &&
    isSame(one.conductors, other.conductors, drawn)
  );
}

/** Of a load: what it draws. Of a run: what the plan states that flows in it. */
const drawn: ReadonlySet<string> = new Set(["draws", "loadA", "loadW", "loadAtV"]);
const nothing: ReadonlySet<string> = new Set();

/** Of plain data, but for the properties of these names. */
function isSame(one: unknown, other: unknown, but: ReadonlySet<string>): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  if (Array.isArray(one) && one.length !== (other as readonly unknown[]).length) return false;
  const [left, right] = [one as Record<string, unknown>, other as Record<string, unknown>];
  for (const name in left) if (!but.has(name) && !isSame(left[name], right[name], but)) return false;
  for (const name in right) if (!(name in left) && !but.has(name)) return false;
  return true;
}
