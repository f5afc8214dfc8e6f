import {
  type ConductorEnd,
  conductorWith,
  deviceInPart,
  type Network,
  type ProtectiveDevice,
} from "../model/network.ts";
import { type DevicePart, isDevice } from "../model/part-roles.ts";
import type { Conductor, Run } from "../model/run.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { ampacityOf } from "./ampacity.ts";
import type { ProtectionRange } from "./circuit-result.ts";
import { machineLimit } from "./machine-protection.ts";
import { madeRatings, nearestRatingAbove } from "./made-ratings.ts";
import { sizesAbove, sizesFrom } from "./made-sizes.ts";
import { isExpected, opensAtStart, startsThroughDevices } from "./motor-start.ts";
import { limitedReturns } from "./network/faults/thin-returns.ts";
import { endsAt } from "./network/topology/ends-at.ts";
import { conductorsAt, networkGraph } from "./network/topology/network-graph.ts";
import type { UnprotectedPath } from "./network/topology/network-topology.ts";
import { portsOf } from "./network/topology/ports.ts";
import type { NetworkResult } from "./network-result.ts";
import { permittedFuses } from "./permitted-fuse.ts";
import { greatestProtectingA } from "./protected-behind.ts";
import { bestRating, protectionRangeOfPart } from "./protection-range.ts";
import { withoutDust } from "./rounding-dust.ts";
import { isAccepted, type Sizing } from "./sizing.ts";
import { mayBecome } from "./terminal-size.ts";

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/** Limits for the rating of a device that do not follow from its own conductor and load. By record of its run or part, A. */
export interface RatingLimits {
  readonly mostA: ReadonlyMap<number, number>;
  readonly leastA: ReadonlyMap<number, number>;
}

/** With the demands of the devices, once repaired, on other runs. */
export interface RatingDemands extends RatingLimits {
  /** By record of a return: the rating of the device that must protect it, A. */
  readonly behindA: ReadonlyMap<number, number>;
}

/**
 * The most that its holder or panel position, a machine or device at its end and the conductors behind it permit for a device, and the least with which
 * it stays closed while a motor starts.
 */
export function ratingLimits(judged: Judged): RatingLimits {
  const { network, result } = judged;
  const mostA = new LeastByRecord(placeLimits(judged));
  network.conductors.forEach(({ record, near, far }, index) => {
    // Its own conductor may become thicker, those behind it do not.
    for (const device of [near, far])
      if (device) mostA.add(record, greatestProtectingA(judged, device.index, index));
  });
  for (const part of network.parts.filter(isDevice)) {
    const device = deviceInPart(network, part.index);
    if (device) mostA.add(part.record, greatestProtectingA(judged, device.index));
  }
  const leastA = new Map<number, number>();
  for (const start of startsThroughDevices(network, result)) {
    const { device } = start;
    const record = recordOf(network, device);
    if (isAccepted(acceptOf(network, device), "protection/starting-current")) continue;
    const enoughA = madeRatings(device.family).find(
      (ratingA) => !isExpected(opensAtStart({ ...start, device: { ...device, ratingA } })),
    );
    if (enoughA !== undefined) leastA.set(record, Math.max(leastA.get(record) ?? 0, enoughA));
  }
  return { mostA: mostA.values, leastA };
}

/** By record of its run or part, A: the most that its holder or panel position and a machine or device at its end permit. */
export const placeLimits = workedOutOnce(({ network }: Judged): ReadonlyMap<number, number> => {
  const mostA = new LeastByRecord();
  for (const part of network.parts) {
    if (part.kind !== "fusePanel" || part.branchRatedA === undefined) continue;
    for (const { record } of endsAt(network, part.terminals.branch)) mostA.add(record, part.branchRatedA);
  }
  network.conductors.forEach(({ record }, index) => {
    const limit = machineLimit(network, index);
    if (limit) mostA.add(record, limit.maxA);
  });
  for (const { maxFuseA, conductor, own } of permittedFuses(network)) {
    mostA.add(network.conductors[conductor]!.record, maxFuseA);
    if (own) mostA.add(recordOf(network, own), maxFuseA);
  }
  for (const part of network.parts.filter(isDevice)) {
    const holderA = deviceInPart(network, part.index)?.holderRatedA;
    if (holderA !== undefined) mostA.add(part.record, holderA);
  }
  return mostA.values;
});

/**
 * With the limits that follow from the repair of other conductors.
 *
 * A device that is too great for a conductor through which all of its current flows becomes smaller: as great as the conductor permits,
 * or, if that is too little for the current, as small as the current permits, and the conductor thick enough for it. A conductor that
 * would have to be thicker for a device of its own becomes as thick as the device before it asks, if that is no more. A return that is
 * too thin for the device of its positive becomes thicker, if that is within `mostAbove` made sizes of its present size or its need;
 * else that device becomes smaller, if it can. Conductors that lack a device of their own count as if they had one: returns are judged
 * by that.
 */
export function ratingDemands(
  judged: Judged,
  limits: RatingLimits,
  sizing: {
    /** The sizing of a run within these limits. */
    readonly sizingOf: (run: Run) => (Sizing & { readonly range: ProtectionRange }) | undefined;
    /** The same with a device of its own. */
    readonly withDevice: (run: Run) => Pick<Sizing, "conductor"> | undefined;
    /** The thinnest size for the load of a run. */
    readonly neededFor: (run: Run) => Conductor | undefined;
    readonly mostAbove: number;
  },
): RatingDemands {
  const { network, result } = judged;
  const { sizingOf, withDevice, neededFor, mostAbove } = sizing;
  const mostA = new LeastByRecord(limits.mostA);
  const behindA = new Map<number, number>();
  const demandBehind = (record: number, ratingA: number) =>
    behindA.set(record, Math.max(behindA.get(record) ?? 0, ratingA));
  const ampacityOn = (run: Run) => {
    const ampacity = ampacityOf({ ...run, conductor: sizingOf(run)?.conductor ?? run.conductor });
    return ampacity.judged ? ampacity.ampacityA : Number.POSITIVE_INFINITY;
  };
  /** The most that a run may carry on a conductor that is within the bound, A. */
  const mostOn = (run: Run) => {
    const needed = neededFor(run) ?? run.conductor;
    const from = sizesAbove(needed, run.conductor) > 0 ? needed : run.conductor;
    const within = sizesFrom(from).filter(
      (conductor) => sizesAbove(conductor, from) <= mostAbove && mayBecome(run, conductor),
    );
    const ampacity = ampacityOf({ ...run, conductor: within.at(-1) ?? from });
    return ampacity.judged ? ampacity.ampacityA : 0;
  };
  const isWithin = (run: Run, ratingA: number) => ratingA <= mostOn(run);
  const aimOf = (device: ProtectiveDevice): number => {
    const part = partOf(network, device);
    const aimA = part
      ? protectionRangeOfPart(judged, part).aimA
      : sizingOf(runOf(network, device))?.range.aimA;
    return Math.max(aimA ?? Number.POSITIVE_INFINITY, limits.leastA.get(recordOf(network, device)) ?? 0);
  };
  /** Its rating once it is repaired. */
  const futureOf = (device: ProtectiveDevice): number => {
    const sized = partOf(network, device) ? undefined : sizingOf(runOf(network, device));
    const ratingA = (isAtFarEnd(device) ? sized?.ratingFarEndA : sized?.ratingA) ?? device.ratingA;
    return Math.min(ratingA, mostA.values.get(recordOf(network, device)) ?? ratingA);
  };
  for (const [device, conductors] of inLineWithDevices(judged)) {
    const runs = [...conductors].map((index) => network.conductors[index]!.run);
    const leastA = Math.min(...runs.map(ampacityOn));
    const aimA = aimOf(device);
    const enoughA = nearestRatingAbove(aimA, device.family);
    if (enoughA === undefined || enoughA >= device.ratingA) {
      for (const run of runs) if (isWithin(run, futureOf(device))) demandBehind(run.record, futureOf(device));
      continue;
    }
    mostA.add(recordOf(network, device), Math.max(enoughA, leastA));
    for (const run of runs) if (ampacityOn(run) < enoughA) demandBehind(run.record, enoughA);
  }
  for (const path of result.topology.unprotected) {
    const device = leastOnWay(network, path);
    const { run } = network.conductors[path.conductor]!;
    const conductor = device && withDevice(run)?.conductor;
    if (!device || !conductor || sizesAbove(conductor, run.conductor) <= 0) continue;
    // On the size that goes with a device of its own, the one before it is enough.
    const ampacity = ampacityOf({ ...run, conductor });
    if (ampacity.judged && futureOf(device) <= ampacity.ampacityA) demandBehind(run.record, futureOf(device));
  }
  const asProtected = withDevices(
    judged,
    result.topology.unprotected.map(({ conductor, ends }) => ({
      ...{ conductor, ends },
      ratingA: Math.max(
        ampacityOn(network.conductors[conductor]!.run),
        behindA.get(network.conductors[conductor]!.record) ?? 0,
      ),
    })),
  );
  for (const { conductor, device } of limitedReturns(asProtected)) {
    const { run, record } = conductor;
    // One that is put in is as great as its conductor permits.
    const isNew = device.index >= network.devices.length;
    const ratingA = isNew ? device.ratingA : futureOf(device);
    const ownA = ampacityOn(run);
    if (ratingA <= ownA) continue;
    if (isWithin(run, ratingA)) {
      demandBehind(record, ratingA);
      continue;
    }
    // A new one is left to the repair that puts it in.
    if (isNew) continue;
    const aimA = aimOf(device);
    if (bestRating({ aimA, maxA: ownA }, device.family) !== undefined) {
      mostA.add(recordOf(network, device), ownA);
      continue;
    }
    const lesserA = bestRating({ aimA, maxA: mostOn(run) }, device.family);
    if (lesserA !== undefined) mostA.add(recordOf(network, device), lesserA);
    demandBehind(record, lesserA ?? ratingA);
  }
  return { mostA: mostA.values, leastA: limits.leastA, behindA };
}

/**
 * The conductors that a device is too great for and through which all of its current flows: those behind it that nothing else
 * protects, and those that end at it. The wires of a load get a device of their own.
 */
function inLineWithDevices(judged: Judged): ReadonlyMap<ProtectiveDevice, ReadonlySet<number>> {
  const { network, result } = judged;
  const inLine = new Map<ProtectiveDevice, Set<number>>();
  const add = (device: ProtectiveDevice, conductor: number) => {
    const { role } = network.conductors[conductor]!;
    if (role !== "cable" || !carriesAllOf(judged, device, conductor)) return;
    inLine.set(device, (inLine.get(device) ?? new Set()).add(conductor));
  };
  for (const path of result.topology.unprotected) {
    const device = leastOnWay(network, path);
    if (device) add(device, path.conductor);
  }
  for (const device of network.devices) {
    const part = partOf(network, device);
    if (!part) continue;
    for (const { index, run } of endsOf(network, part)) {
      const ampacity = ampacityOf(run);
      if (ampacity.judged && ampacity.ampacityA < device.ratingA) add(device, index);
    }
  }
  return inLine;
}

/** The conductors that end at a device of its own. */
export function endsOf(network: Network, { terminals }: DevicePart): readonly { index: number; run: Run }[] {
  const graph = networkGraph(network);
  return [terminals.line, terminals.load]
    .flatMap((terminal) => conductorsAt(graph, terminal))
    .map((index) => ({ index, run: network.conductors[index]!.run }));
}

/** The network with further devices in some of its conductors. Currents stay the same; only devices and conductors are changed. */
export function withDevices(
  judged: Judged,
  added: readonly {
    readonly conductor: number;
    readonly ends: readonly ConductorEnd[];
    readonly ratingA: number;
  }[],
): Judged {
  if (added.length === 0) return judged;
  const { network, result } = judged;
  const conductors = [...network.conductors];
  const devices = [...network.devices];
  for (const { conductor: index, ends, ratingA } of added) {
    for (const end of ends) {
      const place = { at: "conductor", conductor: index, end } as const;
      const device = { ratingA, writtenAs: "number", index: devices.length, place } as const;
      devices.push(device);
      conductors[index] = { ...conductors[index]!, [end]: device };
    }
  }
  return { network: { ...network, conductors, devices }, result };
}

/** The network with another rating of a device in a conductor. */
export function withRating({ network, result }: Judged, device: ProtectiveDevice, ratingA: number): Judged {
  const { place } = device;
  const changed = { ...device, ratingA };
  const devices = network.devices.with(device.index, changed);
  if (place.at !== "conductor") return { network: { ...network, devices }, result };
  const before = network.conductors[place.conductor]!;
  const conductors = network.conductors.with(place.conductor, { ...before, [place.end]: changed });
  return { network: { ...network, devices, conductors }, result };
}

/** The smallest of the devices on a path, which is nevertheless too large; those of the conductor itself left out. */
export function leastOnWay(network: Network, path: UnprotectedPath): ProtectiveDevice | undefined {
  return tooGreatOnWay(network, path).sort((one, other) => one.ratingA - other.ratingA)[0];
}

/** The devices on the path to a conductor that are rated above its ampacity; its own devices left out. */
export function tooGreatOnWay(
  { devices }: Network,
  { conductor, tooGreat }: UnprotectedPath,
): ProtectiveDevice[] {
  return tooGreat
    .flatMap((device) => devices[device] ?? [])
    .filter(({ place }) => place.at === "part" || place.conductor !== conductor);
}

/** Whether all of the current through a device flows through a conductor behind it. */
export function carriesAllOf(judged: Judged, device: ProtectiveDevice, conductor: number): boolean {
  // Without a solution only the least currents are known.
  if (judged.result.scenarios.some(({ state }) => state !== "solved")) return false;
  if (leadsToCharger(judged.network, conductor)) return false;
  const known = currentsThrough(judged);
  const throughA = known.get(device.index) ?? currentThroughDevice(judged, device);
  known.set(device.index, throughA);
  return withoutDust(throughA) <= flowIn(judged, conductor) * (1 + withinRounding);
}

/** The current of a charger is not that of the loads, however great each is. */
function leadsToCharger({ conductors, terminals, parts }: Network, index: number): boolean {
  const { from, to } = conductors[index]!;
  return [from, to].some((terminal) => {
    const part = parts[terminals[terminal]!.part];
    if (!part || part.kind === "battery") return false;
    return portsOf(part).some(({ positive, does }) => does !== "draws" && positive === terminal);
  });
}

/** By index of a device, filled on demand, A. */
const currentsThrough = workedOutOnce((_: Judged) => new Map<number, number>());

function currentThroughDevice(judged: Judged, device: ProtectiveDevice): number {
  const part = partOf(judged.network, device);
  if (part) {
    const { minA } = protectionRangeOfPart(judged, part);
    return Math.max(minA, ...endsOf(judged.network, part).map(({ index }) => flowIn(judged, index)));
  }
  const { place } = device;
  return place.at === "conductor" ? flowIn(judged, place.conductor) : Number.POSITIVE_INFINITY;
}

/** The greatest lasting current in a conductor, A. */
function flowIn({ network, result }: Judged, index: number): number {
  const { worst, design } = result.conductors[index] ?? {};
  return Math.max(worst?.currentA ?? 0, design?.currentA ?? 0, network.conductors[index]!.run.loadA);
}

/** The same current in two conductors differs in its last digits. */
const withinRounding = 1e-6;

/** The thinnest made size from that of the run on that may carry a current. */
export function thinnestCarrying(run: Run, currentA: number): Conductor | undefined {
  return sizesFrom(run.conductor).find((conductor) => {
    const ampacity = ampacityOf({ ...run, conductor });
    return mayBecome(run, conductor) && ampacity.judged && currentA <= ampacity.ampacityA;
  });
}

/** The part that a device is; undefined for one in a conductor. */
export function partOf({ parts }: Network, { place }: ProtectiveDevice): DevicePart | undefined {
  const part = place.at === "part" ? parts[place.part] : undefined;
  return part && isDevice(part) ? part : undefined;
}

export function isAtFarEnd({ place }: ProtectiveDevice): boolean {
  return place.at === "conductor" && place.end === "far";
}

function runOf(network: Network, device: ProtectiveDevice): Run {
  return conductorWith(network, device)!.run;
}

/** The record of the run or part that states a device. */
function recordOf(network: Network, device: ProtectiveDevice): number {
  return (conductorWith(network, device) ?? partOf(network, device))?.record ?? -1;
}

function acceptOf(network: Network, device: ProtectiveDevice): Pick<Run, "accept"> {
  return conductorWith(network, device)?.run ?? partOf(network, device) ?? { accept: {} };
}

/** Keeps the least value for each record. Infinity is no limit. */
class LeastByRecord {
  readonly values: Map<number, number>;

  constructor(values: ReadonlyMap<number, number> = new Map()) {
    this.values = new Map(values);
  }

  add(record: number, limitA: number): void {
    if (!Number.isFinite(limitA)) return;
    this.values.set(record, Math.min(this.values.get(record) ?? Number.POSITIVE_INFINITY, limitA));
  }
}
