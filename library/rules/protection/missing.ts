import { repairSizing } from "../../analysis/repair-sizing.ts";
import { protectionRequired } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import { addingFixes, whyNoRating } from "../fixes/judged-devices.ts";
import { sizeInWords } from "../fixes/sized-fix.ts";
import { atProperty, defineRule, type JudgedPlan, type JudgedRun, perRun } from "../rule.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const missing = defineRule<Values>({
  id: "protection/missing",
  title: "No overcurrent protection",
  formerTitles: ["No fuse or breaker"],
  severity: "error",
  why: "A battery can feed a short with thousands of amperes: without a fuse or breaker only the burning of the wire stops them.",
  sources: [protectionRequired],
  fixable: true,
  acceptable: true,
  // Needs the range of ratings. A circuit fed from both ends gets both its devices at once.
  check: (plan) =>
    perRun(plan, (judged) => {
      const { circuit, result } = judged;
      // In a network a device further up may protect it: protection/unprotected-path checks that.
      if (circuit.protection || circuit.inNetwork) return [];
      const fixes = fixesFor(plan, judged);
      const values: Values = {
        size: sizeInWords(circuit.conductor),
        source: sourceInWords(protectionRequired),
        wayOut: wayOut(fixes, whyNoRating(circuit, result, circuit.protectionFarEnd)),
      };
      return [{ at: atProperty(circuit), values, fixes }];
    }),
  message: ({ size, source, wayOut: way }) =>
    `No fuse or breaker is given (protect); a short would burn ${size} (${source}): ${way}.`,
});

interface Values {
  readonly size: string;
  readonly source: string;
  readonly wayOut: string;
}

/**
 * A rating for the run as it should be, in the family of the device at the far end if there is one. With the far end's own device
 * if that is missing too.
 */
function fixesFor(plan: JudgedPlan, { circuit }: JudgedRun): ProposedFix[] {
  const { protectionFarEnd } = circuit;
  const addFarEnd = circuit.fedFromBothEnds && !protectionFarEnd;
  return addingFixes(circuit, repairSizing(plan).ofRun(circuit), {
    ends: addFarEnd ? ["protect", "protectFarEnd"] : ["protect"],
    like: protectionFarEnd,
  });
}
