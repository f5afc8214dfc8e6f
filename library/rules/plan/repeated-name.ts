import { groupedBy } from "../../analysis/grouped-by.ts";
import type { Run } from "../../model/run.ts";
import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, type Found } from "../rule.ts";
import { counted } from "../wording/format-number.ts";

export const repeatedName = defineRule<Values>({
  id: "plan/repeated-name",
  title: "Name used for two circuits",
  severity: "warning",
  why: "Labels, lists and findings name circuits: with two of one name, the wrong fuse is pulled and the wrong wire cut.",
  sources: [ownRequirement("Each circuit and cable has a name of its own.")],
  fixable: false,
  acceptable: true,
  // Needs the names that the plan states for circuits and cables. One finding for each name, at the second one.
  // A plan that a limit stopped may have been in a loop without an end.
  check: ({ circuits, problems }) => {
    if (problems.length > 0) return [];
    const named = circuits.flatMap(({ circuit }) => (circuit.nameStated ? [circuit] : []));
    const inOrder = named.sort((one, other) => one.record - other.record);
    return [...groupedBy(inOrder, ({ name }) => name)].flatMap(([name, runs]): Found<Values>[] => {
      const [first, second, ...others] = runs;
      if (!first || !second) return [];
      return [
        {
          subject: name,
          at: atProperty(second, "name"),
          values: { word: second.word, before: first.word, others: others.length },
          related: [first, ...others].slice(0, mostRelated).map(related),
        },
      ];
    });
  },
  message({ word, before, others }) {
    const is = before === word ? `Another ${before}` : `A ${before}`;
    const more =
      others === 0 ? "" : `, and ${others === 1 ? "one more" : `${counted(others, "further one")}`}`;
    return `${is} has this name${more}: give each its own, so that labels, lists and findings tell them apart.`;
  },
});

interface Values {
  readonly word: Run["word"];
  /** The word of the first one of that name. */
  readonly before: Run["word"];
  /** How many there are besides the first two. */
  readonly others: number;
}

const mostRelated = 8;

function related(run: Run) {
  return { at: atProperty(run, "name"), text: `The other ${run.word}` };
}
