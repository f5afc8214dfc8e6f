import type { Network, Part } from "../model/network.ts";
import { isConsumer } from "../model/part-roles.ts";
import { descriptorOf } from "../model/parts/index.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import type { LoadPurpose } from "../plan/load.ts";
import { networkGraph, reachedFrom } from "./network/topology/network-graph.ts";
import type { FaultResult } from "./network-result.ts";

/**
 * By part index: the use of a device, as the plan states it; else as its name shows it, or that of a conductor which ends at it: people
 * name these devices by their use, "bilge pump, aft" or "gas alarm".
 */
export const usesOf: (network: Network) => ReadonlyMap<number, LoadPurpose> = workedOutOnce((network) => {
  const uses = new Map<number, LoadPurpose>();
  const note = (part: Part | undefined, use: LoadPurpose | undefined) => {
    if (part && use && isConsumer(part) && !uses.has(part.index)) uses.set(part.index, use);
  };
  for (const part of network.parts) note(part, part.kind === "load" ? part.purpose : undefined);
  for (const part of network.parts) note(part, useIn(part.name));
  for (const { from, to, name } of network.conductors)
    for (const end of [from, to]) {
      const { part, name: terminal } = network.terminals[end]!;
      if (terminal === "positive") note(network.parts[part], useIn(name));
    }
  return uses;
});

/** The use that a name shows: a pump that a hand works is none that runs by itself. */
function useIn(name: string): LoadPurpose | undefined {
  // Most names show none: every edit asks for all of them.
  if (!/alarm|detector|bilge/i.test(name)) return undefined;
  const words = name.replace(/(?<=[a-z])(?=[A-Z])/g, " ").toLowerCase();
  if (/\b(alarms?|detectors?)\b/.test(words)) return "alarm";
  return /\bbilge\b.*\bpumps?\b/.test(words) && !/\bmanual\b/.test(words) ? "bilge pump" : undefined;
}

/** A bilge pump, and a switch that turns it off together with other devices. */
export interface SwitchedPump {
  readonly pump: Part;
  readonly mainSwitch: Part;
}

/** A switch of its own is no main switch: it stays on when the others are turned off. Of several switches, the one with the most devices behind it. */
export function pumpsBehindMainSwitches(network: Network): readonly SwitchedPump[] {
  const uses = usesOf(network);
  const pumps = network.parts.filter(({ index }) => uses.get(index) === "bilge pump");
  if (pumps.length === 0) return [];
  const graph = networkGraph(network);
  const poles = network.parts.flatMap((part) => (part.kind === "battery" ? [part.terminals.positive] : []));
  const reached = reachedFrom(graph, poles);
  const switches = network.parts.filter((part) => {
    const { opens, protects } = descriptorOf(part);
    return opens === "by hand" && !protects;
  });
  const cutOff = switches.map((mainSwitch) => {
    const left = reachedFrom(graph, poles, ({ part }) => part !== mainSwitch.index);
    const lost = network.parts.filter(
      (part) =>
        isConsumer(part) && reached.has(part.terminals.positive) && !left.has(part.terminals.positive),
    );
    return { mainSwitch, lost };
  });
  const shared = cutOff
    .filter(({ lost }) => lost.some(({ index }) => uses.get(index) !== "bilge pump"))
    .sort((one, other) => other.lost.length - one.lost.length);
  return pumps.flatMap((pump) => {
    const off = shared.find(({ lost }) => lost.includes(pump));
    return off ? [{ pump, mainSwitch: off.mainSwitch }] : [];
  });
}

/** An alarm, and the device that also protects other devices. */
export interface SharedAlarm {
  readonly alarm: Part;
  /** Index in the network's devices. */
  readonly device: number;
  /** Other devices behind it, in the order of the plan; never empty. Alarms on one fuse share it among themselves only. */
  readonly others: readonly Part[];
}

export function alarmsOnSharedDevices(network: Network, faults: FaultResult): readonly SharedAlarm[] {
  const uses = usesOf(network);
  const alarms = network.parts.filter(({ index }) => uses.get(index) === "alarm");
  if (alarms.length === 0) return [];
  const fed = new Map<number, { readonly device: number; readonly others: readonly Part[] }>();
  // Devices of one zone have the same conductors behind them: these are looked at once.
  for (const [behind, device] of new Map(faults.devices.map((one) => [one.behind, one.device] as const))) {
    const consumers = consumersAt(network, behind);
    const others = consumers.filter(({ index }) => uses.get(index) !== "alarm");
    for (const { index } of consumers) if (!fed.has(index)) fed.set(index, { device, others });
  }
  return alarms.flatMap((alarm): SharedAlarm[] => {
    const found = fed.get(alarm.index);
    return found && found.others.length > 0 ? [{ alarm, ...found }] : [];
  });
}

/** The devices at which these conductors end, other than returns, in the order of the plan. */
function consumersAt({ conductors, terminals, parts }: Network, of: readonly number[]): readonly Part[] {
  const indices = of.flatMap((index) => {
    const { from, to, role } = conductors[index]!;
    return role === "return" ? [] : [terminals[from]!.part, terminals[to]!.part];
  });
  return [...new Set(indices)]
    .sort((one, other) => one - other)
    .flatMap((index) => {
      const part = parts[index]!;
      return isConsumer(part) ? [part] : [];
    });
}
