import { conductorWith, type Network, type ProtectiveDevice } from "../model/network.ts";
import { isDevice } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import { coldStringOf } from "./solar-cold-voltage.ts";
import { solarWiringOf } from "./solar-wiring.ts";

/** The greatest voltage of the sources that are connected to a place, V, and their kind. */
interface SourceVoltage {
  readonly voltageV: number;
  /** Modules: in open circuit on the coldest day, with the whole string in series; at 25 °C if that day is not stated. */
  readonly of: "charger" | "modules";
}

/**
 * By record of a conductor or of a device of its own: the greatest output voltage of the chargers that are connected to it, or that of
 * solar modules in open circuit. A record without an entry is connected to none.
 */
export const sourceVoltages: (network: Network) => ReadonlyMap<number, SourceVoltage> = workedOutOnce(
  (network) => {
    const { sources, componentOf } = networkGraph(network);
    const ofComponent = new Map<number, SourceVoltage>();
    const raise = (component: number, voltage: SourceVoltage) => {
      if (voltage.voltageV > (ofComponent.get(component)?.voltageV ?? 0)) ofComponent.set(component, voltage);
    };
    for (const { part: index, positive } of sources) {
      const part = network.parts[index]!;
      if ("outputV" in part) raise(componentOf[positive]!, { voltageV: part.outputV, of: "charger" });
    }
    for (const { array, string, controllers } of solarWiringOf(network)) {
      // Modules that are straight on a bank have its voltage.
      if (controllers.length === 0) continue;
      const { coldV } = coldStringOf(string);
      raise(componentOf[array.terminals.positive]!, { voltageV: coldV, of: "modules" });
    }
    const found = new Map<number, SourceVoltage>();
    const enter = (record: number, terminal: number) => {
      const voltage = ofComponent.get(componentOf[terminal]!);
      if (voltage !== undefined) found.set(record, voltage);
    };
    for (const { record, role, from } of network.conductors) if (role !== "return") enter(record, from);
    for (const part of network.parts) if (isDevice(part)) enter(part.record, part.terminals.line);
    return found;
  },
);

/** The greatest direct voltage that a device may have to interrupt, V: the nominal one of its circuit, or that of a charger or of modules on it. */
export function greatestVoltage(network: Network, device: ProtectiveDevice): number {
  const { place } = device;
  const part = place.at === "part" ? network.parts[place.part] : undefined;
  const conductor = conductorWith(network, device);
  const nominalV = conductor?.run.systemV ?? (part && isDevice(part) ? part.systemV : 0);
  const record = conductor?.record ?? part?.record ?? -1;
  return Math.max(nominalV, sourceVoltages(network).get(record)?.voltageV ?? 0);
}
