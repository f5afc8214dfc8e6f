import { usesOf } from "../../analysis/device-uses.ts";
import type { Bank } from "../../analysis/network/topology/network-topology.ts";
import { type AlwaysOn, switchedBehind } from "../../analysis/network/topology/switched.ts";
import type { Network, NetworkConductor, Part } from "../../model/network.ts";
import { batteryDisconnect, batteryMasterSwitch } from "../../standards/protection-rules.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import {
  atEnd,
  atPart,
  listInWords,
  partInWords,
  relatedConductor,
  relatedPart,
} from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const disconnectMissing = defineRule<Values>({
  id: "disconnect/missing",
  title: "No disconnect between bank and loads",
  severity: "warning",
  why: "If something smokes, anyone must be able to cut the bank off at once, without a tool and without knowing the wiring.",
  sources: [batteryDisconnect, batteryMasterSwitch],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the loads that each bank reaches with every disconnect open. Information if only some of them cannot be cut off, and none
  // of those is an inverter.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      result.topology.banks
        .flatMap((bank) => findings(network, bank))
        // A circuit that could not be read may be behind a disconnect.
        .filter(({ values: { all } }) => !all || plan.model.withoutCircuits.length === 0),
    ),
  message: ({ loads, all, source }) =>
    all
      ? `This bank has no disconnect before ${loads}, so it cannot be cut off by hand: put one near it (${source}).`
      : `Leaves the bank ahead of every disconnect, so ${loads} cannot be cut off by hand: start it behind one, unless it has to stay on (${source}).`,
});

interface Values {
  /** The loads that cannot be cut off. */
  readonly loads: string;
  /** None of the bank's loads can be cut off. */
  readonly all: boolean;
  readonly source: string;
}

function findings(network: Network, bank: Bank): Found<Values>[] {
  const { always, anySwitched } = switchedBehind(network, bank);
  const source = sourceInWords(batteryDisconnect);
  const battery = network.parts[bank.batteries[0] ?? -1];
  if (always.length === 0 || !battery) return [];
  if (!anySwitched)
    return [
      {
        subject: battery.name,
        at: atPart(battery),
        values: { loads: inWords(always), all: true, source },
        related: [...byConductor(network, always).keys()]
          .slice(0, mostRelated)
          .map((conductor) => relatedConductor(conductor)),
      },
    ];
  const batteries = new Set(bank.batteries);
  return [...byConductor(network, always)].flatMap(([conductor, behind]): Found<Values>[] => {
    if (behind.every(({ part }) => mayStayOn(network, part))) return [];
    const fromBank = network.terminals[conductor.from]?.part;
    return [
      {
        subject: conductor.name,
        at: atEnd(conductor, batteries.has(fromBank ?? -1) ? "from" : "to"),
        ...(!behind.some(({ part }) => part.kind === "inverter") && { severity: "info" as const }),
        values: { loads: inWords(behind), all: false, source },
        related: [relatedPart(battery)],
      },
    ];
  });
}

/** Critical loads, bilge pumps and alarms are often meant to stay on: not reported. */
function mayStayOn(network: Network, part: Part): boolean {
  const use = usesOf(network).get(part.index);
  return (part.kind === "load" && part.critical) || use === "bilge pump" || use === "alarm";
}

const mostRelated = 16;

/** The loads behind each conductor that leaves the bank. */
function byConductor(
  network: Network,
  always: readonly AlwaysOn[],
): ReadonlyMap<NetworkConductor, AlwaysOn[]> {
  const map = new Map<NetworkConductor, AlwaysOn[]>();
  for (const on of always) {
    const conductor = network.conductors[on.leavesBy];
    const there = conductor && map.get(conductor);
    if (there) there.push(on);
    else if (conductor) map.set(conductor, [on]);
  }
  return map;
}

function inWords(always: readonly AlwaysOn[]): string {
  return listInWords(always.map(({ part }) => partInWords(part)));
}
