import type { Network, NetworkConductor } from "../model/network.ts";
import type { Conductor, Run } from "../model/run.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { ampacityOf, sizeOf } from "./ampacity.ts";
import { portsOf } from "./network/topology/ports.ts";
import { supplyPathsOf } from "./network/worst-case-paths.ts";
import type { NetworkResult, SupplyPath } from "./network-result.ts";
import { resistanceAt } from "./resistance.ts";
import { dropOf, greatestDropPercent } from "./voltage-drop.ts";

/** A supply path in one scenario, and its allowed drop there. */
export interface WayDemand {
  readonly way: SupplyPath;
  readonly allowedV: number;
}

export interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/** By record of a run. */
export type Sizes = ReadonlyMap<number, Conductor>;

/** Drop allowed in the legs, at the present currents, V. */
export function allowedInLegs(judged: Judged, { way, allowedV }: WayDemand, legs: readonly Leg[]): number {
  const fixedV = way.dropV - sum(legs.map(({ dropV }) => dropV));
  const growth = drawsByResistance(judged, way)
    ? Math.max(1, (way.arrivingV + way.dropV - allowedV) / way.arrivingV)
    : 1;
  return (allowedV / growth) * withinRounding - fixedV;
}

/** The drop that a supply path's limit allows, V. */
export function allowedOn({ dropV, dropPercent, dropLimitPercent }: SupplyPath): number {
  return (dropV / dropPercent) * greatestDropPercent(dropLimitPercent);
}

/** The conductor at which a path is reported: that at the device's positive terminal; the last of the path if none is. */
export function placeOfPath(network: Network, { part, legs }: SupplyPath): NetworkConductor | undefined {
  const conductors = legs.flatMap(({ conductor }) => network.conductors[conductor] ?? []);
  const ends = Object.values(network.parts[part]?.terminals ?? {});
  return (
    conductors.find(
      ({ role, from, to }) => role !== "return" && (ends.includes(from) || ends.includes(to)),
    ) ?? conductors.at(-1)
  );
}

/** Maximum number of runs searched: beyond it, those with the least drop stay as they are, to bound the time of the search. */
const mostSearched = 12;

/** The drop of a supply path once some of its runs have another size, by record, V. */
export function dropWith(judged: Judged, way: SupplyPath, sizes: Sizes): number {
  const savedV = legsOf(judged, way).flatMap((leg) => {
    const conductor = sizes.get(leg.run.record);
    return conductor ? [leg.dropV - leg.dropAt(conductor)] : [];
  });
  return way.dropV - sum(savedV);
}

/**
 * The supply path of a device in a solved scenario; undefined if no bank feeds it there. One that draws only for a moment, such as the
 * starter motor of an engine, loses no voltage on its path in the result: its path is that of the moment.
 */
export function pathOfDevice(
  { network, result }: Judged,
  part: number,
  scenario: number,
): SupplyPath | undefined {
  const usual = usualPaths(result).get(part);
  const known = usual && pathIn(result, usual, scenario);
  const solved = result.scenarios[scenario];
  if (known || solved?.state !== "solved") return known;
  const paths = supplyPathsOf(network, result.topology, [solved]);
  return paths.find((way) => way.part === part && way.dropV > 0);
}

/** By part. */
const usualPaths = workedOutOnce(
  ({ supplyPaths }: NetworkResult) => new Map(supplyPaths.map((way) => [way.part, way])),
);

/** The same path in another solved scenario; undefined if no current flows on it there. */
function pathIn(result: NetworkResult, way: SupplyPath, scenario: number): SupplyPath | undefined {
  const [was, is] = [way.scenario, scenario].map((wanted) => result.scenarios[wanted]);
  if (was?.state !== "solved" || is?.state !== "solved") return undefined;
  const lostV = ({ conductorA, conductorOhm }: typeof is, conductor: number) =>
    (conductorA[conductor] ?? 0) * (conductorOhm[conductor] ?? 0);
  const legs = way.legs.map(({ conductor, dropV }) => {
    const before = lostV(was, conductor);
    return { conductor, dropV: before === 0 ? 0 : (dropV * lostV(is, conductor)) / before };
  });
  const before = sum(way.legs.map(({ dropV }) => dropV));
  const dropV = before === 0 ? 0 : (way.dropV * sum(legs.map((leg) => leg.dropV))) / before;
  if (!(dropV > 0)) return undefined;
  const dropPercent = (way.dropPercent * dropV) / way.dropV;
  return { ...way, scenario, dropV, dropPercent, arrivingV: way.arrivingV + way.dropV - dropV, legs };
}

/** Margin: a result exactly at the limit here is not above it when the whole network is solved again. */
const withinRounding = 1 - 1e-9;

/** A run of a path whose size affects the path's drop. */
export interface Leg {
  readonly run: Run;
  /** Its present share of the path's drop, V. */
  readonly dropV: number;
  /** The present current, A. */
  readonly currentA: number;
  /** The share with another conductor, at the present current, V. */
  dropAt(conductor: Conductor): number;
}

/**
 * The runs of a path that lose voltage; beyond {@link mostSearched}, those that lose the most. The drop in parts on the path (a shunt, a chassis) is in none of them. Currents are those of the path's
 * scenario: those of devices with constant power fall on the better path, so they cause less drop.
 */
export function legsOf({ network, result }: Judged, way: SupplyPath): readonly Leg[] {
  const solved = result.scenarios[way.scenario];
  const lostV = new Map<number, { dropV: number; run: Run; currentA: number }>();
  for (const { conductor, dropV } of way.legs) {
    const { record, run } = network.conductors[conductor] ?? {};
    // A leg with reversed current raises the voltage: making it thicker has no benefit.
    if (record === undefined || !run || !(dropV > 0)) continue;
    const currentA = solved?.state === "solved" ? Math.abs(solved.conductorA[conductor] ?? 0) : 0;
    const before = lostV.get(record);
    lostV.set(record, {
      run,
      dropV: dropV + (before?.dropV ?? 0),
      currentA: Math.max(currentA, before?.currentA ?? 0),
    });
  }
  const lost = [...lostV.values()];
  const worst = new Set(lost.toSorted((one, other) => other.dropV - one.dropV).slice(0, mostSearched));
  return lost
    .filter((leg) => worst.has(leg))
    .map(({ run, dropV, currentA }): Leg => {
      const ohm = (conductor: Conductor) => ohmAt(run, { conductor, currentA });
      const nowOhm = ohm(run.conductor);
      return { run, dropV, currentA, dropAt: (conductor) => (dropV * ohm(conductor)) / nowOhm };
    });
}

/** Resistance of the run per metre at its temperature at a current: only ratios of it are used. */
function ohmAt(
  run: Run,
  { conductor, currentA }: { readonly conductor: Conductor; readonly currentA: number },
): number {
  const known = ohmsAt(run, currentA);
  // A run keeps its number of wires in parallel.
  const size = sizeOf(conductor);
  let ohm = known.get(size);
  if (ohm === undefined) {
    const resized = { ...run, conductor, loadA: currentA };
    const { ohmPerM20C, resistanceAtC } = dropOf(resized, ampacityOf(resized));
    ohm = resistanceAt(ohmPerM20C, resistanceAtC) / conductor.parallel;
    known.set(size, ohm);
  }
  return ohm;
}

/** By size: the resistance at a current. Many paths share the runs near a bank; the last few currents of a run are kept. */
function ohmsAt(run: Run, currentA: number): Map<number | string, number> {
  const known = knownOhms(run);
  const ohms = known.get(currentA) ?? new Map<number | string, number>();
  if (known.size > mostCurrentsKept) known.clear();
  known.set(currentA, ohms);
  return ohms;
}

/** Our choice: about as many as there are scenarios. */
const mostCurrentsKept = 8;

const knownOhms = workedOutOnce((_: Run) => new Map<number, Map<number | string, number>>());

/** How many devices besides one are supplied over a run, in any scenario. */
export function otherDevicesOn(judged: Judged, record: number, part: number): number {
  const devices = devicesByRecord(judged).get(record);
  return devices === undefined || devices.first === part
    ? (devices?.count ?? 1) - 1
    : Math.max(1, devices.count - 1);
}

/** How many devices are supplied over a run, in any scenario. */
export function devicesOn(judged: Judged, record: number): number {
  return devicesByRecord(judged).get(record)?.count ?? 0;
}

interface Supplied {
  /** Part index. */
  readonly first: number;
  readonly count: number;
}

/** By record of a run. Cached: each finding needs a whole path. */
function devicesByRecord({ network, result }: Judged): ReadonlyMap<number, Supplied> {
  let devices = known.get(result);
  if (!devices) {
    devices = workOutDevices({ network, result });
    known.set(result, devices);
  }
  return devices;
}

const known = new WeakMap<NetworkResult, ReadonlyMap<number, Supplied>>();

function workOutDevices({ network, result }: Judged): ReadonlyMap<number, Supplied> {
  const devices = new Map<number, { first: number; count: number; last: number }>();
  // All paths of a part come one after the other.
  const add = (part: number, conductor: number) => {
    const record = network.conductors[conductor]?.record ?? -1;
    const there = devices.get(record);
    if (!there) devices.set(record, { first: part, count: 1, last: part });
    else if (there.last !== part) {
      there.count += 1;
      there.last = part;
    }
  };
  const withPath = new Set<number>();
  for (const { part, legs } of result.supplyPaths) {
    withPath.add(part);
    for (const { conductor } of legs) add(part, conductor);
  }
  // A device that is on only for a moment has no path of its own in the result.
  for (const part of network.parts) {
    if (withPath.has(part.index)) continue;
    for (const { positive, negative, does } of portsOf(part)) {
      if (does !== "draws") continue;
      for (const terminal of [positive, negative])
        for (const conductor of result.topology.wayFromSource(terminal)?.conductors ?? [])
          add(part.index, conductor);
    }
  }
  return devices;
}

/** Whether any load that is on in the path's scenario is a resistance. */
function drawsByResistance({ network }: Judged, way: SupplyPath): boolean {
  const known = drawingByResistance(network);
  let draws = known.get(way.scenario);
  if (draws === undefined) {
    const on = network.scenarios[way.scenario]?.on;
    draws = network.parts.some(
      (part) => part.kind === "load" && part.draws.as === "resistance" && on?.[part.index],
    );
    known.set(way.scenario, draws);
  }
  return draws;
}

/** By scenario, filled on demand: each path needs it. */
const drawingByResistance = workedOutOnce((_: Network) => new Map<number, boolean>());

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
