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

/** "not judged: the length of main positive and pump is not known"; undefined for a drop that is known. */
export function whyNotJudged(network: Network, way: SupplyPath): string | undefined {
  const runs = runsWithoutLength(network, way.withoutLength);
  return runs.length === 0 ? undefined : `not judged: the length of ${listInWords(runs, 3)} is not known`;
}
