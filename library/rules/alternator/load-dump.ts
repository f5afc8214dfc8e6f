import {
  batteriesBeside,
  switchesBeforeBatteries,
} from "../../analysis/network/topology/batteries-beside.ts";
import { conductorsAt, networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { AlternatorPart, Network, Part } from "../../model/network.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
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
  // Needs the batteries on the alternator's side of any charger: with every switch closed, and with every switch open. Information
  // where the alternator has no lead of its own: the switch that an engine's main feed needs then cuts it off too.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      network.parts.flatMap((part) => {
        const loss = part.kind === "alternator" && lossOf(network, part);
        if (!loss) return [];
        return [
          {
            subject: part.name,
            at: atPart(part),
            ...(loss.by.endsWith("engine") && { severity: "info" as const }),
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
    if (by === "switch of the engine")
      return `Charges through the cable of its starter motor, in which ${listInWords(parts)} can disconnect it from every battery: the voltage then surges (${source}). Leave the switch on while the engine runs.`;
    const switches = atStart(listInWords(parts));
    if (by === "switch of an outboard engine")
      return `${switches} can disconnect it from every battery while the engine runs: the voltage then surges (${source}). Leave the switch on while it runs, or lead its charging wire straight to the battery if its maker asks for that.`;
    return `${switches} can disconnect it from every battery while the engine runs: the voltage then surges (${source}). Connect the alternator's plus on the battery's side, or put a battery beside it.`;
  },
});

/** The batteries that may cut an alternator off, or the switches that can. */
function lossOf(
  network: Network,
  { terminals, name }: AlternatorPart,
): { readonly by: Values["by"]; readonly parts: readonly Part[] } | undefined {
  const batteries = batteriesBeside(network, terminals);
  if (batteries.length > 0 && batteries.every(({ chemistry }) => chemistry === "LiFePO4"))
    return { by: "lithium", parts: batteries };
  const switches = switchesBeforeBatteries(network, terminals);
  if (switches.length === 0) return undefined;
  if (isOnStarter(network, terminals)) return { by: "switch of the engine", parts: switches };
  return { by: namesOutboard.test(name) ? "switch of an outboard engine" : "switch", parts: switches };
}

/** Its charging wire is in the cable of its starter motor, and a plan may write the two one by one. */
const namesOutboard = /\boutboard/i;

/** Whether an alternator's plus leads to the starter motor of its engine alone, as inside an outboard. */
function isOnStarter(network: Network, { positive }: AlternatorPart["terminals"]): boolean {
  const leads = conductorsAt(networkGraph(network), positive).map((index) => network.conductors[index]!);
  return (
    leads.length > 0 &&
    leads.every(({ from, to }) => {
      const { part, name } = network.terminals[from === positive ? to : from]!;
      return name === "positive" && isStarterMotor(network.parts[part]!);
    })
  );
}

/** There may be thousands side by side: a full list for each would contain millions of names. */
const mostRelated = 16;

interface Values {
  readonly by: "lithium" | "switch" | "switch of the engine" | "switch of an outboard engine";
  readonly parts: readonly string[];
  readonly source: string;
}
