import type { Run } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { bareFromBattery, protectionDistances } from "../standards/protection-rules.ts";

/** Maximum distance of a protective device from its source of power, measured along the conductor. */
export interface DistanceLimit {
  /** As the regulation states it, in. */
  readonly maxIn: number;
  readonly source: Citation;
  /** A lesser distance that practice advises; absent if there is none. */
  readonly advised?: { readonly maxIn: number; readonly source: Citation };
}

/**
 * The limit at the end where the circuit starts, or at the far end of a circuit that both ends can feed.
 * From a battery terminal 72 in (33 CFR 183.460(a)), and on a bare conductor better 7 in; elsewhere 7 in, or 40 in if in a sheath all
 * the way (183.455(b)).
 * Each end has its own: a lone circuit that starts at a battery ends somewhere else, a cable may end at one too.
 */
export function protectionDistanceLimit(circuit: Run, end: "near" | "far"): DistanceLimit {
  const { bare, sheathed, fromBattery } = protectionDistances;
  if (end === "near" ? circuit.fromBattery : circuit.toBattery)
    return circuit.sheathed ? fromBattery : { advised: bareFromBattery, ...fromBattery };
  return circuit.sheathed ? sheathed : bare;
}
