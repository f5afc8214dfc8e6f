import { ampacityOf } from "../../analysis/ampacity.ts";
import { analyseCircuit } from "../../analysis/analyse-circuit.ts";
import {
  type ChosenDevice,
  chooseDevice,
  chooseDeviceBetween,
  familyData,
  interruptsA,
  leastRatedV,
  oneMoreLike,
} from "../../analysis/choose-device.ts";
import type { ProtectionRange } from "../../analysis/circuit-result.ts";
import { slowClearing } from "../../analysis/clearing.ts";
import { machineLimit } from "../../analysis/machine-protection.ts";
import { isMadeRating, madeRatings, nearestRatingBelow } from "../../analysis/made-ratings.ts";
import { thinReturns } from "../../analysis/network/faults/thin-returns.ts";
import { isBetweenBatteries } from "../../analysis/network/topology/batteries-beside.ts";
import { thinnestCarrying, withDevices } from "../../analysis/rating-demands.ts";
import { type RunSizing, repairSizing } from "../../analysis/repair-sizing.ts";
import { devicesOn } from "../../analysis/supply-path-drop.ts";
import type { ConductorEnd, Network } from "../../model/network.ts";
import { isDistribution } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import type { Conductor, Run } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { protectionDistances } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import type { JudgedNetwork, JudgedPlan, JudgedRun } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { listInWords, terminalInWords } from "../wording/part-in-words.ts";
import { chosenInWords, chosenKind, chosenValue, type DeviceToPutIn } from "./chosen-device.ts";
import type { JudgedDevice } from "./judged-devices.ts";
import { isPanelBranch, propertyOf } from "./placed-device.ts";
import { setSize, sizedFixes, sizeInWords } from "./sized-fix.ts";

/** A conductor of a network, and those of its ends that get a device. */
export interface BareEnds {
  readonly conductor: number;
  readonly ends: readonly ConductorEnd[];
}

/**
 * The fix that puts protection into a conductor, at each of the ends: a rating for its current or, if it supplies several devices,
 * the largest that protects it; in a family that is made for the voltage and interrupts the fault current there; on a thicker
 * conductor if none fits this one, with thicker returns where they would be too thin. As near to the source as any conductor
 * requires. Empty if no made size is enough.
 */
export function insertingFixes(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  bare: BareEnds,
  beside: Beside = {},
): ProposedFix[] {
  const conductor = judged.network.conductors[bare.conductor];
  if (!conductor) return [];
  const { circuit } = runOf(plan, conductor.run);
  const sizing = repairSizing(plan).withDevices(circuit);
  if (!sizing) return [];
  const { there, behindAnother = false, belowA = Number.POSITIVE_INFINITY } = beside;
  const range = { ...sizing.range, maxA: Math.min(sizing.range.maxA ?? 0, nearestRatingUnder(belowA)) };
  const { greatestA = 0, leastA = Number.POSITIVE_INFINITY } =
    judged.result.faults.conductors[bare.conductor] ?? {};
  const need: Need = {
    systemV: circuit.systemV,
    interruptA: greatestA,
    leastA,
    limitA: machineLimit(judged.network, bare.conductor)?.maxA ?? Number.POSITIVE_INFINITY,
  };
  const partsA = Math.min(
    ...[conductor.from, conductor.to].map((terminal) => ratedAt(judged.network, terminal)),
  );
  const [sized] = sizedFixes(circuit, sizing);
  const several =
    devicesOn(judged, circuit.record) > 1 ||
    isBetweenBatteries(judged.network, bare.conductor) ||
    isFeeder(judged.network, bare);
  const again = there && {
    ...there,
    range,
    protection: { ...there.protection, ratingA: ratingAt(there, sizing) },
  };
  const choose = (for_: Need) =>
    several
      ? largest(range, {
          ...for_,
          limitA: Math.min(for_.limitA, partsA, behindA(judged, bare.conductor, range)),
        })
      : fitting(withinMachineLimit(range, for_), for_);
  const fit = choose(need);
  const chosen = [again && repeated(again, need), fit].filter((device) => device !== undefined);
  const here = chosen.find(({ demanded }) => !demanded) ?? chosen[0];
  if (!here) return [];
  const atBranch =
    here.demanded && behindAnother && isAtBranch(judged.network, bare)
      ? choose({ ...need, interruptA: 0 })
      : undefined;
  // There protection/interrupting reports a short that is too strong for it, once for the bus or panel.
  const device = atBranch ? ofAnyFamily(atBranch, need) : here;
  return [inserting(plan, judged, bare, device, sized)];
}

/** The same rating for the builder to choose the family; above the voltage that every family is made for, with that of the chosen one. */
function ofAnyFamily(
  { family, ratedV, ...device }: ChosenDevice,
  { systemV }: Pick<Need, "systemV">,
): DeviceToPutIn {
  const madeV = familyData(family).ratedVoltagesV.find((voltage) => voltage >= systemV);
  const neededV = ratedV ?? (systemV > leastRatedV ? madeV : undefined);
  return { ...device, ...(neededV !== undefined && { ratedV: neededV }) };
}

/** It leads to a bus bar or panel: more loads may be connected there, and those of today do not decide its rating. */
function isFeeder({ conductors, terminals, parts }: Network, { conductor, ends }: BareEnds): boolean {
  const { from, to } = conductors[conductor]!;
  const [end, ...others] = ends;
  const part = parts[terminals[end === "near" ? to : from]!.part];
  return others.length === 0 && part !== undefined && isDistribution(part);
}

/** Its device is at a bus, panel or switch, where another device may help it with a short and not every family fits. */
function isAtBranch({ conductors, terminals, parts }: Network, { conductor, ends }: BareEnds): boolean {
  const { from, to } = conductors[conductor]!;
  return ends.every((end) => {
    const part = parts[terminals[end === "near" ? from : to]!.part];
    return part !== undefined && descriptorOf(part).role === "passes current on";
  });
}

interface Beside {
  /** A device at the other end, repeated if it is in order. */
  readonly there?: JudgedDevice | undefined;
  /** Another device is between it and the source, or will be. */
  readonly behindAnother?: boolean;
  /** The rating of a device before it: one that is no smaller would never open first, A. */
  readonly belowA?: number;
}

interface Need {
  readonly systemV: number;
  readonly interruptA: number;
  /** The minimum fault in the conductor, A; infinity if no battery reaches it. */
  readonly leastA: number;
  /** 120 % of the rating of a machine that does not limit its own current, A. */
  readonly limitA: number;
}

/** The greatest made rating below a current, A; infinity for an infinite one. */
function nearestRatingUnder(currentA: number): number {
  return Number.isFinite(currentA)
    ? (madeRatings().findLast((ratingA) => ratingA < currentA) ?? 0)
    : currentA;
}

/** The limit for a machine leaves little headroom over its current: the aim is the greatest rating within it. */
function withinMachineLimit(range: ProtectionRange, { limitA }: Need): ProtectionRange {
  if (!Number.isFinite(limitA)) return range;
  const greatestA = nearestRatingBelow(Math.min(range.maxA ?? 0, limitA)) ?? 0;
  return { ...range, aimA: Math.max(range.aimA, greatestA) };
}

function fitting({ aimA, maxA = 0 }: ProtectionRange, need: Need): ChosenDevice | undefined {
  const toA = Math.min(maxA, need.limitA);
  // Without current in any scenario, there is no load to stay close to: only the conductor's limit counts.
  const fromA = aimA > 0 ? aimA : (nearestRatingBelow(toA) ?? toA);
  return chooseDeviceBetween({ fromA, toA }, need);
}

/** A branch that carries at least this share of its feed is no thin one. Common practice, no source. */
const leastShareOfFeed = 0.5;

/** The least ampacity of the conductors that it leads to past no device and that may share one with it, A; infinity if that is below the aim. */
function behindA(judged: JudgedNetwork, conductor: number, { aimA }: ProtectionRange): number {
  const leastA = ampacityBehind(judged).get(conductor) ?? Number.POSITIVE_INFINITY;
  return leastA < aimA ? Number.POSITIVE_INFINITY : leastA;
}

const ampacityBehind = workedOutOnce(({ network, result }: JudgedNetwork) => {
  const least = new Map<number, number>();
  for (const path of result.topology.unprotected) {
    const ampacity = ampacityOf(network.conductors[path.conductor]!.run);
    if (!ampacity.judged) continue;
    // Where several branches leave, a thin one gets a device of its own; a thick one may share that of its feed.
    const supplied = devicesOn({ network, result }, network.conductors[path.conductor]!.record);
    const sharing = path.way.filter((index) => {
      const { record, run } = network.conductors[index]!;
      if (devicesOn({ network, result }, record) === supplied) return true;
      const feed = ampacityOf(run);
      return feed.judged && ampacity.ampacityA >= leastShareOfFeed * feed.ampacityA;
    });
    for (const conductor of sharing)
      least.set(conductor, Math.min(least.get(conductor) ?? Number.POSITIVE_INFINITY, ampacity.ampacityA));
  }
  return least;
});

/** The rating of a bus, panel or switch at a terminal, A; infinity if none is stated. */
function ratedAt({ terminals, parts }: Network, terminal: number): number {
  const part = parts[terminals[terminal]?.part ?? -1];
  return part && descriptorOf(part).role === "passes current on" && "ratedA" in part
    ? (part.ratedA ?? Number.POSITIVE_INFINITY)
    : Number.POSITIVE_INFINITY;
}

/**
 * For a conductor whose load may grow: the largest rating that protects it; or down to half of that, if such a fuse suits by the
 * standard of its family, or opens a short at the far end in time, and the largest does not.
 */
function largest({ aimA, maxA = 0 }: ProtectionRange, need: Need): ChosenDevice | undefined {
  const largestA = nearestRatingBelow(Math.min(maxA, need.limitA)) ?? 0;
  const fromA = Math.max(aimA, largestA / 2);
  const chosen = madeRatings()
    .filter((ratingA) => fromA <= ratingA && ratingA <= largestA)
    .reverse()
    .flatMap((ratingA) => chooseDevice({ ratingA, ...need }) ?? []);
  const suiting = chosen.filter(({ demanded }) => !demanded);
  return suiting.find((device) => !slowClearing(device, need.leastA)) ?? suiting[0] ?? chosen[0];
}

/** The rating of the device at the other end, as its run should have it. */
function ratingAt({ device, protection }: JudgedDevice, { ratingA, ratingFarEndA }: RunSizing): number {
  return (device.end === "protectFarEnd" ? ratingFarEndA : ratingA) ?? protection.ratingA;
}

function repeated({ protection, range }: JudgedDevice, need: Need): ChosenDevice | undefined {
  const { ratingA, family } = protection;
  const { aimA, maxA = 0 } = range;
  const inOrder = isMadeRating(ratingA, family) && aimA <= ratingA && ratingA <= Math.min(maxA, need.limitA);
  if (!inOrder) return undefined;
  const again = oneMoreLike(protection, need.systemV);
  if (again && (interruptsA(protection) ?? 0) >= need.interruptA) return { ratingA, ...again };
  return family ? undefined : chooseDevice({ ratingA, ...need });
}

/** The run with its solved current, if there is one; else as it states itself. */
export function runOf({ circuits }: JudgedPlan, run: Run): JudgedRun {
  return byRecord(circuits).get(run.record) ?? { circuit: run, result: analyseCircuit(run) };
}

/** Each finding asks for a run. If two share a record, the first counts. */
const byRecord = workedOutOnce(
  (circuits: JudgedPlan["circuits"]): ReadonlyMap<number, JudgedRun> =>
    new Map(circuits.toReversed().map((judged) => [judged.circuit.record, judged])),
);

function inserting(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  bare: BareEnds,
  chosen: DeviceToPutIn,
  sized?: ProposedFix,
): ProposedFix {
  const { network } = judged;
  const { conductor: index, ends } = bare;
  const conductor = network.conductors[index] as Network["conductors"][number];
  const { maxIn } = protectionDistances.bare;
  const terminals = ends.map((end) => (end === "near" ? conductor.from : conductor.to));
  const [terminal = conductor.from] = terminals;
  const where = ends.length > 1 ? "each end" : terminalInWords(network, terminal);
  // A branch fuse is in the panel itself.
  const inPanel = ends.length === 1 && isPanelBranch(network, terminal);
  const title = `add ${chosenInWords(chosen)} ${inPanel ? "at" : `within ${withUnit(maxIn, "in")} of`} ${where}`;
  const returns = returnsFor(plan, judged, bare, chosen);
  const thicker = returns.map(({ run, size }) => `${sizeInWords(size)} for ${run.name}`);
  const also = thicker.length > 0 ? `, and use ${listInWords(thicker, 12)}` : "";
  return {
    title: sized ? `${sized.title} and ${title}${also}` : `A${title.slice(1)}${also}`,
    kind: chosenKind(chosen),
    changes: [
      ...(sized?.changes ?? []),
      ...returns.map(({ run, size }) => setSize(run, size)),
      ...ends.map((end) => ({
        do: "set" as const,
        record: conductor.record,
        path: [propertyOf[end]],
        value: chosenValue(chosen, inPanel ? undefined : maxIn),
      })),
    ],
  };
}

interface ThickerReturn {
  readonly run: Run;
  readonly size: Conductor;
}

/** The returns that are thick enough now and would not be behind the new device, each with a size that is. */
function returnsFor(
  plan: JudgedPlan,
  judged: JudgedNetwork,
  { conductor: index, ends }: BareEnds,
  { ratingA }: DeviceToPutIn,
): readonly ThickerReturn[] {
  if (ratingA <= leastReturnA(judged)) return [];
  const { unprotected } = judged.result.topology;
  if (judged.network.conductors.length * unprotected.length > mostTried) return [];
  // Each of the others has a device of its own by then.
  const others = unprotected.filter(({ conductor }) => conductor !== index);
  const protectedOnes = others.map(({ conductor, ends: at }) => {
    const ampacity = ampacityOf(judged.network.conductors[conductor]!.run);
    return { conductor, ends: at, ratingA: ampacity.judged ? ampacity.ampacityA : 0 };
  });
  const wiring = withDevices(judged, [{ conductor: index, ends, ratingA }, ...protectedOnes]);
  const known = new Set(thinReturns(judged).map(({ conductor }) => conductor.record));
  return thinReturns(wiring).flatMap(({ conductor: { run, record } }) => {
    if (known.has(record)) return [];
    const atLeast = repairSizing(plan).ofRun(run)?.conductor ?? run.conductor;
    const size = thinnestCarrying({ ...run, conductor: atLeast }, ratingA);
    return size ? [{ run, size }] : [];
  });
}

/** The least ampacity of a cable, A: a device below it makes no return too thin. */
const leastReturnA = workedOutOnce(({ network }: JudgedNetwork) =>
  Math.min(
    ...network.conductors.flatMap(({ role, run }) => {
      const ampacity = role === "cable" ? ampacityOf(run) : undefined;
      return ampacity?.judged ? [ampacity.ampacityA] : [];
    }),
  ),
);

/** Each bare conductor asks about all returns: in a plan with more of both, they are left to their own rule. */
const mostTried = 200_000;
