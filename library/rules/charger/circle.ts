import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { DcDcChargerPart, Network } from "../../model/network.ts";
import { chargingCircle } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const chargerCircle = defineRule<Values>({
  id: "charger/circle",
  title: "Chargers that feed each other",
  severity: "warning",
  why: "Two chargers that always run and feed each other's batteries carry the same charge round and round: their losses empty both batteries.",
  sources: [chargingCircle],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the pieces of metal at the input and the output of each charger that always runs, with every switch closed.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      circles(network).map(([charger, other]) => ({
        subject: charger.name,
        at: atPart(charger, "runs"),
        values: { other: partInWords(other), source: sourceInWords(chargingCircle) },
        related: [relatedPart(other)],
      })),
    ),
  message: ({ other, source }) =>
    `Always runs, and feeds the side that ${other} draws from, which always runs too and feeds it in turn (${source}): let one of them run with the engine only, or use one charger for both directions.`,
});

interface Values {
  readonly other: string;
  readonly source: string;
}

/** Each charger that closes a circle with an earlier one, and that one. */
function circles(network: Network): readonly (readonly [DcDcChargerPart, DcDcChargerPart])[] {
  const { componentOf } = networkGraph(network);
  const first = new Map<string, DcDcChargerPart>();
  return network.parts.flatMap((part) => {
    if (part.kind !== "dcDcCharger" || !part.runsAlways) return [];
    const from = componentOf[part.terminals.inputPositive]!;
    const to = componentOf[part.terminals.outputPositive]!;
    if (from === to) return [];
    const way = `${from} ${to}`;
    if (!first.has(way)) first.set(way, part);
    const back = first.get(`${to} ${from}`);
    return back ? [[part, back] as const] : [];
  });
}
