import { greatestStarts } from "../../analysis/motor-start.ts";
import { isMotor } from "../../model/motor-starts.ts";
import { currentLimitsOf, isStarterMotor, type PartCurrentLimit } from "../../model/part-roles.ts";
import { contactsForSeconds } from "../../standards/machine-practice.ts";
import { exceededLimits, isAbove, judgeOf, severityAbove, statedRating } from "../current-through.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart, kindInWords, occasionInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const partRating = defineRule<Values>({
  id: "part/rating",
  title: "Current limit of a part exceeded",
  severity: "warning",
  why: "A part that carries more than its maker allows heats up where its conductors are fastened, and its contacts or solder joints fail.",
  sources: [statedRating, contactsForSeconds.source],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  // Needs the current of each part in every scenario that lasts, and through each that of an engine's start. Every limit that no rule
  // of its own judges. An error from twice the heat of the rating, and if a start brings four times that of the usual rating for seconds.
  check: (plan) =>
    inNetwork(plan, (judged) => {
      const lasting = exceededLimits(judged, "part/rating").map(
        ({ part, limit: { property, current: does }, limitA, worst }): Found<Values> => ({
          subject: part.name,
          at: atPart(part, property),
          ...(does === "carries" && { severity: severityAbove(worst.currentA, limitA) }),
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
      );
      const known = new Set(lasting.map(({ subject }) => subject));
      return [...lasting, ...aboveAtStarts(judged).filter(({ subject }) => !known.has(subject))];
    }),
  message({ kind, does, currentA, estimate, limitA, property, scenario, forSeconds }) {
    if (forSeconds) {
      const [is, allowed] = formatDistinctWithUnit(currentA, limitA, "A");
      return `This ${kind} carries ${is} at the start of ${forSeconds.motor}, and its rating is ${allowed} for hours (${property}), half as much again for seconds (${forSeconds.source}): use one with a higher rating, or lead the starter past it.`;
    }
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
  /** It flows for the seconds in which an engine is cranked. */
  readonly forSeconds?: { readonly motor: string; readonly source: string };
}

/** The parts whose rating for hours is far below the current of an engine's starter motor, which lasts for seconds. */
function aboveAtStarts({ network, result }: JudgedNetwork): Found<Values>[] {
  const limits = network.parts.flatMap((part) =>
    currentLimitsOf(part).flatMap((limit) =>
      judgeOf(limit) === "part/rating" && limit.current === "carries" && limit.lastingA !== undefined
        ? [{ part, property: limit.property, limitA: limit.lastingA }]
        : [],
    ),
  );
  const starters = network.parts.filter(isMotor).filter(isStarterMotor);
  if (limits.length === 0 || starters.length === 0) return [];
  const starts = greatestStarts(network, result, starters);
  return limits.flatMap(({ part, property, limitA }): Found<Values>[] => {
    const start = starts({ at: "part", part: part.index });
    const forSecondsA = contactsForSeconds.timesRating * limitA;
    if (!start || !isAbove(start.currentA, forSecondsA)) return [];
    return [
      {
        subject: part.name,
        at: atPart(part, property),
        ...(isAbove(start.currentA, 2 * forSecondsA) && { severity: "error" as const }),
        values: {
          ...{ kind: kindInWords(part), does: "carries", currentA: start.currentA, estimate: "" },
          ...{ limitA, property, scenario: "" },
          forSeconds: { motor: partInWords(start.motor), source: sourceInWords(contactsForSeconds.source) },
        },
        related: [relatedPart(start.motor)],
      },
    ];
  });
}
