import { metresPerFoot } from "../../rules/wording/property-paths.ts";

/** A length to cut, rounded up to the whole inch: "15 ft 7 in", "11 in". */
export function feetAndInches(lengthM: number): string {
  const inches = Math.ceil((lengthM / metresPerFoot) * 12 - 1e-6);
  const parts = [
    inches >= 12 ? `${Math.floor(inches / 12).toLocaleString("en-US")} ft` : "",
    inches % 12 > 0 || inches === 0 ? `${inches % 12} in` : "",
  ];
  return parts.filter(Boolean).join(" ");
}
