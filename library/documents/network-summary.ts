import type { UnsolvedScenario, WorstOf } from "../analysis/network-result.ts";
import { withoutLengthTo } from "../analysis/unknown-lengths.ts";
import type { Network, NetworkConductor, Part } from "../model/network.ts";
import type { JudgedNetwork, JudgedPlan } from "../rules/rule.ts";
import { formatDistinct, withUnit } from "../rules/wording/format-number.ts";

/**
 * A few words if a network is not judged as a whole: "network not judged", "1 of 3 scenarios not solved". Empty without a
 * network, and if all is well: silence must not mean "not looked at".
 */
export function networkStateInWords({ model, network }: Pick<JudgedPlan, "model" | "network">): string {
  if (model.networkUnread) return "network not judged";
  const { withoutCircuits } = model;
  const leftOut =
    withoutCircuits.length === 0
      ? []
      : [
          `network judged without ${withoutCircuits.length === 1 ? "a circuit" : `${withoutCircuits.length} circuits`} with an invalid value`,
        ];
  const all = network?.result.scenarios ?? [];
  const unsolved = all.filter(({ state }) => state === "unsolved").length;
  const open = unsolved === 0 ? [] : [`${unsolved} of ${all.length} scenarios not solved`];
  return [...leftOut, ...open].join(", ");
}

/**
 * The number of parts and cables in the plan. The load that a circuit states itself belongs to the circuit, and is not counted as
 * a part.
 */
export function contentsOf({ parts, conductors }: Network): {
  readonly parts: number;
  readonly cables: number;
} {
  return {
    parts: parts.filter((part) => !isOfCircuit(part)).length,
    cables: conductors.filter(({ role }) => role === "cable").length,
  };
}

export function isOfCircuit(part: Part): boolean {
  return part.kind === "load" && part.statedBy === "circuit";
}

/** A summary of one plan's network, for a line or two of text. Names are as the plan gives them: not yet fit to be shown. */
export interface NetworkSummary {
  readonly scenarios: number;
  readonly unsolved: readonly { readonly scenario: string; readonly why: UnsolvedScenario["why"] }[];
  /** The conductor nearest to its ampacity, or furthest above it, in the scenarios that last and with any device alone. */
  readonly hardest: WorstConductor | null;
  /** The device with the smallest share of its nominal voltage. */
  readonly lowest: LowestVoltage | null;
}

export type WorstConductor = {
  readonly name: string;
  readonly role: NetworkConductor["role"];
  readonly currentA: number;
  readonly ampacityA: number;
} & Occasion;

/** The name of a scenario, or of the device that is alone. */
type Occasion = { readonly scenario: string } | { readonly alone: string };

export interface LowestVoltage {
  readonly name: string;
  readonly voltageV: number;
  readonly scenario: string;
}

export function networkSummary(plan: JudgedPlan, { network, result }: JudgedNetwork): NetworkSummary {
  const nameOf = (scenario: number) => network.scenarios[scenario]?.name ?? "";
  return {
    scenarios: result.scenarios.length,
    unsolved: result.scenarios.flatMap((one) =>
      one.state === "unsolved" ? [{ scenario: nameOf(one.scenario), why: one.why }] : [],
    ),
    hardest: hardestWorked(plan, { network, result }),
    lowest: lowestVoltage({ network, result }),
  };
}

/** `nearest to its ampacity: feed, 142 A of 330 A in "everything on"` or `… with windlass alone`, with names already fit for the place. */
export function hardestInWords(hardest: WorstConductor): string {
  const [is, may] = formatDistinct(hardest.currentA, hardest.ampacityA);
  const what = hardest.role === "return" ? `return of ${hardest.name}` : hardest.name;
  const when = "alone" in hardest ? `with ${hardest.alone} alone` : `in "${hardest.scenario}"`;
  return `nearest to its ampacity: ${what}, ${is} A of ${may} A ${when}`;
}

/** `lowest voltage: 11.4 V at Fridge in "everything on"`. */
export function lowestInWords({ name, voltageV, scenario }: LowestVoltage): string {
  return `lowest voltage: ${withUnit(voltageV, "V")} at ${name} in "${scenario}"`;
}

function hardestWorked({ circuits }: JudgedPlan, { network, result }: JudgedNetwork): WorstConductor | null {
  const ampacities = new Map(circuits.map(({ circuit, result: { ampacity } }) => [circuit.record, ampacity]));
  let hardest: WorstConductor | null = null;
  let hardestShare = 0;
  for (const [index, { record, name, role }] of network.conductors.entries()) {
    const ampacity = ampacities.get(record);
    const worst = result.conductors[index]?.design;
    if (!ampacity?.judged || !worst) continue;
    const share = worst.currentA / ampacity.ampacityA;
    if (share <= hardestShare) continue;
    hardestShare = share;
    hardest = {
      ...{ name, role, currentA: worst.currentA, ampacityA: ampacity.ampacityA },
      ...occasionOf(network, worst),
    };
  }
  return hardest;
}

function occasionOf({ scenarios, parts }: Network, { scenario, alone }: WorstOf): Occasion {
  return alone === undefined
    ? { scenario: scenarios[scenario]?.name ?? "" }
    : { alone: parts[alone]?.name ?? "" };
}

function lowestVoltage({ network, result }: JudgedNetwork): LowestVoltage | null {
  const nominals = nominalVoltages({ network, result });
  let lowest: LowestVoltage | null = null;
  let lowestShare = 0;
  for (const part of network.parts) {
    const nominalV = nominals.get(part.index);
    const at = result.parts[part.index]?.lowestV;
    if (nominalV === undefined || !at || withoutLengthTo({ network, result }, part).length > 0) continue;
    const share = at.voltageV / nominalV;
    if (lowest && share >= lowestShare) continue;
    lowestShare = share;
    const scenario = network.scenarios[at.scenario]?.name ?? "";
    lowest = { name: part.name, voltageV: at.voltageV, scenario };
  }
  return lowest;
}

/** By part index: of each device that draws. An inverter does not state its own; its supply path gives it. */
function nominalVoltages({ network, result }: JudgedNetwork): ReadonlyMap<number, number> {
  const nominals = new Map<number, number>();
  for (const { part, dropV, dropPercent } of result.supplyPaths) {
    if (network.parts[part]?.kind === "inverter" && dropPercent > 0)
      nominals.set(part, (100 * dropV) / dropPercent);
  }
  for (const part of network.parts) if (part.kind === "load") nominals.set(part.index, part.systemV);
  return nominals;
}
