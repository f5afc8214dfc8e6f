import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { Network } from "../../../model/network.ts";
import { isSwitch } from "../../../model/switch-positions.ts";
import type { NetworkGraph } from "./network-graph.ts";
import type { Bank } from "./network-topology.ts";
import type { NetPolarity } from "./polarity.ts";

/**
 * Batteries that work as one: a string in series, and strings in parallel. Only conductors, bus bars, shunts and the like
 * connect the upper and the lower ends of parallel strings. A disconnect between two batteries keeps them apart, so a switch
 * that lends the starter's battery to the house makes no bank of the two. A shorted battery is a bank of its own.
 */
export function banksOf(wiring: NetworkGraph, nets: readonly NetPolarity[]): Bank[] {
  const { network, componentOf } = wiring;
  const netAt = (terminal: number) => componentOf[terminal]!;
  const batteries = network.parts.flatMap((part) => (part.kind === "battery" ? [part] : []));
  const isMiddle = (terminal: number) => nets[netAt(terminal)] === "middle";
  const isSound = (terminal: number) => nets[netAt(terminal)] !== "both";

  const belongs = disjointSets(network.parts.length);
  const firstAt = new Map<string, number>();
  const gather = (key: string, part: number) => {
    const first = firstAt.get(key);
    if (first === undefined) firstAt.set(key, part);
    else belongs.union(first, part);
  };
  for (const { index, terminals } of batteries) {
    if (isMiddle(terminals.positive)) gather(`middle ${netAt(terminals.positive)}`, index);
    if (isMiddle(terminals.negative)) gather(`middle ${netAt(terminals.negative)}`, index);
  }
  const alwaysJoined = joinedWithoutDisconnects(wiring);
  const stringsBySet = strings(network, netAt, isMiddle);
  for (const string of stringsBySet) {
    const top = terminalsOf(network, string.at(-1)!).positive;
    const bottom = terminalsOf(network, string[0]!).negative;
    if (!isSound(top) || !isSound(bottom) || isMiddle(top) || isMiddle(bottom)) continue;
    gather(`ends ${alwaysJoined.find(top)} ${alwaysJoined.find(bottom)}`, string[0]!);
  }

  const banks = new Map<number, number[][]>();
  for (const string of stringsBySet) {
    const key = belongs.find(string[0]!);
    banks.set(key, [...(banks.get(key) ?? []), string]);
  }
  return [...banks.values()].map((members) => ({
    batteries: members.flat().sort((a, b) => a - b),
    strings: members,
    positives: members.map((string) => terminalsOf(network, string.at(-1)!).positive),
    negatives: members.map((string) => terminalsOf(network, string[0]!).negative),
  }));
}

function terminalsOf({ parts }: Network, battery: number) {
  return parts[battery]!.terminals as { positive: number; negative: number };
}

function joinedWithoutDisconnects({ network, joins }: NetworkGraph) {
  const joined = disjointSets(network.terminals.length);
  for (const { a, b } of joins) {
    if (!isSwitch(network.parts[network.terminals[a]!.part]!)) joined.union(a, b);
  }
  for (const { from, to } of network.conductors) joined.union(from, to);
  return joined;
}

/**
 * From the lowest battery of each string upwards. If strings are also connected in the middle, a battery is followed by the one
 * that a conductor connects to it, else by the first that is left.
 */
function strings(
  network: Network,
  netAt: (terminal: number) => number,
  isMiddle: (terminal: number) => boolean,
): number[][] {
  const batteries = network.parts.flatMap((part) => (part.kind === "battery" ? [part] : []));
  const waiting = new Map<number, Set<number>>();
  for (const { index, terminals } of batteries) {
    if (!isMiddle(terminals.negative)) continue;
    const net = netAt(terminals.negative);
    const there = waiting.get(net);
    if (there) there.add(index);
    else waiting.set(net, new Set([index]));
  }
  const nextByConductor = new Map<number, number>();
  for (const { from, to } of network.conductors) {
    for (const [low, high] of [
      [from, to],
      [to, from],
    ] as const) {
      const [lower, upper] = [network.terminals[low]!, network.terminals[high]!];
      if (lower.name !== "positive" || upper.name !== "negative") continue;
      if (network.parts[upper.part]!.kind === "battery") nextByConductor.set(lower.part, upper.part);
    }
  }
  const taken = new Set<number>();
  const follow = (lowest: number): number[] => {
    const string: number[] = [];
    for (let battery: number | undefined = lowest; battery !== undefined; ) {
      taken.add(battery);
      string.push(battery);
      const above: Set<number> | undefined = waiting.get(netAt(terminalsOf(network, battery).positive));
      above?.delete(battery);
      const wired: number | undefined = nextByConductor.get(battery);
      const next: number | undefined =
        wired !== undefined && above?.has(wired) ? wired : above?.values().next().value;
      if (next !== undefined) above?.delete(next);
      battery = next;
    }
    return string;
  };
  const found = batteries.flatMap(({ index, terminals }) =>
    isMiddle(terminals.negative) ? [] : [follow(index)],
  );
  // Above a point where two strings become one, some are left over: each is the lowest of a string of its own.
  for (const { index } of batteries) if (!taken.has(index)) found.push(follow(index));
  return found;
}
