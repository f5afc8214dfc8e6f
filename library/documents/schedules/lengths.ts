import { metresPerFoot } from "../../model/length-limits.ts";
import type { LengthUnit } from "../../model/length-unit.ts";
import { formatExact } from "../../rules/wording/format-number.ts";

/** As wire is sold: "25 ft", "50 m". */
export function soldLength(lengthM: number, unit: LengthUnit): string {
  return unit === "ft" ? `${formatExact(lengthM / metresPerFoot)} ft` : `${formatExact(lengthM)} m`;
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
