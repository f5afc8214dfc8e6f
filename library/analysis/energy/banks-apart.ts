import { disjointSets } from "../../model/disjoint-sets.ts";
import { internalConnections } from "../../model/internal-connections.ts";
import type { Network, Part } from "../../model/network.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { isSwitch } from "../../model/switch-positions.ts";
import { graphInState } from "../network/topology/network-graph.ts";
import type { Bank } from "../network/topology/network-topology.ts";

/** The positions of switches in which every bank is by itself, and everything else is connected. */
export interface SwitchesApart {
  /** Indices of parts: switches that would join two banks. */
  readonly open: ReadonlySet<number>;
  /** By part index: the inputs of a selector switch that may be connected without joining two banks. */
  readonly selected: ReadonlyMap<number, readonly string[]>;
}

/**
 * A charging relay or a selector switch that is closed joins the starter battery with the house bank. Each has loads of its own for the
 * balance: switches are closed one after the other, disconnects first, unless that joins two banks.
 */
export function switchesApart(network: Network, banks: readonly Bank[]): SwitchesApart {
  const { parts, terminals } = network;
  const switches = parts.filter(isSwitch);
  const open = new Set<number>();
  const selected = new Map<number, readonly string[]>();
  if (banks.length < 2 || switches.length === 0) return { open, selected };
  const { componentOf, components } = graphInState(network, (part) => ({ closed: !isSwitch(part) }));
  const sets = disjointSets(components);
  const bankIn = new Map<number, number>();
  banks.forEach(({ positives }, bank) => {
    for (const terminal of positives) bankIn.set(sets.find(componentOf[terminal]!), bank);
  });
  /** False: it would join two banks. */
  const close = (a: number, b: number): boolean => {
    const [one, other] = [sets.find(componentOf[a]!), sets.find(componentOf[b]!)];
    if (one === other) return true;
    const [bank, otherBank] = [bankIn.get(one), bankIn.get(other)];
    if (bank !== undefined && otherBank !== undefined && bank !== otherBank) return false;
    const joined = sets.union(one, other);
    const there = bank ?? otherBank;
    if (there !== undefined) bankIn.set(joined, there);
    return true;
  };
  for (const part of [...switches].sort(byHandFirst)) {
    const joins = internalConnections(part, { closed: true });
    const isKept = joins.map(({ between: [a, b] }) => close(a, b));
    if (isKept.every(Boolean)) continue;
    if (descriptorOf(part).positions?.some((position) => position.selected))
      selected.set(
        part.index,
        joins.flatMap(({ between }, index) =>
          isKept[index] ? between.map((terminal) => terminals[terminal]!.name).filter(isInputOf(part)) : [],
        ),
      );
    else open.add(part.index);
  }
  return { open, selected };
}

function byHandFirst(one: Part, other: Part): number {
  return rank(one) - rank(other) || one.index - other.index;
}

/** Disconnects, selector switches, relays. */
function rank(part: Part): number {
  if (descriptorOf(part).opens === "by control") return 2;
  return descriptorOf(part).positions ? 1 : 0;
}

function isInputOf(part: Part): (terminal: string) => boolean {
  const inputs = descriptorOf(part).positions?.flatMap(({ selected = [] }) => selected) ?? [];
  return (terminal) => inputs.includes(terminal);
}
