import { ampacityTables } from "../../analysis/ampacity.ts";
import { solarCurrent } from "../../analysis/solar-current.ts";
import { arraysByRecord } from "../../analysis/solar-wiring.ts";
import type { SolarArrayPart } from "../../model/network.ts";
import { solarCurrentFactors } from "../../standards/solar-factors.ts";
import { runFixes, sizeInWords, whyNoSize } from "../fixes/sized-fix.ts";
import { atProperty, defineRule, type Found, inNetwork } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords, sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const solarConductor = defineRule<Values>({
  id: "solar/conductor",
  title: "Conductor undersized for the array's current",
  formerTitles: ["Conductor too thin for the array's current"],
  severity: "error",
  why: "In bright sun modules give more current than on their label, for hours, and no fuse opens: the conductor must carry it.",
  sources: [solarCurrentFactors.irradianceSource, solarCurrentFactors.continuousSource, ...ampacityTables],
  fixable: true,
  acceptable: true,
  // Needs the conductors between arrays and their controller, and their ampacity. A warning if only the margin is missing.
  check: (plan) =>
    inNetwork(plan, ({ network }) => {
      const runs = new Map(plan.circuits.map((run) => [run.circuit.record, run]));
      const found: Found<Values>[] = [];
      for (const [record, arrays] of arraysByRecord(network)) {
        const run = runs.get(record);
        const ampacity = run?.result.ampacity;
        if (!run || !ampacity?.judged) continue;
        const { circuit } = run;
        const currents = arrays.map((array) => solarCurrent(array.shortCircuitA, array.parallel));
        const neededA = sum(currents.map((current) => current.neededA));
        const greatestA = sum(currents.map((current) => current.greatestA));
        if (!exceeds(neededA, ampacity.ampacityA)) continue;
        const fixes = runFixes(plan, circuit, "solar/conductor");
        found.push({
          subject: circuit.name,
          at: atProperty(circuit, ...sizePath(circuit)),
          severity: exceeds(greatestA, ampacity.ampacityA) ? "error" : "warning",
          related: arrays
            .slice(0, mostRelated)
            .map((array) =>
              relatedPart(
                array,
                `${partInWords(array)}: ${strings(array)} of ${withUnit(array.shortCircuitA, "A")}`,
              ),
            ),
          fixes,
          values: {
            size: sizeInWords(circuit.conductor),
            ampacityA: ampacity.ampacityA,
            ampacitySource: ampacitySourceInWords(ampacity),
            shortCircuitA: sum(arrays.map((array) => array.shortCircuitA * array.parallel)),
            neededA,
            source: sourceInWords(solarCurrentFactors.irradianceSource),
            wayOut: wayOut(
              fixes,
              whyNoSize({ ...circuit, loadA: neededA }, "no standard size is enough; set parallel"),
            ),
          },
        });
      }
      return found;
    }),
  message({ size, ampacityA, ampacitySource, shortCircuitA, neededA, source, wayOut: way }) {
    const [allowed, needed] = formatDistinctWithUnit(ampacityA, neededA, "A");
    return `${size} may carry ${allowed} (${ampacitySource}), modules of ${withUnit(shortCircuitA, "A")} need ${needed} (1.25 × 1.25, ${source} and (B)): ${way}.`;
  },
});

/** There may be thousands side by side: a full list for each would contain millions of names. */
const mostRelated = 16;

interface Values {
  readonly size: string;
  readonly ampacityA: number;
  readonly ampacitySource: string;
  /** Sum over all strings whose current flows here, as labelled. */
  readonly shortCircuitA: number;
  readonly neededA: number;
  readonly source: string;
  readonly wayOut: string;
}

function strings({ parallel }: SolarArrayPart): string {
  return parallel === 1 ? "one string" : `${parallel} strings`;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
