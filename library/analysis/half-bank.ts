import type { Network } from "../model/network.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import type { Bank } from "./network/topology/network-topology.ts";
import { batteryStrings } from "./network/topology/parallel-strings.ts";
import { type Port, portsOf } from "./network/topology/ports.ts";

/** A string of batteries, and the devices that draw from a part of it. */
export interface TappedString {
  readonly ports: readonly Port[];
  /** Nominal voltage between the terminals of the first of them, V. */
  readonly partV: number;
  readonly wholeV: number;
}

/** The strings that have a device with a terminal between two of their batteries. */
export function tappedStrings(network: Network, banks: readonly Bank[]): readonly TappedString[] {
  const { componentOf } = networkGraph(network);
  const drawing = network.parts.flatMap(portsOf).filter(({ does }) => does === "draws");
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
    const ports = drawing.filter((port) => !isReported.has(port) && isOnPart(port));
    for (const port of ports) isReported.add(port);
    return ports.length === 0 ? [] : [{ ports, partV: ofPort(ports[0]!), wholeV }];
  });
}

const nearlyAll = 1 - 1e-9;
