import type { BatteryPart, Network, NetworkConductor } from "../../../model/network.ts";
import type { ScenarioResult } from "../../network-result.ts";
import { endsAt } from "../topology/ends-at.ts";
import type { Bank } from "../topology/network-topology.ts";

/** How the strings of a bank share its current in the scenario with the greatest current. */
export interface StringShares {
  readonly scenario: number;
  /** Current of the whole bank, A: positive if it is discharged. */
  readonly totalA: number;
  readonly strings: readonly StringShare[];
}

interface StringShare {
  /** Part indices, from the lowest battery upwards. */
  readonly batteries: readonly number[];
  readonly currentA: number;
  /** Its current if the total were shared by capacity, A. */
  readonly fairA: number;
  /** How far its current is above that, percent; negative below. */
  readonly overPercent: number;
}

/**
 * Undefined for a bank of one string, and if no scenario that lasts has a current in it.
 *
 *     fair_i = I_total · C_i / ΣC;   over_i = 100 · (I_i / fair_i − 1), I in A, C the least capacity in the string in Ah
 */
export function stringShares(
  network: Network,
  scenarios: readonly ScenarioResult[],
  { strings }: Bank,
): StringShares | undefined {
  if (strings.length < 2) return undefined;
  let best: { scenario: number; totalA: number; currents: readonly number[] } | undefined;
  for (const result of scenarios) {
    if (result.state !== "solved" || network.scenarios[result.scenario]?.momentary) continue;
    const currents = strings.map((string) => result.partA[string.at(-1) ?? -1] ?? 0);
    const totalA = currents.reduce((sum, currentA) => sum + currentA, 0);
    if (Math.abs(totalA) > Math.abs(best?.totalA ?? noCurrentA))
      best = { scenario: result.scenario, totalA, currents };
  }
  if (!best) return undefined;
  const { scenario, totalA, currents } = best;
  const capacities = strings.map((string) => capacityAh(network, string));
  const wholeAh = capacities.reduce((sum, ah) => sum + ah, 0);
  return {
    scenario,
    totalA,
    strings: strings.map((batteries, index) => {
      const currentA = currents[index] ?? 0;
      const fairA = (totalA * (capacities[index] ?? 0)) / wholeAh;
      return { batteries, currentA, fairA, overPercent: 100 * (currentA / fairA - 1) };
    }),
  };
}

/** Minimum bank current for which a share has a meaning, A. */
const noCurrentA = 1e-3;

function capacityAh(network: Network, string: readonly number[]): number {
  return batteriesOf(network, string).reduce(
    (least, battery) => Math.min(least, battery.capacityAh),
    Number.POSITIVE_INFINITY,
  );
}

function batteriesOf({ parts }: Network, string: readonly number[]): readonly BatteryPart[] {
  return string.flatMap((index) => {
    const part = parts[index];
    return part?.kind === "battery" ? [part] : [];
  });
}

/**
 * Whether the leads alone can make a difference between the strings: as many batteries in each, of the same capacity,
 * voltage and internal resistance.
 */
export function stringsAreAlike(network: Network, { strings }: Bank): boolean {
  const texts = strings.map((string) =>
    batteriesOf(network, string)
      .map(({ capacityAh: ah, systemV, internal }) => `${ah} ${systemV} ${internal.highOhm}`)
      .sort()
      .join(),
  );
  return texts.every((text) => text === texts[0]);
}

/**
 * The one conductor of each string from its positive end to a place that all have in common, and the same of its
 * negative end.
 */
export interface ParallelLeads {
  readonly positive: readonly NetworkConductor[];
  readonly negative: readonly NetworkConductor[];
}

/** Undefined if the strings are connected in another way, one to the next for instance. */
export function parallelLeads(network: Network, { positives, negatives }: Bank): ParallelLeads | undefined {
  const positive = toOnePlace(network, positives);
  const negative = toOnePlace(network, negatives);
  return positive && negative && { positive, negative };
}

function toOnePlace(network: Network, poles: readonly number[]): readonly NetworkConductor[] | undefined {
  const leads: NetworkConductor[] = [];
  let place: number | undefined;
  for (const pole of poles) {
    const [lead, another] = endsAt(network, pole);
    if (!lead || another) return undefined;
    const end = lead.from === pole ? lead.to : lead.from;
    place ??= end;
    if (end !== place) return undefined;
    leads.push(lead);
  }
  return leads;
}
