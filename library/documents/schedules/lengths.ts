import { metresPerFoot, metresPerInch } from "../../model/length-limits.ts";
import type { Run } from "../../model/run.ts";
import { formatExact, formatRounded } from "../../rules/wording/format-number.ts";
import { givenInFeet } from "../../rules/wording/property-paths.ts";

/** The unit in which a plan gives its lengths: all of its lists are for people who measure in it. */
export type LengthUnit = "ft" | "m";

/** Feet if at least as many runs are given in feet as in metres; a plan that mixes them has a finding. Runs without a length have no say. */
export function lengthUnitOf(runs: readonly Run[]): LengthUnit {
  const given = runs.filter(({ lengthsFrom }) => lengthsFrom === "plan");
  const inFeet = given.filter(givenInFeet).length;
  return inFeet > 0 && 2 * inFeet >= given.length ? "ft" : "m";
}

/** As wire is sold: "25 ft", "50 m". */
export function soldLength(lengthM: number, unit: LengthUnit): string {
  return unit === "ft" ? `${formatExact(lengthM / metresPerFoot)} ft` : `${formatExact(lengthM)} m`;
}

/** Three figures: "12.3 ft", "3.75 m". */
export function roundedLength(lengthM: number, unit: LengthUnit): string {
  return unit === "ft" ? `${formatRounded(lengthM / metresPerFoot)} ft` : `${formatRounded(lengthM)} m`;
}

/** The allowance at an end of a conductor: "3.94 in", "100 mm". */
export function endSlackInWords(endSlackM: number, unit: LengthUnit): string {
  return unit === "ft"
    ? `${formatRounded(endSlackM / metresPerInch)} in`
    : `${formatRounded(endSlackM * 1000)} mm`;
}

/** A length to cut, rounded up to the whole inch: "15 ft 7 in", "11 in". */
export function feetAndInches(lengthM: number): string {
  const inches = Math.ceil((lengthM / metresPerFoot) * 12 - 1e-6);
  const parts = [
    inches >= 12 ? `${Math.floor(inches / 12).toLocaleString("en-US")} ft` : "",
    inches % 12 > 0 || inches === 0 ? `${inches % 12} in` : "",
  ];
  return parts.filter(Boolean).join(" ");
}
