import type { Network } from "../../model/network.ts";

/**
 * By part index: over how many conductors it is reached from the nearest battery; where no battery reaches it, from the nearest
 * other source, and 0 where nothing does. It orders parts from left to right where their kinds do not.
 */
export function hopsFromSources({ parts, conductors, terminals }: Network): number[] {
  const neighbours: number[][] = parts.map(() => []);
  for (const { from, to } of conductors) {
    const [a, b] = [terminals[from]!.part, terminals[to]!.part];
    neighbours[a]!.push(b);
    neighbours[b]!.push(a);
  }
  const hops = new Array<number>(parts.length).fill(-1);
  const spread = (from: readonly number[]) => {
    for (const part of from) hops[part] = 0;
    const queue = [...from];
    for (let at = 0; at < queue.length; at++) {
      for (const next of neighbours[queue[at]!]!) {
        // A current that reaches a load or a charger does not go on through it.
        if (hops[next] !== -1) continue;
        hops[next] = hops[queue[at]!]! + 1;
        if (!endsTheWay.has(parts[next]!.kind)) queue.push(next);
      }
    }
  };
  const of = (kinds: ReadonlySet<string>) =>
    parts.filter(({ kind, index }) => kinds.has(kind) && hops[index] === -1).map(({ index }) => index);
  spread(of(new Set(["battery"])));
  spread(of(new Set(["solarArray", "alternator", "shoreCharger", "solarController", "dcDcCharger"])));
  return hops.map((one) => Math.max(one, 0));
}

const endsTheWay: ReadonlySet<string> = new Set([
  "load",
  "inverter",
  "dcDcCharger",
  "solarController",
  "solarArray",
  "alternator",
  "shoreCharger",
]);
