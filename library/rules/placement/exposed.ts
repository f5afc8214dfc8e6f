import { coveredTerminals } from "../../standards/placement-distances.ts";
import { type OfFault, perBodyFault } from "../board.ts";
import { defineRule } from "../rule.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const placementExposed = defineRule<Values>({
  id: "placement/exposed",
  title: "Live terminal without a cover",
  severity: "warning",
  why: "Bare metal or a falling tool at a live terminal shorts the bank, with hundreds of amperes and an arc.",
  sources: [coveredTerminals],
  fixable: false,
  acceptable: true,
  // Needs a surface of bare metal, or one that objects can fall onto, and the polarity of the terminals from the connections.
  check: (plan) =>
    perBodyFault(plan, "exposed", ({ body, surface }) => ({
      values: {
        surface: surface.name,
        bareMetal: surface.bareMetal,
        openAbove: surface.openAbove,
        isStated: body.terminalsCovered === false,
        source: sourceInWords(coveredTerminals),
      },
    })),
  message({ surface, bareMetal, openAbove, isStated, source }) {
    const where = [
      ...(bareMetal ? ["is of bare metal"] : []),
      ...(openAbove ? ["lies open to falling objects"] : []),
    ].join(" and ");
    return `${isStated ? "Has bare live terminals" : "Has live terminals without a stated cover"}, and ${surface} ${where}: each needs a boot, cap or cover (${source}).${isStated ? "" : " State terminalsCovered if it has."}`;
  },
});

interface Values extends OfFault {
  readonly surface: string;
  readonly bareMetal: boolean;
  readonly openAbove: boolean;
  readonly isStated: boolean;
  readonly source: string;
}
