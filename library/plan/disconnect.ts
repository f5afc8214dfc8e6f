import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal } from "./terminal.ts";

/**
 * A switch that disconnects what is behind it: a battery switch, for one.
 *
 * Example: `disconnect({ ratedA: 300 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function disconnect(input: DisconnectInput): PlannedDisconnect {
  return frozenPlanData(input, "disconnect", terminals) as PlannedDisconnect;
}

const terminals = ["line", "load"] as const;

/** What {@link disconnect} gives back: what it was given, frozen, and the terminals. */
export interface PlannedDisconnect extends DisconnectInput {
  readonly kind: "disconnect";
  /** The number of the call that made it. */
  readonly id: number;
  /** Towards the source. */
  readonly line: EitherTerminal;
  /** Towards the load. */
  readonly load: EitherTerminal;
}

/** What {@link disconnect} is given. */
export interface DisconnectInput extends PartOptions {
  /**
   * The most it may carry for longer than a moment, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `ratedA: 300`
   */
  readonly ratedA: number;
}
