import type { WorstOf } from "../../analysis/network-result.ts";
import type { Part } from "../../model/network.ts";
import { currentLimitsOf } from "../../model/part-roles.ts";
import { currentThrough } from "../../rules/current-through.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { kindInWords } from "../../rules/wording/part-in-words.ts";
import type { Cell, Table } from "../table.ts";
import { numberColumn, quantity, textColumn, valueAndLimit } from "./cells.ts";
import type { ReportContext } from "./chapter.ts";
import { numbersAbout } from "./numbered-findings.ts";

/** Maximum current of each rateable part; missing ratings are listed as not stated. */
export function ratingsTable(judged: JudgedNetwork, { numbered }: ReportContext): Table {
  const duties = judged.network.parts.flatMap((part) =>
    dutiesOf(judged, part).map((duty) => ({ part, ...duty })),
  );
  return {
    id: "ratings",
    title: "Currents and ratings of parts",
    notes: duties.some(({ ratedA }) => ratedA === undefined)
      ? ["Not judged: the plan states no rating, so there is nothing to hold the current against."]
      : [],
    columns: [
      textColumn("part", "Part"),
      textColumn("kind", "Kind"),
      textColumn("does", "Does"),
      numberColumn("currentA", "At most, A"),
      textColumn("scenario", "In"),
      numberColumn("ratedA", "Rated, A"),
      numberColumn("spareA", "Spare, A"),
      textColumn("findings", "Findings"),
    ],
    rows: duties.map(({ part, does, worst, ratedA }) => [
      part.name,
      kindInWords(part),
      does,
      ...figuresOf(worst, ratedA, judged),
      numbersAbout(numbered, part.name),
    ]),
  };
}

interface Duty {
  readonly does: "gives" | "takes" | "carries";
  readonly worst: WorstOf | undefined;
  /** undefined: not stated. */
  readonly ratedA: number | undefined;
}

function dutiesOf({ result }: JudgedNetwork, part: Part): readonly Duty[] {
  const { feeds, draws } = result.parts[part.index] ?? {};
  const worst = { gives: feeds, takes: draws, carries: currentThrough(result, part) };
  return currentLimitsOf(part).map(({ current, statedA }) => ({
    does: current,
    worst: worst[current],
    ratedA: statedA,
  }));
}

function figuresOf(
  worst: WorstOf | undefined,
  ratedA: number | undefined,
  { network }: JudgedNetwork,
): readonly Cell[] {
  const rated = ratedA === undefined ? "not stated" : quantity(ratedA);
  if (!worst) return ["none", null, rated, null];
  const scenario = network.scenarios[worst.scenario]?.name ?? "";
  if (ratedA === undefined) return [quantity(worst.currentA), scenario, rated, "not judged"];
  const [is, may] = valueAndLimit(worst.currentA, ratedA);
  return [is, scenario, may, quantity(ratedA - worst.currentA)];
}
