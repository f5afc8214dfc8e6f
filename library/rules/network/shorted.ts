import type { Network } from "../../model/network.ts";
import { ownRequirement } from "../own-requirement.ts";
import { atEnd, listInWords, partInWords, relatedConductor, relatedPart } from "../part-in-words.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";

export const networkShorted = defineRule<Values>({
  id: "network/shorted",
  title: "A source is joined across itself",
  severity: "error",
  why: "With nothing but metal between its poles a battery gives all it has: thousands of amperes, within milliseconds, until something melts.",
  sources: [ownRequirement("No document is needed for it: nothing limits the current but the metal itself.")],
  fixable: false,
  acceptable: false,
  // Needs the topology's shorts. One finding for each conductor that closes a short, whichever sources it is one for.
  check: (plan) => inNetwork(plan, check),
  message: ({ sources, closes }) =>
    closes
      ? `Joins the positive side of ${sources} to the negative side with nothing between: a dead short. Take it out, or join it to another terminal.`
      : `The positive and the negative terminal of ${sources} are joined inside parts, with nothing between: a dead short.`,
});

interface Values {
  /** Whose poles are joined. */
  readonly sources: string;
  /** False: no conductor is needed for it, parts alone join the poles. */
  readonly closes: boolean;
}

function check({ network, result: { topology } }: JudgedNetwork): Found<Values>[] {
  const byCulprit = new Map<number, { sources: number[]; conductors: readonly number[] }>();
  for (const { source, conductors } of topology.shorts) {
    // Sources without a conductor between their poles get a finding each, under a number that no conductor has.
    const culprit = closingConductor(network, conductors) ?? -1 - source;
    const there = byCulprit.get(culprit);
    if (there) there.sources.push(source);
    else byCulprit.set(culprit, { sources: [source], conductors });
  }
  return [...byCulprit].flatMap(([culprit, { sources, conductors }]): Found<Values>[] => {
    const parts = sources.flatMap((index) => network.parts[index] ?? []);
    const conductor = network.conductors[culprit];
    const [first] = parts;
    if (!first) return [];
    const values: Values = { sources: listInWords(parts.map(partInWords)), closes: conductor !== undefined };
    if (!conductor)
      return [{ subject: first.name, at: { record: first.record, path: [] }, values, related: [] }];
    const others = conductors.filter((index) => index !== culprit).slice(0, mostRelated);
    const end = network.terminals[conductor.to]?.side === "positive" ? "from" : "to";
    return [
      {
        subject: conductor.name,
        at: atEnd(conductor, end),
        values,
        related: [
          ...parts.slice(0, mostRelated).map((part) => relatedPart(part)),
          ...others
            .flatMap((index) => network.conductors[index] ?? [])
            .map((other) => relatedConductor(other)),
        ],
      },
    ];
  });
}

const mostRelated = 4;

/**
 * Of the conductors on the way from the positive to the negative pole, the one to blame: whose one end says by itself that it
 * is on the positive side, and the other that it is on the negative one. Where no single one does, the last.
 */
function closingConductor(network: Network, conductors: readonly number[]): number | undefined {
  const sideOf = (terminal: number) => network.terminals[terminal]?.side;
  const blamed = conductors.find((index) => {
    const conductor = network.conductors[index];
    if (!conductor) return false;
    const sides = [sideOf(conductor.from), sideOf(conductor.to)];
    return sides.includes("positive") && sides.includes("negative");
  });
  return blamed ?? conductors.at(-1);
}
