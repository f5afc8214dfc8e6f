import type { Network, Part } from "../../model/network.ts";
import { givesEnergy, isCharging, passesCurrentOn } from "../../model/part-roles.ts";

/**
 * By part index: the number of conductors from the nearest battery; if no battery reaches the part, from the nearest other
 * source; 0 if no source does. It orders parts from left to right if their kinds do not decide.
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
        if (!endsTheWay(parts[next]!)) queue.push(next);
      }
    }
  };
  const unreached = (wanted: (part: Part) => boolean) =>
    parts.filter((part) => hops[part.index] === -1 && wanted(part)).map(({ index }) => index);
  spread(unreached(isStorage));
  spread(unreached(givesEnergy));
  return hops.map((one) => Math.max(one, 0));
}

/** A source that does not charge others is charged by them: a battery. */
function isStorage(part: Part): boolean {
  return givesEnergy(part) && !isCharging(part);
}

function endsTheWay(part: Part): boolean {
  return !passesCurrentOn(part) && !isStorage(part);
}
