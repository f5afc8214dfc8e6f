import { batteryStrings } from "../../analysis/network/topology/parallel-strings.ts";
import { cellsOf, cellVoltageOf } from "../../model/battery-figures.ts";
import { conductorsFromFiftyVolts } from "../../standards/protection-rules.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { formatRounded, withUnit } from "../wording/format-number.ts";
import { atPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const fiftyVolts = defineRule<Values>({
  id: "battery/fifty-volts",
  title: "Other conductor types from 50 V",
  severity: "info",
  why: "From 50 V a regulation asks for other types of conductor; the tables of ampacity here are for less.",
  sources: [conductorsFromFiftyVolts.source],
  fixable: false,
  acceptable: true,
  // Needs the cells in series of each bank; the label does not matter. One for the plan.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) => {
      for (const { batteries } of batteryStrings(network, result.topology.banks)) {
        const cellsV = batteries.reduce((sum, battery) => sum + cellVoltageOf(battery), 0);
        const [first] = batteries;
        if (!first || cellsV < conductorsFromFiftyVolts.fromV) continue;
        const cells = batteries.reduce((sum, battery) => sum + cellsOf(battery), 0);
        const { chemistry, name } = first;
        const values = { cells, cellsV, chemistry, source: sourceInWords(conductorsFromFiftyVolts.source) };
        return [{ subject: name, at: atPart(first), values }];
      }
      return [];
    }),
  message({ cells, cellsV, chemistry, source }) {
    const many = cells === 16 ? "Sixteen" : formatRounded(cells);
    return `${many} cells of ${chemistry} are nominally ${withUnit(cellsV, "V")}: from ${conductorsFromFiftyVolts.fromV} V ${source} asks for conductors of NFPA 70 Article 310, flexible cord of Article 400, IEEE 45 or UL 1426. Check the marking of each conductor.`;
  },
});

interface Values {
  readonly cells: number;
  readonly cellsV: number;
  readonly chemistry: string;
  readonly source: string;
}
