import { isMadeRating, nearestRatingAbove, nearestRatingBelow } from "../../analysis/made-ratings.ts";
import type { Protection } from "../../model/run.ts";
import { deviceFamilies } from "../../standards/device-ratings.ts";
import type { ProposedFix } from "../finding.ts";
import {
  type Device,
  type JudgedDevice,
  perDevice,
  ratingFix,
  ratingFixes,
  statedWithUnit,
} from "../fixes/judged-devices.ts";
import { defineRule, type JudgedPlan } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { unconfirmedAmong } from "../wording/source-in-words.ts";

export const standardRating = defineRule<Values>({
  id: "protection/standard-rating",
  title: "Non-standard rating",
  formerTitles: ["Rating that is not made"],
  severity: "warning",
  why: "A rating that no shop has is replaced at the counter by the next one, which is not checked against the conductor.",
  sources: [
    deviceFamilies["ISO 8820-3 Type F"].ratingsSource,
    deviceFamilies["ISO 8820-3 Type C"].ratingsSource,
    deviceFamilies["ISO 8820-3 Type E"].ratingsSource,
    deviceFamilies["ISO 8820-12 Type N"].ratingsSource,
    deviceFamilies["ISO 8820-13 Type P"].ratingsSource,
    deviceFamilies["ISO 8820-4 Type A"].ratingsSource,
    deviceFamilies["ISO 8820-5 Type SF 30"].ratingsSource,
    deviceFamilies["ISO 8820-5 Type SF 51"].ratingsSource,
    deviceFamilies["ISO 8820-6"].ratingsSource,
    deviceFamilies["ISO 20934"].ratingsSource,
    deviceFamilies["UL 248-15 Class T"].ratingsSource,
    deviceFamilies["circuit breaker"].ratingsSource,
    deviceFamilies["circuit breaker"].furtherRatingsSource,
  ],
  fixable: true,
  acceptable: true,
  // Needs the lists of made ratings: those of the stated family, else those of all families together.
  check: (plan) =>
    perDevice(plan, (judged) => {
      const { at, device } = judged;
      const { ratingA, family } = judged.protection;
      if (isMadeRating(ratingA, family)) return [];
      const values: Values = {
        device,
        family,
        belowA: nearestRatingBelow(ratingA, family),
        aboveA: nearestRatingAbove(ratingA, family),
      };
      return [{ at, values, fixes: fixesFor(plan, judged) }];
    }),
  message({ device, family, belowA, aboveA }) {
    const nearest = [belowA, aboveA].filter((madeA) => madeA !== undefined);
    const made = nearest.map((madeA) => withUnit(madeA, "A")).join(" and ");
    const lists = family ? [deviceFamilies[family]] : Object.values(deviceFamilies);
    const recalled = unconfirmedAmong(lists.map(({ ratingsSource }) => ratingsSource));
    const none =
      device.end === "protectFarEnd"
        ? `At the far end: no ${familyInWords(family)}`
        : `No ${familyInWords(family)}`;
    return `${none} is made in ${statedWithUnit(device.ratingA, "A")}; the nearest ${nearest.length > 1 ? "are" : "is"} ${made}${recalled}.`;
  },
});

interface Values {
  readonly device: Device;
  readonly family: Protection["family"];
  /** The nearest made ratings, A; undefined if none is that small, or that large. */
  readonly belowA: number | undefined;
  readonly aboveA: number | undefined;
}

/** First the repair of the run or part; then the other made rating next to the stated one, if it suits too. */
function fixesFor(plan: JudgedPlan, judged: JudgedDevice): ProposedFix[] {
  const { ratingA, family } = judged.protection;
  const { aimA, maxA } = judged.range;
  const repairs = ratingFixes(plan, judged, "protection/standard-rating");
  if (maxA === undefined || repairs.some(({ changes }) => changes.length > 1)) return repairs;
  const neighbours = [nearestRatingBelow(ratingA, family), nearestRatingAbove(ratingA, family)]
    .filter((madeA) => madeA !== undefined && aimA <= madeA && madeA <= maxA)
    .map((madeA): ProposedFix => ({ ...ratingFix(judged, madeA as number), kind: "suggestion" }))
    .filter(({ title }) => repairs.every((repair) => repair.title !== title));
  return [...repairs, ...neighbours];
}

/** "fuse or breaker", "ISO 8820-3 Type F fuse", "circuit breaker". */
function familyInWords(family: Protection["family"]): string {
  if (family === undefined) return "fuse or breaker";
  return family === "circuit breaker" ? family : `${family} fuse`;
}
