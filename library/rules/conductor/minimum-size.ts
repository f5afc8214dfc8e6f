import { meetsMinimumSize, minimumSizeOf } from "../../analysis/minimum-size.ts";
import type { Conductor, Run } from "../../model/run.ts";
import { minimumAwg, minimumMm2 } from "../../standards/minimum-sizes.ts";
import type { ProposedFix } from "../finding.ts";
import { runFixes, setSize, sizeInWords } from "../fixes/sized-fix.ts";
import { atProperty, defineRule, type JudgedPlan, perRun } from "../rule.ts";
import { sizePath } from "../wording/property-paths.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const minimumSize = defineRule<Values>({
  id: "conductor/minimum-size",
  title: "Conductor below the minimum size",
  formerTitles: ["Conductor thinner than any may be"],
  severity: "warning",
  why: "A very thin wire that runs on its own breaks where it is pulled, bent or shaken, however little current it carries.",
  sources: [
    minimumAwg.single.source,
    minimumAwg.sheathed.source,
    minimumMm2.single.source,
    minimumMm2.sheathed.source,
  ],
  fixable: true,
  acceptable: true,
  // Needs the minimum size for the way the conductors run.
  check: (plan) =>
    perRun(plan, ({ circuit }) => {
      const minimum = minimumSizeOf(circuit);
      if (!minimum || meetsMinimumSize(circuit)) return [];
      const fixes = toAtLeast(plan, circuit, minimum.conductor);
      const values: Values = {
        size: sizeInWords({ ...circuit.conductor, parallel: 1 }),
        minimum: sizeInWords({ ...minimum.conductor, parallel: 1 }),
        sheathed: circuit.sheathed,
        source: sourceInWords(minimum.source),
        wayOut: wayOut(fixes, ""),
      };
      return [{ at: atProperty(circuit, ...sizePath(circuit)), values, fixes }];
    }),
  message: ({ size, minimum, sheathed, source, wayOut: way }) =>
    `${size} is below the minimum for a wire ${sheathed ? "in a sheath" : "on its own"}, ${minimum} (${source}): ${way}${sheathed ? "" : ", or run it in a sheath (sheathed: true)"}.`,
});

interface Values {
  readonly size: string;
  readonly minimum: string;
  readonly sheathed: boolean;
  readonly source: string;
  readonly wayOut: string;
}

/** The size that meets all limits. If there is none, at least this rule's own: not sound on its own, so a suggestion. */
function toAtLeast(plan: JudgedPlan, circuit: Run, minimum: Conductor): ProposedFix[] {
  const fixes = runFixes(plan, circuit, "conductor/minimum-size");
  if (fixes.length > 0) return fixes;
  return [{ title: `Use ${sizeInWords(minimum)}`, kind: "suggestion", changes: [setSize(circuit, minimum)] }];
}
