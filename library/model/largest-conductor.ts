import type { AwgSize, Mm2Size } from "../plan/sizes.ts";
import { awgSizes, mm2Sizes } from "./allowed-values.ts";
import { optional } from "./parts/part-property.ts";
import { oneOf } from "./property.ts";
import type { Choice } from "./property-table.ts";
import type { Conductor } from "./run.ts";

/** The largest conductor that a terminal takes. */
export interface TerminalSize {
  /** Of a single wire. */
  readonly largest: Conductor;
  /** The name of its part; absent for the load that a circuit states itself. */
  readonly of?: string;
}

export const largestGauge = oneOf(awgSizes, "is not one of the sizes");
export const largestMm2 = oneOf(mm2Sizes, "is not one of the sizes");

/** The properties of every part. */
export const largestConductor = {
  largestGauge: optional(largestGauge, {
    words: "largest AWG that its terminals take",
    summary: "AWG at most",
  }),
  largestMm2: optional(largestMm2, {
    words: "largest mm² that its terminals take",
    summary: "mm² at most",
  }),
};

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
