import type { BatteryPart, Network } from "../../../model/network.ts";
import { networkGraph } from "./network-graph.ts";
import type { Bank } from "./network-topology.ts";

/** Batteries in series, from the lowest upwards, as a part of a bank. */
export interface BatteryString {
  readonly batteries: readonly BatteryPart[];
  /** Index in the banks of the network. */
  readonly bank: number;
}

/** Every string of batteries. */
export function batteryStrings({ parts }: Network, banks: readonly Bank[]): readonly BatteryString[] {
  return banks.flatMap(({ strings }, bank) =>
    strings.map((string) => ({
      batteries: string.flatMap((index) => {
        const part = parts[index];
        return part?.kind === "battery" ? [part] : [];
      }),
      bank,
    })),
  );
}

/** The terminals of a string as a whole. */
export function polesOf({ batteries }: BatteryString): {
  readonly positive: number;
  readonly negative: number;
} {
  return {
    positive: batteries.at(-1)!.terminals.positive,
    negative: batteries[0]!.terminals.negative,
  };
}

/**
 * The strings whose upper and lower ends are connected, at least two in each group. Every switch and relay counts as closed: strings
 * of one bank are always connected, those of different banks while a switch is closed.
 */
export function parallelStrings(network: Network, banks: readonly Bank[]): readonly BatteryString[][] {
  const { componentOf } = networkGraph(network);
  const groups = new Map<string, BatteryString[]>();
  for (const string of batteryStrings(network, banks)) {
    const { positive, negative } = polesOf(string);
    const key = `${componentOf[positive]} ${componentOf[negative]}`;
    const there = groups.get(key);
    if (there) there.push(string);
    else groups.set(key, [string]);
  }
  return [...groups.values()].filter(({ length }) => length > 1);
}
