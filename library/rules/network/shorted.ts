import { recordsOfIslands } from "../../analysis/network/topology/islands.ts";
import type { NetworkTopology } from "../../analysis/network/topology/network-topology.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { atEnd, atPart, partInWords, relatedConductor, relatedPart } from "../wording/part-in-words.ts";

export const networkShorted = defineRule<Values>({
  id: "network/shorted",
  title: "Source short-circuited",
  formerTitles: ["A source is joined across itself"],
  severity: "error",
  why: "A battery with only metal between its poles gives all it has: thousands of amperes, within milliseconds, until something melts.",
  sources: [ownRequirement("No document is needed for it: only the metal itself limits the current.")],
  fixable: false,
  acceptable: false,
  // Needs the topology's shorts: one for each set of conductors, however many sources feed it.
  check: (plan) =>
    inNetwork(plan, (judged) => judged.result.topology.shorts.flatMap((short) => finding(judged, short))),
  message: ({ source, closes }) =>
    closes
      ? `Connects the positive side of ${source} directly to the negative side: a dead short. Take it out, or connect it to another terminal.`
      : `The positive and the negative terminal of ${source} are connected directly, inside parts: a dead short.`,
});

interface Values {
  /** The source with connected poles; one of them if there are several. */
  readonly source: string;
  /** False: parts alone connect the poles, without a conductor. */
  readonly closes: boolean;
}

function finding({ network }: JudgedNetwork, { source, conductors }: Short): Found<Values>[] {
  const part = network.parts[source];
  if (!part) return [];
  const culprit = closingConductor(conductors);
  const conductor = network.conductors[culprit];
  const values: Values = { source: partInWords(part), closes: conductor !== undefined };
  const explains = recordsOfIslands(network, [source]);
  if (!conductor) return [{ subject: part.name, at: atPart(part), values, explains }];
  const others = conductors.filter((index) => index !== culprit).slice(0, mostRelated);
  const related = [
    relatedPart(part),
    ...others.flatMap((index) => network.conductors[index] ?? []).map((other) => relatedConductor(other)),
  ];
  return [{ subject: conductor.name, at: atEnd(conductor, "to"), values, related, explains }];
}

const mostRelated = 4;

type Short = NetworkTopology["shorts"][number];

/**
 * The conductor to blame, of those from the positive to the negative pole: the middle one, furthest from both poles. Those beside
 * the poles are more often right. −1: parts alone connect the poles.
 */
function closingConductor(conductors: readonly number[]): number {
  return conductors[Math.floor(conductors.length / 2)] ?? -1;
}
