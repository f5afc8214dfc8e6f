import { type AboveRating, aboveStatedRating, statedRating } from "../current-through.ts";
import { defineRule } from "../rule.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";

export const disconnectRating = defineRule<AboveRating>({
  id: "disconnect/rating",
  title: "Rating of a switch exceeded",
  formerTitles: ["Disconnect rating exceeded", "More current than the disconnect is rated for"],
  severity: "warning",
  why: "Contacts that carry more than their rating heat up, pit and weld: the disconnect, relay or selector switch no longer opens.",
  sources: [statedRating],
  fixable: false,
  acceptable: true,
  restsOn: "currents",
  // Needs the current through each disconnect, relay and selector switch in every scenario that lasts.
  check: (plan) => aboveStatedRating(plan, "disconnect/rating"),
  message({ kind, currentA, estimate, ratedA, scenario }) {
    const [carries, rated] = formatDistinctWithUnit(currentA, ratedA, "A");
    return `Carries ${carries} ${scenario}${estimate}, its rating is ${rated} (ratedA): use a ${kind} with a higher one, or split its loads.`;
  },
});
