import { metresPerFoot, metresPerInch } from "../../model/length-limits.ts";
import type { BoardUnit, LengthUnit } from "../../model/length-unit.ts";
import type { Run } from "../../model/run.ts";
import { formatDistinctWithUnit, formatExact, withUnit } from "./format-number.ts";
import { lengthNotKnown } from "./unknown-length.ts";

/** Lengths in the unit of a plan: feet and inches, or metres and millimetres. Three figures. */

/** Along a conductor: "12.3 ft", "3.75 m". */
export function lengthInUnit(lengthM: number, unit: LengthUnit): string {
  return withUnit(lengthM / metresPer[unit], unit);
}

/** Two as {@link lengthInUnit}, as different as they are. */
export function distinctLengths(oneM: number, otherM: number, unit: LengthUnit): readonly [string, string] {
  const perUnit = metresPer[unit];
  return formatDistinctWithUnit(oneM / perUnit, otherM / perUnit, unit);
}

/** As {@link lengthInUnit}, in the unit of a run: "30 ft", "9 m"; "length not known". */
export function lengthInWords({ lengthUnit }: Pick<Run, "lengthUnit">, lengthM: number | undefined): string {
  return lengthM === undefined ? lengthNotKnown : lengthInUnit(lengthM, lengthUnit);
}

/** On a board, or of a piece at an end: "3.94 in", "100 mm". */
export function shortLengthInUnit(lengthMm: number, unit: BoardUnit): string {
  return withUnit(lengthMm / mmPer[unit], unit);
}

/** Two as {@link shortLengthInUnit}, as different as they are. */
export function distinctShortLengths(
  oneMm: number,
  otherMm: number,
  unit: BoardUnit,
): readonly [string, string] {
  return formatDistinctWithUnit(oneMm / mmPer[unit], otherMm / mmPer[unit], unit);
}

/** Every figure that counts: "1,180 mm", "9.75 in". */
export function exactShortLength(lengthMm: number, unit: BoardUnit): string {
  return `${formatExact(lengthMm / mmPer[unit])} ${unit}`;
}

/** Likewise "2.933 ft", "0.413 m". */
export function exactLength(lengthM: number, unit: LengthUnit): string {
  return `${formatExact(lengthM / metresPer[unit])} ${unit}`;
}

/** For people who measure boards in inches, feet. */
export const longUnitOf = { in: "ft", mm: "m" } as const satisfies Readonly<Record<BoardUnit, LengthUnit>>;

/** For people who measure in feet, inches. */
export const shortUnitOf = { ft: "in", m: "mm" } as const satisfies Readonly<Record<LengthUnit, BoardUnit>>;

/** Exact. */
export const metresPer = { ft: metresPerFoot, m: 1 } as const satisfies Readonly<Record<LengthUnit, number>>;
const mmPer = { in: metresPerInch * 1_000, mm: 1 } as const satisfies Readonly<Record<BoardUnit, number>>;
