import type { PartCurrentLimit } from "../../model/part-roles.ts";
import { exceededLimits, statedRating } from "../current-through.ts";
import { defineRule, inNetwork } from "../rule.ts";
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
  restsOn: "currents",
  // Needs the current of each part in every scenario that lasts. Every limit that no rule of its own judges.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      exceededLimits(judged, "part/rating").map(
        ({ part, limit: { property, current: does }, limitA, worst }) => ({
          subject: part.name,
          at: atPart(part, property),
          values: {
            kind: kindInWords(part),
            does,
            currentA: worst.currentA,
            estimate: estimateInWords(worst.estimate),
            limitA,
            property,
            scenario: occasionInWords(judged.network, worst),
          },
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
