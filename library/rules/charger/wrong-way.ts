import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import type { AlternatorPart, DcDcChargerPart, Network } from "../../model/network.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";

export const chargerWrongWay = defineRule<Values>({
  id: "charger/wrong-way",
  title: "Charger that works against the alternator",
  severity: "error",
  why: "A charger that runs with the engine towards the alternator's own battery empties the other bank while driving, instead of charging it.",
  sources: [
    ownRequirement(
      "A charger that runs with the engine leads from the alternator's battery to another bank.",
    ),
  ],
  fixable: false,
  acceptable: true,
  ignoresLoads: "entirely",
  // Needs the pieces of metal at input and output of each charger that runs with the engine, and those of the alternators, with every
  // switch closed.
  check: (plan) =>
    inNetwork(plan, ({ network }) =>
      againstAlternator(network).map(([charger, alternator]) => ({
        subject: charger.name,
        at: atPart(charger),
        values: { alternator: partInWords(alternator) },
        related: [relatedPart(alternator)],
      })),
    ),
  message: ({ alternator }) =>
    `Runs with the engine, and its output leads to the side that ${alternator} charges already, while no alternator is at its input: while driving it empties the bank that it takes from. Exchange input and output, or state that it runs always (runs), if it keeps the engine battery full at rest.`,
});

interface Values {
  readonly alternator: string;
}

/** Each charger that runs with the engine towards an alternator, and not away from one. */
function againstAlternator(network: Network): readonly (readonly [DcDcChargerPart, AlternatorPart])[] {
  const { componentOf } = networkGraph(network);
  const alternators = network.parts.filter((part) => part.kind === "alternator");
  const at = (terminal: number) =>
    alternators.find(({ terminals }) => componentOf[terminals.positive] === componentOf[terminal]);
  return network.parts.flatMap((part) => {
    if (part.kind !== "dcDcCharger" || part.runsAlways) return [];
    const alternator = at(part.terminals.outputPositive);
    return alternator && !at(part.terminals.inputPositive) ? [[part, alternator] as const] : [];
  });
}
