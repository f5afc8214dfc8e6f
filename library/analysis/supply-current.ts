import type { DcDcChargerPart, InverterPart, Network, Scenario } from "../model/network.ts";
import type { Protection } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { surgeDuration } from "../standards/device-practice.ts";
import { type AddedLoad, addedLoads } from "./network/solver/added-load.ts";
import type { NetworkResult, SolvedScenario } from "./network-result.ts";
import { gatesFor, percentOfRating } from "./opening-time.ts";

/**
 * Input current of an inverter at the lowest voltage at which it works.
 *
 *     I = (P / η + P0) / U     P continuous power, W; η efficiency; P0 idle draw, W; U lowest voltage, V
 *
 * Power out is power in less the losses; the voltage is its cut-off if the plan states it, else the lowest of its batteries.
 */
export function inverterSupplyA({ continuousW, efficiencyPercent, idleW, lowestV }: InverterPart): number {
  return (continuousW / (efficiencyPercent / 100) + idleW) / lowestV;
}

/** The same for its surge power, which it gives for seconds; undefined if none is stated. */
export function inverterSurgeA(inverter: InverterPart): number | undefined {
  const { surgeW } = inverter;
  return surgeW === undefined ? undefined : inverterSupplyA({ ...inverter, continuousW: surgeW });
}

/**
 * Whether a device may open before a surge is over, by the gates of its family: the least time of the greatest multiple of the
 * rating at or below the current. Undefined if no gate shows it; then it is unknown whether the device holds.
 */
export function opensWithinSurge(
  device: Pick<Protection, "ratingA" | "family">,
  currentA: number,
): { readonly afterS: number; readonly source: Citation } | undefined {
  const table = gatesFor(device);
  const percent = percentOfRating(device, currentA);
  const afterS = table?.gates.findLast((gate) => gate.percentOfRating <= percent)?.minS;
  if (!table || afterS === undefined || afterS === null || afterS >= surgeDuration.seconds) return undefined;
  return { afterS, source: table.source };
}

/**
 * Input current of a DC-DC charger at the lowest voltage at which it gives its full output: as the plan states it, else the lowest of
 * its batteries.
 *
 *     I_in = U_out · I_out / (η · U_in)     V, A; η efficiency
 *
 * Not above the maximum input current that its maker states: there the charger gives less instead.
 */
export function chargerInputA(charger: DcDcChargerPart): number {
  const { outputV, outputA, efficiencyPercent, lowestV, inputMaxA } = charger;
  const forFullOutputA = (outputV * outputA) / ((efficiencyPercent / 100) * lowestV);
  return Math.min(forFullOutputA, inputMaxA ?? Number.POSITIVE_INFINITY);
}

/**
 * By record of a run: the greatest current that an inverter at its cut-off voltage, or a charger at its minimum input voltage,
 * draws there, with the other loads of its scenario, A. `lowestVOf`: another voltage for that, V; a device counts only if it has one.
 */
export function supplyNeedsByRecord(
  judged: Judged,
  lowestVOf: (part: InverterPart | DcDcChargerPart) => number | undefined = ({ lowestV }) => lowestV,
): ReadonlyMap<number, number> {
  const needs = new Map<number, number>();
  const at = <Device extends InverterPart | DcDcChargerPart>(device: Device): Device | undefined => {
    const lowestV = lowestVOf(device);
    return lowestV === undefined ? undefined : { ...device, lowestV };
  };
  for (const part of judged.network.parts) {
    const device = part.kind === "inverter" ? at(part) : part.kind === "dcDcCharger" ? at(part) : undefined;
    if (!device) continue;
    const deviceA = device.kind === "inverter" ? inverterSupplyA(device) : chargerInputA(device);
    for (const { conductor, currentA } of supplyLoads(judged, device, deviceA)) {
      const record = judged.network.conductors[conductor]?.record ?? -1;
      needs.set(record, Math.max(needs.get(record) ?? 0, currentA));
    }
  }
  return needs;
}

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/** A conductor on a device's supply path, and its current when the device takes a given current. */
export interface SupplyLoad {
  /** Index in the network. */
  readonly conductor: number;
  /** The share of the device's current that flows here, 0 to 1: parallel batteries share it. */
  readonly share: number;
  /** With the other loads of the scenario, A. */
  readonly currentA: number;
  /** The scenario for which that holds; undefined: the device alone. */
  readonly scenario: number | undefined;
}

/**
 * The current in every conductor on a device's supply path when the device takes a given current at its input.
 *
 * The difference between two solutions, only the device on and no load on, shows how the batteries share the device's
 * current: current between unlike batteries, or in another island, is not the device's. The excess of its current over that in
 * a scenario that lasts is then added to the currents there (superposition: exact for constant currents, near enough for a few
 * amperes more beside constant power). Sources with a limit supply none of the addition: they may be at it already.
 */
export function supplyLoads(
  { network, result }: Judged,
  device: InverterPart | DcDcChargerPart,
  deviceA: number,
): readonly SupplyLoad[] {
  const flow = addedLoads(network).flow(asLoad(device, deviceA));
  if (!flow) return [];
  const scenarios = result.scenarios.filter(
    (one): one is SolvedScenario =>
      one.state === "solved" && isOnForLong(network.scenarios[one.scenario], device.index),
  );
  // On conductors that are far too thin it does not get all: the part it gets is shared in the same way.
  return flow.conductors.flatMap(({ conductor, addedA }): SupplyLoad[] => {
    const share = addedA / flow.drawnA;
    if (!(Math.abs(share) > noShare)) return [];
    let worst: SupplyLoad = {
      conductor,
      share: Math.abs(share),
      currentA: Math.abs(share) * deviceA,
      scenario: undefined,
    };
    for (const { scenario, conductorA, partA, inputA } of scenarios) {
      const takenA =
        device.kind === "dcDcCharger" ? (inputA[device.index] ?? 0) : -(partA[device.index] ?? 0);
      const currentA = Math.abs((conductorA[conductor] ?? 0) + share * (deviceA - takenA));
      // Others that are on add to it; a charger that is on takes from it, and is not always there.
      if (currentA > worst.currentA * (1 + solverBlur)) worst = { ...worst, currentA, scenario };
    }
    return [worst];
  });
}

/** Relative accuracy of the solver's currents: a smaller excess is no difference. */
const solverBlur = 1e-9;

/** Below this share a conductor is not on the path: only rounding flows there. */
const noShare = 1e-6;

function isOnForLong(scenario: Scenario | undefined, part: number): boolean {
  return scenario !== undefined && !scenario.momentary && scenario.on[part] === true;
}

/** The device as a load that takes a constant current at its input. */
function asLoad(device: InverterPart | DcDcChargerPart, currentA: number): AddedLoad {
  const [positive, negative] =
    device.kind === "inverter"
      ? [device.terminals.positive, device.terminals.negative]
      : [device.terminals.inputPositive, device.terminals.inputNegative];
  return { part: device.index, positive, negative, currentA };
}
