import { breadthFirst } from "../../analysis/network/topology/breadth-first.ts";
import { across, graphOf } from "../../analysis/network/topology/spanning-forest.ts";
import type { Network, Part } from "../../model/network.ts";
import { givesEnergy, isCharging, isDevice, passesCurrentOn } from "../../model/part-roles.ts";

/**
 * By part index: the number of conductors from the nearest battery, and of parts that are mounted on another; if no battery reaches the part, from the nearest other
 * source; 0 if no source does. It orders parts from left to right if their kinds do not decide.
 */
export function hopsFromSources({ parts, conductors, terminals }: Network): number[] {
  const partAt = (terminal: number) => terminals[terminal]!.part;
  const mounted = parts.flatMap((part) =>
    isDevice(part) && part.mountedOn !== undefined ? [{ from: part.mountedOn, to: part.terminals.line }] : [],
  );
  const edges = [...conductors, ...mounted];
  const graph = graphOf(
    parts.length,
    Int32Array.from(edges, ({ from }) => partAt(from)),
    Int32Array.from(edges, ({ to }) => partAt(to)),
  );
  const hops = new Array<number>(parts.length).fill(-1);
  const spread = (isStart: (part: Part) => boolean) => {
    const starts = new Set(parts.filter((part) => hops[part.index] === -1 && isStart(part)));
    const indices = [...starts].map(({ index }) => index);
    const { order, cameBy } = breadthFirst(graph, indices, (conductor, from) => {
      // A current that reaches a load or a charger does not go on through it.
      const goesOn = starts.has(parts[from]!) || !endsTheWay(parts[from]!);
      return goesOn && hops[across(graph, conductor, from)] === -1;
    });
    for (const part of order) {
      hops[part] = cameBy[part] === -1 ? 0 : hops[across(graph, cameBy[part]!, part)]! + 1;
    }
  };
  spread(isStorage);
  spread(givesEnergy);
  return hops.map((one) => Math.max(one, 0));
}

/** A source that does not charge others is charged by them: a battery. */
function isStorage(part: Part): boolean {
  return givesEnergy(part) && !isCharging(part);
}

function endsTheWay(part: Part): boolean {
  return !passesCurrentOn(part) && !isStorage(part);
}
