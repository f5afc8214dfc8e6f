/** The way from a value to a place in a picture, in proportion. */
export function linearScale(most: number, fromPx: number, toPx: number): (value: number) => number {
  return (value) => fromPx + (most > 0 ? value / most : 0) * (toPx - fromPx);
}

/** Round values from 0 to the first that is at least `most`, in steps of 1, 2 or 5 times a power of ten; at most `count` steps. */
export function roundSteps(most: number, count: number): readonly number[] {
  if (!(most > 0)) return [0];
  const least = most / count;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = power * ([1, 2, 5].find((one) => one * power >= least * (1 - 1e-9)) ?? 10);
  const steps = Math.ceil((most / step) * (1 - 1e-9));
  return Array.from({ length: steps + 1 }, (_, index) => Number((index * step).toPrecision(12)));
}

/** Series on one another: for each, its lower and its upper edge at every place. */
export function stacked(
  series: readonly (readonly number[])[],
): readonly { readonly lower: readonly number[]; readonly upper: readonly number[] }[] {
  let lower: readonly number[] = series[0]?.map(() => 0) ?? [];
  return series.map((values) => {
    const edges = { lower, upper: values.map((value, index) => lower[index]! + value) };
    lower = edges.upper;
    return edges;
  });
}
