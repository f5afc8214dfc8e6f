import type { BatteryPart, Network } from "../../model/network.ts";
import type { Bank } from "../network/topology/network-topology.ts";

/** Currents and voltages by part: those of batteries are enough. */
interface Solution {
  readonly partA: ArrayLike<number>;
  readonly partV: ArrayLike<number>;
}

export function batteriesOf({ parts }: Network, { batteries }: Bank): readonly BatteryPart[] {
  return batteries.map((index) => parts[index] as BatteryPart);
}

/** Power that the batteries give at their terminals, W. */
export function powerFrom({ partA, partV }: Solution, batteries: readonly number[]): number {
  return batteries.reduce((sum, battery) => sum + partA[battery]! * (partV[battery] || 0), 0);
}

/** Voltage of a bank at its poles, V; its nominal voltage if there is no solution. */
export function voltageOf(network: Network, { partV }: Solution, bank: Bank | undefined): number {
  const string = bank?.strings[0] ?? [];
  const voltage = string.reduce((sum, battery) => sum + (partV[battery] || 0), 0);
  return (
    voltage || batteriesOf(network, bank ?? emptyBank).reduce((sum, { systemV }) => sum + systemV, 0) || 12
  );
}

const emptyBank: Bank = { batteries: [], strings: [], positives: [], negatives: [] };
