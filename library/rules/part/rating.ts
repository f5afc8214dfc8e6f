import { certainCurrentThrough } from "../../analysis/current-through.ts";
import type { WorstOf } from "../../analysis/network-result.ts";
import { currentLimitsOf, type PartCurrentLimit } from "../../model/part-roles.ts";
import { isAbove, statedRating } from "../current-through.ts";
import { defineRule, inNetwork, type JudgedNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart, kindInWords, occasionInWords } from "../wording/part-in-words.ts";

export const partRating = defineRule<Values>({
  id: "part/rating",
  title: "Current limit of a part exceeded",
  severity: "warning",
  why: "A part that carries more than its maker allows heats up where its conductors are fastened, and its contacts or solder joints fail.",
  sources: [statedRating],
  fixable: false,
  acceptable: true,
  // Needs the current of each part in every scenario that lasts. Every limit that no rule of its own judges.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      judged.network.parts.flatMap((part) =>
        currentLimitsOf(part).flatMap((limit) => {
          const { property, current: does, lastingA, judgedBy, heldByItself } = limit;
          if (judgedBy !== undefined || heldByItself || lastingA === undefined) return [];
          const worst = currentOf(judged, part, does);
          if (!worst || !isAbove(worst.currentA, lastingA)) return [];
          const values: Values = {
            kind: kindInWords(part),
            does,
            currentA: worst.currentA,
            estimate: estimateInWords(worst.estimate),
            limitA: lastingA,
            property,
            scenario: occasionInWords(judged.network, worst),
          };
          return [{ subject: part.name, at: atPart(part, property), values }];
        }),
      ),
    ),
  message({ kind, does, currentA, estimate, limitA, property, scenario }) {
    const [is, allowed] = formatDistinctWithUnit(currentA, limitA, "A");
    return `This ${kind} ${does} ${is} ${scenario}${estimate}, and its limit is ${allowed} (${property}): use one with a higher limit, or run less at once.`;
  },
});

interface Values {
  readonly kind: string;
  readonly does: PartCurrentLimit["current"];
  readonly currentA: number;
  readonly estimate: string;
  readonly limitA: number;
  readonly property: string;
  /** `in "everything on"`. */
  readonly scenario: string;
}

function currentOf(
  { result }: JudgedNetwork,
  part: Parameters<typeof certainCurrentThrough>[1],
  does: PartCurrentLimit["current"],
): WorstOf | undefined {
  if (does === "carries") return certainCurrentThrough(result, part);
  return result.parts[part.index]?.[does === "gives" ? "feeds" : "draws"];
}
