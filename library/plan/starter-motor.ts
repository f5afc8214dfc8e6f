import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * The starter motor of an engine. It draws its cranking current only while the engine is cranked, for seconds: that current counts
 * for voltages, not for the ampacity of conductors. Its main feed from the battery needs no fuse (33 CFR 183.455(e), 183.460(a)).
 *
 * Example: `starterMotor({ crankingA: 250 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function starterMotor(input: StarterMotorInput): PlannedStarterMotor {
  return frozenPlanData(input, "starterMotor", terminals) as PlannedStarterMotor;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link starterMotor}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedStarterMotor {
  readonly kind: "starterMotor";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus: the engine block. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link starterMotor}. */
export interface StarterMotorInput extends PartOptions {
  /**
   * Current that it draws while it cranks the engine, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `crankingA: 250`
   */
  readonly crankingA: number;
  /**
   * Minimum voltage at its terminals at which it cranks the engine, V, from its data sheet. From 1 up to the nominal voltage.
   *
   * Left out: taken as not known, and the voltage while cranking is not checked.
   *
   * Example: `minimumV: 8`
   */
  readonly minimumV?: number;
  /**
   * Greatest voltage that the device withstands, V, from its nameplate: 32 for one made for 10 to 32 V. From 1 to 200, and not below
   * `minimumV`.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `maximumV: 32`
   */
  readonly maximumV?: number;
}
