import { certainCurrentThrough } from "../analysis/current-through.ts";
import { nearestRatingAbove } from "../analysis/made-ratings.ts";
import type { NetworkResult, WorstOf } from "../analysis/network-result.ts";
import type { Part, ProtectiveDevice } from "../model/network.ts";
import { currentLimitsOf, type PartCurrentLimit } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import type { RuleId } from "../plan/rule-id.ts";
import type { Citation } from "../standards/citation.ts";
import { ratingOverContinuousLoad } from "../standards/protection-rules.ts";
import type { Severity } from "./finding.ts";
import { type Found, inNetwork, type JudgedNetwork, type JudgedPlan } from "./rule.ts";
import { estimateInWords } from "./wording/estimate-in-words.ts";
import { atPart, kindInWords, occasionInWords } from "./wording/part-in-words.ts";

/** A part's maximum current comes from its maker, and the plan repeats it. No document confirms it. */
export const statedRating: Citation = {
  document: "The maker's rating, as the plan states it",
  section: "",
  authority: "stated in the plan",
  confirmed: "read",
};

/** A current limit of a part, and a greater current, in a scenario that lasts or with a single device. */
export interface ExceededLimit {
  readonly part: Part;
  readonly limit: PartCurrentLimit;
  readonly limitA: number;
  readonly worst: WorstOf;
}

/** The limits that a rule judges and that are exceeded; a limit without a value is left out, and one that its device holds. */
export function exceededLimits(judged: JudgedNetwork, rule: RuleId): readonly ExceededLimit[] {
  return allExceededLimits(judged).filter(({ limit }) => judgeOf(limit) === rule);
}

/** The rule that judges a limit; undefined if its device holds it. */
export function judgeOf({ heldByItself, judgedBy }: PartCurrentLimit): RuleId | undefined {
  return heldByItself ? undefined : (judgedBy ?? "part/rating");
}

const allExceededLimits = workedOutOnce(({ network, result }: JudgedNetwork) =>
  network.parts.flatMap((part) =>
    currentLimitsOf(part).flatMap((limit): ExceededLimit[] => {
      const { lastingA: limitA } = limit;
      if (judgeOf(limit) === undefined || limitA === undefined) return [];
      const worst = worstOf(result, part, limit.current);
      return worst && isAbove(worst.currentA, limitA) ? [{ part, limit, limitA, worst }] : [];
    }),
  ),
);

function worstOf(result: NetworkResult, part: Part, does: PartCurrentLimit["current"]): WorstOf | undefined {
  if (does === "carries") return certainCurrentThrough(result, part);
  return result.parts[part.index]?.[does === "gives" ? "feeds" : "draws"];
}

/** The parts that carry more than their stated rating, of the kinds whose rating this rule judges. */
export function aboveStatedRating(plan: JudgedPlan, rule: RuleId): Found<AboveRating>[] {
  return inNetwork(plan, (judged) =>
    exceededLimits(judged, rule).map(({ part, limit, limitA, worst }) => ({
      subject: part.name,
      at: atPart(part, limit.property),
      severity: severityAbove(worst.currentA, limitA),
      values: {
        kind: kindInWords(part),
        currentA: worst.currentA,
        estimate: estimateInWords(worst.estimate),
        ratedA: limitA,
        scenario: occasionInWords(judged.network, worst),
      },
    })),
  );
}

/** Severity of a current that a part carries for hours, above its rating: an error from twice the heat that it is made for. */
export function severityAbove(currentA: number, ratedA: number): Severity {
  return currentA * currentA > mostHeat * ratedA * ratedA ? "error" : "warning";
}

/**
 * Severity of a part that no device up to its rating protects, while the devices behind it let more through together: information up to
 * the fuse for a continuous load as great as the rating of the part.
 */
export function severityBehind(
  { ratingA, family }: Pick<ProtectiveDevice, "ratingA" | "family">,
  ratedA: number,
): Severity {
  const overItsLoadA = nearestRatingAbove(ratingOverContinuousLoad.factor * ratedA, family) ?? 0;
  return ratingA <= overItsLoadA ? "info" : "warning";
}

/** Our choice. Heat is proportional to the square of the current: 141 % of a rating warms a bar or a contact twice as much. */
const mostHeat = 2;

export interface AboveRating {
  /** "bus bar", "relay" */
  readonly kind: string;
  /** The maximum current through it; through a bus, the sum of all currents into it. */
  readonly currentA: number;
  readonly estimate: string;
  readonly ratedA: number;
  /** `in "everything on"`, `with windlass alone`. */
  readonly scenario: string;
}

/** A worst current that is worth reporting: for a conductor without current the solver gives rounding errors, not 0. */
export function worthTelling(worst: WorstOf | undefined): WorstOf | undefined {
  return worst && worst.currentA >= leastToldA ? worst : undefined;
}

const leastToldA = 1e-3;

/**
 * True if a solved current is above its limit. The solver's relative error is about 1e-9: a current exactly at its limit is
 * within it.
 */
export function isAbove(currentA: number, limitA: number): boolean {
  return currentA > limitA * (1 + solverBlur);
}

const solverBlur = 1e-9;
