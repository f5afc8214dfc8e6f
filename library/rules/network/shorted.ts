import { endsAt } from "../../analysis/network/topology/ends-at.ts";
import { recordsOfIslands } from "../../analysis/network/topology/islands.ts";
import type { NetworkTopology } from "../../analysis/network/topology/network-topology.ts";
import type { Network, Part } from "../../model/network.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import {
  atEnd,
  atPart,
  atStart,
  listInWords,
  partInWords,
  relatedConductor,
  relatedPart,
} from "../wording/part-in-words.ts";

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
  message: ({ source, closes, turned }) =>
    turned
      ? `Closes a ring of ${listInWords([source, ...turned.others])}, plus to minus all round: a dead short. ${atStart(turned.source)} is the wrong way round: swap its two cables${turned.maybeInSeries ? ". If they are meant to be in series, take one of these out" : ""}.`
      : closes
        ? `Connects the positive side of ${source} directly to the negative side: a dead short. Take it out, or connect it to another terminal.`
        : `The positive and the negative terminal of ${source} are connected directly, inside parts: a dead short.`,
});

interface Values {
  /** The source with connected poles; one of them if there are several. */
  readonly source: string;
  /** False: parts alone connect the poles, without a conductor. */
  readonly closes: boolean;
  /** For a ring of several sources. */
  readonly turned?: {
    readonly source: string;
    readonly others: readonly string[];
    /** All are batteries, which would stand in series without one of the conductors. */
    readonly maybeInSeries: boolean;
  };
}

function finding({ network }: JudgedNetwork, { source, conductors, through }: Short): Found<Values>[] {
  const part = network.parts[source];
  if (!part) return [];
  const culprit = closingConductor(conductors);
  const conductor = network.conductors[culprit];
  const ring = [part, ...through.map((index) => network.parts[index]!)];
  const turned = ring.length > 1 ? turnedRound(network, ring) : undefined;
  const values: Values = {
    source: partInWords(part),
    closes: conductor !== undefined,
    ...(turned && {
      turned: {
        source: partInWords(turned),
        others: ring.slice(1).map(partInWords),
        maybeInSeries: ring.every(({ kind }) => kind === "battery"),
      },
    }),
  };
  const explains = recordsOfIslands(network, [source]);
  if (!conductor) return [{ subject: part.name, at: atPart(part), values, explains }];
  const others = conductors.filter((index) => index !== culprit).slice(0, mostRelated);
  const related = [
    ...(turned && turned !== part ? [relatedPart(turned)] : []),
    relatedPart(part),
    ...others.flatMap((index) => network.conductors[index] ?? []).map((other) => relatedConductor(other)),
  ];
  return [{ subject: conductor.name, at: atEnd(conductor, "to"), values, related, explains }];
}

const mostRelated = 4;

/** The source of a ring to which the least is connected: it is more likely the wrong one than all that is connected to another. */
function turnedRound(network: Network, ring: readonly Part[]): Part {
  const polesOf = ({ terminals }: Part) => Object.values(terminals);
  const ends = (part: Part) =>
    polesOf(part).reduce((count, terminal) => count + endsAt(network, terminal).length, 0);
  return ring.reduce((least, part) => (ends(part) <= ends(least) ? part : least));
}

type Short = NetworkTopology["shorts"][number];

/**
 * The conductor to blame, of those from the positive to the negative pole: the middle one, furthest from both poles. Those beside
 * the poles are more often right. −1: parts alone connect the poles.
 */
function closingConductor(conductors: readonly number[]): number {
  return conductors[Math.floor(conductors.length / 2)] ?? -1;
}
