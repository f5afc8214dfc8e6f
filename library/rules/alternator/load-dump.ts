import { groupedBy } from "../../analysis/grouped-by.ts";
import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { BatteryPart, Network } from "../../model/network.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { loadDumpPractice } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { atPart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const loadDump = defineRule<Values>({
  id: "alternator/load-dump",
  title: "Lithium battery may cut off the alternator",
  severity: "warning",
  why: "If the battery's protection cuts off at full charging current, the alternator's voltage surges and destroys its diodes and any device that is on.",
  sources: [loadDumpPractice],
  fixable: false,
  acceptable: true,
  // Needs the batteries on the alternator's side of any charger, with every switch closed.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part) => {
        if (part.kind !== "alternator") return [];
        const batteries = batteriesBeside(network, part.terminals.positive);
        if (batteries.length === 0 || batteries.some(({ chemistry }) => chemistry !== "LiFePO4")) return [];
        const values: Values = {
          batteries: batteries.map((battery) => partInWords(battery)),
          source: sourceInWords(loadDumpPractice),
        };
        return [
          {
            subject: part.name,
            at: atPart(part),
            values,
            related: batteries.slice(0, mostRelated).map((battery) => relatedPart(battery)),
          },
        ];
      }),
    ),
  message: ({ batteries, source }) =>
    `Charges only ${listInWords(batteries)}: if the protection there cuts off, the voltage surges (${source}). Put a lead-acid battery beside the alternator, or a DC-DC charger between.`,
});

/** There may be thousands side by side: a full list for each would contain millions of names. */
const mostRelated = 16;

interface Values {
  readonly batteries: readonly string[];
  readonly source: string;
}

/** The batteries that conductors and closed switches link to a terminal. */
function batteriesBeside(network: Network, positive: number): readonly BatteryPart[] {
  return batteriesByComponent(network).get(networkGraph(network).componentOf[positive]!) ?? [];
}

const batteriesByComponent = workedOutOnce((network: Network) => {
  const { componentOf } = networkGraph(network);
  const batteries = network.parts.filter((part): part is BatteryPart => part.kind === "battery");
  return groupedBy(batteries, ({ terminals }) => componentOf[terminals.positive]!);
});
