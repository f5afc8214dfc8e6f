import type { Conductor, Protection, Run } from "../model/run.ts";
import { analyseCircuit } from "./analyse-circuit.ts";
import type { CircuitResult, ProtectionRange } from "./circuit-result.ts";
import { designCurrentA } from "./design-current.ts";
import { type Family, isMadeRating, nearestRatingAbove } from "./made-ratings.ts";
import { madeSizes, sizesFrom } from "./made-sizes.ts";
import { meetsMinimumSize } from "./minimum-size.ts";
import { bestRating } from "./protection-range.ts";
import { withoutDust } from "./rounding-dust.ts";
import { meetsDropLimit } from "./voltage-drop.ts";
import { workedOutOnce } from "./worked-out-once.ts";

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

/**
 * The thinnest made size, not thinner than the one in the plan, that meets minimum size, ampacity, drop (with the
 * device's own minimum voltage) and protection at both ends together. Same system, same number of parallel wires.
 *
 * A stated rating is kept if it is made and lies between load and ampacity. Otherwise the smallest made rating that reaches
 * the aim (125 % of a continuous load) replaces it, so a change never leaves too little headroom; a stated rating below
 * the aim that fits is left to its own rule.
 * A rating of a family that is not made great enough for the load is left alone too: another family must be chosen.
 * If no made rating fits between, the conductor grows until one does. Undefined: no made size is enough.
 * Several rules propose the same size for a circuit.
 */
export const thinnestSufficient: (circuit: Run) => Sizing | undefined = workedOutOnce((circuit) =>
  thinnest(circuit, sizesFrom(circuit.conductor), keepBetweenLoadAndAmpacity),
);

/**
 * As {@link thinnestSufficient}, and every rating reaches the aim: for a circuit whose conductor is too thin for any
 * rating with headroom over its load.
 */
export function thinnestWithHeadroom(circuit: Run): Sizing | undefined {
  return thinnest(circuit, sizesFrom(circuit.conductor), keepBetweenAimAndAmpacity);
}

/**
 * The thinnest made size that meets all requirements of {@link thinnestSufficient}, independent of the plan's size: shows
 * how far a conductor is above need. A stated rating that is made and carries the load counts as a need: the conductor
 * must be thick enough for it.
 */
export function thinnestNeeded(circuit: Run): Sizing | undefined {
  return thinnest(circuit, madeSizes(circuit.conductor), keepAboveLoad);
}

/** The treatment of a stated rating at one size: keep it, replace it, or refuse the size. */
type Keeping = (stated: Protection, range: ProtectionRange) => "keep" | "replace" | "refuse-size";

const keepBetweenLoadAndAmpacity: Keeping = ({ ratingA, family }, { minA, maxA = 0 }) =>
  isMadeRating(ratingA, family) && minA <= ratingA && ratingA <= maxA ? "keep" : "replace";

const keepBetweenAimAndAmpacity: Keeping = ({ ratingA, family }, { aimA, maxA = 0 }) =>
  isMadeRating(ratingA, family) && aimA <= ratingA && ratingA <= maxA ? "keep" : "replace";

const keepAboveLoad: Keeping = ({ ratingA, family }, { minA, maxA = 0 }) => {
  if (!isMadeRating(ratingA, family) || ratingA < minA) return "replace";
  return ratingA <= maxA ? "keep" : "refuse-size";
};

function thinnest(circuit: Run, sizes: readonly Conductor[], keeping: Keeping): Sizing | undefined {
  for (const conductor of sizes) {
    const candidate = { ...circuit, conductor };
    if (!meetsMinimumSize(candidate)) continue;
    const result = analyseCircuit(candidate);
    // No thicker conductor of the same insulation withstands a place that is too hot.
    if (!result.ampacity.judged) return undefined;
    if (!carriesLoad(candidate, result)) continue;
    const nearEnd = nearEndRating(circuit, result.protection, keeping);
    const farEnd = farEndRating(circuit, result.protection, keeping);
    if (nearEnd === "size-too-thin" || farEnd === "size-too-thin") continue;
    return { conductor, ratingA: nearEnd.ratingA, ratingFarEndA: farEnd.ratingA };
  }
  return undefined;
}

type EndRating = { readonly ratingA: number | undefined } | "size-too-thin";

function nearEndRating(circuit: Run, range: ProtectionRange, keeping: Keeping): EndRating {
  const { protection, protectionFarEnd } = circuit;
  return protection
    ? found(ratingFor(protection, range, keeping))
    : ratingToPutIn(range, protectionFarEnd?.family);
}

function farEndRating(circuit: Run, range: ProtectionRange, keeping: Keeping): EndRating {
  const { protection, protectionFarEnd, fedFromBothEnds } = circuit;
  if (protectionFarEnd) return found(ratingFor(protectionFarEnd, range, keeping));
  return fedFromBothEnds ? ratingToPutIn(range, protection?.family) : { ratingA: undefined };
}

/** For an end without protection. A family not made in so great a rating has none on any conductor: another must be chosen. */
function ratingToPutIn(range: ProtectionRange, family: Family | undefined): EndRating {
  return madeGreatEnough(range, family) ? found(bestRating(range, family)) : { ratingA: undefined };
}

function found(ratingA: number | undefined): EndRating {
  return ratingA === undefined ? "size-too-thin" : { ratingA };
}

/** Ampacity, drop and the device's minimum voltage. */
function carriesLoad(run: Run, { ampacity, drop }: CircuitResult): boolean {
  const { minimumV, word } = run;
  const isCarried = ampacity.judged && withoutDust(designCurrentA(run)) <= ampacity.ampacityA;
  if (word === "cable") return isCarried;
  return isCarried && meetsDropLimit(drop) && (minimumV === undefined || drop.arrivingV >= minimumV);
}

function ratingFor(stated: Protection, range: ProtectionRange, keeping: Keeping): number | undefined {
  if (!madeGreatEnough(range, stated.family)) return ratingLeftAlone(stated, range);
  const fate = keeping(stated, range);
  if (fate === "keep") return stated.ratingA;
  return fate === "replace" ? bestRating(range, stated.family) : undefined;
}

/** No conductor size helps a family that is not made in so great a rating: the rating stays, and is left to its own rule. */
function ratingLeftAlone({ ratingA }: Protection, { maxA = 0 }: ProtectionRange): number | undefined {
  return ratingA <= maxA ? ratingA : undefined;
}

function madeGreatEnough({ aimA }: ProtectionRange, family: Family | undefined): boolean {
  return nearestRatingAbove(aimA, family) !== undefined;
}
