import {
  batteriesBeside,
  switchesBeforeBatteries,
} from "../../analysis/network/topology/batteries-beside.ts";
import type { AlternatorPart, Network, Part } from "../../model/network.ts";
import { loadDumpPractice } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { atPart, atStart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const loadDump = defineRule<Values>({
  id: "alternator/load-dump",
  title: "Alternator may lose its battery",
  formerTitles: ["Lithium battery may cut off the alternator"],
  severity: "warning",
  why: "If an alternator loses its battery at full current, its voltage surges and destroys its diodes and any device that is on.",
  sources: [loadDumpPractice],
  fixable: false,
  acceptable: true,
  // Needs the batteries on the alternator's side of any charger: with every switch closed, and with every switch open.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part) => {
        const loss = part.kind === "alternator" && lossOf(network, part);
        if (!loss) return [];
        return [
          {
            subject: part.name,
            at: atPart(part),
            values: {
              by: loss.by,
              parts: loss.parts.map((one) => partInWords(one)),
              source: sourceInWords(loadDumpPractice),
            },
            related: loss.parts.slice(0, mostRelated).map((one) => relatedPart(one)),
          },
        ];
      }),
    ),
  message({ by, parts, source }) {
    if (by === "lithium")
      return `Charges only ${listInWords(parts)}: if the protection there cuts off, the voltage surges (${source}). Put a lead-acid battery beside the alternator, or a DC-DC charger between.`;
    const switches = atStart(listInWords(parts));
    return `${switches} can disconnect it from every battery while the engine runs: the voltage then surges (${source}). Connect the alternator's plus on the battery's side, or put a battery beside it.`;
  },
});

/** The batteries that may cut an alternator off, or the switches that can. */
function lossOf(
  network: Network,
  { terminals }: AlternatorPart,
): { readonly by: Values["by"]; readonly parts: readonly Part[] } | undefined {
  const batteries = batteriesBeside(network, terminals);
  if (batteries.length > 0 && batteries.every(({ chemistry }) => chemistry === "LiFePO4"))
    return { by: "lithium", parts: batteries };
  const switches = switchesBeforeBatteries(network, terminals);
  return switches.length > 0 ? { by: "switch", parts: switches } : undefined;
}

/** There may be thousands side by side: a full list for each would contain millions of names. */
const mostRelated = 16;

interface Values {
  readonly by: "lithium" | "switch";
  readonly parts: readonly string[];
  readonly source: string;
}
