import type { Sizing } from "../../analysis/sizing.ts";
import { thinnestSufficient } from "../../analysis/sizing.ts";
import { protectionRequired } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import { addingFixes } from "../protected-ends.ts";
import { refused } from "../refused.ts";
import { atProperty, defineRule, type JudgedCircuit, perCircuit } from "../rule.ts";
import { sizeInWords } from "../sized-fix.ts";
import { sourceInWords } from "../source-in-words.ts";
import { noSizeIsEnough, wayOut } from "../way-out.ts";

export const missing = defineRule<Values>({
  id: "protection/missing",
  title: "No fuse or breaker",
  severity: "error",
  why: "A battery feeds a short with thousands of amperes: without a fuse or breaker nothing stops them before the wire burns.",
  sources: [protectionRequired],
  fixable: true,
  acceptable: true,
  // Needs the range of ratings. A circuit that both ends can feed gets both its devices at once.
  check: (plan) =>
    perCircuit(plan, (judged) => {
      const { circuit, result } = judged;
      if (circuit.protection || refused(plan, circuit, "protect")) return [];
      const addFarEnd =
        circuit.fedFromBothEnds && !circuit.protectionFarEnd && !refused(plan, circuit, "protectFarEnd");
      const fixes = fixesFor(judged, addFarEnd);
      const values: Values = {
        size: sizeInWords(circuit.conductor),
        loadA: circuit.loadA,
        source: sourceInWords(protectionRequired),
        wayOut: wayOut(fixes, result.ampacity.judged ? noSizeIsEnough : placeFirst),
      };
      return [{ at: atProperty(circuit), values, fixes }];
    }),
  message: ({ size, source, wayOut: way }) =>
    `protect is not given: nothing stops a short from burning ${size}; every circuit needs a fuse or breaker (${source}): ${way}.`,
});

interface Values {
  readonly size: string;
  readonly loadA: number;
  readonly source: string;
  readonly wayOut: string;
}

/** The best rating on the conductor as it is; where none fits there, a thicker conductor with it. */
function fixesFor({ circuit, result }: JudgedCircuit, addFarEnd: boolean): ProposedFix[] {
  const ratingA = result.protection.bestRatingA;
  const ratingFarEndA = addFarEnd ? ratingA : circuit.protectionFarEnd?.ratingA;
  const sizing: Sizing | undefined =
    ratingA === undefined
      ? thinnestSufficient(circuit)
      : { conductor: circuit.conductor, ratingA, ratingFarEndA };
  return addingFixes(circuit, sizing, { ends: addFarEnd ? ["protect", "protectFarEnd"] : ["protect"] });
}

/** No rating can be told where no ampacity can: conductor/ambient asks for other insulation or another way. */
const placeFirst = "first choose insulation that bears the place";
