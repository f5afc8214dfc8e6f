import type { Run } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { protectionDistances } from "../standards/protection-rules.ts";

/** Maximum distance of a protective device from its source of power, measured along the conductor. */
export interface DistanceLimit {
  /** As the regulation states it, in. */
  readonly maxIn: number;
  readonly source: Citation;
}

/**
 * The limit at the end where the circuit starts, or at the far end of a circuit that both ends can feed.
 * From a battery terminal 72 in (33 CFR 183.460(a)); elsewhere 7 in, or 40 in if in a sheath all the way (183.455(b)).
 * Each end has its own: a lone circuit that starts at a battery ends somewhere else, a cable may end at one too.
 */
export function protectionDistanceLimit(circuit: Run, end: "near" | "far"): DistanceLimit {
  const { bare, sheathed, fromBattery } = protectionDistances;
  const { maxIn, source } = (end === "near" ? circuit.fromBattery : circuit.toBattery)
    ? fromBattery
    : circuit.sheathed
      ? sheathed
      : bare;
  return { maxIn, source };
}
