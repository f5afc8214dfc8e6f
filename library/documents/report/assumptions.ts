import { type BenchSettings, defaultBench } from "../../model/bench-settings.ts";
import type { LengthUnit } from "../../model/length-unit.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { formatExact } from "../../rules/wording/format-number.ts";
import { shortLengthInUnit, shortUnitOf } from "../../rules/wording/lengths.ts";
import { isUsual, usualFittingsInWords } from "../schedules/fittings.ts";
import { usualSparesInWords } from "../schedules/parts-list.ts";
import { wiresOf } from "../schedules/wires.ts";
import { tableOf, words } from "../table-of.ts";
import { type Assumption, knownBy } from "./assumption.ts";
import { assumptionsOfParts } from "./assumptions-of-parts.ts";
import { assumptionsOfRuns } from "./assumptions-of-runs.ts";
import { tableBlock } from "./cells.ts";
import type { Chapter, ReportContext } from "./chapter.ts";

/** Every default taken, and how it is known. */
export function assumptionsChapter(context: ReportContext): Chapter {
  const { judgement, sources } = context;
  const { network, model } = judgement;
  const table = (id: string, title: string, assumptions: readonly Assumption[]) =>
    tableOf<Assumption>(
      { id: `assumptions-${id}`, title, notes: [] },
      [
        words("what", "Item", ({ what }) => what),
        words("takenAs", "Taken as", ({ takenAs }) => takenAs),
        words("where", "For", ({ where }) => where),
        words("known", "How it is known", ({ source }) => knownBy(source, sources)),
      ],
      assumptions.filter(({ where }) => where !== ""),
    );
  return {
    id: "assumptions",
    title: "Assumptions",
    orientation: "portrait",
    blocks: [
      {
        kind: "paragraph",
        text: "Values that the plan does not state, and the assumptions made instead. A value stated in the plan leaves this list. Read: seen in the named document. Computed: follows from a formula. From memory: recalled and not seen in print, an unconfirmed figure.",
      },
      ...tableBlock(table("runs", "Circuits and cables", assumptionsOfRuns(judgement))),
      ...(network
        ? tableBlock(table("parts", "Parts and scenarios", assumptionsOfParts(network.network)))
        : []),
      ...tableBlock(
        table("bench", "Cutting and buying", [
          ...assumptionsAtBench(model.build.bench, model.lengthUnit),
          usualFittings(judgement),
        ]),
      ),
    ],
  };
}

function usualFittings(judgement: JudgedPlan): Assumption {
  const wires = wiresOf(judgement).filter(({ from, to }) => isUsual(from) || isUsual(to));
  return {
    what: "Fittings where the part does not state its termination",
    takenAs: usualFittingsInWords,
    where: [...new Set(wires.map(({ name }) => name))].join("; "),
    source: "common practice, no source",
  };
}

function assumptionsAtBench(bench: BenchSettings, unit: LengthUnit): readonly Assumption[] {
  const setting = <Name extends keyof BenchSettings>(
    name: Name,
    what: string,
    takenAs: (value: BenchSettings[Name]) => string,
  ): Assumption => ({
    what,
    takenAs: takenAs(bench[name]),
    where: "schedules and lists",
    // A stated value equal to the default is indistinguishable from the default, which is fine.
    source: bench[name] === defaultBench[name] ? "common practice, no source" : "stated in the plan",
  });
  return [
    setting(
      "slackPercent",
      "Slack of every conductor",
      (percent) => `${formatExact(percent)} % of its length`,
    ),
    setting("endSlackM", "Slack at each end, for stripping and terminating", (metres) =>
      shortLengthInUnit(metres * 1_000, shortUnitOf[unit]),
    ),
    setting("positiveColour", "Colour of positive conductors that name none", (colour) => colour),
    setting("negativeColour", "Colour of negative conductors that name none", (colour) => colour),
    setting("spareFuses", "Spare fuses of each kind", (count) =>
      count === undefined ? usualSparesInWords : formatExact(count),
    ),
    setting("wireByLength", "Wire is bought", (byLength) =>
      byLength ? `by the ${unit === "ft" ? "foot" : "metre"}` : "on spools",
    ),
  ];
}
