import type { ContactsForSeconds } from "./contacts-for-seconds.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal } from "./terminal.ts";
import type { TerminalRating } from "./terminal-rating.ts";

/**
 * A switch that connects one of several batteries, or all of them, with one common terminal. Inputs that no cable leads to may
 * be left free. It is checked with all inputs connected and with each one alone, in every scenario that does not state its
 * position.
 *
 * Example: `selectorSwitch({ ratedA: 250 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function selectorSwitch(input: SelectorSwitchInput): PlannedSelectorSwitch {
  return frozenPlanData(input, "selectorSwitch", terminals) as PlannedSelectorSwitch;
}

const terminals = ["common", "input1", "input2", "input3", "input4"] as const;

/** The result of {@link selectorSwitch}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedSelectorSwitch {
  readonly kind: "selectorSwitch";
  /** Number of the call that made it. */
  readonly id: number;
  /** The terminal that it connects with its inputs. */
  readonly common: EitherTerminal;
  /** The first battery. */
  readonly input1: EitherTerminal;
  /** The second battery. */
  readonly input2: EitherTerminal;
  /** A third battery, if there is one. */
  readonly input3: EitherTerminal;
  /** A fourth battery, if there is one. */
  readonly input4: EitherTerminal;
}

/** The input of {@link selectorSwitch}. */
export interface SelectorSwitchInput extends PartOptions, ContactsForSeconds, TerminalRating {
  /**
   * Maximum current that it may carry for longer than a moment, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `ratedA: 250`
   */
  readonly ratedA: number;
}
