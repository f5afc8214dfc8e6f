import { withoutDust } from "./rounding-dust.ts";

/** One run on a path, with the copper and the drop of each size that it may get. */
export interface LegChoices {
  /** At least one; in any order. The first is the run as it is, independent of the others. */
  readonly choices: readonly LegChoice[];
}

export interface LegChoice {
  /** Copper of the whole run, mm²·m: every conductor of it, also one that is not on this path. */
  readonly copperMm2M: number;
  /** The run's share of the path's drop, V. */
  readonly dropV: number;
}

/** One choice for each leg, and the sums of their figures. */
export interface CombinedChoices extends LegChoice {
  readonly choices: readonly number[];
}

/**
 * The choice to take for each leg: the sum of all drops is at most `allowedV` and the copper is minimal. For equal copper,
 * the smaller drop. Undefined: no combination is enough.
 */
export function leastCopper(legs: readonly LegChoices[], allowedV: number): readonly number[] | undefined {
  return copperFrontier(legs, { loosestV: allowedV, tightestV: allowedV })[0]?.choices;
}

/**
 * The combinations of choices that no other beats in both copper and drop, by rising copper and falling drop: those within the
 * loosest limit, up to the first within the tightest one.
 *
 * Exact. Legs are taken one after the other. Only those combinations so far are kept that no other beats in both copper and
 * drop, that can still come within the loosest limit, and that can still be cheaper than the best known solution for the tightest
 * one. With made sizes in a geometric series this keeps some hundreds of combinations for ten legs, while brute force has 14¹⁰.
 */
export function copperFrontier(
  legs: readonly LegChoices[],
  { loosestV, tightestV }: { readonly loosestV: number; readonly tightestV: number },
): readonly CombinedChoices[] {
  const leastDropV = fromEach(legs, ({ choices }) => Math.min(...choices.map(({ dropV }) => dropV)));
  const leastCopperMm2M = fromEach(legs, ({ choices }) =>
    Math.min(...choices.map(({ copperMm2M }) => copperMm2M)),
  );
  const enoughMm2M = copperOfThinnestEqual(legs, tightestV);
  let kept: Combination[] = [{ copperMm2M: 0, dropV: 0, before: undefined, choice: -1 }];
  legs.forEach(({ choices }, index) => {
    const grown = kept.flatMap((before) =>
      choices.map(
        ({ copperMm2M, dropV }, choice): Combination => ({
          copperMm2M: before.copperMm2M + copperMm2M,
          dropV: before.dropV + dropV,
          before,
          choice,
        }),
      ),
    );
    const restV = leastDropV[index + 1] ?? 0;
    const restMm2M = leastCopperMm2M[index + 1] ?? 0;
    kept = unbeaten(
      grown.filter(
        ({ copperMm2M, dropV }) => dropV + restV <= loosestV && copperMm2M + restMm2M <= enoughMm2M,
      ),
    );
  });
  return kept.map((last) => ({ copperMm2M: last.copperMm2M, dropV: last.dropV, choices: choicesOf(last) }));
}

interface Combination extends LegChoice {
  readonly before: Combination | undefined;
  /** Index among the choices of the last leg. */
  readonly choice: number;
}

/** The sum of a figure over the legs from each one on; 0 behind the last. */
function fromEach(legs: readonly LegChoices[], figure: (leg: LegChoices) => number): number[] {
  const sums = [0];
  for (const leg of legs.toReversed()) sums.unshift((sums[0] ?? 0) + figure(leg));
  return sums;
}

/**
 * Copper of one sufficient solution, an upper bound that lets the search skip dearer ones: every leg drops at most the same
 * share of its present drop. Infinity if none of these is enough.
 */
function copperOfThinnestEqual(legs: readonly LegChoices[], allowedV: number): number {
  const nowV = legs.reduce((sum, { choices }) => sum + (choices[0]?.dropV ?? 0), 0);
  const share = allowedV / nowV;
  let copperMm2M = 0;
  for (const { choices } of legs) {
    const mostV = share * (choices[0]?.dropV ?? 0);
    const enough = choices.filter(({ dropV }) => dropV <= mostV);
    copperMm2M += Math.min(...enough.map((choice) => choice.copperMm2M));
  }
  // Sums in another order differ by rounding.
  return copperMm2M * (1 + 1e-9);
}

/**
 * By rising copper and falling drop, each better than all before it in drop. If two differ only in the last digits of a
 * binary fraction, the first stays: such digits decide no result.
 */
function unbeaten(combinations: Combination[]): Combination[] {
  combinations.sort(
    (one, other) =>
      withoutDust(one.copperMm2M) - withoutDust(other.copperMm2M) ||
      withoutDust(one.dropV) - withoutDust(other.dropV),
  );
  let leastV = Number.POSITIVE_INFINITY;
  return combinations.filter(({ dropV }) => {
    if (withoutDust(dropV) >= leastV) return false;
    leastV = withoutDust(dropV);
    return true;
  });
}

function choicesOf(last: Combination): number[] {
  const choices: number[] = [];
  for (let at: Combination | undefined = last; at?.before; at = at.before) choices.unshift(at.choice);
  return choices;
}
