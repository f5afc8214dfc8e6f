import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { DcDcChargerPart, Network } from "../../model/network.ts";
import { chargingCircle } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { atPart, listInWords, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const chargerCircle = defineRule<Values>({
  id: "charger/circle",
  title: "Chargers that feed each other",
  severity: "error",
  why: "Chargers that always run and feed each other's batteries carry the same charge round and round: their losses empty all of them.",
  sources: [chargingCircle],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the pieces of metal at the input and the output of each charger that always runs, with every switch closed. A circle of
  // any number of chargers counts.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      circles(network).map(([charger, ...others]) => ({
        subject: charger.name,
        at: atPart(charger, "runs"),
        values: { others: others.map(partInWords), source: sourceInWords(chargingCircle) },
        related: others.map((other) => relatedPart(other)),
      })),
    ),
  message({ others, source }) {
    const [other = "", ...further] = others;
    const instead = `(${source}): let one of them run with the engine only, or use one charger for both directions.`;
    if (further.length === 0)
      return `Always runs, and feeds the side that ${other} draws from, which always runs too and feeds it in turn ${instead}`;
    return `Always runs, and closes a circle: it feeds ${listInWords([other, ...further])} one after another, which always run too, and the last one feeds it in turn ${instead}`;
  },
});

interface Values {
  /** The chargers behind it in the circle, in the direction of the current. */
  readonly others: readonly string[];
  readonly source: string;
}

type Circle = readonly [DcDcChargerPart, ...DcDcChargerPart[]];

/** Each charger that closes a circle with earlier ones, and those from its output back to its input: the fewest. */
function circles(network: Network): readonly Circle[] {
  const { componentOf } = networkGraph(network);
  const from = ({ terminals }: DcDcChargerPart) => componentOf[terminals.inputPositive]!;
  const to = ({ terminals }: DcDcChargerPart) => componentOf[terminals.outputPositive]!;
  const earlier = new Map<number, DcDcChargerPart[]>();
  return network.parts.flatMap((part): Circle[] => {
    if (part.kind !== "dcDcCharger" || !part.runsAlways || from(part) === to(part)) return [];
    const back = wayBetween(to(part), from(part), (side) =>
      (earlier.get(side) ?? []).map((charger) => [charger, to(charger)] as const),
    );
    earlier.set(from(part), [...(earlier.get(from(part)) ?? []), part]);
    return back ? [[part, ...back]] : [];
  });
}

/** The fewest chargers that lead from one side of a system to another. Undefined: none do. */
function wayBetween(
  start: number,
  end: number,
  fedFrom: (side: number) => readonly (readonly [DcDcChargerPart, number])[],
): readonly DcDcChargerPart[] | undefined {
  const ways = new Map<number, readonly DcDcChargerPart[]>([[start, []]]);
  // A map grows while it is walked: breadth first.
  for (const [side, way] of ways) {
    if (side === end) return way;
    for (const [charger, next] of fedFrom(side)) if (!ways.has(next)) ways.set(next, [...way, charger]);
  }
  return undefined;
}
