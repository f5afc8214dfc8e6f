import type { BatteryPart, Network, Part } from "../model/network.ts";
import { isCharging } from "../model/part-roles.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import type { Bank } from "./network/topology/network-topology.ts";
import { batteryStrings, polesOf } from "./network/topology/parallel-strings.ts";
import { portsOf } from "./network/topology/ports.ts";

/** A source, and a string of batteries or a single battery of one, between whose poles it is connected while every switch is closed. */
export interface Charging {
  readonly source: Part;
  /** The voltage that it holds at its output, V; of modules without a controller, which hold none, that of their open circuit. */
  readonly outputV: number;
  readonly batteries: readonly BatteryPart[];
}

export function chargings(network: Network, banks: readonly Bank[]): readonly Charging[] {
  const { componentOf } = networkGraph(network);
  const keyOf = ({ positive, negative }: { readonly positive: number; readonly negative: number }) =>
    `${componentOf[positive]} ${componentOf[negative]}`;
  const between = new Map<string, (readonly BatteryPart[])[]>();
  const add = (key: string, batteries: readonly BatteryPart[]) => {
    const there = between.get(key);
    if (there) there.push(batteries);
    else between.set(key, [batteries]);
  };
  for (const string of batteryStrings(network, banks)) {
    add(keyOf(polesOf(string)), string.batteries);
    // Two chargers may serve the halves of a bank.
    if (string.batteries.length > 1)
      for (const battery of string.batteries) add(keyOf(battery.terminals), [battery]);
  }
  return network.parts.flatMap((part): Charging[] => {
    const outputV = outputVoltageOf(part);
    if (!isCharging(part) || outputV === undefined) return [];
    const port = portsOf(part).find(({ does }) => does === "feeds");
    const batteries = port ? (between.get(keyOf(port)) ?? []) : [];
    return batteries.map((string) => ({ source: part, outputV, batteries: string }));
  });
}

function outputVoltageOf(part: Part): number | undefined {
  if (part.kind === "solarArray") return part.openCircuitV * part.series;
  return "outputV" in part ? part.outputV : undefined;
}
