import { isStarterMotor } from "../../../model/part-roles.ts";
import { breadthFirst, pathTo } from "./breadth-first.ts";
import type { NetworkGraph } from "./network-graph.ts";

/**
 * The conductors that are the main feed of an engine's starter motor, by index: those of the shortest path between a starter motor
 * and each battery that is reached past no other battery. 33 CFR 183.455(e) and 183.460(a) ask for no fuse in them.
 *
 * A conductor that only joins the feed, of an alternator or to a house bank, is none of them.
 */
export function crankingFeeds({ network, terminals }: NetworkGraph): ReadonlySet<number> {
  const starters = network.parts.filter(isStarterMotor).map((part) => part.terminals.positive);
  if (starters.length === 0) return new Set();
  const batteries = network.parts.flatMap((part) =>
    part.kind === "battery" ? [part.terminals.positive] : [],
  );
  const atBattery = new Set(batteries);
  // Several engines may share a battery, and several batteries an engine: each finds the nearest of the others.
  const fromStarters = breadthFirst(terminals, starters, (_, from) => !atBattery.has(from));
  const fromBatteries = breadthFirst(terminals, batteries);
  const edges = [
    ...batteries.flatMap((battery) => pathTo(terminals, fromStarters, battery)),
    ...starters.flatMap((starter) => pathTo(terminals, fromBatteries, starter)),
  ];
  return new Set(edges.filter((edge) => edge < network.conductors.length));
}
