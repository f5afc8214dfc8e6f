import type { InverterPart, LoadPart, Network } from "../../../model/network.ts";
import { isConsumer, isStarterMotor } from "../../../model/part-roles.ts";
import { networkGraph, reachedFrom } from "./network-graph.ts";
import type { Bank } from "./network-topology.ts";
import { opensLine } from "./opens-line.ts";

/** The loads of a bank that a switch can disconnect from it, and those always connected. */
export interface Switched {
  /** Reached without passing a disconnect, in the order of the walk. */
  readonly always: readonly AlwaysOn[];
  /** Whether any load or inverter is reached past a disconnect or a breaker. */
  readonly anySwitched: boolean;
}

export interface AlwaysOn {
  readonly part: LoadPart | InverterPart;
  /** The conductor that leaves the bank towards it. */
  readonly leavesBy: number;
}

/**
 * Walks from the positive terminals of the bank and of each battery in it: a load may draw from a part of a string. A
 * disconnect stops the walk, and so does a breaker, which also opens by hand.
 * A part with only its terminals known stops it as well: it may be a contactor.
 */
export function switchedBehind(network: Network, bank: Bank): Switched {
  const graph = networkGraph(network);
  const positives = bank.batteries.flatMap((index) => {
    const part = network.parts[index];
    return part?.kind === "battery" ? [part.terminals.positive] : [];
  });
  const starts = [...new Set([...bank.positives, ...positives])];
  const always = reachedFrom(graph, starts, (edge) => !opensLine(network, edge));
  const all = reachedFrom(graph, starts);
  const leavesBy = firstConductors(always);
  const found: AlwaysOn[] = [];
  let anySwitched = false;
  for (const [terminal] of all) {
    const { part: index, name } = network.terminals[terminal] ?? {};
    const part = index === undefined ? undefined : network.parts[index];
    // An engine is switched off by other means, and its starter motor carries no current then.
    if (name !== "positive" || !part || !isConsumer(part) || isStarterMotor(part)) continue;
    const conductor = leavesBy.get(terminal);
    if (conductor === undefined) anySwitched = true;
    else found.push({ part, leavesBy: conductor });
  }
  return { always: found, anySwitched };
}

/** By terminal: the first conductor on the path to it. In the walk, a step's start comes before its end. */
function firstConductors(reached: ReturnType<typeof reachedFrom>): ReadonlyMap<number, number> {
  const first = new Map<number, number>();
  for (const [terminal, step] of reached) {
    if (!step) first.set(terminal, -1);
    else {
      const before = first.get(step.from) ?? -1;
      first.set(terminal, before >= 0 ? before : step.edge.conductor);
    }
  }
  return first;
}
