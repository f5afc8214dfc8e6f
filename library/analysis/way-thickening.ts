import type { Network } from "../model/network.ts";
import type { Conductor, Run } from "../model/run.ts";
import { ampacityOf } from "./ampacity.ts";
import { copperMm2M } from "./copper-area.ts";
import { type LegChoices, leastCopper } from "./least-copper.ts";
import { sizesAbove, sizesFrom } from "./made-sizes.ts";
import { portsOf } from "./network/topology/ports.ts";
import type { NetworkResult, SupplyPath } from "./network-result.ts";
import { dropOf } from "./voltage-drop.ts";
import { workedOutOnce } from "./worked-out-once.ts";

/** Conductors to make thicker so that a way from the bank loses no more than it may. */
export interface Thickening {
  /** At least one. In the order of the way, each run once though both of its conductors lie on it. */
  readonly runs: readonly ThickerRun[];
  /** Something else than this way's device hangs on one of them too. */
  readonly touchesOthers: boolean;
  readonly addedMm2M: number;
}

interface ThickerRun {
  readonly run: Run;
  readonly conductor: Conductor;
}

/** A way, in one scenario, and what it may lose there. */
export interface WayDemand {
  readonly way: SupplyPath;
  readonly allowedV: number;
}

/**
 * The least added copper that brings a way within what it may lose. `least` looks at all runs of the way, `own` only at those
 * on which nothing else hangs, and is the same where that is the least. Undefined where no made sizes are enough.
 *
 * Several demands are the same way in several scenarios: the hardest is met with the least copper, then the others on top.
 * `atLeast`: by record, a size that the run must have in any case.
 *
 * Never a thinner conductor; same system, same number of wires in parallel. What is lost in parts on the way (a shunt, a
 * chassis) stays. Currents are taken as they are in the way's scenario: those of devices with constant power get smaller on
 * the better way, so they lose less; where a constant resistance draws, they are taken as much greater as the voltage rises.
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

/** What is left for the legs, at the currents that flow now, V. */
function allowedInLegs(judged: Judged, { way, allowedV }: WayDemand, legs: readonly Leg[]): number {
  const fixedV = way.dropV - sum(legs.map(({ dropNowV }) => dropNowV));
  const growth = drawsByResistance(judged, way)
    ? Math.max(1, (way.arrivingV + way.dropV - allowedV) / way.arrivingV)
    : 1;
  return (allowedV / growth) * withinRounding - fixedV;
}

/** What a way may lose by its limit, V. */
export function allowedOn({ dropV, dropPercent, dropLimitPercent }: SupplyPath): number {
  return (dropV / dropPercent) * dropLimitPercent;
}

/** Beyond this many runs, those that lose the least stay as they are, so that no plan keeps the search busy for long. */
const mostSearched = 12;

/** What a way loses once some of its runs have another size, by record, V. */
export function dropWith(judged: Judged, way: SupplyPath, sizes: Sizes): number {
  const savedV = legsOf(judged, way, sizes).map(
    ({ dropNowV, choices }) => dropNowV - (choices[0]?.dropV ?? 0),
  );
  return way.dropV - sum(savedV);
}

/** The same way in another scenario that was solved; undefined where nothing flows on it there. */
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

/** Exactly the limit by this search is not above it when the whole network is worked out again. */
const withinRounding = 1 - 1e-9;

/** A run of the way that can be made thicker. */
interface Leg extends LegChoices {
  readonly run: Run;
  readonly shared: boolean;
  /** Beside each choice. */
  readonly conductors: readonly Conductor[];
  readonly dropNowV: number;
}

function legsOf({ network, result }: Judged, way: SupplyPath, atLeast: Sizes): readonly Leg[] {
  const solved = result.scenarios[way.scenario];
  const lostV = new Map<number, { dropV: number; run: Run; currentA: number }>();
  for (const { conductor, dropV } of way.legs) {
    const { record, run } = network.conductors[conductor] ?? {};
    // A leg in which the current flows the other way raises the voltage: nothing is won by making it thicker.
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

/** Of the whole run at the temperature that it gets at its current: only what it is compared with counts. */
function ohmAt(run: Run): number {
  return dropOf(run, ampacityOf(run)).roundTripOhm;
}

/** Whether another device than the way's own hangs on a run too, in whatever scenario. */
function isShared(judged: Judged, way: SupplyPath, record: number): boolean {
  const on = devicesByRecord(judged).get(record);
  return on !== undefined && on !== way.part;
}

const several = -1;

/** By record of a run: the device that hangs on it, or that there are {@link several}. Each finding asks for a whole way. */
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
  // A device that is on only for a moment has no way of its own in the result.
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

/** Whether any load that is on in the way's scenario is a resistance. */
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

/** By scenario, as far as they were asked for: each way asks. */
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
