import { bypassesOf } from "../../analysis/network/topology/bypass.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
import { worthTelling } from "../current-through.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { atEnd, listInWords, occasionInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";

export const shuntBypassed = defineRule<Values>({
  id: "shunt/bypassed",
  title: "Current bypasses the shunt",
  formerTitles: ["Current that the shunt does not count"],
  severity: "warning",
  why: "A meter that misses a current shows a half-empty bank as full, until the lights go out.",
  sources: [
    ownRequirement(
      "A shunt measures only the current that passes it: only the bank is connected to its battery side.",
    ),
  ],
  fixable: false,
  acceptable: true,
  // Needs the conductors that leave the path between each bank and its shunt, and their worst currents.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      bypassesOf(network, result.topology.banks).flatMap((bypass): Found<Values>[] => {
        const conductor = network.conductors[bypass.conductor];
        if (!conductor) return [];
        const worst = worthTelling(result.conductors[bypass.conductor]?.worst);
        const behind = bypass.parts.flatMap((part) => network.parts[part] ?? []);
        // Cranking takes seconds: nothing of the charge, and more current than a shunt for the house carries.
        if (behind.length > 0 && behind.every(isStarterMotor)) return [];
        return [
          {
            subject: conductor.name,
            at: atEnd(conductor, conductor.from === bypass.leavesAt ? "from" : "to"),
            values: {
              shunt: partInWords(bypass.shunt),
              behind: listInWords(behind.map(partInWords)),
              ...(worst ? { carriesA: worst.currentA, scenario: occasionInWords(network, worst) } : {}),
            },
            related: [relatedPart(bypass.shunt)],
          },
        ];
      }),
    ),
  message({ shunt, behind, carriesA, scenario }) {
    const missed = behind === "" ? "its current" : `the current of ${behind}`;
    const much = carriesA === undefined ? "" : ` (${withUnit(carriesA, "A")} ${scenario})`;
    return `Connected on the bank's side of ${shunt}, so ${missed}${much} is not counted: connect it on the system side.`;
  },
});

interface Values {
  readonly shunt: string;
  /** The parts that feed or draw past the shunt; empty if the conductor only leads round it. */
  readonly behind: string;
  /** The maximum current in it, A, and its scenario; absent if unknown. */
  readonly carriesA?: number;
  readonly scenario?: string;
}
