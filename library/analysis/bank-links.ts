import type { BatteryPart, Network, NetworkConductor, ProtectiveDevice } from "../model/network.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { ampacityOf } from "./ampacity.ts";
import type { Ampacity } from "./circuit-result.ts";
import { groupedBy } from "./grouped-by.ts";
import { endsAt, mountedAt } from "./network/topology/ends-at.ts";
import type { Bank } from "./network/topology/network-topology.ts";
import { batteryStrings, polesOf } from "./network/topology/parallel-strings.ts";

/** The conductors between the batteries of a bank, and the fuses next to it. */
export interface BankLinks {
  readonly links: readonly Link[];
  /** The fuse or breaker of the greatest rating next to the bank; undefined if it has none. */
  readonly fuse: ProtectiveDevice | undefined;
  /** Strings that links connect in parallel; none if they meet at bus bars: their conductors are judged like any other. */
  readonly strings: readonly StringEnd[];
  /** Those without a fuse that connect the middle of a string with the middle of another. */
  readonly middles: readonly NetworkConductor[];
}

export interface Link {
  readonly conductor: NetworkConductor;
  readonly ampacity: Ampacity;
}

interface StringEnd {
  /** The battery with the positive terminal of the string. */
  readonly top: BatteryPart;
  /** A fuse or breaker in every conductor at one of the string's ends. */
  readonly hasOwnFuse: boolean;
}

/** Of every bank of more than one battery. */
export function bankLinksOf(network: Network, banks: readonly Bank[]): readonly BankLinks[] {
  const isPole = (terminal: number) => network.parts[network.terminals[terminal]!.part]!.kind === "battery";
  const isLink = ({ from, to }: NetworkConductor) => isPole(from) && isPole(to);
  const isParallel = ({ from, to }: NetworkConductor) =>
    network.terminals[from]!.name === network.terminals[to]!.name;
  const strings = batteryStrings(network, banks);
  return banks.flatMap(({ batteries }, bank): BankLinks[] => {
    if (batteries.length < 2) return [];
    const found = new Set<NetworkConductor>();
    const devices: ProtectiveDevice[] = [];
    for (const index of batteries) {
      const { terminals } = network.parts[index] as BatteryPart;
      for (const pole of [terminals.positive, terminals.negative]) {
        for (const conductor of endsAt(network, pole)) {
          if (isLink(conductor)) found.add(conductor);
          else devices.push(...devicesNear(network, conductor));
        }
        devices.push(...mountedAt(network, pole).flatMap((part) => deviceOf(network, part.index)));
      }
    }
    const ofBank = strings.filter((string) => string.bank === bank);
    const outer = new Set(ofBank.flatMap((string) => Object.values(polesOf(string))));
    const ends = ofBank.map((string): StringEnd => {
      const { positive, negative } = polesOf(string);
      const hasOwnFuse = isFused(network, positive) || isFused(network, negative);
      return { top: string.batteries.at(-1)!, hasOwnFuse };
    });
    return [
      {
        links: [...found].map((conductor) => ({ conductor, ampacity: ampacityOf(conductor.run) })),
        fuse: devices.toSorted((one, other) => other.ratingA - one.ratingA)[0],
        strings: ends.length > 1 && [...found].some(isParallel) ? ends : [],
        middles: [...found].filter(
          (link) =>
            isParallel(link) && !link.near && !link.far && !outer.has(link.from) && !outer.has(link.to),
        ),
      },
    ];
  });
}

/** The devices in a conductor, or the device in which it ends. */
function devicesNear(network: Network, { near, far, from, to }: NetworkConductor): ProtectiveDevice[] {
  const inIt = [near, far].filter((device) => device !== null && device !== undefined);
  if (inIt.length > 0) return inIt;
  return [from, to].flatMap((end) => deviceOf(network, network.terminals[end]!.part));
}

function deviceOf(network: Network, part: number): readonly ProtectiveDevice[] {
  return devicesByPart(network).get(part) ?? [];
}

const devicesByPart = workedOutOnce(({ devices }: Network) =>
  groupedBy(devices, ({ place }) => (place.at === "part" ? place.part : undefined)),
);

/** Whether no conductor leaves the terminal without a fuse or breaker. */
function isFused(network: Network, terminal: number): boolean {
  const leaving = endsAt(network, terminal);
  const areFused = leaving.every((conductor) => devicesNear(network, conductor).length > 0);
  return areFused && leaving.length + mountedAt(network, terminal).length > 0;
}
