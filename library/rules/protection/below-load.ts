import { ratingBetweenLoadAndConductor } from "../../standards/protection-rules.ts";
import { bestRatingFixes, type Device, perDevice, theDevice, whyNoRating } from "../fixes/judged-devices.ts";
import { atProperty, defineRule } from "../rule.ts";
import { exceeds, formatDistinctWithUnit } from "../wording/format-number.ts";
import { loadPath } from "../wording/property-paths.ts";
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
  // Needs the load in amperes, and the range of ratings for the fix.
  check: (plan) =>
    perDevice(plan, (judged) => {
      const { at, device, protection } = judged;
      const { circuit, result } = judged.run;
      if (!exceeds(circuit.loadA, device.ratingA)) return [];
      const fixes = bestRatingFixes(judged);
      const values: Values = {
        device,
        loadA: circuit.loadA,
        wayOut: wayOut(fixes, whyNoRating(result, protection)),
      };
      const related = [{ at: atProperty(circuit, ...loadPath(circuit)), text: "The load" }];
      return [{ at, values, related, fixes }];
    }),
  message({ device, loadA, wayOut: way }) {
    const [, load] = formatDistinctWithUnit(device.ratingA, loadA, "A");
    const happens = device.kind === "breaker" ? "trip" : "blow";
    return `${theDevice(device)} is below the load of ${load} and would ${happens} in ordinary use: ${way}.`;
  },
});

interface Values {
  readonly device: Device;
  readonly loadA: number;
  readonly wayOut: string;
}
