import type { LengthUnit } from "../model/length-unit.ts";
import { counted, formatDistinct } from "../rules/wording/format-number.ts";
import { distinctLengths, lengthInUnit } from "../rules/wording/lengths.ts";
import { listInWords } from "../rules/wording/part-in-words.ts";
import type { SuggestedPlaces } from "./suggested-places.ts";

export const suggestionCaution =
  "A suggestion, not proved to be the best: see that every part can be reached, opened and cooled there, and follow its maker's instructions.";

/** "2 runs with both lengths: 8 m of conductor today, 3 m suggested; copper …". */
export function totalInWords(
  { runs, todayM, suggestedM, todayCopperKg, suggestedCopperKg }: NonNullable<SuggestedPlaces["total"]>,
  lengthUnit: LengthUnit,
): string {
  const [before, after] = distinctLengths(todayM, suggestedM, lengthUnit);
  const [copperBefore, copperAfter] = formatDistinct(todayCopperKg, suggestedCopperKg);
  return `${counted(runs, "run")} with both lengths: ${before} of conductor today, ${after} suggested; copper ${copperBefore} kg today, ${copperAfter} kg suggested.`;
}

/** A sentence about the runs that have a length only with these places; none if there are none. */
export function lengthsGained(runs: SuggestedPlaces["runs"], unit: LengthUnit): readonly string[] {
  const gained = runs.flatMap(({ todayM, suggestedM }) => (todayM === undefined ? (suggestedM ?? []) : []));
  if (gained.length === 0) return [];
  const sumM = gained.reduce((sum, one) => sum + one, 0);
  return [
    `${counted(gained.length, "run")} without a length today: ${lengthInUnit(sumM, unit)} of conductor with these places.`,
  ];
}

const because = {
  "no size": "the plan states no size (size) for",
  "cannot be mounted so": "this surface does not fit the stated mounting positions of",
  "mounted on another part": "their place is the part on which they are mounted:",
} as const;

/** A sentence for each reason why parts were left out, or have no room kept. */
export function leftOutInWords({
  leftOut,
  withoutRoom,
}: Pick<SuggestedPlaces, "leftOut" | "withoutRoom">): readonly string[] {
  const remarks: string[] = [];
  for (const [reason, words] of Object.entries(because)) {
    const parts = leftOut.flatMap((one) => (one.because === reason ? [one.part] : []));
    if (parts.length > 0) remarks.push(`Left out: ${words} ${listInWords(parts)}.`);
  }
  if (withoutRoom.length > 0)
    remarks.push(`No room is kept for ${listInWords(withoutRoom)}: placed here, without a size.`);
  return remarks;
}
