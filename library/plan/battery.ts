import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { BatteryNegative, BatteryPositive } from "./terminal.ts";
import type { NominalVoltage } from "./voltage.ts";

/**
 * A battery, or several in one case. Several in series or in parallel are as many batteries, joined by cables as they really are.
 *
 * Example: `battery({ chemistry: "LiFePO4", capacityAh: 200 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function battery(input: BatteryInput): PlannedBattery {
  return frozenPlanData(input, "battery", terminals) as PlannedBattery;
}

const terminals = ["positive", "negative"] as const;

/** What {@link battery} gives back: what it was given, frozen, and the terminals. */
export interface PlannedBattery extends BatteryInput {
  readonly kind: "battery";
  /** The number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: BatteryPositive;
  /** Its minus. */
  readonly negative: BatteryNegative;
}

/** What {@link battery} is given. */
export interface BatteryInput extends PartOptions {
  /**
   * What the battery is made of: "LiFePO4", "AGM", "gel" or "flooded lead-acid". Always needed: it tells the voltage at
   * rest, and the usual range of its internal resistance.
   *
   * Example: `chemistry: "LiFePO4"`
   */
  readonly chemistry: Chemistry;
  /**
   * Capacity at the rate that its maker states it for, Ah. From 0.1 to 10,000. Always needed.
   *
   * Example: `capacityAh: 200`
   */
  readonly capacityAh: number;
  /**
   * Nominal voltage of this battery, V: 12, 24, 48, or another number from 1 to 50.
   *
   * Left out: taken as the voltage of the `build`, else as 12 V.
   *
   * Example: `nominalV: 12`
   */
  readonly nominalV?: NominalVoltage;
  /**
   * Internal resistance, milliohms, from its data sheet. From 0.01 to 10,000.
   *
   * Left out: taken as the range that is usual for its chemistry, capacity and voltage; what follows from it is shown as an estimate.
   *
   * Example: `internalMilliohm: 4`
   */
  readonly internalMilliohm?: number;
  /**
   * Short-circuit current as the maker states it, A. From 1 to 200,000. It counts for what a dead short draws, whatever
   * the internal resistance.
   *
   * Left out: taken as what follows from the internal resistance.
   *
   * Example: `shortCircuitA: 4000`
   */
  readonly shortCircuitA?: number;
  /**
   * The most it may be discharged with for longer than a moment, A, from its data sheet. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `maxDischargeA: 200`
   */
  readonly maxDischargeA?: number;
  /**
   * The most it may be charged with, A, from its data sheet. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `maxChargeA: 100`
   */
  readonly maxChargeA?: number;
}

/** What batteries are made of. */
export type Chemistry = "LiFePO4" | "AGM" | "gel" | "flooded lead-acid";
