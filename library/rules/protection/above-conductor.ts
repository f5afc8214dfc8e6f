import { analyseCircuit } from "../../analysis/analyse-circuit.ts";
import { thinnestNeeded } from "../../analysis/sizing.ts";
import type { Run } from "../../model/run.ts";
import { ratingBetweenLoadAndConductor, ratingOverConductor } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import {
  type Device,
  type JudgedDevice,
  perDevice,
  theDevice,
  whyNoRatingOf,
} from "../fixes/judged-devices.ts";
import { runFixes, sizedFixes, sizeInWords } from "../fixes/sized-fix.ts";
import { atProperty, defineRule, type JudgedPlan } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const aboveConductor = defineRule<Values>({
  id: "protection/above-conductor",
  title: "Protection rated above conductor ampacity",
  formerTitles: ["Fuse or breaker too big for its conductor"],
  severity: "error",
  why: "A fuse rated above the conductor's ampacity lets the conductor overheat for hours without ever blowing.",
  sources: [ratingOverConductor.source, ratingBetweenLoadAndConductor],
  fixable: true,
  acceptable: true,
  // Needs the ampacity after all factors. No finding if it cannot be judged.
  check: (plan) =>
    perDevice(plan, (judged) => {
      const { at, device, run } = judged;
      // The conductors past a device of its own are checked by protection/unprotected-path.
      if (!run || run.circuit.crankingFeed) return [];
      const { circuit, result } = run;
      const { ampacity } = result;
      if (!ampacity.judged || !exceeds(device.ratingA, ampacity.ampacityA)) return [];
      const fixes = fixesFor(plan, judged, circuit);
      const size = sizeInWords(circuit.conductor);
      const values: Values = {
        device,
        size,
        ampacityA: ampacity.ampacityA,
        source: ampacitySourceInWords(ampacity),
        wayOut: wayOut(fixes, whyNoRatingOf(plan, judged)),
      };
      const related = [{ at: atProperty(circuit, ...sizePath(circuit)), text: `The conductor, ${size}` }];
      return [{ at, values, related, fixes }];
    }),
  message({ device, size, ampacityA, source, wayOut: way }) {
    const [, allowed] = formatDistinctWithUnit(device.ratingA, ampacityA, "A");
    return `${theDevice(device)} does not protect ${size}, which may carry ${allowed} here (${source}): ${way}.`;
  },
});

interface Values {
  readonly device: Device;
  readonly size: string;
  /** After all factors, all parallel wires together, A. */
  readonly ampacityA: number;
  readonly source: string;
  readonly wayOut: string;
}

/** First the repair of the run; if that is a smaller fuse, then the conductor that is thick enough for the stated one. */
function fixesFor(plan: JudgedPlan, { protection }: JudgedDevice, circuit: Run): ProposedFix[] {
  const repairs = runFixes(plan, circuit, "protection/above-conductor");
  const { aimA } = analyseCircuit(circuit).protection;
  // Considers this end alone: the other end has its own finding.
  const alone: Run = { ...circuit, protection, protectionFarEnd: null, fedFromBothEnds: false };
  const needed = thinnestNeeded(alone);
  if (needed?.ratingA !== protection.ratingA || exceeds(aimA, protection.ratingA)) return repairs;
  const thicker = sizedFixes(alone, needed).filter(({ title }) => title !== repairs[0]?.title);
  return [...repairs, ...thicker.map((fix): ProposedFix => ({ ...fix, kind: "suggestion" }))];
}
