import type { BankEnergy, NamedRun } from "../../analysis/energy/energy-result.ts";
import type { SupplyPath } from "../../analysis/network-result.ts";
import type { Network } from "../../model/network.ts";
import { listInWords } from "./part-in-words.ts";

/** In the cell of a length, or beside a size. */
export const lengthNotKnown = "length not known";

/** In the cell of a figure that needs a length. */
export const notKnown = "not known";

/** The names of the runs of these conductors of unknown length, each once, in their order. */
export function runsWithoutLength(
  { conductors }: Network,
  withoutLength: SupplyPath["withoutLength"],
): readonly string[] {
  return [...new Set(withoutLength.flatMap((index) => conductors[index]?.name ?? []))];
}

/** For the energy of a bank: "The length of feed is not known: the loss in it is not in these figures." */
export function lossesNotCounted({
  withoutLength,
  drawLess,
}: Pick<BankEnergy, "withoutLength" | "drawLess">): string[] {
  const names = withoutLength.map(({ name }) => name);
  const [lengths, verb, them] = names.length === 1 ? ["length", "is", "it"] : ["lengths", "are", "them"];
  return [
    ...(names.length > 0
      ? [
          `The ${lengths} of ${listInWords(names, 10)} ${verb} not known: the loss in ${them} is not in these figures.`,
        ]
      : []),
    ...(drawLess.length > 0
      ? [
          `Through a conductor of unknown length, ${listInWords(drawLess, 10)} ${drawLess.length === 1 ? "draws" : "draw"} less than these figures have.`,
        ]
      : []),
  ];
}

/** Behind a figure of energy: ", without that in feed, whose length is not known"; "" without such runs. */
export function withoutLossIn(runs: readonly NamedRun[]): string {
  const names = [...new Map(runs.map(({ record, name }) => [record, name])).values()];
  if (names.length === 0) return "";
  return `, without that in ${listInWords(names, 10)}, whose ${names.length === 1 ? "length is" : "lengths are"} not known`;
}

/** "not judged: the length of main positive and pump is not known"; undefined for a drop that is known. */
export function whyNotJudged(network: Network, way: SupplyPath): string | undefined {
  const runs = runsWithoutLength(network, way.withoutLength);
  return runs.length === 0 ? undefined : `not judged: the length of ${listInWords(runs, 3)} is not known`;
}
