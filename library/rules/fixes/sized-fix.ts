import { sizesAbove } from "../../analysis/made-sizes.ts";
import { type Sizing, thinnestSufficient } from "../../analysis/sizing.ts";
import type { Conductor, Protection, Run } from "../../model/run.ts";
import type { Change, ProposedFix } from "../finding.ts";
import { formatRounded } from "../wording/format-number.ts";
import { farEndRatingPath, ratingPath, sizePath } from "../wording/property-paths.ts";

/**
 * The repair for a conductor that is too thin for any reason: the thinnest made size that meets minimum size, ampacity, drop and
 * protection together, and new ratings if the stated ones no longer fit. Never a thinner conductor. Empty if no made size is
 * enough, or if the plan has the right sizes already. Missing protection is left to the rule that reports it.
 *
 * `sizing`: another answer of the sizing analysis, e.g. the one with headroom.
 */
export function sizedFixes(
  circuit: Run,
  sizing: Sizing | undefined = thinnestSufficient(circuit),
): ProposedFix[] {
  if (!sizing || sizesAbove(sizing.conductor, circuit.conductor) < 0) return [];
  const { conductor, ratingA, ratingFarEndA } = sizing;
  const { protection, protectionFarEnd } = circuit;
  const changes: Change[] = [];
  const words: string[] = [];
  if (sizesAbove(conductor, circuit.conductor) !== 0) {
    changes.push(setSize(circuit, conductor));
    words.push(sizeInWords(conductor));
  }
  if (protection && ratingA !== undefined && protection.ratingA !== ratingA) {
    changes.push(setRating(circuit, ratingA));
    words.push(deviceInWords(protection, ratingA));
  }
  if (protectionFarEnd && ratingFarEndA !== undefined && protectionFarEnd.ratingA !== ratingFarEndA) {
    changes.push(setFarEndRating(circuit, ratingFarEndA));
    words.push(`${deviceInWords(protectionFarEnd, ratingFarEndA)} at the far end`);
  }
  if (changes.length === 0) return [];
  const [first, ...rest] = words;
  return [
    { title: `Use ${first}${rest.length > 0 ? ` with ${rest.join(" and ")}` : ""}`, kind: "repair", changes },
  ];
}

/** Sets the near-end rating, keeping the object form of `protect`. */
export function setRating(circuit: Run, ratingA: number): Change {
  return { do: "set", record: circuit.record, path: ratingPath(circuit), value: ratingA };
}

/** Sets the far-end rating, keeping the object form of `protectFarEnd`. */
export function setFarEndRating(circuit: Run, ratingA: number): Change {
  return { do: "set", record: circuit.record, path: farEndRatingPath(circuit), value: ratingA };
}

/** Sets the trade size in the plan's own system. */
export function setSize(circuit: Run, conductor: Conductor): Change {
  const value = conductor.system === "awg" ? conductor.awg : conductor.mm2;
  return { do: "set", record: circuit.record, path: sizePath(circuit), value };
}

/** "6 AWG", "16 mm²", and for wires side by side "2 × 6 AWG". */
export function sizeInWords(conductor: Conductor): string {
  const one = conductor.system === "awg" ? `${conductor.awg} AWG` : `${conductor.mm2} mm²`;
  return conductor.parallel > 1 ? `${conductor.parallel} × ${one}` : one;
}

/** "a 50 A fuse", "an 80 A breaker". */
export function deviceInWords(protection: Protection | null, ratingA: number): string {
  // An 8 is spoken with a vowel: "an 80 A fuse"; so are 11 and 18.
  const article = /^(8|11\b|18\b)/.test(String(ratingA)) ? "an" : "a";
  return `${article} ${formatRounded(ratingA)} A ${deviceKind(protection)}`;
}

/** The builder's name for the protective device: a fuse, unless the plan states a breaker. */
export function deviceKind(protection: Protection | null): "fuse" | "breaker" {
  return protection?.family === "circuit breaker" ? "breaker" : "fuse";
}
