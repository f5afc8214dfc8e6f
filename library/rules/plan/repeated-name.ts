import { groupedBy } from "../../analysis/grouped-by.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, type JudgedPlan } from "../rule.ts";
import { counted } from "../wording/format-number.ts";

export const repeatedName = defineRule<Values>({
  id: "plan/repeated-name",
  title: "Name used twice",
  formerTitles: ["Name used for two circuits"],
  severity: "warning",
  why: "Labels, lists and findings name circuits: with two of one name, the wrong fuse is pulled and the wrong wire cut.",
  sources: [ownRequirement("Each circuit and cable has a name of its own, and so has each period.")],
  fixable: false,
  acceptable: true,
  // Needs the names that the plan states for circuits and cables, and for periods. One finding for each name, at the second one.
  // A plan that a limit stopped may have been in a loop without an end.
  check: (plan) => {
    if (plan.problems.length > 0) return [];
    return [runsIn(plan), periodsIn(plan)].flatMap((named) =>
      [...groupedBy(named, ({ name }) => name)].flatMap(([name, alike]): Found<Values>[] => {
        const [first, second, ...others] = alike;
        if (!first || !second) return [];
        return [
          {
            subject: name,
            at: nameOf(second),
            values: { word: second.word, before: first.word, others: others.length },
            related: [first, ...others].slice(0, mostRelated).map(related),
          },
        ];
      }),
    );
  },
  message({ word, before, others }) {
    const is = before === word ? `Another ${before}` : `A ${before}`;
    const more =
      others === 0 ? "" : `, and ${others === 1 ? "one more" : `${counted(others, "further one")}`}`;
    return `${is} has this name${more}: give each its own, so that ${word === "period" ? "findings, tables and charts" : "labels, lists and findings"} tell them apart.`;
  },
});

interface Named {
  readonly record: number;
  readonly name: string;
  readonly word: "circuit" | "cable" | "period";
}

/** Circuits and cables with a stated name, in the order of the plan. */
function runsIn({ circuits }: JudgedPlan): readonly Named[] {
  const runs = circuits.flatMap(({ circuit }) => (circuit.nameStated ? [circuit] : []));
  return runs.sort((one, other) => one.record - other.record);
}

function periodsIn({ model }: JudgedPlan): readonly Named[] {
  return model.periods.flatMap(({ record, name, values }) =>
    values.name === undefined ? [] : [{ record, name, word: "period" as const }],
  );
}

interface Values {
  readonly word: Named["word"];
  /** The word of the first one of that name. */
  readonly before: Named["word"];
  /** How many there are besides the first two. */
  readonly others: number;
}

const mostRelated = 8;

function nameOf({ record }: Named) {
  return { record, path: ["name"] };
}

function related(named: Named) {
  return { at: nameOf(named), text: `The other ${named.word}` };
}
