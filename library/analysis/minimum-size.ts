import { longestM } from "../model/length-limits.ts";
import type { Conductor, Run } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { minimumAwg, minimumMm2 } from "../standards/minimum-sizes.ts";
import { sizesAbove } from "./made-sizes.ts";

/** The thinnest conductor that a circuit may have at any load, for its strength. */
export interface MinimumSize {
  readonly conductor: Conductor;
  readonly source: Citation;
}

/**
 * The smallest size for how the conductors run: 33 CFR 183.425(d), (e) for AWG, ISO 10133 7.7 for metric.
 * Undefined if the source sets none: metric conductors of at most 200 mm.
 */
export function minimumSizeOf(circuit: Run): MinimumSize | undefined {
  const run = circuit.sheathed ? "sheathed" : "single";
  const { parallel, system } = circuit.conductor;
  if (system === "awg") {
    const { awg, source } = minimumAwg[run];
    return { conductor: { parallel, system, awg }, source };
  }
  const { positiveM, negativeM } = circuit;
  // One of unknown length counts as longer: few are so short.
  const longest = positiveM === undefined ? longestM : Math.max(positiveM, negativeM ?? 0);
  if (longest <= minimumMm2.appliesAboveMm / 1000) return undefined;
  const { mm2, source } = minimumMm2[run];
  return { conductor: { parallel, system, mm2 }, source };
}

/** Whether the circuit's conductor is at least as thick as {@link minimumSizeOf} requires. */
export function meetsMinimumSize(circuit: Run): boolean {
  const minimum = minimumSizeOf(circuit);
  return minimum === undefined || sizesAbove(circuit.conductor, minimum.conductor) >= 0;
}
