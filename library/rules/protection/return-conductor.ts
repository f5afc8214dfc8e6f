import { thinReturns } from "../../analysis/network/faults/thin-returns.ts";
import { ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import { runOf } from "../fixes/inserted-protection.ts";
import { matchingFixes, placedDevice, placedInWords, relatedDevice } from "../fixes/placed-device.ts";
import { sizeInWords } from "../fixes/sized-fix.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";
import { atConductor } from "../wording/part-in-words.ts";
import { sizePath } from "../wording/property-paths.ts";
import { ampacitySourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

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
  ignoresLoads: "except repairs",
  // Needs, for each return, the device that limits the greatest fault whose current returns through it, and its ampacity.
  check: (plan) =>
    inNetwork(plan, (judged) =>
      thinReturns(judged).flatMap(({ conductor, ampacityA, device }) => {
        const placed = placedDevice(judged.network, device.index);
        const run = runOf(plan, conductor.run);
        const { ampacity } = run.result;
        if (!placed) return [];
        const fixes = matchingFixes(plan, run.circuit, placed, "protection/return-conductor");
        const values: Values = {
          size: sizeInWords(conductor.run.conductor),
          ampacityA,
          source: ampacitySourceInWords(ampacity),
          device: placedInWords(placed),
          ratingA: device.ratingA,
          wayOut: wayOut(fixes, firstTheOthers),
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
      }),
    ),
  message({ size, ampacityA, source, device, ratingA, wayOut: way }) {
    const [allowed] = formatDistinctWithUnit(ampacityA, ratingA, "A");
    return `${size} may carry ${allowed} here (${source}), and the current of a fault behind ${device} returns through it: ${way}.`;
  },
});

/** Without a repair: a conductor of its positive side has one that puts the return in order. */
const firstTheOthers = "first protect each conductor of the positive side";

interface Values {
  readonly size: string;
  readonly ampacityA: number;
  readonly source: string;
  /** "the 100 A fuse in the cable feed" */
  readonly device: string;
  readonly ratingA: number;
  readonly wayOut: string;
}
