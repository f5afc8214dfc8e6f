import { bypassesOf } from "../../analysis/network/topology/bypass.ts";
import { worthTelling } from "../current-through.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { atEnd, listInWords, partInWords, relatedPart, scenarioInWords } from "../wording/part-in-words.ts";

export const shuntBypassed = defineRule<Values>({
  id: "shunt/bypassed",
  title: "Current bypasses the shunt",
  formerTitles: ["Current that the shunt does not count"],
  severity: "warning",
  why: "A meter that misses a current shows a bank as full that is half empty, until the lights go out.",
  sources: [
    ownRequirement(
      "A shunt measures what passes it and nothing else: on its battery side there is only the bank.",
    ),
  ],
  fixable: false,
  acceptable: true,
  // Needs what leaves the way between each bank and its shunt, and the worst current of it.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      bypassesOf(network, result.topology.banks).flatMap((bypass): Found<Values>[] => {
        const conductor = network.conductors[bypass.conductor];
        if (!conductor) return [];
        const worst = worthTelling(result.conductors[bypass.conductor]?.worst);
        const behind = bypass.parts.flatMap((part) => network.parts[part] ?? []);
        return [
          {
            subject: conductor.name,
            at: atEnd(conductor, conductor.from === bypass.leavesAt ? "from" : "to"),
            values: {
              shunt: partInWords(bypass.shunt),
              behind: listInWords(behind.map(partInWords)),
              several: behind.length > 1,
              ...(worst
                ? { carriesA: worst.currentA, scenario: scenarioInWords(network, worst.scenario) }
                : {}),
            },
            related: [relatedPart(bypass.shunt)],
          },
        ];
      }),
    ),
  message({ shunt, behind, several, carriesA, scenario }) {
    const what =
      behind === "" ? "what it carries" : `what ${behind} ${several ? "take or give" : "takes or gives"}`;
    const much = carriesA === undefined ? "" : ` (${withUnit(carriesA, "A")} ${scenario})`;
    return `Lands on the bank's side of ${shunt}, so ${what}${much} is not counted: land it on the system side.`;
  },
});

interface Values {
  readonly shunt: string;
  /** What feeds or draws past the shunt; empty where the conductor only leads round it. */
  readonly behind: string;
  readonly several: boolean;
  /** The greatest current in it, A, and where; absent where none could be worked out. */
  readonly carriesA?: number;
  readonly scenario?: string;
}
