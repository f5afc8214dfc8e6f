import type { Estimate } from "../model/estimate.ts";
import type { LoadPart, Network, Part } from "../model/network.ts";
import { givesEnergy, isCharging, lowestVoltage, passesCurrentOn } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { groupedBy } from "./grouped-by.ts";
import { loadCurrentA } from "./load-current.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import type { Bank } from "./network/topology/network-topology.ts";
import { type Port, portsOf } from "./network/topology/ports.ts";
import { chargerInputA, inverterSupplyA } from "./supply-current.ts";

/** The current that a device draws or feeds by itself, at one of its ports. */
export interface SingleDraw extends Port {
  /** For longer than a moment, A. */
  readonly currentA: number;
  /** For ampacity and ratings, A: a load in watts at the lowest voltage at which it works. Not below {@link currentA}. */
  readonly designA: number;
  readonly estimate?: Estimate;
}

/**
 * The current of every load, as the plan states it, and of every inverter, charger and charging source that is on in no scenario:
 * the plan may name scenarios without them, and they are switched on all the same. Greatest first.
 *
 * Solar arrays are left out: their conductors are judged by their short-circuit current in any scenario (NFPA 70, 690.8).
 */
export function singleDraws(network: Network, banks: readonly Bank[]): readonly SingleDraw[] {
  const nominalV = nominalVoltages(network, banks);
  return network.parts
    .flatMap(portsOf)
    .flatMap((port): readonly SingleDraw[] => {
      if (port.part.kind === "load") return drawsOfLoad(port, nominalV(port));
      // Where a scenario has them on, rules of their own judge the supply of inverters and chargers at the lowest voltage.
      if (!isOnInNone(network, port.part)) return [];
      return drawsOf(
        port,
        port.does === "draws" ? drawnA(port.part, nominalV(port)) : fedA(network, port, nominalV(port)),
      );
    })
    .sort((one, other) => other.designA - one.designA);
}

/** The same objects for the same load at the same voltage. */
function drawsOfLoad(port: Port, nominalV: number | undefined): readonly SingleDraw[] {
  const last = lastOfLoad.get(port);
  if (last && last.nominalV === nominalV) return last.draws;
  const draws = drawsOf(port, drawnA(port.part, nominalV));
  lastOfLoad.set(port, { nominalV, draws });
  return draws;
}

const lastOfLoad = new WeakMap<
  Port,
  { readonly nominalV: number | undefined; readonly draws: readonly SingleDraw[] }
>();

function drawsOf(port: Port, currentA: number | undefined): readonly SingleDraw[] {
  if (currentA === undefined || currentA === 0) return [];
  return [{ currentA, ...port, ...designOf(port.part, currentA) }];
}

function designOf(part: Part, currentA: number): Pick<SingleDraw, "designA" | "estimate"> {
  if (part.kind !== "load" || part.draws.as !== "power") return { designA: currentA };
  const { voltageV, isStated } = lowestVoltage(
    part as LoadPart & { readonly draws: { readonly as: "power" } },
  );
  const designA = part.draws.powerW / voltageV;
  if (designA <= currentA) return { designA: currentA };
  return { designA, ...(!isStated && { estimate: { lowestV: voltageV } }) };
}

/** Whether no scenario that lasts has the part on. */
export function isOnInNone({ scenarios }: Network, { index }: Part): boolean {
  return !scenarios.some(({ on, momentary }) => on[index] && !momentary);
}

/**
 * Of a load at the nominal voltage of its bank; of inverters and chargers at the lowest voltage at which they work. Undefined for
 * solar controllers, which draw from an array.
 */
function drawnA(part: Part, nominalV: number | undefined): number | undefined {
  if (passesCurrentOn(part)) return undefined;
  switch (part.kind) {
    case "inverter":
      return inverterSupplyA({ ...part, continuousW: part.loadW });
    case "dcDcCharger":
      return chargerInputA(part);
    case "load":
      return loadCurrentA(part.draws, nominalV ?? part.systemV);
    case "solarController":
    case "solarArray":
    case "alternator":
    case "shoreCharger":
    case "battery":
      return undefined;
    default:
      return part satisfies never;
  }
}

/** The greatest current that a charging source gives for longer than a moment. */
function fedA(network: Network, { part }: Port, nominalV: number | undefined): number | undefined {
  if (!givesEnergy(part) || !isCharging(part)) return undefined;
  switch (part.kind) {
    case "alternator":
      return part.ratedA;
    case "shoreCharger":
    case "dcDcCharger":
      return part.outputA;
    case "solarController": {
      const { powerW, shortCircuitA } = arraysAt(network)(part.terminals.solarPositive);
      // Without tracking it passes the current of its modules on.
      if (!part.tracking) return Math.min(part.outputA, shortCircuitA);
      return nominalV === undefined ? part.outputA : Math.min(part.outputA, powerW / nominalV);
    }
    case "solarArray":
    case "battery":
      return undefined;
    default:
      return part satisfies never;
  }
}

/** The power in full sun of the arrays that are connected to a terminal, W, and their short-circuit current, A. */
const arraysAt = workedOutOnce((network: Network) => {
  const { componentOf } = networkGraph(network);
  const arrays = network.parts.filter((part) => part.kind === "solarArray");
  const byPlace = groupedBy(arrays, ({ terminals }) => componentOf[terminals.positive]!);
  return (terminal: number) => {
    const there = byPlace.get(componentOf[terminal]!) ?? [];
    return {
      powerW: there.reduce((sum, one) => sum + one.series * one.parallel * one.maxPowerV * one.maxPowerA, 0),
      shortCircuitA: there.reduce((sum, one) => sum + one.parallel * one.shortCircuitA, 0),
    };
  };
});

/** The nominal voltage of the bank to which both terminals of a port are connected, V. */
function nominalVoltages(network: Network, banks: readonly Bank[]): (port: Port) => number | undefined {
  const { componentOf } = networkGraph(network);
  const keyOf = (positive: number, negative: number) =>
    componentOf[positive]! * network.terminals.length + componentOf[negative]!;
  const known = new Map<number, number>();
  for (const { strings, positives, negatives } of banks) {
    const nominalV = (strings[0] ?? []).reduce((sum, index) => {
      const battery = network.parts[index];
      return battery?.kind === "battery" ? sum + battery.nominalV : sum;
    }, 0);
    const key = keyOf(positives[0]!, negatives[0]!);
    if (!known.has(key)) known.set(key, nominalV);
  }
  return ({ positive, negative }) => known.get(keyOf(positive, negative));
}
