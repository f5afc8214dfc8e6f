import type { Run } from "../model/run.ts";

/**
 * The greatest current that a run carries for longer than a moment, A: its load, with constant powers at the lowest voltage at which
 * they work. Ampacity and ratings are judged by it (the design current of IEC 60364-4-43, 433.1); the drop by the load alone.
 */
export function designCurrentA({ loadA, lowVoltageA = 0 }: Pick<Run, "loadA" | "lowVoltageA">): number {
  return Math.max(loadA, lowVoltageA);
}
