import { largestGauge, largestMm2 } from "../largest-conductor.ts";
import { optional } from "./part-property.ts";

/** Of every part whose maker states the largest conductor that its terminals take. */
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
