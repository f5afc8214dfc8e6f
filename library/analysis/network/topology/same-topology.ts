import type { Network } from "../../../model/network.ts";
import { judgedPositions } from "../../../model/switch-positions.ts";

/**
 * True if two networks differ only in load values; topology, protection and fault currents are then identical. Terminals, parts
 * and conductors are compared in their order, because results refer to it; of scenarios only the positions of switches count. Any difference that is
 * not known to be harmless counts: names too, and the source of a figure.
 */
export function hasSameTopology(one: Network, other: Network): boolean {
  return (
    isSame(one.terminals, other.terminals, nothing) &&
    isSame(one.parts, other.parts, drawn) &&
    isSame(one.conductors, other.conductors, drawn) &&
    isSame([...judgedPositions(one).keys()], [...judgedPositions(other).keys()], nothing)
  );
}

/** For a load: its draw, and its hours. For a run: the current that the plan states for it. */
const drawn: ReadonlySet<string> = new Set([
  ...["draws", "use", "loadA", "loadW", "loadAtV", "lowVoltageA", "estimate"],
]);
const nothing: ReadonlySet<string> = new Set();

/** Compares plain data, except the properties of these names. */
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
