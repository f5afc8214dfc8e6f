import { thinReturns } from "../../analysis/network/faults/thin-returns.ts";
import { networkGraph } from "../../analysis/network/topology/network-graph.ts";
import { thinnestNeeded } from "../../analysis/sizing.ts";
import type { Run } from "../../model/run.ts";
import { ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import type { ProposedFix } from "../finding.ts";
import { runOf } from "../fixes/inserted-protection.ts";
import { placedDevice, placedInWords, relatedDevice } from "../fixes/placed-device.ts";
import { sizedFixes, sizeInWords } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";
import { atConductor } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords } from "../wording/source-in-words.ts";
import { noSizeIsEnough, wayOut } from "../wording/way-out.ts";

const sameFuseProtectsReturn = ownRequirement(
  "By common practice a return is as thick as its positive. 33 CFR 183.455(a) asks for protection of ungrounded conductors only.",
);

export const returnConductor = defineRule<Values>({
  id: "protection/return-conductor",
  title: "Return thinner than its fuse allows",
  severity: "error",
  why: "In a fault the return carries the same current as the positive: a thinner one burns behind a fuse that was chosen for the positive.",
  sources: [ratingBetweenLoadAndConductor, sameFuseProtectsReturn],
  fixable: true,
  repairsWait: "for devices",
  acceptable: true,
  // Needs, for each return, the device that limits the greatest fault whose current returns through it, and its ampacity.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      thinReturns(networkGraph(network), result.topology.conductorSides).flatMap(
        ({ conductor, ampacityA, device }) => {
          const placed = placedDevice(network, device.index);
          const run = runOf(plan, conductor.run);
          const { ampacity } = run.result;
          if (!placed) return [];
          const fixes = thickEnough(run.circuit, device.ratingA);
          const values: Values = {
            size: sizeInWords(conductor.run.conductor),
            ampacityA,
            source: ampacitySourceInWords(ampacity),
            device: placedInWords(placed),
            ratingA: device.ratingA,
            wayOut: wayOut(fixes, noSizeIsEnough),
          };
          return [
            {
              subject: conductor.name,
              at: atConductor(conductor, ...sizePath(conductor.run)),
              values,
              related: [relatedDevice(placed)],
              fixes,
            },
          ];
        },
      ),
    ),
  message({ size, ampacityA, source, device, ratingA, wayOut: way }) {
    const [allowed] = formatDistinctWithUnit(ampacityA, ratingA, "A");
    return `${size} may carry ${allowed} here (${source}), and the current of a fault behind ${device} returns through it: ${way}.`;
  },
});

interface Values {
  readonly size: string;
  readonly ampacityA: number;
  readonly source: string;
  /** "the 100 A fuse in the cable feed" */
  readonly device: string;
  readonly ratingA: number;
  readonly wayOut: string;
}

/** A size that the device protects. */
function thickEnough(circuit: Run, ratingA: number): ProposedFix[] {
  const alone: Run = {
    ...circuit,
    protection: { ratingA, writtenAs: "number" },
    protectionFarEnd: null,
    fedFromBothEnds: false,
  };
  const needed = thinnestNeeded(alone);
  return needed?.ratingA === ratingA ? sizedFixes(alone, needed) : [];
}
