import { counted } from "../../rules/wording/format-number.ts";
import { type Fill, fills } from "../diagram/fill-patterns.ts";

interface Series {
  readonly name: string;
  readonly values: readonly number[];
}

/**
 * As many series as there are patterns, in their order; if there are more, the last is the sum of the others. Those without any value
 * are left out, and the others keep their patterns: a source has the same one in each chart of a bank.
 */
export function fewSeries(series: readonly Series[]): readonly (Series & { readonly fill: Fill })[] {
  const alone = series.length > fills.length ? series.slice(0, fills.length - 1) : series;
  const others = series.slice(alone.length);
  const [first] = others;
  const all = first
    ? [
        ...alone,
        {
          name: counted(others.length, "other"),
          values: first.values.map((_, index) => others.reduce((sum, { values }) => sum + values[index]!, 0)),
        },
      ]
    : alone;
  return all
    .map((one, index) => ({ ...one, fill: fills[index]! }))
    .filter(({ values }) => values.some((value) => value > 0));
}
