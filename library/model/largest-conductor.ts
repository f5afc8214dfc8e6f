import type { AwgSize, Mm2Size } from "../plan/sizes.ts";
import { awgSizes, mm2Sizes } from "./allowed-values.ts";
import { oneOf } from "./property.ts";
import type { Choice } from "./property-table.ts";
import type { Conductor } from "./run.ts";

/** Allowed values of the largest conductor that terminals take, one property for each system of sizes. */
export const largestGauge = oneOf(awgSizes, "is not one of the sizes");
export const largestMm2 = oneOf(mm2Sizes, "is not one of the sizes");

export const oneLargestConductor: Choice = { ways: [["largestGauge"], ["largestMm2"]] };

/** Undefined: not stated. */
export function largestConductorOf(
  largestGauge: AwgSize | undefined,
  largestMm2: Mm2Size | undefined,
): Conductor | undefined {
  if (largestGauge !== undefined) return { parallel: 1, system: "awg", awg: largestGauge };
  if (largestMm2 !== undefined) return { parallel: 1, system: "metric", mm2: largestMm2 };
  return undefined;
}
