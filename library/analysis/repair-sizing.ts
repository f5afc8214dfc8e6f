import { conductorWith, type Network, type ProtectiveDevice } from "../model/network.ts";
import type { Conductor, Run } from "../model/run.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { ampacityOf } from "./ampacity.ts";
import { analyseCircuit } from "./analyse-circuit.ts";
import { byName } from "./by-name.ts";
import type { ProtectionRange } from "./circuit-result.ts";
import { copperMm2M } from "./copper-area.ts";
import { deviceVoltages, isBelow } from "./device-voltage.ts";
import { feedPairs } from "./feed-pairs.ts";
import { groupedBy } from "./grouped-by.ts";
import { type DropLimit, type JointChoice, type JointProblem, leastCopperTogether } from "./joint-sizing.ts";
import { nearestMadeRating } from "./made-ratings.ts";
import { madeSizes, sizesAbove, sizesFrom } from "./made-sizes.ts";
import { thinReturns } from "./network/faults/thin-returns.ts";
import { endsAt } from "./network/topology/ends-at.ts";
import type { NetworkResult } from "./network-result.ts";
import { protectionRangeOfPart } from "./protection-range.ts";
import {
  carriesAllOf,
  endsOf,
  isAtFarEnd,
  partOf,
  placeLimits,
  type RatingDemands,
  type RatingLimits,
  ratingDemands,
  ratingLimits,
  thinnestCarrying,
  withRating,
} from "./rating-demands.ts";
import { withoutDust } from "./rounding-dust.ts";
import {
  type FurtherNeeds,
  isAccepted,
  rangeWith,
  type Sizing,
  thinnestForLoad,
  thinnestSufficient,
} from "./sizing.ts";
import { solarNeedsByRecord } from "./solar-wiring.ts";
import { supplyNeedsByRecord } from "./supply-current.ts";
import {
  allowedInLegs,
  allowedOn,
  devicesOn,
  type Leg,
  legsOf,
  otherDevicesOn,
  pathOfDevice,
  placeOfPath,
  type WayDemand,
} from "./supply-path-drop.ts";
import { fitsTerminals } from "./terminal-size.ts";
import { meetsDropLimit } from "./voltage-drop.ts";

/** The sizes and ratings that a whole plan should have: a conductor gets one size, whichever finding asks for it. */
export interface RepairSizing {
  /** Of one run, with all that it carries and all supply paths on which it is. Undefined: no made size is enough. */
  ofRun(run: Run): RunSizing | undefined;
  /**
   * The sizing of a run whose device would need a rating that conductors behind it do not allow, if all of its current flows through those:
   * each of them then becomes as thick as the device asks, within {@link mostAboveNeed} made sizes. Undefined: there is none, or it
   * is not needed.
   */
  withThoseBehind(run: Run): SizingWithOthers | undefined;
  /** The same with a conductor on which a device can be put in at each end. */
  withDevices(run: Run): RunSizing | undefined;
  /**
   * The rating of a device that every rule accepts, nearest to the stated one: of one in a conductor with the sizing of its run.
   * Undefined: no made rating is accepted.
   */
  ratingOf(device: ProtectiveDevice): number | undefined;
  /** Of the runs on the way to a part, to keep limits of some kinds. */
  ofPath(part: number, kinds: readonly LimitKind[]): PathSizings;
  /** The sizes that paths leave to choose, as they were put to the search: for another solver. Undefined outside a network. */
  problem(): PathProblem | undefined;
}

/** The drop that a path may have, and the voltage that its device needs: in operation, and while a motor starts. */
export type LimitKind = "drop" | "lasting voltage" | "momentary voltage";

/** The sizing of a run that puts every finding about it in order. */
export interface RunSizing extends Sizing {
  readonly run: Run;
  /** The ratings that carry all its currents and protect that conductor. */
  readonly range: ProtectionRange;
  /** It is more than {@link mostAboveNeed} made sizes above its own need: nothing thinner meets a limit. */
  readonly beyondNeed: boolean;
  /** The most that the place of its device permits, A, if a rating here is greater: the device belongs elsewhere. */
  readonly placeA?: number | undefined;
}

/** The sizing of a run, and the other runs that become thicker with it. Never empty. */
interface SizingWithOthers {
  readonly sizing: RunSizing;
  readonly others: readonly { readonly run: Run; readonly conductor: Conductor }[];
}

export interface PathSizings {
  /** As part of the sizes for the whole plan. Undefined: no limit is exceeded, or no made sizes are enough. */
  readonly least?: PathSizing | undefined;
  /**
   * If that changes conductors on which other devices are: a way out that leaves them as they are, within the cap. Undefined if
   * there is none.
   */
  readonly alone?: PathSizing | undefined;
  /** Other devices lose too much over one of the conductors that {@link least} changes for several: their loss has one cause. */
  readonly isSharedNeed?: boolean;
}

/** The runs to make thicker to bring a supply path's drop within its limits. */
export interface PathSizing {
  /** In path order; each run once even if both its conductors are on the path. Never empty. */
  readonly runs: readonly RunSizing[];
  /** The number of other devices that are supplied over one of them. */
  readonly otherDevices: number;
}

/** The parts of a judged plan from which sizes follow. */
export interface SizedPlan {
  readonly circuits: readonly { readonly circuit: Run }[];
  readonly network: Judged | undefined;
}

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/**
 * The number of made sizes by which a repair may exceed a run's own need. A bound of this project: no source gives one.
 */
export const mostAboveNeed = 2;

/**
 * Sizes a plan as a whole; worked out once for each.
 *
 * Each run first gets the size and the ratings that its own load needs ({@link thinnestSufficient}). If a supply path still
 * loses too much, its runs become thicker: all paths together with the least copper ({@link leastCopperTogether}), and none more
 * than {@link mostAboveNeed} made sizes above its own need unless nothing else meets the limit. Never a thinner conductor than the
 * plan has; same system, same number of wires in parallel.
 */
export const repairSizing: (plan: SizedPlan) => RepairSizing = workedOutOnce((plan) =>
  sizingOfPlan(plan, { acceptedToo: false }),
);

/** The same as if the builder had accepted no finding: the way out of one that is accepted. */
export const sizingWithoutAcceptance: (plan: SizedPlan) => RepairSizing = workedOutOnce((plan) =>
  sizingOfPlan(plan, { acceptedToo: true }),
);

interface Acceptance {
  /** Accepted findings make demands too. */
  readonly acceptedToo: boolean;
}

function sizingOfPlan(plan: SizedPlan, acceptance: Acceptance): RepairSizing {
  const needs = ownNeedsOf(plan, acceptance);
  const { network: judged } = plan;
  const problem = lazily(() => judged && pathProblem(judged, needs, exceededLimits(judged, acceptance)));
  const solved = lazily(() => {
    const paths = problem();
    return paths && judged && solvedPaths(judged, paths);
  });
  const sizeOn = (solution: SolvedPaths | undefined) => (run: Run) =>
    needs.sizingOf(run, solution?.sizes.get(run.record));
  /**
   * A size beyond the need of a run is left to the path for which it is: another finding about the run does not ask for it. Nor does it ask
   * for the share that a device's own run, or one of the two of a feed, has in an offer, which helps only together with the others.
   */
  const withinNeed = (run: Run): JointSize | undefined => {
    const joint = solved()?.sizes.get(run.record);
    if (joint && judged && !solved()!.isForRepairs(run.record)) {
      const isShare = devicesOn(judged, run.record) === 1 || feedPairs(judged).has(run.record);
      if (isShare) return undefined;
    }
    return joint?.beyondNeed ? joint.within && { conductor: joint.within, beyondNeed: false } : joint;
  };
  const sizeWithinNeed = (run: Run) => needs.sizingOf(run, withinNeed(run));
  const ratings = new Map<number, { readonly ratingA: number | undefined }>();
  return {
    problem,
    ofRun: sizeWithinNeed,
    ratingOf(device) {
      if (!judged) return undefined;
      const known = ratings.get(device.index) ?? {
        ratingA: ratingOf(judged, device, needs.demands(), sizeWithinNeed),
      };
      ratings.set(device.index, known);
      return known.ratingA;
    },
    withDevices: (run) => needs.sizingOf(run, withinNeed(run), { addDevices: true }),
    withThoseBehind(run) {
      if (!judged || sizeWithinNeed(run)) return undefined;
      const sizing = needs.byPlaceAlone(run, withinNeed(run));
      const others = sizing && thickerBehind(judged, sizing, (one) => sizeWithinNeed(one)?.conductor);
      return others && others.length > 0 ? { sizing, others } : undefined;
    },
    ofPath(part, kinds) {
      const whole = solved();
      const limits = whole?.limitsOf(part, kinds) ?? [];
      if (!judged || !whole || limits.length === 0 || !limits.every(({ met }) => met)) return {};
      const least = pathSizing(judged, limits, sizeOn(whole));
      if (!least || least.otherDevices === 0) return { least };
      const alone = solvedPaths(judged, pathProblem(judged, needs, limits, { onlyFor: part }));
      const isMet = alone.limitsOf(part, kinds).every(({ met }) => met);
      const changed = new Set(least.runs.map(({ run }) => run.record));
      return {
        least,
        alone: isMet ? pathSizing(judged, limits, sizeOn(alone)) : undefined,
        isSharedNeed: isOnPathOfOthers(problem()!, part, changed),
      };
    },
  };
}

function isOnPathOfOthers({ paths, of }: PathProblem, part: number, records: ReadonlySet<number>): boolean {
  return paths.some(
    ({ device, legs }) =>
      device !== part && legs.some((leg) => of[leg.run]!.some(({ run }) => records.has(run.record))),
  );
}

function ratingOf(
  judged: Judged,
  device: ProtectiveDevice,
  { mostA, leastA }: RatingDemands,
  sizingOf: (run: Run) => RunSizing | undefined,
): number | undefined {
  const { network } = judged;
  const part = partOf(network, device);
  if (part) {
    const { aimA } = protectionRangeOfPart(judged, part);
    // A conductor that branches off gets a device of its own.
    const ends = endsOf(network, part).filter(({ index }) => carriesAllOf(judged, device, index));
    const ampacities = ends.map(({ run }) =>
      ampacityOf({ ...run, conductor: sizingOf(run)?.conductor ?? run.conductor }),
    );
    const mostRatingA = Math.min(
      mostA.get(part.record) ?? Number.POSITIVE_INFINITY,
      ...ampacities.map((one) => (one.judged ? one.ampacityA : 0)),
    );
    const fromA = Math.max(aimA, leastA.get(part.record) ?? 0);
    return nearestMadeRating(part.ratingA, { fromA, toA: mostRatingA }, part.family);
  }
  const conductor = conductorWith(network, device);
  const sizing = conductor && sizingOf(conductor.run);
  return isAtFarEnd(device) ? sizing?.ratingFarEndA : sizing?.ratingA;
}

/** The own need of each run: of its load, and of every other current that it must carry. */
interface OwnNeeds {
  /** Of other runs and parts on the devices and returns of the plan. */
  demands(): RatingDemands;
  /** With a size that it must have at least. `addDevices`: on a conductor for which devices are made. */
  sizingOf(
    run: Run,
    joint: JointSize | undefined,
    options?: { readonly addDevices: boolean },
  ): RunSizing | undefined;
  /** Regardless of the conductors behind its device: only the places of the device limit its rating. */
  byPlaceAlone(run: Run, joint: JointSize | undefined): RunSizing | undefined;
  /** The thinnest size for its load alone, independent of the plan's size. */
  neededFor(run: Run): Conductor | undefined;
}

function ownNeedsOf({ circuits, network }: SizedPlan, { acceptedToo }: Acceptance): OwnNeeds {
  const judgedRuns = new Map(circuits.map(({ circuit }) => [circuit.record, circuit]));
  const carried = lazily(() => (network ? currentsBesideLoads(network) : new Map<number, number>()));
  const places = lazily(() => (network ? placeLimits(network) : noLimits.mostA));
  const judgedRun = (run: Run): Run => {
    const circuit = withCalmedLoad(judgedRuns.get(run.record) ?? run, network);
    const judged = network && circuit.inNetwork ? asInNetwork(circuit) : circuit;
    return acceptedToo ? withoutAcceptance(judged) : judged;
  };
  const needsWithin = (run: Run, { mostA, leastA, behindA }: RatingDemands): FurtherNeeds => ({
    // The solver leaves its own rounding in a current of exactly a made rating.
    carriesA: withoutDust(carried().get(run.record) ?? 0),
    statedDevicesOnly: network !== undefined && run.inNetwork,
    mostRatingA: mostA.get(run.record) ?? Number.POSITIVE_INFINITY,
    placeA: places().get(run.record),
    leastRatingA: leastA.get(run.record) ?? 0,
    behindRatingA: behindA.get(run.record) ?? 0,
  });
  const neededWithin = (demands: () => RatingDemands) => (run: Run) =>
    neededFor(judgedRun(run), needsWithin(run, demands()));
  /** A run that gets a device has the size that goes with it, if one is made. */
  const sizedFor = (run: Run, needs: FurtherNeeds, joint: JointSize | undefined) => {
    const getsDevice = network && lackingDevices(network).has(run.record);
    const withOne = getsDevice && sized(judgedRun(run), { ...needs, statedDevicesOnly: false }, joint);
    return withOne || sized(judgedRun(run), needs, joint);
  };
  const limits = lazily(
    (): RatingDemands => ({ behindA: new Map(), ...(network ? ratingLimits(network) : noLimits) }),
  );
  const firstKnown = new Map<number, RunSizing | undefined>();
  const firstSizing = (run: Run): RunSizing | undefined => {
    if (!firstKnown.has(run.record))
      firstKnown.set(run.record, sizedFor(run, needsWithin(run, limits()), undefined));
    return firstKnown.get(run.record);
  };
  const demands = lazily(() =>
    network
      ? ratingDemands(network, limits(), {
          sizingOf: firstSizing,
          withDevice: (run) =>
            sized(judgedRun(run), { ...needsWithin(run, limits()), statedDevicesOnly: false }, undefined),
          neededFor: neededWithin(limits),
          mostAbove: mostAboveNeed,
        })
      : limits(),
  );
  const known = new Map<string, RunSizing | undefined>();
  return {
    demands,
    sizingOf(run, joint, { addDevices } = { addDevices: false }) {
      const key = `${run.record} ${joint ? JSON.stringify(joint.conductor) : ""} ${addDevices}`;
      if (!known.has(key)) {
        const needs = needsWithin(run, demands());
        known.set(
          key,
          addDevices
            ? sized(judgedRun(run), { ...needs, statedDevicesOnly: false }, joint)
            : sizedFor(run, needs, joint),
        );
      }
      return known.get(key);
    },
    byPlaceAlone(run, joint) {
      return sizedFor(run, needsWithin(run, { ...demands(), mostA: places() }), joint);
    },
    neededFor: neededWithin(demands),
  };
}

/**
 * The runs behind the device of a run that its new rating is too great for, each with the size that carries it. Undefined: through one
 * of them flows only a part of the current, or it would be far above its present size, or the run has not exactly one device.
 */
function thickerBehind(
  judged: Judged,
  { run: { record }, ratingA, ratingFarEndA }: RunSizing,
  sizeOf: (run: Run) => Conductor | undefined,
): SizingWithOthers["others"] | undefined {
  const { network, result } = judged;
  const [device, ...more] = network.devices.filter((one) => conductorWith(network, one)?.record === record);
  const rating = device && (isAtFarEnd(device) ? ratingFarEndA : ratingA);
  if (!device || rating === undefined || more.length > 0) return undefined;
  const behind = result.faults.devices.find((fault) => fault.device === device.index)?.behind ?? [];
  const tooThin = behind.filter((index) => {
    const ampacity = ampacityOf(network.conductors[index]!.run);
    return network.conductors[index]!.record !== record && ampacity.judged && ampacity.ampacityA < rating;
  });
  if (!tooThin.every((index) => carriesAllOf(judged, device, index))) return undefined;
  const changed = withRating(judged, device, rating);
  const known = new Set(thinReturns(judged).map(({ conductor }) => conductor.record));
  const returns = thinReturns(changed).flatMap(({ conductor }) =>
    known.has(conductor.record) ? [] : [conductor.run],
  );
  const runs = new Map(
    [...tooThin.map((index) => network.conductors[index]!.run), ...returns].map((run) => [run.record, run]),
  );
  runs.delete(record);
  const others = [...runs.values()].map((run) => {
    const conductor = thinnestCarrying({ ...run, conductor: sizeOf(run) ?? run.conductor }, rating);
    return conductor && sizesAbove(conductor, run.conductor) <= mostAboveNeed
      ? { run, conductor }
      : undefined;
  });
  return others.every((one) => one !== undefined) ? others : undefined;
}

/** The records of the runs that a source reaches first and through no device: each gets one. */
const lackingDevices = workedOutOnce(
  ({ network, result }: Judged): ReadonlySet<number> =>
    new Set(
      result.topology.unprotected.flatMap(({ conductor, way, tooGreat, fromPanelsAlone }) =>
        way.length === 0 && tooGreat.length === 0 && !fromPanelsAlone
          ? [network.conductors[conductor]!.record]
          : [],
      ),
    ),
);

const noLimits: RatingLimits = { mostA: new Map(), leastA: new Map() };

/**
 * By record of a run: the current once no inverter and no charger works below its lowest voltage any more, A. Below it they draw the
 * more the thinner their conductors are: a repair ends that, and is not sized for it. The bank remains as low as its load makes it:
 * a little lower than with less current, so on the safe side.
 */
const calmedCurrents = workedOutOnce((judged: Judged): ReadonlyMap<number, number> => {
  const starved = new Set(
    deviceVoltages(judged).flatMap(({ part, neededV, lasting }) =>
      lasting && isBelow(lasting.voltageV, neededV) ? [part.index] : [],
    ),
  );
  const bankV = new Map(
    judged.result.supplyPaths.map(({ part, arrivingV, dropV }) => [part, arrivingV + dropV]),
  );
  return supplyNeedsByRecord(judged, ({ index, lowestV }) =>
    starved.has(index) ? Math.min(lowestV, bankV.get(index) ?? lowestV) : undefined,
  );
});

/** In a network without a solution, at least what inverters and chargers draw at their lowest voltage. */
function withCalmedLoad(run: Run, judged: Judged | undefined): Run {
  const atLowestA = judged && run.loadIsLeast ? (allSupplyNeeds(judged).get(run.record) ?? 0) : 0;
  if (atLowestA > run.loadA) return { ...run, loadA: atLowestA };
  const calmedA = judged && calmedCurrents(judged).get(run.record);
  if (calmedA === undefined) return run;
  const loadA = Math.max(calmedA, run.lowVoltageA ?? 0);
  if (loadA >= run.loadA) return run;
  const { currentA, continuousA } = run.forHours ?? {};
  const forHours = currentA !== undefined &&
    continuousA !== undefined && {
      currentA: Math.min(currentA, loadA),
      continuousA: Math.min(continuousA, loadA),
    };
  return { ...run, loadA, ...(forHours && { forHours }) };
}

/** The legs of a path, each with the drop at its calmed current. */
function calmedLegs(judged: Judged, way: WayDemand["way"]): readonly Leg[] {
  const known = knownLegs(judged.result);
  const before = known.get(way);
  if (before) return before;
  const calmed = calmedCurrents(judged);
  const legs = legsOf(judged, way).map((leg): Leg => {
    const calmedA = calmed.get(leg.run.record) ?? leg.currentA;
    if (calmedA >= leg.currentA) return leg;
    return { ...leg, dropAt: (conductor) => (leg.dropAt(conductor) * calmedA) / leg.currentA };
  });
  known.set(way, legs);
  return legs;
}

/** By supply path: the sizes for the whole plan need them, and so does each path's repair, once or twice. */
const knownLegs = workedOutOnce((_: NetworkResult) => new WeakMap<WayDemand["way"], readonly Leg[]>());

/** Keeps results by run and by the demands on it: an edit elsewhere leaves both as they were. */
function keptByDemands<Demands extends readonly unknown[], Result>(
  workOut: (run: Run, ...demands: Demands) => Result,
): (run: Run, ...demands: Demands) => Result {
  const knownOf = workedOutOnce((_: Run) => new Map<string, { readonly result: Result }>());
  return (run, ...demands) => {
    const known = knownOf(run);
    const key = JSON.stringify(demands);
    const { result } = known.get(key) ?? { result: workOut(run, ...demands) };
    // A run that no edit changes meets ever new demands.
    if (known.size > mostDemandsKept) known.clear();
    known.set(key, { result });
    return result;
  };
}

/** Our choice: far more than a run has at a time. */
const mostDemandsKept = 100;

const neededFor = keptByDemands((run, needs: FurtherNeeds) => thinnestForLoad(run, needs));

const sized = keptByDemands(sizedAfresh);

function sizedAfresh(run: Run, needs: FurtherNeeds, joint: JointSize | undefined): RunSizing | undefined {
  const atLeast = joint && { atLeast: joint.conductor };
  const enough = thinnestSufficient(run, { ...needs, ...atLeast });
  const { leastRatingA: _, ...withoutStart } = needs;
  const calm = needs.leastRatingA ? thinnestSufficient(run, { ...withoutStart, ...atLeast }) : enough;
  if (!calm) return undefined;
  // A fuse for the start of a motor is no reason for a conductor far above its need: a slower fuse is the better way out.
  const isFar = !enough || sizesAbove(enough.conductor, calm.conductor) > mostAboveNeed;
  const [sizing, met] = isFar ? [calm, withoutStart] : [enough, needs];
  const { protection } = analyseCircuit({ ...run, conductor: sizing.conductor });
  const { placeA = Number.POSITIVE_INFINITY } = needs;
  const isElsewhere = Math.max(sizing.ratingA ?? 0, sizing.ratingFarEndA ?? 0) > placeA;
  return {
    run,
    ...sizing,
    range: rangeWith(protection, run, met),
    beyondNeed: joint?.beyondNeed ?? false,
    ...(isElsewhere && { placeA }),
  };
}

/** In a network the voltage at the device itself is judged, by the minimum of its part. */
const asInNetwork = workedOutOnce((circuit: Run): Run => {
  if (circuit.word === "cable") return circuit;
  const { minimumV: _, ...rest } = circuit;
  return rest;
});

const withoutAcceptance = workedOutOnce((run: Run): Run => ({ ...run, accept: {} }));

const allSupplyNeeds = workedOutOnce((judged: Judged) => supplyNeedsByRecord(judged));

/** By record of a run: the current that it must carry beside its load, without headroom, A. */
function currentsBesideLoads(judged: Judged): ReadonlyMap<number, number> {
  const currents = new Map(allSupplyNeeds(judged));
  for (const [record, currentA] of solarNeedsByRecord(judged.network))
    currents.set(record, Math.max(currents.get(record) ?? 0, currentA));
  return currents;
}

/** A limit of a part that its supply path exceeds, in one operating state. */
interface ExceededLimit extends WayDemand {
  readonly part: number;
  readonly kind: LimitKind;
}

/** The drop limits and minimum voltages that are not met and not accepted. */
function exceededLimits(judged: Judged, { acceptedToo }: Acceptance): readonly ExceededLimit[] {
  const { network, result } = judged;
  const drops = result.supplyPaths
    .filter((way) => !meetsDropLimit(way))
    .flatMap((way): ExceededLimit[] => {
      const place = placeOfPath(network, way);
      const accepted = !acceptedToo && place && isAccepted(place.run, "conductor/voltage-drop");
      return accepted ? [] : [{ part: way.part, kind: "drop", way, allowedV: allowedOn(way) }];
    });
  const voltages = deviceVoltages(judged).flatMap(({ part, neededV, lasting, momentary }) => {
    if (!acceptedToo && isAccepted(part, "scenario/device-below-minimum")) return [];
    const lowest = { "lasting voltage": lasting, "momentary voltage": momentary } as const;
    return (["lasting voltage", "momentary voltage"] as const).flatMap((kind): ExceededLimit[] => {
      const least = lowest[kind];
      if (!least || !isBelow(least.voltageV, neededV)) return [];
      const way = pathOfDevice(judged, part.index, least.scenario);
      return way ? [{ part: part.index, kind, way, allowedV: way.dropV - (neededV - least.voltageV) }] : [];
    });
  });
  return [...drops, ...voltages];
}

/** Size of a run for the sake of the paths on which it is. */
interface JointSize {
  readonly conductor: Conductor;
  readonly beyondNeed: boolean;
  /** For one beyond need: the thickest that is not; absent if that is the size of its own need. */
  readonly within?: Conductor | undefined;
}

interface PathProblem extends JointProblem {
  readonly limits: readonly ExceededLimit[];
  /** By run of the problem: the run, or the two of a feed, which get one size. */
  readonly of: readonly (readonly RunToSize[])[];
  readonly runs: readonly { readonly copperMm2M: readonly number[]; readonly last: number }[];
}

interface RunToSize {
  readonly run: Run;
  /** By choice. */
  readonly conductors: readonly Conductor[];
}

/** `onlyFor`: runs on which other devices are keep the size of their own need, and no cap is lifted. */
function pathProblem(
  judged: Judged,
  needs: OwnNeeds,
  limits: readonly ExceededLimit[],
  { onlyFor }: { readonly onlyFor?: number } = {},
): PathProblem {
  const onPaths = limits.map((limit) => ({ limit, legs: calmedLegs(judged, limit.way) }));
  const of = inPairs(
    judged,
    runsByName(onPaths.flatMap(({ legs }) => legs)).map((run) => ({
      run,
      conductors: fittingSizes(run, needs.sizingOf(run, undefined)?.conductor ?? run.conductor),
    })),
  );
  const index = new Map(of.flatMap((runs, at) => runs.map(({ run }, place) => [run.record, { at, place }])));
  const needed = of.map((runs) => runs.map(({ run }) => needs.neededFor(run)).reduce(thicker));
  const paths = onPaths.map(({ limit, legs }): DropLimit => {
    const dropV = new Map<number, readonly number[]>();
    for (const leg of legs) {
      const { at, place } = index.get(leg.run.record)!;
      needed[at] = thicker(needed[at], neededForDrop(leg, limit.allowedV));
      const before = dropV.get(at);
      dropV.set(
        at,
        of[at]![place]!.conductors.map(
          (conductor, choice) => leg.dropAt(conductor) + (before?.[choice] ?? 0),
        ),
      );
    }
    return {
      device: limit.part,
      allowedV: allowedInLegs(judged, limit, legs),
      legs: [...dropV].map(([run, byChoiceV]) => ({ run, dropV: byChoiceV })),
    };
  });
  const sharing = runsSharing(judged);
  const runs = of.map((members, at) => {
    const [{ conductors }] = members as readonly [RunToSize];
    const copper = conductors.map((_, choice) =>
      members.reduce((sum, one) => sum + copperMm2M(one.run, one.conductors[choice]!), 0),
    );
    const fixed = { copperMm2M: copper.slice(0, 1), last: 0 };
    if (members.some(({ run }) => sharing.has(run.record))) return fixed;
    const last = lastWithin(conductors, needed[at]);
    if (onlyFor === undefined) return { copperMm2M: copper, last };
    const isOthers = members.some(({ run }) => otherDevicesOn(judged, run.record, onlyFor) > 0);
    return isOthers ? fixed : { copperMm2M: copper.slice(0, last + 1), last };
  });
  return { runs, paths, limits, of };
}

/** The two of a feed with one choice for both, if they can follow each other; all others alone. */
function inPairs(judged: Judged, all: readonly RunToSize[]): readonly (readonly RunToSize[])[] {
  const partners = feedPairs(judged);
  const byRecord = new Map(all.map((one) => [one.run.record, one]));
  return all.flatMap((one) => {
    const other = byRecord.get(partners.get(one.run.record)?.record ?? Number.NaN);
    const together = other && paired(one, other);
    if (!together) return [[one]];
    return all.indexOf(one) < all.indexOf(other) ? [together] : [];
  });
}

/** First the size that each needs for itself, then the sizes from the thicker one on. Undefined: the same sizes do not fit both. */
function paired(one: RunToSize, other: RunToSize): readonly RunToSize[] | undefined {
  const [ownOne, ownOther] = [one.conductors[0]!, other.conductors[0]!];
  const from = thicker(ownOne, ownOther)!;
  const upward = ({ conductors }: RunToSize) =>
    conductors.filter((conductor) => sizesAbove(conductor, from) >= 0);
  const [ofOne, ofOther] = [upward(one), upward(other)];
  if (ofOne.length !== ofOther.length || ofOne.some((size, at) => sizesAbove(size, ofOther[at]!) !== 0))
    return undefined;
  if (sizesAbove(ownOne, ownOther) === 0) return [one, other];
  return [
    { run: one.run, conductors: [ownOne, ...ofOne] },
    { run: other.run, conductors: [ownOther, ...ofOther] },
  ];
}

/** The sizes from one on that go into the terminals of a run; at least that one. */
function fittingSizes(run: Run, from: Conductor): readonly Conductor[] {
  return sizesFrom(from).filter((conductor) => conductor === from || fitsTerminals(run, conductor));
}

/**
 * The records of the leads of batteries side by side. The battery with the thicker lead gives more than its share: one of them alone
 * is never made thicker for the sake of a path.
 */
const runsSharing = workedOutOnce(({ network, result }: Judged): ReadonlySet<number> => {
  const records = new Set<number>();
  for (const { batteries, strings } of result.topology.banks) {
    if (strings.length < 2) continue;
    for (const index of batteries) {
      const part = network.parts[index];
      if (part?.kind !== "battery") continue;
      for (const pole of [part.terminals.positive, part.terminals.negative]) {
        const leads = endsAt(network, pole);
        // Several at one pole: that of the bank as a whole is among them.
        if (leads.length === 1) records.add(leads[0]!.record);
      }
    }
  }
  return records;
});

/** Each run once, in an order that does not follow from the plan's statements: of equally good sizes the first ones are taken. */
function runsByName(legs: readonly Leg[]): readonly Run[] {
  const runs = new Map(legs.map(({ run }) => [run.record, run]));
  return [...runs.values()].sort((one, other) => byName(one, other) || one.record - other.record);
}

/**
 * The thinnest size with which a run alone keeps the limit of a path. A cable is one of two conductors, as are those of a circuit:
 * it may use half of the limit.
 */
function neededForDrop({ run, dropAt }: Leg, allowedV: number): Conductor | undefined {
  const share = run.word === "cable" ? 1 / 2 : 1;
  return madeSizes(run.conductor).find((conductor) => dropAt(conductor) <= share * allowedV);
}

function thicker(one: Conductor | undefined, other: Conductor | undefined): Conductor | undefined {
  if (!one || !other) return one ?? other;
  return sizesAbove(other, one) > 0 ? other : one;
}

/** The last of the conductors, thinnest first, that is not too far above the need. At least the first. */
function lastWithin(conductors: readonly Conductor[], needed: Conductor | undefined): number {
  if (!needed) return 0;
  const last = conductors.findLastIndex((conductor) => sizesAbove(conductor, needed) <= mostAboveNeed);
  return Math.max(0, last);
}

interface SolvedPaths {
  /** Whether a path for which the run gets its size needs no other run on which other devices are. */
  isForRepairs(record: number): boolean;
  /** By record: the sizes above the own need of a run. */
  readonly sizes: ReadonlyMap<number, JointSize>;
  limitsOf(part: number, kinds: readonly LimitKind[]): readonly (ExceededLimit & { readonly met: boolean })[];
}

/** The records of runs on paths whose limits are met by runs of their own devices alone. */
function runsForRepairs(
  judged: Judged,
  { paths, of }: PathProblem,
  { choices, met }: JointChoice,
): ReadonlySet<number> {
  const records = new Set<number>();
  paths.forEach(({ device, legs }, index) => {
    const changed = legs.flatMap((leg) =>
      choices[leg.run]! > 0 ? of[leg.run]!.map(({ run }) => run.record) : [],
    );
    if (!met[index] || changed.some((record) => otherDevicesOn(judged, record, device) > 0)) return;
    for (const record of changed) records.add(record);
  });
  return records;
}

function solvedPaths(judged: Judged, problem: PathProblem): SolvedPaths {
  const { choices, met } = leastCopperTogether(problem);
  const sizes = new Map<number, JointSize>();
  problem.of.forEach((runs, index) => {
    const choice = choices[index]!;
    if (choice === 0) return;
    const { last } = problem.runs[index]!;
    for (const { run, conductors } of runs) {
      const within = last > 0 ? conductors[last] : undefined;
      sizes.set(run.record, { conductor: conductors[choice]!, beyondNeed: choice > last, within });
    }
  });
  const byPart = new Map<number, (ExceededLimit & { met: boolean })[]>();
  problem.limits.forEach((limit, index) => {
    const { part, kind, way, allowedV } = limit;
    const one = { part, kind, way, allowedV, met: met[index]! };
    const there = byPart.get(part);
    if (there) there.push(one);
    else byPart.set(part, [one]);
  });
  return {
    sizes,
    isForRepairs: lazilyHas(() => runsForRepairs(judged, problem, { choices, met })),
    limitsOf: (part, kinds) => (byPart.get(part) ?? []).filter(({ kind }) => kinds.includes(kind)),
  };
}

/**
 * The runs on the path of limits of one part that get another conductor than they have. Conductors on which other devices are stay
 * as they are if the limits are kept without them. Undefined: none changes.
 */
function pathSizing(
  judged: Judged,
  limits: readonly ExceededLimit[],
  sizeOf: (run: Run) => RunSizing | undefined,
): PathSizing | undefined {
  const { part } = limits[0]!;
  const onPath = limits.map((limit) => ({ limit, legs: calmedLegs(judged, limit.way) }));
  const runs = new Map(onPath.flatMap(({ legs }) => legs.map(({ run }) => [run.record, run])));
  const changed = new Map<number, RunSizing>();
  for (const [record, run] of runs) {
    const sizing = sizeOf(run);
    if (sizing && sizesAbove(sizing.conductor, run.conductor) > 0) changed.set(record, sizing);
  }
  const keepsLimits = () =>
    onPath.every(({ limit, legs }) => {
      const dropV = legs.map((leg) =>
        leg.dropAt(changed.get(leg.run.record)?.conductor ?? leg.run.conductor),
      );
      return dropV.reduce((sumV, oneV) => sumV + oneV, 0) <= allowedInLegs(judged, limit, legs);
    });
  const addedMm2M = ({ run, conductor }: RunSizing) =>
    copperMm2M(run, conductor) - copperMm2M(run, run.conductor);
  const others = (record: number) => otherDevicesOn(judged, record, part);
  const added = (sizings: readonly RunSizing[]) => sizings.reduce((sum, one) => sum + addedMm2M(one), 0);
  const partners = feedPairs(judged);
  const shared = [...changed.values()].filter(({ run }) => others(run.record) > 0);
  // The two of a feed change together, or neither does.
  const steps = [
    ...groupedBy(shared, ({ run: { record } }) =>
      Math.min(record, partners.get(record)?.record ?? record),
    ).values(),
  ].sort((one, other) => added(other) - added(one));
  for (const step of steps) {
    for (const { run } of step) changed.delete(run.record);
    if (!keepsLimits()) for (const sizing of step) changed.set(sizing.run.record, sizing);
  }
  if (changed.size === 0) return undefined;
  const inOrder = [...runs.keys()].flatMap((record) => changed.get(record) ?? []);
  return { runs: inOrder, otherDevices: Math.max(...inOrder.map(({ run }) => others(run.record))) };
}

function lazilyHas<Value>(make: () => ReadonlySet<Value>): (value: Value) => boolean {
  const set = lazily(make);
  return (value) => set().has(value);
}

function lazily<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
