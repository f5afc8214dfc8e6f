import type { ContactsForSeconds } from "./contacts-for-seconds.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal } from "./terminal.ts";
import type { TerminalRating } from "./terminal-rating.ts";

/**
 * A relay: a contactor, or a charging relay that connects two batteries while one of them is charged. It is checked closed and
 * open, in every scenario that does not state its position.
 *
 * Example: `relay({ ratedA: 140 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function relay(input: RelayInput): PlannedRelay {
  return frozenPlanData(input, "relay", terminals) as PlannedRelay;
}

const terminals = ["line", "load"] as const;

/** The result of {@link relay}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedRelay {
  readonly kind: "relay";
  /** Number of the call that made it. */
  readonly id: number;
  /** One side of its contact. */
  readonly line: EitherTerminal;
  /** The other side of its contact. */
  readonly load: EitherTerminal;
}

/** The input of {@link relay}. */
export interface RelayInput extends PartOptions, ContactsForSeconds, TerminalRating {
  /**
   * Maximum current that its contact may carry for longer than a moment, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `ratedA: 140`
   */
  readonly ratedA: number;
}
