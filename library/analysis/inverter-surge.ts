import type { InverterPart, Network, Part, Scenario } from "../model/network.ts";
import { isCharging, isConsumer } from "../model/part-roles.ts";
import { bankOf } from "./bank-voltage.ts";
import { solveScenarios } from "./network/solver/solve-scenarios.ts";
import type { NetworkResult } from "./network-result.ts";

/** An inverter that gives its surge power, on the bank alone, with nothing else on. */
export interface InverterSurge {
  readonly inverter: InverterPart;
  /** The scenario whose rest voltages were taken: the lowest of those in which it is on. */
  readonly scenario: number;
  /** Between its terminals, V; undefined if there is no voltage at which it could draw that power. */
  readonly voltageV: number | undefined;
  /** The internal resistance of a battery that feeds it is not stated: the least usual one was taken. */
  readonly estimated: boolean;
}

/** For every inverter that states a surge power and that a bank feeds. The whole network is solved for each. */
export function inverterSurges({
  network,
  result,
}: {
  readonly network: Network;
  readonly result: NetworkResult;
}): readonly InverterSurge[] {
  return network.parts.flatMap((part): InverterSurge[] => {
    if (part.kind !== "inverter" || part.surgeW === undefined) return [];
    const battery = result.supplyPaths.find((way) => way.part === part.index)?.battery;
    const scenario = lowestScenario(network, part);
    if (battery === undefined || scenario === undefined) return [];
    const surging: Network = {
      ...network,
      parts: network.parts.map((one) => (one === part ? { ...part, loadW: part.surgeW! } : atLeastOhm(one))),
      scenarios: [onlyOn(network, network.scenarios[scenario]!, part)],
    };
    const [solved] = solveScenarios(surging);
    const voltageV = solved?.state === "solved" ? solved.partV[part.index] : undefined;
    const bank = bankOf(result.topology, battery)?.batteries ?? [battery];
    const estimated = bank.some((index) => {
      const one = network.parts[index];
      return one?.kind === "battery" && !one.internal.stated;
    });
    return Number.isNaN(voltageV) ? [] : [{ inverter: part, scenario, voltageV, estimated }];
  });
}

/** The scenario with the lowest rest voltages among those that last and in which it is on. */
function lowestScenario({ scenarios }: Network, { index }: InverterPart): number | undefined {
  let lowest: { readonly scenario: number; readonly restV: number } | undefined;
  scenarios.forEach(({ on, momentary, restV }, scenario) => {
    if (!on[index] || momentary) return;
    const sumV = restV.reduce<number>((sum, volts) => sum + (volts ?? 0), 0);
    if (!lowest || sumV < lowest.restV) lowest = { scenario, restV: sumV };
  });
  return lowest?.scenario;
}

function onlyOn({ parts }: Network, base: Scenario, inverter: InverterPart): Scenario {
  const on = parts.map((part) => {
    if (isConsumer(part)) return part.index === inverter.index;
    return !isCharging(part) && base.on[part.index] === true;
  });
  return { ...base, on, starting: parts.map(() => false), sunShare: 0, momentary: true };
}

/** A battery of unknown resistance gets the least that is usual: a fault found with it does not rest on the guess. */
function atLeastOhm(part: Part): Part {
  if (part.kind !== "battery" || part.internal.stated) return part;
  return { ...part, internal: { ...part.internal, highOhm: part.internal.lowOhm } };
}
