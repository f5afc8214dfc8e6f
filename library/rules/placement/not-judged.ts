import { placementNotJudged } from "../../analysis/placement/not-judged.ts";
import { boardOf, inWords } from "../board.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";

export const notJudged = defineRule<Values>({
  id: "placement/not-judged",
  title: "Places that cannot be judged",
  severity: "info",
  why: "A board without findings looks checked, although some parts state no size, air or terminals.",
  sources: [ownRequirement("A layout is judged by stated facts alone, and the plan shows the others.")],
  fixable: false,
  acceptable: true,
  // Needs the layout; one finding for the whole plan, on its first surface.
  check(plan) {
    const board = boardOf(plan);
    const surface = board?.facts.layout.surfaces[0];
    if (!board || !surface) return [];
    const { facts } = board;
    const of = placementNotJudged(facts);
    const gaps: readonly Gap[] = (
      [
        ["the places of", of.withoutPlace],
        ["whether they fit, without a size:", of.withoutSize],
        ["the air around", of.withoutAir],
        ["the mounting position of", of.withoutPositions],
        ["the room for lugs at", of.withoutTerminals],
      ] as const
    ).flatMap(([what, bodies]) =>
      bodies.length === 0 ? [] : [{ what, parts: bodies.map((body) => inWords(facts, body)) }],
    );
    if (gaps.length === 0) return [];
    return [{ subject: "the plan", at: { record: surface.record, path: [] }, values: { gaps } }];
  },
  message: ({ gaps }) =>
    `Not stated, so not judged: ${gaps.map(({ what, parts }) => `${what} ${listInWords(parts, 3)}`).join("; ")}.`,
});

interface Gap {
  readonly what: string;
  readonly parts: readonly string[];
}

interface Values {
  readonly gaps: readonly Gap[];
}
