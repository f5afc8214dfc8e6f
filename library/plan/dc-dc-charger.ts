import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { PermittedFuse } from "./permitted-fuse.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * A charger fed by a battery or alternator. The lower its input voltage, the more current it draws.
 *
 * Example: `dcDcCharger({ outputA: 30 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function dcDcCharger(input: DcDcChargerInput): PlannedDcDcCharger {
  return frozenPlanData(input, "dcDcCharger", terminals) as PlannedDcDcCharger;
}

const terminals = ["inputPositive", "inputNegative", "outputPositive", "outputNegative"] as const;

/** The result of {@link dcDcCharger}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedDcDcCharger {
  readonly kind: "dcDcCharger";
  /** Number of the call that made it. */
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

/** The input of {@link dcDcCharger}. */
export interface DcDcChargerInput extends PartOptions, PermittedFuse {
  /**
   * Maximum output current, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `outputA: 30`
   */
  readonly outputA: number;
  /**
   * Output voltage that it holds, V. From 1 to 100.
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
   * Maximum input current, A, if it limits that itself. Above 0, up to 10,000.
   *
   * Left out: taken as no limit of its own.
   *
   * Example: `inputMaxA: 45`
   */
  readonly inputMaxA?: number;
  /**
   * Minimum input voltage for its full output, V. From 1 to 100. If it is stated, the supply path may lose as much as leaves it.
   *
   * Left out: taken as 10.5 V for each 12 V of nominal voltage at its input.
   *
   * Example: `inputMinV: 11`
   */
  readonly inputMinV?: number;
  /**
   * Greatest voltage that its input withstands, V, from its nameplate: 32 for one made for 10 to 32 V. From 1 to 200, and not below
   * `inputMinV`.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `inputMaxV: 32`
   */
  readonly inputMaxV?: number;
  /**
   * Whether its two negatives are separate inside. If not, they are connected inside.
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
