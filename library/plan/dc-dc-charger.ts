import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * A charger that takes its power from a battery or alternator: it draws more current the lower its input voltage is.
 *
 * Example: `dcDcCharger({ outputA: 30 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function dcDcCharger(input: DcDcChargerInput): PlannedDcDcCharger {
  return frozenPlanData(input, "dcDcCharger", terminals) as PlannedDcDcCharger;
}

const terminals = ["inputPositive", "inputNegative", "outputPositive", "outputNegative"] as const;

/** What {@link dcDcCharger} gives back: what it was given, frozen, and the terminals. */
export interface PlannedDcDcCharger extends DcDcChargerInput {
  readonly kind: "dcDcCharger";
  /** The number of the call that made it. */
  readonly id: number;
  /** Plus of its input. */
  readonly inputPositive: PositiveTerminal;
  /** Minus of its input. */
  readonly inputNegative: NegativeTerminal;
  /** Plus of its output. */
  readonly outputPositive: PositiveTerminal;
  /** Minus of its output. */
  readonly outputNegative: NegativeTerminal;
}

/** What {@link dcDcCharger} is given. */
export interface DcDcChargerInput extends PartOptions {
  /**
   * The most current that it gives, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `outputA: 30`
   */
  readonly outputA: number;
  /**
   * The voltage that it holds at its output, V. From 1 to 100.
   *
   * Left out: taken as 14.4 V for each 12 V of nominal voltage.
   *
   * Example: `outputV: 14.4`
   */
  readonly outputV?: number;
  /**
   * Efficiency in percent, from its data sheet. From 1 to 100.
   *
   * Left out: taken as 90 %.
   *
   * Example: `efficiencyPercent: 94`
   */
  readonly efficiencyPercent?: number;
  /**
   * The most current that it takes, A, where it limits that itself. Above 0, up to 10,000.
   *
   * Left out: taken as no limit of its own.
   *
   * Example: `inputMaxA: 45`
   */
  readonly inputMaxA?: number;
  /**
   * The least input voltage at which it still gives its full output, V. From 1 to 100.
   *
   * Left out: taken as 10.5 V for each 12 V of nominal voltage at its input.
   *
   * Example: `inputMinV: 11`
   */
  readonly inputMinV?: number;
  /**
   * Whether its two negatives are separate inside. Where they are not, they are one.
   *
   * Left out: taken as false.
   *
   * Example: `isolated: true`
   */
  readonly isolated?: boolean;
  /**
   * When it runs: "with the engine", or "always".
   *
   * Left out: taken as "with the engine".
   *
   * Example: `runs: "always"`
   */
  readonly runs?: "with the engine" | "always";
}
