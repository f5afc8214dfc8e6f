import { isLithiumBattery } from "../../model/battery-figures.ts";
import type { BatteryPart, Network, Scenario } from "../../model/network.ts";
import { isConsumer } from "../../model/part-roles.ts";
import { networkGraph } from "./topology/network-graph.ts";
import type { Bank } from "./topology/network-topology.ts";
import { type BatteryString, parallelStrings, polesOf } from "./topology/parallel-strings.ts";

/** Whether two strings are of different nominal voltage: less than half a cell is the rounding of a label. */
export function differInVoltage(one: BatteryString, other: BatteryString): boolean {
  return Math.abs(nominalOf(one) - nominalOf(other)) >= leastDifferenceV;
}

const leastDifferenceV = 1;

/** Whether one of two strings is of lithium and the other of lead-acid: equally charged, they rest at different voltages. */
export function differInKind(one: BatteryString, other: BatteryString): boolean {
  return isLithiumBattery(one.batteries[0]!) !== isLithiumBattery(other.batteries[0]!);
}

/** The nominal voltage of a string, V. */
export function nominalOf({ batteries }: BatteryString): number {
  return batteries.reduce((sum, { systemV }) => sum + systemV, 0);
}

/**
 * The network as if all strings in parallel were of one nominal voltage, that of the devices which they supply, and of one kind: in every
 * scenario they rest at the voltage of a string that is. Only the current that flows between unlike strings is then gone.
 */
export function atOneVoltage(network: Network, banks: readonly Bank[]): Network {
  const pairs = parallelStrings(network, banks).flatMap((strings) => {
    const right = stringOfSystem(network, strings);
    return strings
      .filter((one) => differInVoltage(one, right) || differInKind(one, right))
      .map((wrong) => ({ wrong, right }));
  });
  const scenarios = network.scenarios.map((scenario): Scenario => {
    const restV = [...scenario.restV];
    for (const { wrong, right } of pairs) {
      const times = restOf(right, scenario) / restOf(wrong, scenario);
      for (const { index } of wrong.batteries) restV[index] = scenario.restV[index]! * times;
    }
    return { ...scenario, restV };
  });
  return { ...network, scenarios };
}

/** The string with the nominal voltage of the devices between its poles; the first one if there are none. */
function stringOfSystem(network: Network, strings: readonly BatteryString[]): BatteryString {
  const { componentOf } = networkGraph(network);
  const { positive } = polesOf(strings[0]!);
  const device = network.parts.find(
    (part) => isConsumer(part) && componentOf[part.terminals.positive] === componentOf[positive],
  );
  const systemV = device && "systemV" in device ? device.systemV : nominalOf(strings[0]!);
  const awayFrom = (one: BatteryString) => Math.abs(nominalOf(one) - systemV);
  return strings.reduce((best, one) => (awayFrom(one) < awayFrom(best) ? one : best));
}

function restOf({ batteries }: BatteryString, { restV }: Scenario): number {
  return batteries.reduce((sum, { index, usualRestV }: BatteryPart) => sum + (restV[index] ?? usualRestV), 0);
}
