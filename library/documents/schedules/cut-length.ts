import type { BenchSettings } from "../../model/bench-settings.ts";
import type { LengthUnit } from "../../model/length-unit.ts";
import type { Run } from "../../model/run.ts";

/**
 * The length to cut for a conductor of a planned length, m: with the build's slack in percent of it, which a length from a way
 * includes, and an allowance at both ends, rounded up to the next whole 10 mm, in a plan in feet to the next whole inch. The slack is common practice, no source, unless
 * the build states it.
 */
export function cutLengthM(
  lengthM: number,
  unit: LengthUnit,
  { slackPercent, endSlackM }: Pick<BenchSettings, "slackPercent" | "endSlackM">,
  from: Run["lengthsFrom"] = "plan",
): number {
  const isIncluded = from === "way";
  const withSlackM = lengthM * (isIncluded ? 1 : 1 + slackPercent / 100) + 2 * endSlackM;
  const stepMm = stepsMm[unit];
  return (roundedUp((withSlackM * 1000) / stepMm) * stepMm) / 1000;
}

/** An inch is 25.4 mm, exact since 1959. */
const stepsMm = { m: 10, ft: 25.4 } as const;

/** A value that exceeds a whole number only by binary rounding is that number. */
function roundedUp(steps: number): number {
  const nearest = Math.round(steps);
  return Math.abs(steps - nearest) < 1e-6 ? nearest : Math.ceil(steps);
}
