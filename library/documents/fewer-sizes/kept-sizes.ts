import { differentSizes, type SizedRun, sizeKey } from "./sized-runs.ts";

/**
 * Every set of the sizes in use that could be kept and leaves each run one of its choices. Sets that could not serve all runs are
 * never built: from the thickest size down, one is only dropped if each of its runs has a kept one above.
 *
 * `most`: maximum number of sets that are followed, those that keep fewest; some fifteen sizes in a row would reach it.
 */
export function keptSizes(runs: readonly SizedRun[], most: number): KeptSizes {
  let sets: (readonly string[])[] = [[]];
  let all = true;
  for (const own of differentSizes(runs.map(({ choices: [size] }) => size)).toReversed()) {
    const size = sizeKey(own);
    const alternatives = alternativesOf(size, runs);
    const dropped = sets.filter((kept) =>
      alternatives.every((choices) => choices.some((choice) => kept.includes(choice))),
    );
    sets = [...sets.map((kept) => [...kept, size]), ...dropped];
    if (sets.length <= most) continue;
    sets = sets.sort((one, other) => one.length - other.length).slice(0, most);
    all = false;
  }
  return { sets: sets.map((kept) => new Set(kept)), all };
}

export interface KeptSizes {
  readonly sets: readonly ReadonlySet<string>[];
  /** False: more exist. */
  readonly all: boolean;
}

/** For each different list of choices that runs of this size have: the sizes that could replace it. */
function alternativesOf(size: string, runs: readonly SizedRun[]): readonly (readonly string[])[] {
  const lists = new Map<string, readonly string[]>();
  for (const { choices } of runs) {
    const [own, ...thicker] = choices.map(sizeKey);
    if (own === size) lists.set(thicker.join(), thicker);
  }
  return [...lists.values()];
}
