import type { BatteryPart, Network } from "../model/network.ts";
import type { Bank, NetworkTopology } from "./network/topology/network-topology.ts";

/** The bank that a battery belongs to. */
export function bankOf({ banks }: NetworkTopology, battery: number): Bank | undefined {
  return banks.find(({ batteries }) => batteries.includes(battery));
}

/** Nominal voltage of a bank, V: that of one of its strings. */
export function nominalOfBank({ parts }: Network, { strings: [first = []] }: Bank): number {
  return first.reduce((sum, battery) => sum + (parts[battery] as BatteryPart).nominalV, 0);
}
