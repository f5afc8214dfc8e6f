import { currentThrough } from "../../analysis/current-through.ts";
import type { WorstOf } from "../../analysis/network-result.ts";
import type { Part } from "../../model/network.ts";
import { currentLimitsOf } from "../../model/part-roles.ts";
import type { JudgedNetwork } from "../../rules/rule.ts";
import { kindInWords, occasionName } from "../../rules/wording/part-in-words.ts";
import type { Cell, Table } from "../table.ts";
import { numbers, quantity, tableOf, words } from "../table-of.ts";
import { findingsAbout, quantityBeside } from "./cells.ts";
import type { ReportContext } from "./chapter.ts";

/** Maximum current of each rateable part; missing ratings are listed as not stated. */
export function ratingsTable(judged: JudgedNetwork, { numbered }: ReportContext): Table {
  const duties = judged.network.parts.flatMap((part) =>
    dutiesOf(judged, part).map((duty): PartDuty => ({ part, ...duty })),
  );
  return tableOf<PartDuty>(
    {
      id: "ratings",
      title: "Currents and ratings of parts",
      notes: duties.some(({ ratedA }) => ratedA === undefined)
        ? ["Not judged: the plan states no rating, so the current has no limit to be held against."]
        : [],
    },
    [
      words("part", "Part", ({ part }) => part.name),
      words("kind", "Kind", ({ part }) => kindInWords(part)),
      words("does", "Does", ({ does }) => does),
      numbers("currentA", "At most, A", currentCell),
      words("scenario", "In", ({ worst }) => (worst ? occasionName(judged.network, worst) : null)),
      numbers("ratedA", "Rated, A", ratedCell),
      numbers("spareA", "Spare, A", spareCell),
      findingsAbout(numbered, ({ part }) => part.name),
    ],
    duties,
  );
}

interface PartDuty extends Duty {
  readonly part: Part;
}

export interface Duty {
  readonly does: "gives" | "takes" | "carries";
  readonly worst: WorstOf | undefined;
  /** undefined: not stated. */
  readonly ratedA: number | undefined;
}

/** Each current that a part limits, with the greatest that flows. */
export function dutiesOf({ result }: JudgedNetwork, part: Part): readonly Duty[] {
  const { feeds, draws } = result.parts[part.index] ?? {};
  const worst = { gives: feeds, takes: draws, carries: currentThrough(result, part) };
  return currentLimitsOf(part).map(({ current, statedA }) => ({
    does: current,
    worst: worst[current],
    ratedA: statedA,
  }));
}

function currentCell({ worst, ratedA }: Duty): Cell {
  if (!worst) return "none";
  return ratedA === undefined ? quantity(worst.currentA) : quantityBeside(worst.currentA, ratedA);
}

function ratedCell({ worst, ratedA }: Duty): Cell {
  if (ratedA === undefined) return "not stated";
  return worst ? quantityBeside(ratedA, worst.currentA) : quantity(ratedA);
}

function spareCell({ worst, ratedA }: Duty): Cell {
  if (!worst) return null;
  return ratedA === undefined ? "not judged" : quantity(ratedA - worst.currentA);
}
