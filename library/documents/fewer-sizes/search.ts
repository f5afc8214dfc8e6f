import { keptSizes } from "./kept-sizes.ts";
import { copperOf, type SizedRun, sizeKey } from "./sized-runs.ts";

/**
 * For each number of sizes below that in use, from the fewest up: the combination with the least copper that serves all runs, as
 * the choice that each run takes. Numbers without such a combination are left out.
 *
 * Every run begins with its thinnest choice in a set of sizes, which is the least copper possible with that set. A refused
 * combination is tried again with one run thicker, always the least copper of all sets of the same number first. The first
 * combination that is not refused is therefore the answer, unless the search met a bound on the way: {@link Spared.stoppedEarly}.
 */
export function sparedSizes(
  runs: readonly SizedRun[],
  refusalOf: (choices: readonly number[]) => Refusal | undefined,
  bounds: Bounds = usualBounds,
): Spared {
  const inUse = new Set(runs.map(({ choices: [own] }) => sizeKey(own))).size;
  const { sets, all } = keptSizes(runs, bounds.sets);
  const search = { runs, refusalOf, bounds, judged: new Map() };
  const ways: (readonly number[])[] = [];
  let stoppedEarly = !all;
  for (let count = 1; count < inUse; count++) {
    const found = leastCopper(
      search,
      sets.filter(({ size }) => size === count),
    );
    stoppedEarly ||= found.stoppedEarly;
    if (found.choices) ways.push(found.choices);
  }
  return { ways, triedWays: search.judged.size, stoppedEarly };
}

export interface Spared {
  /** By number of sizes, the fewest first; each by run: the index of its choice. */
  readonly ways: readonly (readonly number[])[];
  /** Number of combinations that were judged. */
  readonly triedWays: number;
  /** Not every combination was tried: one with fewer sizes, or with less copper, may exist. */
  readonly stoppedEarly: boolean;
}

interface Search {
  readonly runs: readonly SizedRun[];
  readonly refusalOf: (choices: readonly number[]) => Refusal | undefined;
  readonly bounds: Bounds;
  /** The result for each combination. */
  readonly judged: Map<string, Refusal | undefined>;
}

/** The combination with the least copper that uses only sizes of one of the sets. */
function leastCopper(
  { runs, refusalOf, bounds, judged }: Search,
  sets: readonly ReadonlySet<string>[],
): { readonly choices?: readonly number[]; readonly stoppedEarly: boolean } {
  const first = (kept: ReadonlySet<string>) => runs.map((run) => choiceIn(run, kept, 0)!);
  const queue = sets.map((kept) => stateOf(runs, kept, first(kept))).sort(leastCopperFirst);
  const seen = new Set<string>();
  const judgedBefore = judged.size;
  let stoppedEarly = false;
  for (let state = queue.shift(); state; state = queue.shift()) {
    const { choices } = state;
    const key = choices.join();
    if (!judged.has(key)) {
      const most = Math.min(bounds.judged, judgedBefore + bounds.judgedForEachCount);
      if (judged.size >= most) return { stoppedEarly: true };
      judged.set(key, refusalOf(choices));
    }
    const refusal = judged.get(key);
    if (!refusal) return { choices, stoppedEarly };
    const thicker = thickerStates(runs, state);
    const all = thicker.length <= bounds.triedAtOnce || refusal.runs.size === 0;
    const tried = all ? thicker : thicker.filter(({ run }) => refusal.runs.has(run));
    stoppedEarly ||= tried.length < thicker.length;
    for (const { next } of tried) {
      const nextKey = JSON.stringify([...next.kept, next.choices]);
      if (seen.has(nextKey)) continue;
      seen.add(nextKey);
      const place = queue.findIndex((other) => leastCopperFirst(next, other) < 0);
      queue.splice(place === -1 ? queue.length : place, 0, next);
    }
  }
  return { stoppedEarly };
}

/** Why a combination is refused: the runs with a new finding; none if it is elsewhere. */
export interface Refusal {
  readonly runs: ReadonlySet<number>;
}

export interface Bounds {
  /** Maximum number of sets of sizes that are followed. */
  readonly sets: number;
  /** Combinations that are judged in all, and for each number of sizes: each is as much work as checking the plan once. */
  readonly judged: number;
  readonly judgedForEachCount: number;
  /** If more runs than these could be thicker, only those with a new finding are made thicker. */
  readonly triedAtOnce: number;
}

const usualBounds: Bounds = { sets: 5_000, judged: 160, judgedForEachCount: 40, triedAtOnce: 4 };

interface State {
  readonly kept: ReadonlySet<string>;
  readonly choices: readonly number[];
  readonly copperMm2M: number;
}

function stateOf(runs: readonly SizedRun[], kept: ReadonlySet<string>, choices: readonly number[]): State {
  const copperMm2M = runs.reduce((sum, run, index) => sum + copperOf(run, choices[index]!), 0);
  return { kept, choices, copperMm2M };
}

/** The choices decide between equal copper: the order of the sets has no influence. */
function leastCopperFirst(one: State, other: State): number {
  const differing = one.choices.findIndex((choice, run) => choice !== other.choices[run]);
  return (
    one.copperMm2M - other.copperMm2M ||
    (differing === -1 ? 0 : one.choices[differing]! - other.choices[differing]!)
  );
}

/** Each way to make one run thicker by one size of the set. */
function thickerStates(runs: readonly SizedRun[], { kept, choices }: State) {
  return runs.flatMap((run, index) => {
    const thicker = choiceIn(run, kept, choices[index]! + 1);
    return thicker === undefined
      ? []
      : [{ run: index, next: stateOf(runs, kept, choices.with(index, thicker)) }];
  });
}

/** The thinnest choice of a run that is in the set, from that choice on. */
function choiceIn({ choices }: SizedRun, kept: ReadonlySet<string>, from: number): number | undefined {
  const found = choices.findIndex((size, index) => index >= from && kept.has(sizeKey(size)));
  return found === -1 ? undefined : found;
}
