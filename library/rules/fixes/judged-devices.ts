import { ampacityOf } from "../../analysis/ampacity.ts";
import { familyData, leastRatedV, oneMoreLike, suitableDevices } from "../../analysis/choose-device.ts";
import type { CircuitResult, ProtectionRange } from "../../analysis/circuit-result.ts";
import { groupedBy } from "../../analysis/grouped-by.ts";
import { madeRatings, nearestRatingAbove } from "../../analysis/made-ratings.ts";
import { sizesAbove, sizesFrom } from "../../analysis/made-sizes.ts";
import { limitedReturns } from "../../analysis/network/faults/thin-returns.ts";
import { protectionRangeOf, protectionRangeOfPart } from "../../analysis/protection-range.ts";
import { endsOf, placeLimits, thinnestCarrying } from "../../analysis/rating-demands.ts";
import { mostAboveNeed, repairSizing } from "../../analysis/repair-sizing.ts";
import { type Sizing, thinnestSufficient } from "../../analysis/sizing.ts";
import type { ProtectiveDevice } from "../../model/network.ts";
import { type DevicePart, isDevice } from "../../model/part-roles.ts";
import type { Protection, Run } from "../../model/run.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { RuleId } from "../../plan/rule-id.ts";
import type { Change, PropertyAt, ProposedFix, Related, Settable } from "../finding.ts";
import { type Found, type JudgedNetwork, type JudgedPlan, type JudgedRun, soleDeviceOf } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { farEndRatingPath, loadPath, ratingPath } from "../wording/property-paths.ts";
import { unconfirmedAmong } from "../wording/source-in-words.ts";
import { type FixToUse, noSizeIsEnough, toUse } from "../wording/way-out.ts";
import { chosenInWords, chosenKind, chosenValue, type DeviceToPutIn } from "./chosen-device.ts";
import {
  deviceInWords,
  deviceKind,
  runFixes,
  runSizing,
  setSize,
  sizedChanges,
  sizedFixes,
  sizeInWords,
  whyNoSize,
} from "./sized-fix.ts";

/** The findings about each protective device of a plan, judged by its load and its conductor. */
export function perDevice<Values>(
  plan: JudgedPlan,
  check: (device: JudgedDevice) => readonly Omit<Found<Values>, "subject">[],
): Found<Values>[] {
  const all: Found<Values>[] = [];
  for (const { subject, device } of devicesIn(plan))
    for (const found of check(device)) all.push({ ...found, subject });
  return all;
}

/** All devices of a plan, each with the name of its run or part: several rules go through them. */
const devicesIn = workedOutOnce(({ circuits, network }: JudgedPlan) => {
  const inRuns = circuits.flatMap((judged) =>
    devicesOf(judged).map((device) => ({ subject: judged.circuit.name, device })),
  );
  const asParts = network?.network.parts.flatMap((part) =>
    isDevice(part) ? [{ subject: part.name, device: deviceOfPart(network, part) }] : [],
  );
  return [...inRuns, ...(asParts ?? [])];
});

function deviceOfPart(judged: JudgedNetwork, part: DevicePart): JudgedDevice {
  const { record, ratingA, systemV, continuous } = part;
  return {
    run: undefined,
    beside: endsOf(judged.network, part).map(({ run }) => run),
    ...{ protection: part, systemV, continuous, load: [] },
    device: { ratingA, kind: deviceKind(part), end: undefined },
    get range() {
      return protectionRangeOfPart(judged, part);
    },
    at: { record, path: ["ratingA"] },
    properties: { record, path: [] },
  };
}

/** The devices that a circuit or cable states: at its start, at the far end, or at both. */
export const devicesOf: (judged: JudgedRun) => readonly JudgedDevice[] = workedOutOnce((judged) => {
  const { protection, protectionFarEnd } = judged.circuit;
  const far = protectionFarEnd && endOf("protectFarEnd", protectionFarEnd, judged);
  const near = protection && endOf("protect", protection, judged);
  return near ? (far ? [near, far] : [near]) : far ? [far] : [];
});

function endOf(end: End, protection: Protection, run: JudgedRun): JudgedDevice {
  const { circuit, result } = run;
  const path = end === "protect" ? ratingPath(circuit) : farEndRatingPath(circuit);
  let range: ProtectionRange | undefined;
  return {
    run,
    beside: [],
    ...{ protection, systemV: circuit.systemV, continuous: circuit.continuous },
    load: [
      { at: { record: circuit.record, path: loadPath(circuit) }, text: "The load" },
      ...soleDeviceOf(circuit),
    ],
    device: { ratingA: protection.ratingA, kind: deviceKind(protection), end },
    // Kept: two rules read it for each device, and again after each edit elsewhere.
    get range() {
      range ??= protectionRangeOf(circuit, result.ampacity, protection);
      return range;
    },
    at: { record: circuit.record, path },
    properties: { record: circuit.record, path: [end] },
  };
}

/** A protective device of a plan, wherever it is. */
export interface JudgedDevice {
  /** The run whose load it carries and whose conductor it protects; undefined for a part of its own. */
  readonly run: JudgedRun | undefined;
  /** Of a part of its own: the runs that end at it. */
  readonly beside: readonly Run[];
  readonly systemV: number;
  readonly continuous: boolean;
  /** The place that states its load. */
  readonly load: readonly Related[];
  readonly device: Device;
  readonly protection: Protection;
  /** The permitted ratings; the best one is of this device's own family. */
  readonly range: ProtectionRange;
  /** The place of the rating in the plan. */
  readonly at: PropertyAt;
  /** The place of the device itself, under which its other properties are. */
  readonly properties: PropertyAt;
}

/** A device and the place of its rating. */
export type RatedDevice = Pick<JudgedDevice, "at" | "device" | "protection">;

/** The property that states the device; it also gives the end. */
export type End = "protect" | "protectFarEnd";

/** A protective device as messages name it. */
export interface Device {
  readonly ratingA: number;
  readonly kind: "fuse" | "breaker";
  /** Undefined for a part of its own. */
  readonly end: End | undefined;
}

/** "The 60 A fuse", "The 60 A breaker at the far end". */
export function theDevice({ ratingA, kind, end }: Device): string {
  return `The ${statedWithUnit(ratingA, "A")} ${kind}${whereIs(end)}`;
}

/** A value as the plan gives it. Rounding is for results: a builder who wrote 130.5 would not find it again as "131 A". */
export function statedWithUnit(value: number, unit: "A" | "in" | "mm"): string {
  return formatDistinctWithUnit(value, Number(value.toPrecision(3)), unit)[0];
}

/** The repair that changes only the rating of a device. */
export function ratingFix({ at, device, protection }: RatedDevice, ratingA: number): FixToUse {
  return {
    ...toUse(`${deviceInWords(protection, ratingA)}${whereIs(device.end)}`),
    kind: "repair",
    changes: [{ do: "set", ...at, value: ratingA }],
  };
}

/**
 * The repairs for a wrong rating. For a device of a run, those of the whole run: the made rating nearest to the stated one that
 * carries the load and protects the conductor, on a thicker conductor if none is made for this one. For a part of its own, only
 * the rating. Empty if the family is not made large enough.
 */
export function ratingFixes(plan: JudgedPlan, judged: JudgedDevice, rule: RuleId): ProposedFix[] {
  const { ratingA } = judged.protection;
  if (judged.run) {
    const sizing = runSizing(plan, judged.run.circuit, rule);
    const fittingA = judged.device.end === "protectFarEnd" ? sizing?.ratingFarEndA : sizing?.ratingA;
    return fittingA === ratingA ? [] : runFixes(plan, judged.run.circuit, rule);
  }
  const device = plan.network && deviceAt(plan.network, judged.at.record);
  const ratingFitA = device && repairSizing(plan).ratingOf(device);
  // A want of headroom alone is no reason for thicker conductors: less at once, or an accepted margin, does as well.
  if (device && ratingFitA === undefined && rule === "protection/below-load")
    return withThickerConductors(plan, judged, device);
  return ratingFitA === undefined || ratingFitA === ratingA ? [] : [ratingFix(judged, ratingFitA)];
}

/**
 * A device of its own with conductors too thin for any rating that its load asks for: the next made rating, and each of its conductors
 * and returns as thick as that asks. Empty where that is more than two made sizes, or above what the place of the device permits.
 */
function withThickerConductors(
  { network }: JudgedPlan,
  judged: JudgedDevice,
  device: ProtectiveDevice,
): ProposedFix[] {
  const { family, holderRatedA = Number.POSITIVE_INFINITY } = judged.protection;
  const ratingA = nearestRatingAbove(judged.range.aimA, family);
  if (!network || ratingA === undefined || ratingA > holderRatedA) return [];
  const returns = limitedReturns(network).filter((limited) => limited.device === device);
  const runs = new Set([...judged.beside, ...returns.map(({ conductor }) => conductor.run)]);
  const thicker = [...runs].flatMap((run) => {
    const ampacity = ampacityOf(run);
    return ampacity.judged && ampacity.ampacityA >= ratingA
      ? []
      : [{ run, size: thinnestCarrying(run, ratingA) }];
  });
  const changes = thicker.flatMap(({ run, size }) =>
    size && sizesAbove(size, run.conductor) <= mostAboveNeed ? [setSize(run, size)] : [],
  );
  if (thicker.length === 0 || changes.length < thicker.length) return [];
  const bySize = groupedBy(thicker, ({ size }) => sizeInWords(size!));
  const sizes = [...bySize].map(
    ([size, those]) =>
      `${size} for ${listInWords(
        those.map(({ run }) => run.name),
        mostNamed,
      )}`,
  );
  const rating = ratingFix(judged, ratingA);
  return [
    {
      ...toUse(`${rating.noun} with ${sizes.join(" and ")}`),
      kind: "repair",
      changes: [...rating.changes, ...changes],
    },
  ];
}

const mostNamed = 4;

/** The device that is the part of a record. */
function deviceAt({ network: { devices, parts } }: JudgedNetwork, record: number) {
  return devices.find(({ place }) => place.at === "part" && parts[place.part]?.record === record);
}

/** The same for a device that is judged. */
export function whyNoRatingOf({ network }: JudgedPlan, { run, protection, beside }: JudgedDevice): string {
  if (run) {
    const { circuit, result } = run;
    const limitA = network && placeLimits(network).get(circuit.record);
    const permittedA = [limitA, circuit.maxFuseA, protection.holderRatedA].filter((one) => one !== undefined);
    return whyNoRating(circuit, result, protection, Math.min(...permittedA));
  }
  const isThickest = (one: Run) => sizesFrom(one.conductor).length === 1;
  const way = beside.some(isThickest)
    ? "and none thicker are made: split the load, or set parallel"
    : "so use thicker ones";
  return `no standard rating suits both its load and its conductors, ${way}`;
}

/** The builder's options if no rating can be proposed, by the reason for it. `placeA`: the most that the place of the device permits. */
export function whyNoRating(
  circuit: Run,
  { ampacity, protection }: CircuitResult,
  stated: Protection | null,
  placeA = Number.POSITIVE_INFINITY,
): string {
  // conductor/ambient asks for the same, and names the insulation.
  if (!ampacity.judged) return "first choose insulation for this temperature";
  const largestA = stated?.family && madeRatings(stated.family).at(-1);
  if (largestA && exceeds(protection.aimA, largestA)) {
    const recalled = unconfirmedAmong([familyData(stated.family).ratingsSource]);
    return `choose another family, this one is not made above ${withUnit(largestA, "A")}${recalled}`;
  }
  // Enough for this run: then the limit is that of other conductors on the same device.
  const alone = thinnestSufficient(circuit);
  const { words } = alone ? sizedChanges(circuit, alone) : { words: "" };
  if (!words) return whyNoSize(circuit, noSizeIsEnough);
  return (alone?.ratingA ?? 0) > placeA
    ? `${words} would do, but its place permits ${withUnit(placeA, "A")}: put it where a greater one is permitted`
    : `${words} would do here, but the device also protects thinner conductors: use thicker ones there too, or a device elsewhere`;
}

/**
 * The repair that adds missing protection at the given ends, with the ratings of the sizing. It also sets the sizing's conductor
 * if that differs. `like`: the device whose family the new ones take.
 */
export function addingFixes(
  circuit: Run,
  sizing: Sizing | undefined,
  { ends, like = null }: { readonly ends: readonly End[]; readonly like?: Protection | null },
): ProposedFix[] {
  if (!sizing) return [];
  const ratings = { protect: sizing.ratingA, protectFarEnd: sizing.ratingFarEndA };
  const added = ends.flatMap((end) => {
    const ratingA = ratings[end];
    return ratingA === undefined ? [] : [{ end, ratingA }];
  });
  const [first, second] = added;
  if (!first) return [];
  const chosen = (like && oneMoreLike(like, circuit.systemV)) ?? madeFor(circuit.systemV, first.ratingA);
  const again = chosen?.family !== undefined && chosen.family === like?.family;
  const named = chosen && !again ? chosenInWords({ ...chosen, ratingA: first.ratingA }) : undefined;
  const device = `${named ?? deviceInWords(again ? like : null, first.ratingA)}${second ? " at each end" : whereIs(first.end)}`;
  const [sized] = sizedFixes(circuit, sizing);
  const changes = added.map(({ end, ratingA }): Change => {
    const value: Settable = chosen ? chosenValue({ ...chosen, ratingA }) : ratingA;
    return { do: "set", record: circuit.record, path: [end], value };
  });
  return [
    {
      title: sized ? `${sized.title} and add ${device}` : `Add ${device}`,
      kind: chosen ? chosenKind(chosen) : "repair",
      changes: [...(sized?.changes ?? []), ...changes],
    },
  ];
}

/** A fuse of any family will do up to the voltage that all are made for; above it, one that is made for the circuit. */
function madeFor(systemV: number, ratingA: number): DeviceToPutIn | undefined {
  if (systemV <= leastRatedV) return undefined;
  const [suitable] = suitableDevices({ ratingA, systemV, interruptA: 0 });
  return suitable ?? { ratingA, ratedV: systemV, demanded: true };
}

function whereIs(end: End | undefined): string {
  return end === "protectFarEnd" ? " at the far end" : "";
}
