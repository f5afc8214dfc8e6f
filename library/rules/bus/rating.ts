import { type AboveRating, aboveStatedRating, statedRating } from "../current-through.ts";
import { defineRule } from "../rule.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";

export const busRating = defineRule<AboveRating>({
  id: "bus/rating",
  title: "Bus bar rating exceeded",
  formerTitles: ["More current than the bus is rated for"],
  severity: "warning",
  why: "A bus bar that carries more than its rating heats its studs, and the nuts on them work loose.",
  sources: [statedRating],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  // Needs the current through each bus in every scenario. Silent if the plan states no rating.
  check: (plan) => aboveStatedRating(plan, "bus/rating"),
  message({ currentA, estimate, ratedA, scenario }) {
    const [carries, rated] = formatDistinctWithUnit(currentA, ratedA, "A");
    return `Carries ${carries} ${scenario}${estimate}, its rating is ${rated} (ratedA): use a bus bar with a higher one, or move loads to another.`;
  },
});
