import type { Network } from "../model/network.ts";
import type { Conductor, Run } from "../model/run.ts";
import { ampacityOf } from "./ampacity.ts";
import { copperMm2M } from "./copper-area.ts";
import { type LegChoices, leastCopper } from "./least-copper.ts";
import { sizesAbove, sizesFrom } from "./made-sizes.ts";
import { portsOf } from "./network/topology/ports.ts";
import type { NetworkResult, SupplyPath } from "./network-result.ts";
import { dropOf, greatestDropPercent } from "./voltage-drop.ts";
import { workedOutOnce } from "./worked-out-once.ts";

/** Conductors to make thicker to bring a supply path's drop within its limit. */
export interface Thickening {
  /** Non-empty, in path order; each run appears once even if both its conductors are on the path. */
  readonly runs: readonly ThickerRun[];
  /** Another device than this path's own is supplied over one of them too. */
  readonly touchesOthers: boolean;
  readonly addedMm2M: number;
}

interface ThickerRun {
  readonly run: Run;
  readonly conductor: Conductor;
}

/** A supply path in one scenario, and its allowed drop there. */
export interface WayDemand {
  readonly way: SupplyPath;
  readonly allowedV: number;
}

/**
 * The least added copper that brings a supply path within its allowed drop. `least` considers all runs of the path, `own` only
 * those that supply no other device, and is the same if that is the least. Undefined if no made sizes are enough.
 *
 * Several demands are the same path in several scenarios: the hardest is met with the least copper, then the others on top.
 * `atLeast`: by record, a size that the run must have in any case.
 *
 * Never a thinner conductor; same system, same number of wires in parallel. The drop in parts on the path (a shunt, a
 * chassis) stays. Currents are those of the path's scenario: those of devices with constant power fall on the better path,
 * so they cause less drop; those of constant resistances are assumed to grow in proportion to the voltage.
 */
export function thickeningOf(
  judged: Judged,
  demands: readonly WayDemand[],
  atLeast: Sizes = new Map(),
): { readonly least: Thickening | undefined; readonly own: Thickening | undefined } {
  const hardestFirst = demands.toSorted(
    (one, other) => other.way.dropV * one.allowedV - one.way.dropV * other.allowedV,
  );
  const least = sizesFor(judged, hardestFirst, { atLeast, mayChange: () => true });
  const own =
    least?.touchesOthers === true
      ? sizesFor(judged, hardestFirst, { atLeast, mayChange: ({ shared }) => !shared })
      : least;
  return { least, own };
}

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/** By record of a run. */
type Sizes = ReadonlyMap<number, Conductor>;

function sizesFor(
  judged: Judged,
  demands: readonly WayDemand[],
  { atLeast, mayChange }: { readonly atLeast: Sizes; readonly mayChange: (leg: Leg) => boolean },
): Thickening | undefined {
  const sizes = new Map(atLeast);
  const runs = new Map<number, Leg>();
  for (const demand of demands) {
    const legs = legsOf(judged, demand.way, sizes);
    const taken = leastCopper(
      legs.map((leg) => (mayChange(leg) ? leg : { choices: leg.choices.slice(0, 1) })),
      allowedInLegs(judged, demand, legs),
    );
    if (!taken) return undefined;
    legs.forEach((leg, index) => {
      const conductor = leg.conductors[taken[index] ?? 0];
      if (conductor) sizes.set(leg.run.record, conductor);
      runs.set(leg.run.record, leg);
    });
  }
  return thickeningBy([...runs.values()], sizes);
}

/** Drop allowed in the legs, at the present currents, V. */
function allowedInLegs(judged: Judged, { way, allowedV }: WayDemand, legs: readonly Leg[]): number {
  const fixedV = way.dropV - sum(legs.map(({ dropNowV }) => dropNowV));
  const growth = drawsByResistance(judged, way)
    ? Math.max(1, (way.arrivingV + way.dropV - allowedV) / way.arrivingV)
    : 1;
  return (allowedV / growth) * withinRounding - fixedV;
}

/** The drop that a supply path's limit allows, V. */
export function allowedOn({ dropV, dropPercent, dropLimitPercent }: SupplyPath): number {
  return (dropV / dropPercent) * greatestDropPercent(dropLimitPercent);
}

/** Maximum number of runs searched: beyond it, those with the least drop stay as they are, to bound the time of the search. */
const mostSearched = 12;

/** The drop of a supply path once some of its runs have another size, by record, V. */
export function dropWith(judged: Judged, way: SupplyPath, sizes: Sizes): number {
  const savedV = legsOf(judged, way, sizes).map(
    ({ dropNowV, choices }) => dropNowV - (choices[0]?.dropV ?? 0),
  );
  return way.dropV - sum(savedV);
}

/** The same path in another solved scenario; undefined if no current flows on it there. */
export function pathIn(result: NetworkResult, way: SupplyPath, scenario: number): SupplyPath | undefined {
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

/** A run of the path that can be made thicker. */
interface Leg extends LegChoices {
  readonly run: Run;
  readonly shared: boolean;
  /** The conductor of each choice. */
  readonly conductors: readonly Conductor[];
  readonly dropNowV: number;
}

function legsOf({ network, result }: Judged, way: SupplyPath, atLeast: Sizes): readonly Leg[] {
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
      const conductors = sizesFrom(atLeast.get(run.record) ?? run.conductor);
      const ohm = (conductor: Conductor) => ohmAt({ ...run, conductor, loadA: currentA });
      const nowOhm = ohm(run.conductor);
      return {
        run,
        shared: isShared({ network, result }, way, run.record),
        conductors,
        dropNowV: dropV,
        choices: conductors.map((conductor) => ({
          copperMm2M: copperMm2M(run, conductor),
          dropV: (dropV * ohm(conductor)) / nowOhm,
        })),
      };
    });
}

/** Resistance of the whole run at its temperature at its current: only ratios of it are used. */
function ohmAt(run: Run): number {
  return dropOf(run, ampacityOf(run)).roundTripOhm;
}

/** Whether a run supplies another device than the path's own too, in any scenario. */
function isShared(judged: Judged, way: SupplyPath, record: number): boolean {
  const on = devicesByRecord(judged).get(record);
  return on !== undefined && on !== way.part;
}

const several = -1;

/** By record of a run: the device that it supplies, or {@link several}. Cached: each finding needs a whole path. */
function devicesByRecord({ network, result }: Judged): ReadonlyMap<number, number> {
  let devices = known.get(result);
  if (!devices) {
    devices = workOutDevices({ network, result });
    known.set(result, devices);
  }
  return devices;
}

const known = new WeakMap<NetworkResult, ReadonlyMap<number, number>>();

function workOutDevices({ network, result }: Judged): ReadonlyMap<number, number> {
  const devices = new Map<number, number>();
  const hangs = (part: number, conductor: number) => {
    const record = network.conductors[conductor]?.record ?? -1;
    const before = devices.get(record);
    if (before === undefined) devices.set(record, part);
    else if (before !== part) devices.set(record, several);
  };
  for (const { part, legs } of result.supplyPaths) for (const { conductor } of legs) hangs(part, conductor);
  // A device that is on only for a moment has no path of its own in the result.
  for (const part of network.parts) {
    for (const { positive, negative, does } of portsOf(part)) {
      if (does !== "draws") continue;
      for (const terminal of [positive, negative])
        for (const conductor of result.topology.wayFromSource(terminal)?.conductors ?? [])
          hangs(part.index, conductor);
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

function thickeningBy(legs: readonly Leg[], sizes: Sizes): Thickening | undefined {
  const changed = legs.flatMap(({ run, shared }) => {
    const conductor = sizes.get(run.record);
    if (!conductor || sizesAbove(conductor, run.conductor) === 0) return [];
    return [
      { run, conductor, shared, addedMm2M: copperMm2M(run, conductor) - copperMm2M(run, run.conductor) },
    ];
  });
  if (changed.length === 0) return undefined;
  return {
    runs: changed.map(({ run, conductor }) => ({ run, conductor })),
    touchesOthers: changed.some(({ shared }) => shared),
    addedMm2M: sum(changed.map(({ addedMm2M }) => addedMm2M)),
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
