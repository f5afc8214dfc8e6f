import type { ContactsForSeconds } from "./contacts-for-seconds.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal } from "./terminal.ts";
import type { TerminalRating } from "./terminal-rating.ts";

/**
 * A switch that disconnects everything behind it, such as a battery switch.
 *
 * Example: `disconnect({ ratedA: 300 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function disconnect(input: DisconnectInput): PlannedDisconnect {
  return frozenPlanData(input, "disconnect", terminals) as PlannedDisconnect;
}

const terminals = ["line", "load"] as const;

/** The result of {@link disconnect}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedDisconnect {
  readonly kind: "disconnect";
  /** Number of the call that made it. */
  readonly id: number;
  /** Towards the source. */
  readonly line: EitherTerminal;
  /** Towards the load. */
  readonly load: EitherTerminal;
}

/** The input of {@link disconnect}. */
export interface DisconnectInput extends PartOptions, ContactsForSeconds, TerminalRating {
  /**
   * Maximum current that it may carry for longer than a moment, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `ratedA: 300`
   */
  readonly ratedA: number;
}
