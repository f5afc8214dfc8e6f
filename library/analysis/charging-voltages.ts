import { conductorWith, type Network, type ProtectiveDevice } from "../model/network.ts";
import { isDevice } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { networkGraph } from "./network/topology/network-graph.ts";

/**
 * By record of a conductor or of a device of its own: the greatest output voltage of the chargers that are connected to it, V. A
 * record without an entry is connected to none.
 */
export const chargingVoltages: (network: Network) => ReadonlyMap<number, number> = workedOutOnce(
  (network) => {
    const { sources, componentOf } = networkGraph(network);
    const ofComponent = new Map<number, number>();
    for (const { part: index, positive } of sources) {
      const part = network.parts[index]!;
      if (!("outputV" in part)) continue;
      const component = componentOf[positive]!;
      ofComponent.set(component, Math.max(ofComponent.get(component) ?? 0, part.outputV));
    }
    const found = new Map<number, number>();
    const enter = (record: number, terminal: number) => {
      const voltageV = ofComponent.get(componentOf[terminal]!);
      if (voltageV !== undefined) found.set(record, voltageV);
    };
    for (const { record, role, from } of network.conductors) if (role !== "return") enter(record, from);
    for (const part of network.parts) if (isDevice(part)) enter(part.record, part.terminals.line);
    return found;
  },
);

/** The greatest direct voltage that a device may have to interrupt, V: the nominal one of its circuit, or that of a charger on it. */
export function greatestVoltage(network: Network, device: ProtectiveDevice): number {
  const { place } = device;
  const part = place.at === "part" ? network.parts[place.part] : undefined;
  const conductor = conductorWith(network, device);
  const nominalV = conductor?.run.systemV ?? (part && isDevice(part) ? part.systemV : 0);
  const record = conductor?.record ?? part?.record ?? -1;
  return Math.max(nominalV, chargingVoltages(network).get(record) ?? 0);
}
