import type { DcDcChargerPart, InverterPart, Network, Scenario } from "../model/network.ts";
import type { Protection } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { surgeDuration } from "../standards/device-practice.ts";
import { type AddedLoad, addedLoads } from "./network/solver/added-load.ts";
import type { NetworkResult, SolvedScenario } from "./network-result.ts";
import { gatesFor, percentOfRating } from "./opening-time.ts";

/**
 * What an inverter takes at the lowest voltage at which it still runs.
 *
 *     I = (P / η + P0) / U     P continuous power, W; η efficiency; P0 idle draw, W; U cut-off voltage, V
 *
 * Power out is power in less the losses; the voltage is the least at which it does not switch off.
 */
export function inverterSupplyA({ continuousW, efficiencyPercent, idleW, cutOffV }: InverterPart): number {
  return (continuousW / (efficiencyPercent / 100) + idleW) / cutOffV;
}

/** The same for its surge power, which it gives for seconds; undefined where none is stated. */
export function inverterSurgeA(inverter: InverterPart): number | undefined {
  const { surgeW } = inverter;
  return surgeW === undefined ? undefined : inverterSupplyA({ ...inverter, continuousW: surgeW });
}

/**
 * Whether a device may open before a surge is over, by the gates of its family: the least time of the greatest multiple of the
 * rating at or below the current. Undefined where no gate says so; then nothing is known, not that it holds.
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
 * What a DC-DC charger takes at its input at the least voltage at which it gives its full output.
 *
 *     I_in = U_out · I_out / (η · U_in)     V, A; η efficiency
 *
 * Not above the greatest input current that its maker states: there the charger gives less instead.
 */
export function chargerInputA(charger: DcDcChargerPart): number {
  const { outputV, outputA, efficiencyPercent, inputMinV, inputMaxA } = charger;
  const forFullOutputA = (outputV * outputA) / ((efficiencyPercent / 100) * inputMinV);
  return Math.min(forFullOutputA, inputMaxA ?? Number.POSITIVE_INFINITY);
}

/** A conductor on the way on which a device is supplied, and what it carries when the device takes a given current. */
export interface SupplyLoad {
  /** Index in the network. */
  readonly conductor: number;
  /** How much of the device's current flows here, 0 to 1: batteries side by side share it. */
  readonly share: number;
  /** With what else is on, A. */
  readonly currentA: number;
  /** The scenario for which that holds; undefined: the device alone. */
  readonly scenario: number | undefined;
}

/**
 * What every conductor on a device's supply way carries when the device takes a given current at its input.
 *
 * How the batteries share the device's current is the difference between two solutions, the device alone on and nothing on:
 * what flows between unlike batteries, or in another island, is not the device's. What it takes more than in a scenario
 * that lasts is then added to what flows there (superposition: exact for constant currents, near enough for a few amperes
 * more beside constant power). Sources with a limit take no part of what is added: they may be at it already.
 */
export function supplyLoads(
  { network, result }: { readonly network: Network; readonly result: NetworkResult },
  device: InverterPart | DcDcChargerPart,
  deviceA: number,
): readonly SupplyLoad[] {
  const flow = addedLoads(network).flow(asLoad(device, deviceA));
  if (!flow) return [];
  const scenarios = result.scenarios.filter(
    (one): one is SolvedScenario =>
      one.state === "solved" && isOnForLong(network.scenarios[one.scenario], device.index),
  );
  // On conductors that are far too thin it does not get all: what it gets is shared in the same way.
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

/** What the solver gives is true to about this part of it: no more current is no other current. */
const solverBlur = 1e-9;

/** Below this share a conductor is not on the way: nothing but rounding flows there. */
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
