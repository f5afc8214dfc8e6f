import { placementNotJudged } from "../../analysis/placement/not-judged.ts";
import type { Body } from "../../model/placement/layout.ts";
import { boardOf, inWords } from "../board.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";
import { type NotJudged, notJudgedInWords } from "../wording/placement-in-words.ts";

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
    const gap = (what: string, bodies: readonly Body[], without: string): readonly NotJudged[] =>
      bodies.length === 0 ? [] : [{ what, names: bodies.map((body) => inWords(plan, body)), without }];
    const gaps = [
      ...gap("the place of", of.withoutPlace, "at"),
      ...gap("the fit of", of.withoutSize, "size"),
      ...gap("the air around", of.withoutAir, "air"),
      ...gap("the mounting position of", of.withoutPositions, "mountingPositions"),
      ...gap("the room for lugs at", of.withoutTerminals, "terminalsAt, or outsideMm of the conductor"),
    ];
    if (gaps.length === 0) return [];
    return [{ subject: "the plan", at: { record: surface.record, path: [] }, values: { gaps } }];
  },
  message: ({ gaps }) => notJudgedInWords(gaps),
});

interface Values {
  readonly gaps: readonly NotJudged[];
}
