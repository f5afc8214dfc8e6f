import { ampacityTables } from "../../analysis/ampacity.ts";
import { atProperty, defineRule, perRun } from "../rule.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const insulationNotStated = defineRule<Values>({
  id: "conductor/insulation-not-stated",
  title: "Insulation rating not stated",
  severity: "hint",
  why: "Ampacity depends on the insulation's temperature rating: guessed too high, the wire is overloaded; too low, it is bought too thick.",
  sources: ampacityTables,
  // Only the builder can read the marking on the wire.
  fixable: false,
  acceptable: true,
  // Needs the table column of the ampacity.
  check: (plan) =>
    perRun(plan, ({ circuit, result: { ampacity } }) => {
      if (circuit.insulationStated) return [];
      const values: Values = { columnC: ampacity.columnC, source: sourceInWords(ampacity.source) };
      return [{ at: atProperty(circuit), values }];
    }),
  message: ({ columnC, source }) =>
    `insulationC is not given: judged by the ${columnC} °C column (${source}). Read the rating off the wire and state it, here or in build.`,
});

interface Values {
  /** The column used, °C. */
  readonly columnC: number;
  readonly source: string;
}
