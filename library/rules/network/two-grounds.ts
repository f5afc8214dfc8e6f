import { type Bonds, doubleBonds } from "../../analysis/network/topology/bonds.ts";
import { worthTelling } from "../current-through.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import {
  atEnd,
  conductorInWords,
  listInWords,
  partInWords,
  relatedConductor,
} from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const oneBond = ownRequirement(
  "The negative side is bonded to hull, frame or body in one place, to keep return current in the conductors.",
);

export const twoGrounds = defineRule<Values>({
  id: "network/two-grounds",
  title: "Negative bonded to metal in two places",
  formerTitles: ["Negative side bonded to metal twice"],
  severity: "warning",
  why: "Between two bonds the metal is parallel to the negative conductors and carries part of their current: through hinges, hulls and engine mounts, where it corrodes and disturbs.",
  sources: [oneBond],
  fixable: false,
  acceptable: true,
  // Needs the connections without the metal, and the worst current of each bond.
  check: (plan) =>
    inNetwork(plan, (judged) => doubleBonds(judged.network).flatMap((bonds) => finding(judged, bonds))),
  message: ({ chassis, others, carriesA, source }) => {
    const carries = carriesA === undefined ? "" : `; up to ${withUnit(carriesA, "A")} flow through this one`;
    return `Bonds the negative side to ${chassis} in addition to ${others}, so return current flows in the metal too${carries}. Keep one bond (${source}).`;
  },
});

/** There may be thousands side by side: a full list for each would contain millions of names. */
const mostRelated = 16;

interface Values {
  readonly chassis: string;
  /** The other bonds. */
  readonly others: string;
  /** The maximum current in this one, A; absent if unknown. */
  readonly carriesA?: number;
  readonly source: string;
}

/** On the last one that the plan adds; only the builder knows which one is too many. */
function finding({ network, result }: JudgedNetwork, { chassis, conductors }: Bonds): Found<Values>[] {
  const index = conductors.reduce((last, conductor) => Math.max(last, conductor), -1);
  const conductor = network.conductors[index];
  if (!conductor) return [];
  const others = conductors
    .filter((other) => other !== index)
    .flatMap((other) => network.conductors[other] ?? []);
  const worst = worthTelling(result.conductors[index]?.worst);
  const atMetal = conductor.to === chassis.terminals.bond || conductor.to === chassis.terminals.metal;
  return [
    {
      subject: conductor.name,
      at: atEnd(conductor, atMetal ? "to" : "from"),
      values: {
        chassis: partInWords(chassis),
        others: listInWords(others.map(conductorInWords)),
        ...(worst ? { carriesA: worst.currentA } : {}),
        source: sourceInWords(oneBond),
      },
      related: others.slice(0, mostRelated).map((other) => relatedConductor(other)),
    },
  ];
}
