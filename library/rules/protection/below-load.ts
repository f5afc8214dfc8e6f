import { ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import { type Device, perDevice, ratingFixes, theDevice, whyNoRatingOf } from "../fixes/judged-devices.ts";
import { defineRule } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { wayOut } from "../wording/way-out.ts";

export const belowLoad = defineRule<Values>({
  id: "protection/below-load",
  title: "Protection rated below the load",
  formerTitles: ["Fuse or breaker too small for its load"],
  severity: "error",
  why: "A fuse below the current of its load blows in ordinary use, and one that keeps blowing gets replaced by one that is too big.",
  sources: [ratingBetweenLoadAndConductor],
  fixable: true,
  acceptable: true,
  restsOn: "currents",
  neverFolded: true,
  // Needs the load in amperes, and the range of ratings for the fix.
  check: (plan) =>
    perDevice(plan, (judged) => {
      const { at, device, load: related } = judged;
      const loadA = judged.range.minA;
      if (!exceeds(loadA, device.ratingA)) return [];
      const fixes = ratingFixes(plan, judged, "protection/below-load");
      const values: Values = {
        device,
        loadA,
        estimate: estimateInWords(judged.range.estimate),
        wayOut: wayOut(fixes, whyNoRatingOf(plan, judged)),
      };
      return [{ at, values, related, fixes }];
    }),
  message({ device, loadA, estimate, wayOut: way }) {
    const [, load] = formatDistinctWithUnit(device.ratingA, loadA, "A");
    const happens = device.kind === "breaker" ? "trip" : "blow";
    return `${theDevice(device)} is below the load of ${load}${estimate} and would ${happens} in ordinary use: ${way}.`;
  },
});

interface Values {
  readonly device: Device;
  /** With constant powers at the lowest voltage at which they work. */
  readonly loadA: number;
  readonly estimate: string;
  readonly wayOut: string;
}
