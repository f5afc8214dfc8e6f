import { type KinderSurroundings, kinderThanWay } from "../../analysis/placement/kinder-than-way.ts";
import { bundlesOf } from "../../analysis/placement/shared-channels.ts";
import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, type Found } from "../rule.ts";
import { counted, formatDistinctWithUnit } from "../wording/format-number.ts";

const statedWins = ownRequirement(
  "A value that the plan states for a run wins over those of the places on its way.",
);

export const kinderStated = defineRule<Values>({
  id: "placement/kinder-than-way",
  title: "Stated surroundings kinder than the way",
  severity: "info",
  why: "A conductor that is judged for cooler air than it lies in carries less than its ampacity says.",
  sources: [statedWins],
  fixable: false,
  acceptable: true,
  // Needs the surroundings along the ways, and the conductors that carry load together there.
  check({ placement, network, circuits }): Found<Values>[] {
    if (!placement) return [];
    const bundles = network ? bundlesOf(placement, network.network, network.result.scenarios) : [];
    const runs = circuits.map(({ circuit }) => circuit);
    return kinderThanWay(placement, runs, bundles).map(({ run, ...kinder }) => ({
      subject: run.name,
      at: atProperty(run, kinder.property),
      values: kinder,
    }));
  },
  message(values) {
    const { place } = values;
    const wins = "the stated value wins; leave it out to judge by the way";
    if (values.property === "ambientC") {
      const [stated, there] = formatDistinctWithUnit(values.stated, values.there, "°C");
      return `${stated} stated, and ${place} on its way has ${there}: ${wins}.`;
    }
    if (values.property === "engineSpace")
      return `No engine space stated, and ${place} on its way is in one: ${wins}.`;
    return `${counted(values.stated, "other conductor")} stated, and in ${place} on its way up to ${values.there} carry load with it: the stated value wins.`;
  },
});

type Values = Omit<KinderSurroundings, "run">;
