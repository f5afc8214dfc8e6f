import { waysNotJudged } from "../../analysis/placement/ways-not-judged.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { atRecord, type NotJudged, notJudgedInWords, runNames } from "../wording/placement-in-words.ts";

export const waysCannotBeJudged = defineRule<Values>({
  id: "placement/ways-not-judged",
  title: "Ways that cannot be judged",
  severity: "info",
  why: "A channel without findings looks checked, although its fill or its bends could not be worked out.",
  sources: [ownRequirement("A layout is judged by stated facts alone, and the plan shows the others.")],
  fixable: false,
  acceptable: true,
  // Needs the ways, channels and compartments without a figure; one finding for the whole plan, at the first of them.
  check({ placement, network }): Found<Values>[] {
    if (!placement) return [];
    const { layout } = placement;
    const { leads, fills, bends, compasses, heats } = waysNotJudged(placement, network?.network);
    const channels = (indices: readonly number[]) => indices.map((index) => layout.channels[index]!);
    const compartments = heats.map(({ compartment }) => layout.compartments[compartment]!);
    const things = [
      ...leads.map((lead) => layout.leads[lead]!),
      ...channels(fills),
      ...channels(bends),
      ...compasses.map(({ surface }) => layout.surfaces[surface]!),
      ...compartments,
    ];
    const [first] = things;
    if (!first) return [];
    const name = (thing: { readonly name: string }) => thing.name;
    const heatW = heats.map((heat) => withUnit(heat.heatW, "W"));
    const gaps: readonly NotJudged[] = [
      { what: "the ways of", names: runNames(layout, leads), without: "the places of their parts" },
      { what: "the fill of", names: channels(fills).map(name), without: "inside, fillPercent or outsideMm" },
      { what: "the bends of", names: channels(bends).map(name), without: "bendRadiusMm or outsideMm" },
      { what: "the distance from", names: compasses.map(name), without: "distanceMm" },
      {
        what: "the temperature in",
        names: compartments.map(name),
        without: `walls of a material with a figure: ${listInWords(heatW, 3)} / (U · area) is its rise`,
      },
    ];
    return [
      {
        subject: "the plan",
        at: atRecord(first),
        values: { gaps: gaps.filter(({ names }) => names.length > 0) },
        related: things
          .filter(({ record }, at) => things.findIndex((thing) => thing.record === record) === at)
          .slice(1, mostRelated)
          .map((thing) => ({ at: atRecord(thing), text: thing.name })),
      },
    ];
  },
  message: ({ gaps }) => notJudgedInWords(gaps),
});

interface Values {
  readonly gaps: readonly NotJudged[];
}

const mostRelated = 8;
