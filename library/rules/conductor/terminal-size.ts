import { madeSizes, sizesAbove } from "../../analysis/made-sizes.ts";
import { thinnestNeeded } from "../../analysis/sizing.ts";
import { fitsTerminals, tightestTerminal } from "../../analysis/terminal-size.ts";
import type { Run } from "../../model/run.ts";
import type { ProposedFix } from "../finding.ts";
import { setSize, sizeInWords } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { atProperty, defineRule, perRun } from "../rule.ts";
import { sizePath } from "../wording/property-paths.ts";
import { wayOut } from "../wording/way-out.ts";

export const terminalSize = defineRule<Values>({
  id: "conductor/terminal-size",
  title: "Conductor too thick for its terminal",
  severity: "error",
  why: "If strands are cut off to make a conductor fit, the others carry all the current into the clamp, and run hot there.",
  sources: [
    ownRequirement(
      "A conductor ends whole in its terminal, which its maker makes for sizes up to a largest one.",
    ),
  ],
  fixable: true,
  acceptable: true,
  // Needs the largest conductors that the terminals at its ends take, as far as the plan states them.
  check: (plan) =>
    perRun(plan, ({ circuit }) => {
      const terminal = tightestTerminal(circuit);
      if (!terminal || fitsTerminals(circuit, circuit.conductor)) return [];
      const fixes = fixesFor(circuit);
      const values: Values = {
        size: sizeInWords({ ...circuit.conductor, parallel: 1 }),
        terminal: terminal.of,
        largest: sizeInWords(terminal.largest),
        wayOut: wayOut(
          fixes,
          "no size that it takes is enough; shorten the run, split the load, or end the conductor at a stud beside it",
        ),
      };
      return [{ at: atProperty(circuit, ...sizePath(circuit)), values, fixes }];
    }),
  message: ({ size, terminal, largest, wayOut: way }) =>
    `${size} is too thick for the terminals of ${terminal ?? "its load"}, which take up to ${largest}: ${way}.`,
});

interface Values {
  /** Of one wire. */
  readonly size: string;
  /** The name of the part; undefined for the load of the circuit itself. */
  readonly terminal: string | undefined;
  readonly largest: string;
  readonly wayOut: string;
}

/** The thickest size that its terminals take, if that is enough. A thinner conductor is the builder's decision. */
function fixesFor(circuit: Run): ProposedFix[] {
  const needed = thinnestNeeded(circuit)?.conductor;
  const thickest = madeSizes(circuit.conductor).findLast((conductor) => fitsTerminals(circuit, conductor));
  if (!needed || !thickest || sizesAbove(needed, thickest) > 0) return [];
  return [
    { title: `Use ${sizeInWords(thickest)}`, kind: "suggestion", changes: [setSize(circuit, thickest)] },
  ];
}
