import type { DcDcChargerPart, InverterPart, LoadPart, Network, Part } from "../model/network.ts";
import { isConsumer, minimumVoltageOf } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { portsOf } from "./network/topology/ports.ts";
import type { NetworkResult } from "./network-result.ts";

/** A device with a known minimum voltage, and the lowest voltage it gets. */
export interface DeviceVoltage {
  readonly part: LoadPart | InverterPart | DcDcChargerPart;
  readonly neededV: number;
  /** In all scenarios that last, and in those with a starting motor; undefined if it is on in none. */
  readonly lasting: Lowest | undefined;
  readonly momentary: Lowest | undefined;
}

export interface Lowest {
  readonly voltageV: number;
  readonly scenario: number;
}

/**
 * The lowest voltage at the input of every such device, in any solved scenario with the device on; where a motor starts that no scenario
 * of the plan starts, only at that motor.
 */
export const deviceVoltages = workedOutOnce(({ network, result }: Judged): readonly DeviceVoltage[] => {
  return network.parts.flatMap((part): DeviceVoltage[] => {
    const device = neededBy(part);
    if (!device) return [];
    const lowest: { lasting?: Lowest; momentary?: Lowest } = {};
    for (const solved of result.scenarios) {
      const scenario = network.scenarios[solved.scenario];
      if (solved.state !== "solved" || !scenario?.on[part.index]) continue;
      if (scenario.furtherStart && !scenario.starting[part.index]) continue;
      const voltageV =
        (solved.terminalV[device.positive] ?? Number.NaN) - (solved.terminalV[device.negative] ?? Number.NaN);
      const key = scenario.momentary ? "momentary" : "lasting";
      // Not reached by any source: NaN, which no comparison finds lower.
      if (voltageV < (lowest[key]?.voltageV ?? Number.POSITIVE_INFINITY))
        lowest[key] = { voltageV, scenario: solved.scenario };
    }
    const { neededV } = device;
    return [{ part: device.part, neededV, lasting: lowest.lasting, momentary: lowest.momentary }];
  });
});

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/** Whether a solved voltage is below the one that is needed. */
export function isBelow(voltageV: number, neededV: number): boolean {
  return voltageV < neededV * withinBlur;
}

/** The solver's relative error is about 1e-9. */
const withinBlur = 1 - 1e-9;

interface Needing extends Pick<DeviceVoltage, "part" | "neededV"> {
  readonly positive: number;
  readonly negative: number;
}

function neededBy(part: Part): Needing | undefined {
  const neededV = minimumVoltageOf(part);
  const port = portsOf(part).find(({ does }) => does === "draws");
  if (neededV === undefined || !port || !(isConsumer(part) || part.kind === "dcDcCharger")) return undefined;
  return { part, neededV, positive: port.positive, negative: port.negative };
}
