import type { BatteryPart, Network } from "../model/network.ts";
import { isCharging } from "../model/part-roles.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import type { Bank } from "./network/topology/network-topology.ts";
import { batteryStrings } from "./network/topology/parallel-strings.ts";
import { type Port, portsOf } from "./network/topology/ports.ts";

/** A string of batteries, and the devices that draw from a part of it, or the chargers that charge a part of it alone. */
export interface TappedString {
  readonly does: "draws" | "feeds";
  readonly ports: readonly Port[];
  /** Nominal voltage between the terminals of the first of them, V. */
  readonly partV: number;
  readonly wholeV: number;
}

/**
 * The strings that have a device with a terminal between two of their batteries. Chargers count if they leave out some battery of the
 * string: one for each battery keeps them alike. So does an equaliser, a converter that takes from the whole of the string.
 */
export function tappedStrings(network: Network, banks: readonly Bank[]): readonly TappedString[] {
  const { componentOf } = networkGraph(network);
  const all = network.parts.flatMap(portsOf).filter(({ does, part }) => does === "draws" || isCharging(part));
  const isReported = new Set<Port>();
  return batteryStrings(network, banks).flatMap(({ batteries }): TappedString[] => {
    if (batteries.length < 2) return [];
    // By component: its nominal voltage above the lower end of the string.
    const heights = new Map<number | undefined, number>();
    let wholeV = 0;
    heights.set(componentOf[batteries[0]!.terminals.negative], 0);
    for (const { terminals, systemV } of batteries) {
      wholeV += systemV;
      heights.set(componentOf[terminals.positive], wholeV);
    }
    const ofPort = ({ positive, negative }: Port) => {
      const [above, below] = [heights.get(componentOf[positive]), heights.get(componentOf[negative])];
      return above === undefined || below === undefined ? wholeV : Math.abs(above - below);
    };
    // Between two terminals of one piece of metal is no part of a bank: it is shorted.
    const isOnPart = (port: Port) => ofPort(port) > 0 && ofPort(port) < wholeV * nearlyAll;
    const isWithin = ({ positive, negative }: Port, { terminals }: BatteryPart) => {
      const ends = [positive, negative].map((terminal) => heights.get(componentOf[terminal]));
      const of = [terminals.positive, terminals.negative].map((terminal) =>
        heights.get(componentOf[terminal]),
      );
      const [low, high] = [Math.min(...ends.map(Number)), Math.max(...ends.map(Number))];
      return of.every((height) => height !== undefined && low <= height && height <= high);
    };
    const isEqualiser = ({ part, does }: Port) =>
      does === "feeds" &&
      portsOf(part).some((port) => port.does === "draws" && ofPort(port) === wholeV && isOnString(port));
    const isOnString = ({ positive, negative }: Port) =>
      heights.has(componentOf[positive]) && heights.has(componentOf[negative]);
    const onPart = all.filter((port) => !isReported.has(port) && isOnPart(port) && !isEqualiser(port));
    const charging = onPart.filter(({ does }) => does === "feeds");
    const isEven = batteries.every((battery) => charging.some((port) => isWithin(port, battery)));
    const groups = [onPart.filter(({ does }) => does === "draws"), isEven ? [] : charging];
    return groups.flatMap((ports): TappedString[] => {
      for (const port of ports) isReported.add(port);
      const [first] = ports;
      return first ? [{ does: first.does, ports, partV: ofPort(first), wholeV }] : [];
    });
  });
}

const nearlyAll = 1 - 1e-9;
