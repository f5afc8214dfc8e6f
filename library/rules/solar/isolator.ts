import { networkGraph, reachedFrom } from "../../analysis/network/topology/network-graph.ts";
import { opensLine } from "../../analysis/network/topology/opens-line.ts";
import { coldStringOf } from "../../analysis/solar-cold-voltage.ts";
import { type SolarWiring, solarWiringOf } from "../../analysis/solar-wiring.ts";
import type { Network, SolarControllerPart } from "../../model/network.ts";
import { arrayIsolator, touchVoltage } from "../../standards/machine-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const solarIsolator = defineRule<Values>({
  id: "solar/isolator",
  title: "Array above 60 V without an isolator",
  severity: "info",
  why: "Modules in the sun cannot be switched off: without an isolator the cable stays live while somebody works on it, and a plug pulled under load draws an arc.",
  sources: [touchVoltage.source, arrayIsolator.source],
  fixable: false,
  acceptable: true,
  // Needs the voltage of each string on the coldest day, or at 25 °C if that is unknown, and the path to its controller.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      solarWiringOf(network).flatMap((wiring) => {
        const { array, controllers, string } = wiring;
        const [controller] = controllers;
        // Arrays in series are one string: reported once, on the most negative of them.
        if (array !== string[0] || !controller) return [];
        const { coldV, openCircuitV } = coldStringOf(string);
        if (!exceeds(coldV, touchVoltage.uncoveredUpToV) || canBeIsolated(network, wiring, controller))
          return [];
        const values: Values = {
          voltageV: coldV,
          cold: exceeds(coldV, openCircuitV),
          limitV: touchVoltage.uncoveredUpToV,
          controller: partInWords(controller),
          source: sourceInWords(touchVoltage.source),
        };
        return [
          {
            subject: array.name,
            at: atPart(array, "openCircuitV"),
            values,
            related: [relatedPart(controller)],
          },
        ];
      }),
    ),
  message({ voltageV, cold, limitV, controller, source }) {
    const [gives, limit] = formatDistinctWithUnit(voltageV, limitV, "V");
    const when = cold ? " on the coldest day" : "";
    return `Up to ${gives}${when} reach ${controller} past no isolator; above ${limit} bare parts can give a shock (${source}): put a disconnect or breaker made for that voltage before it, and cover the terminals.`;
  },
});

interface Values {
  /** Open circuit, the whole string, V. */
  readonly voltageV: number;
  /** It was raised by the cold. */
  readonly cold: boolean;
  readonly limitV: number;
  readonly controller: string;
  readonly source: string;
}

/** One pole is enough to stop the current; which poles must open is left to the builder's rules. */
function canBeIsolated(
  network: Network,
  { string }: SolarWiring,
  { terminals }: SolarControllerPart,
): boolean {
  const graph = networkGraph(network);
  const reaches = (from: number, to: number) =>
    reachedFrom(graph, [from], (edge) => !opensLine(network, edge)).has(to);
  return !(
    reaches(string.at(-1)!.terminals.positive, terminals.solarPositive) &&
    reaches(string[0]!.terminals.negative, terminals.solarNegative)
  );
}
