import type { BatteryPart, Network, Part } from "../model/network.ts";
import { isCharging } from "../model/part-roles.ts";
import { nominalOfCharger } from "../model/parts/charging.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { chargingVoltage } from "../standards/charging-practice.ts";
import { chargings } from "./charging-sources.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import { portsOf } from "./network/topology/ports.ts";
import type { NetworkResult } from "./network-result.ts";
import { coldStringOf } from "./solar-cold-voltage.ts";
import { solarWiringOf } from "./solar-wiring.ts";

/** The highest voltage between two terminals, with every switch closed and without any loss on the way. */
export interface HighestVoltage {
  /** Of the batteries between them, or of the charger; undefined if only modules are there. */
  readonly nominalV: number | undefined;
  /** As the plan states it; undefined if it states none. */
  readonly stated: ReachedVoltage | undefined;
  /** The same with the usual charging voltage in place of each one that is not stated; undefined if all are. */
  readonly usual: ReachedVoltage | undefined;
  /** The batteries in series between them; none if a charger or modules feed them alone. */
  readonly batteries: readonly BatteryPart[];
}

export interface ReachedVoltage {
  readonly voltageV: number;
  /** The chargers or modules that give it; none if it is that of a scenario, or if the plan has no charger there. */
  readonly sources: readonly Part[];
  /** The scenario that states it for the batteries at rest. */
  readonly scenario?: number;
}

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

interface Terminals {
  readonly positive: number;
  readonly negative: number;
}

/**
 * For any two terminals of a network, the highest voltage between them; undefined if neither batteries nor a source is there.
 *
 * Batteries in series share the output voltage of a charger by their nominal voltages, and those with chargers of their own add up. Modules
 * count with their open circuit on the coldest day, but not beside a battery, which holds them down.
 */
export const highestVoltages = workedOutOnce(
  ({ network, result }: Judged): ((terminals: Terminals) => HighestVoltage | undefined) => {
    const { componentOf } = networkGraph(network);
    const keyOf = ({ positive, negative }: Terminals) => `${componentOf[positive]} ${componentOf[negative]}`;
    const known = new Map<string, HighestVoltage | undefined>();
    const batteriesBetween = seriesOf(network);
    const charged = chargedVoltages(network, result);
    const given = givenVoltages(network, keyOf);
    const openCircuit = openCircuitVoltages(network, keyOf);
    const find = (terminals: Terminals): HighestVoltage | undefined => {
      const batteries = batteriesBetween(componentOf[terminals.negative]!, componentOf[terminals.positive]!);
      const own = given.get(keyOf(terminals));
      if (batteries.length === 0) {
        const stated = higher([own?.stated, openCircuit.get(keyOf(terminals))]);
        const ownV = higher([own?.stated, own?.usual])?.voltageV;
        return stated || own?.usual
          ? { nominalV: nominalOfCharger(ownV), stated, usual: own?.usual, batteries }
          : undefined;
      }
      const each = batteries.map(({ index, systemV }) => charged.get(index) ?? { usual: usualAt(systemV) });
      return {
        nominalV: batteries.reduce((sumV, { systemV }) => sumV + systemV, 0),
        stated: higher([
          each.every(({ stated }) => stated) ? inSeries(each.map(({ stated }) => stated!)) : undefined,
          own?.stated,
          atRest(network, batteries),
        ]),
        usual: each.some(({ usual }) => usual)
          ? inSeries(each.map(({ stated, usual }) => higher([stated, usual])!))
          : own?.usual,
        batteries,
      };
    };
    return (terminals) => {
      const key = keyOf(terminals);
      if (!known.has(key)) known.set(key, find(terminals));
      return known.get(key);
    };
  },
);

type Both = Partial<Pick<HighestVoltage, "stated" | "usual">>;

function usualAt(systemV: number): ReachedVoltage {
  return { voltageV: (chargingVoltage.for12V * systemV) / 12, sources: [] };
}

function higher(reached: readonly (ReachedVoltage | undefined)[]): ReachedVoltage | undefined {
  return reached.reduce((best, one) => (one && one.voltageV > (best?.voltageV ?? 0) ? one : best), undefined);
}

function inSeries(reached: readonly ReachedVoltage[]): ReachedVoltage {
  return {
    voltageV: reached.reduce((sumV, { voltageV }) => sumV + voltageV, 0),
    sources: [...new Set(reached.flatMap(({ sources }) => sources))],
  };
}

/** Whether the plan states the voltage of a source; otherwise it is the usual one. */
function statesVoltage({ taken }: Part): boolean {
  return !taken?.includes("outputV");
}

function raise(both: Both | undefined, source: Part, voltageV: number): Both {
  const kind = statesVoltage(source) ? "stated" : "usual";
  return { ...both, [kind]: higher([both?.[kind], { voltageV, sources: [source] }]) };
}

/** By part: the greatest share of a battery in the voltages with which it is charged. */
function chargedVoltages(network: Network, { topology }: NetworkResult): ReadonlyMap<number, Both> {
  const found = new Map<number, Both>();
  for (const { source, outputV, batteries } of chargings(network, topology.banks)) {
    if (source.kind === "solarArray") continue;
    const nominalV = batteries.reduce((sumV, { systemV }) => sumV + systemV, 0);
    for (const { index, systemV } of batteries)
      found.set(index, raise(found.get(index), source, (outputV * systemV) / nominalV));
  }
  return found;
}

/** By the key of its poles: the voltage that a charger holds by itself. */
function givenVoltages(network: Network, keyOf: (terminals: Terminals) => string): ReadonlyMap<string, Both> {
  const found = new Map<string, Both>();
  for (const part of network.parts) {
    const port = portsOf(part).find(({ does }) => does === "feeds");
    if (port && isCharging(part) && "outputV" in part)
      found.set(keyOf(port), raise(found.get(keyOf(port)), part, part.outputV));
  }
  return found;
}

/** By the key of its ends: the voltage of a string of modules on the coldest day. */
function openCircuitVoltages(
  network: Network,
  keyOf: (terminals: Terminals) => string,
): ReadonlyMap<string, ReachedVoltage> {
  const found = new Map<string, ReachedVoltage>();
  for (const { string } of solarWiringOf(network)) {
    const [first, last] = [string[0]!, string.at(-1)!];
    const key = keyOf({ positive: last.terminals.positive, negative: first.terminals.negative });
    if (!found.has(key)) found.set(key, { voltageV: coldStringOf(string).coldV, sources: [first] });
  }
  return found;
}

/** The highest voltage at rest that a scenario states for batteries in series. */
function atRest({ scenarios }: Network, batteries: readonly BatteryPart[]): ReachedVoltage | undefined {
  return higher(
    scenarios.map(({ restV, restFrom }, scenario) =>
      batteries.some(({ index }) => restFrom[index] === "plan")
        ? {
            voltageV: batteries.reduce((sumV, { index }) => sumV + (restV[index] ?? 0), 0),
            sources: [],
            scenario,
          }
        : undefined,
    ),
  );
}

/** The fewest batteries in series that lead from one component up to another. */
function seriesOf(network: Network): (from: number, to: number) => readonly BatteryPart[] {
  const { componentOf } = networkGraph(network);
  const above = new Map<number, Map<number, BatteryPart>>();
  for (const part of network.parts) {
    if (part.kind !== "battery") continue;
    const [from, to] = [componentOf[part.terminals.negative]!, componentOf[part.terminals.positive]!];
    const there = above.get(from) ?? new Map<number, BatteryPart>();
    if (!there.has(to)) above.set(from, there.set(to, part));
  }
  return (from, to) => {
    const reached = new Map<number, readonly BatteryPart[]>([[from, []]]);
    for (const [component, batteries] of reached) {
      if (component === to) return batteries;
      for (const [next, battery] of above.get(component) ?? [])
        if (!reached.has(next)) reached.set(next, [...batteries, battery]);
    }
    return [];
  };
}
