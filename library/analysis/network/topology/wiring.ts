import type { Network } from "../../../model/network.ts";
import { workedOutOnce } from "../../worked-out-once.ts";
import { disjointSets } from "./disjoint-sets.ts";
import {
  type InternalConnection,
  internalConnectionsOf,
  type Source,
  sourcesOf,
} from "./internal-connections.ts";
import { type Graph, graphOf } from "./spanning-forest.ts";

/** A network as points and the conductors between them: the graph for all path searches. */
export interface Wiring {
  readonly network: Network;
  readonly sources: readonly Source[];
  readonly joins: readonly InternalConnection[];
  /** By terminal: its point. Terminals connected inside a part are one point, at any resistance between them. */
  readonly pointOf: Int32Array;
  /** Nodes are points, edges are conductors with the same index as in the network. */
  readonly graph: Graph;
  /** By point: all points that conductors connect to it have the same net. Nets are numbered from 0. */
  readonly netOf: Int32Array;
  readonly nets: number;
}

/** Cached for each network: topology, faults and some rules use it. */
export const wiringOf: (network: Network) => Wiring = workedOutOnce(workOut);

function workOut(network: Network): Wiring {
  const joins = internalConnectionsOf(network);
  const merged = disjointSets(network.terminals.length);
  for (const { a, b } of joins) merged.union(a, b);
  const points = numbered(network.terminals.length, merged.find);
  const from = Int32Array.from(network.conductors, (conductor) => points.of[conductor.from]!);
  const to = Int32Array.from(network.conductors, (conductor) => points.of[conductor.to]!);
  const wired = disjointSets(points.count);
  for (let conductor = 0; conductor < from.length; conductor++) wired.union(from[conductor]!, to[conductor]!);
  const nets = numbered(points.count, wired.find);
  return {
    network,
    sources: sourcesOf(network),
    joins,
    pointOf: points.of,
    graph: graphOf(points.count, from, to),
    netOf: nets.of,
    nets: nets.count,
  };
}

/** Numbers the sets from 0, in the order of their first elements. */
function numbered(count: number, find: (element: number) => number): { of: Int32Array; count: number } {
  const numberOf = new Int32Array(count).fill(-1);
  const of = new Int32Array(count);
  let sets = 0;
  for (let element = 0; element < count; element++) {
    const set = find(element);
    if (numberOf[set] === -1) numberOf[set] = sets++;
    of[element] = numberOf[set]!;
  }
  return { of, count: sets };
}
