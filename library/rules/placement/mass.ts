import { carriedBy } from "../../analysis/placement/carried.ts";
import { statedInPlan } from "../../model/stated-in-plan.ts";
import { boardOf, inWords } from "../board.ts";
import { defineRule } from "../rule.ts";
import { formatDistinct } from "../wording/format-number.ts";
import { atStart } from "../wording/part-in-words.ts";

export const placementMass = defineRule<Values>({
  id: "placement/mass",
  title: "More mass than its surface carries",
  severity: "warning",
  why: "On the road or in a seaway the load counts several times, and a board that tears off takes live cables with it.",
  sources: [statedInPlan(undefined)],
  fixable: false,
  acceptable: true,
  // Needs the mass that the surface carries, and those of the parts on it. Parts without a stated mass are not counted.
  check(plan) {
    const board = boardOf(plan);
    if (!board) return [];
    const { facts } = board;
    return carriedBy(facts.layout).map(({ surface, bodies, massKg, limitKg, withoutMass }) => {
      const [mass, limit] = formatDistinct(massKg, limitKg);
      return {
        subject: surface.name,
        at: { record: surface.record, path: ["carriesKg"] },
        values: { mass, limit, withoutMass },
        related: bodies.slice(0, mostRelated).map((body) => ({
          at: { record: body.record, path: ["massKg"] },
          text: atStart(inWords(plan, body)),
        })),
      };
    });
  },
  message: ({ mass, limit, withoutMass }) =>
    `${mass} kg on it${withoutMass > 0 ? ", without the parts that state no mass" : ""}, above the ${limit} kg that it carries (stated in the plan): move a heavy part, or strengthen it.`,
});

/** The heaviest first. */
const mostRelated = 4;

interface Values {
  readonly mass: string;
  readonly limit: string;
  /** The number of parts on it that state no mass. */
  readonly withoutMass: number;
}
