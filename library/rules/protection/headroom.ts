import { ratingInHotPlace, ratingOverContinuousLoad } from "../../standards/protection-rules.ts";
import { type Device, perDevice, ratingFixes, theDevice, whyNoRatingOf } from "../fixes/judged-devices.ts";
import { defineRule } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { exceeds, formatDistinctWithUnit, formatRounded, withUnit } from "../wording/format-number.ts";
import { sourceInWords } from "../wording/source-in-words.ts";
import { wayOut } from "../wording/way-out.ts";

export const headroom = defineRule<Values>({
  id: "protection/headroom",
  title: "Protection rated too close to continuous load",
  formerTitles: ["Fuse or breaker close to a continuous load"],
  severity: "warning",
  why: "A fuse that carries nearly its rating for hours runs hot, ages, and one day blows for no apparent reason.",
  sources: [ratingOverContinuousLoad.source, ratingInHotPlace.source],
  fixable: true,
  acceptable: true,
  restsOn: "currents",
  neverFolded: true,
  // Needs the aim. A rating below the load itself is left to protection/below-load.
  check: (plan) =>
    perDevice(plan, (judged) => {
      const { at, device, load: related } = judged;
      if (!judged.continuous) return [];
      const { minA, forHours, aimA, margin, estimate } = judged.range;
      if (!exceeds(aimA, device.ratingA) || exceeds(minA, device.ratingA)) return [];
      const fixes = ratingFixes(plan, judged, "protection/headroom");
      const values: Values = {
        device,
        loadA: forHours.continuousA,
        otherA: forHours.currentA - forHours.continuousA,
        estimate: estimateInWords(estimate),
        aimA,
        aimPercent: 100 * margin.factor,
        ...(margin.hotC !== undefined && { hotC: margin.hotC }),
        source: sourceInWords(margin.source),
        wayOut: wayOut(fixes, whyNoRatingOf(plan, judged)),
      };
      return [{ at, values, related, fixes }];
    }),
  message({ device, loadA, otherA, estimate, aimA, aimPercent, hotC, source, wayOut: way }) {
    const [, aim] = formatDistinctWithUnit(device.ratingA, aimA, "A");
    const others = exceeds(otherA, 0) ? ` and 100 % of the other ${withUnit(otherA, "A")}` : "";
    const place = hotC === undefined ? "" : ` in a place of ${withUnit(hotC, "°C")}`;
    return `${theDevice(device)} is below ${aim}, ${formatRounded(aimPercent)} % of a continuous load of ${withUnit(loadA, "A")}${others}${place}${estimate} (${source}): ${way}.`;
  },
});

interface Values {
  readonly device: Device;
  /** The part of the load that flows for hours, and the rest of it. */
  readonly loadA: number;
  readonly otherA: number;
  readonly estimate: string;
  /** The rating to aim for, A, and its percentage of the load. */
  readonly aimA: number;
  readonly aimPercent: number;
  /** The temperature of its place, °C, if that is the reason for the percentage. */
  readonly hotC?: number;
  readonly source: string;
  readonly wayOut: string;
}
