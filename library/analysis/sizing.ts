import type { Conductor, Protection, Run } from "../model/run.ts";
import type { RuleId } from "../plan/rule-id.ts";
import { analyseCircuit } from "./analyse-circuit.ts";
import type { CircuitResult, ProtectionRange } from "./circuit-result.ts";
import { designCurrentA } from "./design-current.ts";
import { type Family, isMadeRating, nearestMadeRating, nearestRatingAbove } from "./made-ratings.ts";
import { madeSizes, sizesAbove, sizesFrom } from "./made-sizes.ts";
import { meetsMinimumSize } from "./minimum-size.ts";
import { bestRating } from "./protection-range.ts";
import { withoutDust } from "./rounding-dust.ts";
import { mayBecome } from "./terminal-size.ts";
import { meetsDropLimit } from "./voltage-drop.ts";

/** A conductor, and the ratings that go with it. */
export interface Sizing {
  readonly conductor: Conductor;
  /**
   * The stated rating if it fits, else the one to take instead, A. If none is stated, the one to add: of the family that
   * the other end states, or of any. Undefined if none is stated and that family has none.
   */
  readonly ratingA: number | undefined;
  /** The same for the far end; undefined if it needs no protection and has none, or if its family has none. */
  readonly ratingFarEndA: number | undefined;
}

/** The demands on a run besides its own figures. */
export interface FurtherNeeds {
  /**
   * A current that conductor and devices must carry too, without headroom and at no drop limit, A: that of an inverter at its
   * cut-off voltage, or of modules in bright sun. 0 if left out.
   */
  readonly carriesA?: number;
  /** The most that a panel position or a machine permits for its device, A: at the cost of headroom, but not of the load. */
  readonly mostRatingA?: number;
  /** The part of that which is a limit of its place: a panel position, or a device at its end that permits no greater fuse, A. */
  readonly placeA?: number | undefined;
  /** The least with which its device stays closed while a motor behind it starts, A. */
  readonly leastRatingA?: number;
  /** The rating of a device elsewhere that must protect the conductor, A. */
  readonly behindRatingA?: number;
  /** A size that the conductor must have at least. */
  readonly atLeast?: Conductor;
  /** No device is added where none is stated: in a network another one may protect the run. */
  readonly statedDevicesOnly?: boolean;
}

/**
 * The thinnest made size, not thinner than the one in the plan, that meets minimum size, ampacity, drop (with the
 * device's own minimum voltage) and protection at both ends together. Same system, same number of parallel wires.
 *
 * A stated rating is kept if it is made and lies between its aim (125 % of a continuous load) and the ampacity. Otherwise the made
 * rating nearest to it that does replaces it: closest to the builder's own choice, so a fuse for a motor or for later loads stays
 * as large as its conductor allows.
 * A rating of a family that is not made great enough for the load is left alone: another family must be chosen.
 * If no made rating fits between, the conductor grows until one does. Undefined: no made size is enough.
 *
 * Findings that the builder accepted at this run (too much drop, too thin, too little headroom) make no demand.
 */
export function thinnestSufficient(circuit: Run, needs: FurtherNeeds = {}): Sizing | undefined {
  const from = needs.atLeast ?? circuit.conductor;
  const sizes = sizesFrom(sizesAbove(from, circuit.conductor) > 0 ? from : circuit.conductor);
  return thinnest(circuit, { sizes, needs, keeping: keepBetweenAimAndAmpacity });
}

/**
 * The thinnest made size that carries the current and meets minimum size and drop limit, without regard to the plan's size and devices.
 * Undefined: none does.
 */
export function thinnestForLoad(circuit: Run, needs: FurtherNeeds = {}): Conductor | undefined {
  return madeSizes(circuit.conductor).find((conductor) => {
    const candidate = { ...circuit, conductor };
    return isAllowedSize(circuit, conductor) && carriesLoad(candidate, analyseCircuit(candidate), needs);
  });
}

/**
 * The thinnest made size that meets all requirements of {@link thinnestSufficient}, independent of the plan's size: shows
 * how far a conductor is above need. A stated rating that is made and carries the load counts as a need: the conductor
 * must be thick enough for it.
 */
export function thinnestNeeded(circuit: Run): Sizing | undefined {
  return thinnest(circuit, { sizes: madeSizes(circuit.conductor), needs: {}, keeping: keepAboveLoad });
}

/** The treatment of a stated rating at one size: keep it, replace it, or refuse the size. */
type Keeping = (stated: Protection, range: ProtectionRange) => "keep" | "replace" | "refuse-size";

const keepBetweenAimAndAmpacity: Keeping = ({ ratingA, family }, { aimA, maxA = 0 }) =>
  isMadeRating(ratingA, family) && aimA <= ratingA && ratingA <= maxA ? "keep" : "replace";

const keepAboveLoad: Keeping = ({ ratingA, family }, { minA, maxA = 0 }) => {
  if (!isMadeRating(ratingA, family) || ratingA < minA) return "replace";
  return ratingA <= maxA ? "keep" : "refuse-size";
};

function thinnest(
  circuit: Run,
  {
    sizes,
    needs,
    keeping,
  }: { readonly sizes: readonly Conductor[]; readonly needs: FurtherNeeds; readonly keeping: Keeping },
): Sizing | undefined {
  for (const conductor of sizes) {
    const candidate = { ...circuit, conductor };
    if (!isAllowedSize(circuit, conductor)) continue;
    const result = analyseCircuit(candidate);
    // No thicker conductor of the same insulation withstands a place that is too hot.
    if (!result.ampacity.judged) return undefined;
    if (!carriesLoad(candidate, result, needs)) continue;
    if ((needs.behindRatingA ?? 0) > result.ampacity.ampacityA) continue;
    const range = rangeWith(result.protection, circuit, needs);
    const nearEnd = nearEndRating(circuit, { range, needs, keeping });
    if (nearEnd === "size-too-thin") continue;
    const farEnd = farEndRating(circuit, nearEnd.ratingA, { range, needs, keeping });
    if (farEnd === "size-too-thin") continue;
    return { conductor, ratingA: nearEnd.ratingA, ratingFarEndA: farEnd.ratingA };
  }
  return undefined;
}

/** Thick enough for its insulation to stay whole, and not too thick for its terminals. */
function isAllowedSize(circuit: Run, conductor: Conductor): boolean {
  const isThickEnough =
    isAccepted(circuit, "conductor/minimum-size") || meetsMinimumSize({ ...circuit, conductor });
  return isThickEnough && mayBecome(circuit, conductor);
}

/** The range of ratings at a size: a further current counts without headroom, and an accepted lack of headroom is none. */
export function rangeWith(
  range: ProtectionRange,
  circuit: Run,
  { carriesA = 0, leastRatingA = 0, ...needs }: FurtherNeeds,
): ProtectionRange {
  const { mostRatingA: mostOfPlaceA = Number.POSITIVE_INFINITY } = needs;
  const mostRatingA = Math.min(mostOfPlaceA, circuit.maxFuseA ?? Number.POSITIVE_INFINITY, holdersA(circuit));
  const minA = Math.max(range.minA, carriesA);
  const headroomA = isAccepted(circuit, "protection/headroom") ? minA : Math.max(range.aimA, carriesA);
  const wantedA = Math.max(headroomA, leastRatingA);
  const statedA = Math.max(circuit.protection?.ratingA ?? 0, circuit.protectionFarEnd?.ratingA ?? 0);
  // One that carries its load and is too great for its place belongs elsewhere: a lesser one would open.
  const isElsewhere = mostRatingA < minA || (mostRatingA < wantedA && statedA > mostRatingA);
  // No greater one goes into such a place for the sake of headroom.
  const keptA = isElsewhere && statedA >= minA ? Math.min(wantedA, statedA) : wantedA;
  if (isElsewhere || range.maxA === undefined) return { ...range, minA, aimA: keptA };
  return { ...range, minA, aimA: Math.min(wantedA, mostRatingA), maxA: Math.min(range.maxA, mostRatingA) };
}

/** The least rating of the holders at its ends, A; infinity if none is stated. */
function holdersA({ protection, protectionFarEnd }: Run): number {
  return Math.min(
    protection?.holderRatedA ?? Number.POSITIVE_INFINITY,
    protectionFarEnd?.holderRatedA ?? Number.POSITIVE_INFINITY,
  );
}

type EndRating = { readonly ratingA: number | undefined } | "size-too-thin";

interface AtSize {
  readonly range: ProtectionRange;
  readonly needs: FurtherNeeds;
  readonly keeping: Keeping;
}

function nearEndRating(circuit: Run, { range, needs, keeping }: AtSize): EndRating {
  const { protection, protectionFarEnd } = circuit;
  if (protection) return found(ratingFor(protection, range, keeping));
  return needs.statedDevicesOnly ? { ratingA: undefined } : ratingToPutIn(range, protectionFarEnd?.family);
}

/** A device that is missing there is like the one at the near end. */
function farEndRating(circuit: Run, nearA: number | undefined, { range, needs, keeping }: AtSize): EndRating {
  const { protection, protectionFarEnd, fedFromBothEnds } = circuit;
  if (protectionFarEnd) return found(ratingFor(protectionFarEnd, range, keeping));
  if (!fedFromBothEnds || needs.statedDevicesOnly) return { ratingA: undefined };
  const put = ratingToPutIn(range, protection?.family);
  return protection && put !== "size-too-thin" && put.ratingA !== undefined ? { ratingA: nearA } : put;
}

/** For an end without protection. A family not made in so great a rating has none on any conductor: another must be chosen. */
function ratingToPutIn(range: ProtectionRange, family: Family | undefined): EndRating {
  return madeGreatEnough(range, family) ? found(bestRating(range, family)) : { ratingA: undefined };
}

function found(ratingA: number | undefined): EndRating {
  return ratingA === undefined ? "size-too-thin" : { ratingA };
}

/** Ampacity, drop and the device's minimum voltage. */
function carriesLoad(
  candidate: Run,
  { drop, ampacity }: CircuitResult,
  { carriesA = 0 }: FurtherNeeds,
): boolean {
  const { minimumV, word } = candidate;
  const currentA = Math.max(carriesA, designCurrentA(candidate));
  if (!ampacity.judged || withoutDust(currentA) > ampacity.ampacityA) return false;
  if (word === "cable" || isAccepted(candidate, "conductor/voltage-drop")) return true;
  // Without a known length, the size is that for the current alone.
  if (!drop.judged) return true;
  return meetsDropLimit(drop) && (minimumV === undefined || drop.arrivingV >= minimumV);
}

function ratingFor(stated: Protection, range: ProtectionRange, keeping: Keeping): number | undefined {
  if (!madeGreatEnough(range, stated.family)) return ratingLeftAlone(stated, range);
  const fate = keeping(stated, range);
  if (fate === "keep") return stated.ratingA;
  return fate === "replace" ? nearestFitting(stated, range) : undefined;
}

/** The made rating nearest to the stated one between aim and ampacity. */
function nearestFitting(
  { ratingA, family }: Protection,
  { aimA, maxA = 0 }: ProtectionRange,
): number | undefined {
  return nearestMadeRating(ratingA, { fromA: aimA, toA: maxA }, family);
}

/** No conductor size helps a family that is not made in so great a rating: the rating stays, and is left to its own rule. */
function ratingLeftAlone({ ratingA }: Protection, { maxA = 0 }: ProtectionRange): number | undefined {
  return ratingA <= maxA ? ratingA : undefined;
}

function madeGreatEnough({ aimA }: ProtectionRange, family: Family | undefined): boolean {
  return nearestRatingAbove(aimA, family) !== undefined;
}

/** Whether the builder accepted a finding of that rule at this run or part, with a reason. */
export function isAccepted({ accept }: Pick<Run, "accept">, rule: RuleId): boolean {
  return (accept[rule]?.trim() ?? "") !== "";
}
