import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { BatteryNegative, BatteryPositive } from "./terminal.ts";
import type { NominalVoltage } from "./voltage.ts";

/**
 * A battery, or several in one case. Separate batteries in series or in parallel are written one by one, with the cables that
 * connect them in reality.
 *
 * Example: `battery({ chemistry: "LiFePO4", capacityAh: 200 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function battery(input: BatteryInput): PlannedBattery {
  return frozenPlanData(input, "battery", terminals) as PlannedBattery;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link battery}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedBattery {
  readonly kind: "battery";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: BatteryPositive;
  /** Its minus. */
  readonly negative: BatteryNegative;
}

/** The input of {@link battery}. */
export interface BatteryInput extends PartOptions {
  /**
   * The battery's chemistry: "LiFePO4", "AGM", "gel" or "flooded lead-acid". Always needed: it determines the
   * voltage at rest, 3.2 V a cell of LiFePO4 and 2 V a lead-acid cell unless a scenario states the charge, and the usual range of
   * the internal resistance.
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
   * Nominal voltage of this battery, V, as its label states it: 12, 24, 48, or another number from 1 to 50; or 51.2. For LiFePO4
   * the number of cells counts: 12 and 12.8 V both mean four, 48 and 51.2 V sixteen.
   *
   * Left out: taken as the voltage of the `build`, else as 12 V.
   *
   * Batteries in series state it, unless the build is one of 12 V.
   *
   * Example: `nominalV: 12`
   */
  readonly nominalV?: NominalVoltage;
  /**
   * Internal resistance, milliohms, from its data sheet. From 0.01 to 10,000.
   *
   * Left out: taken as the usual range for its chemistry, capacity and voltage; results that use it are shown as estimates.
   *
   * Example: `internalMilliohm: 4`
   */
  readonly internalMilliohm?: number;
  /**
   * Short-circuit current as the maker states it, A. From 1 to 200,000. It determines the current of a
   * dead short, regardless of the internal resistance.
   *
   * Left out: taken as the current that follows from the internal resistance.
   *
   * Example: `shortCircuitA: 4000`
   */
  readonly shortCircuitA?: number;
  /**
   * Maximum discharge current for longer than a moment, A, from its data sheet. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and compared with the usual rate of its chemistry.
   *
   * Example: `maxDischargeA: 200`
   */
  readonly maxDischargeA?: number;
  /**
   * Maximum charge current, A, from its data sheet. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and compared with the usual rate of its chemistry.
   *
   * Example: `maxChargeA: 100`
   */
  readonly maxChargeA?: number;
  /**
   * The coldest that the battery's own place gets, °C. -60 to 50. Not the coldest day outside: a bank inside is warmer.
   *
   * Left out: taken as not known, and charging in the cold is not checked.
   *
   * Example: `lowestC: -5`
   */
  readonly lowestC?: number;
  /**
   * Temperature below which its protection, or the chargers, stop charging it, °C, from its data sheet. -60 to 50.
   *
   * Left out: taken as none.
   *
   * Example: `chargeCutOffC: 0`
   */
  readonly chargeCutOffC?: number;
  /**
   * Charge that you want to keep in it, in percent of a full charge, for the balance of energy of a `period`. From 0 to 95.
   *
   * Left out: taken as 20 % for LiFePO4, and 50 % for a lead-acid battery.
   *
   * Example: `reservePercent: 30`
   */
  readonly reservePercent?: number;
  /**
   * Charge at which it stops delivering, in percent of a full charge, because its protection or a disconnect cuts it off. From 0 to 95.
   *
   * Left out: taken as 0 %.
   *
   * Example: `minimumChargePercent: 10`
   */
  readonly minimumChargePercent?: number;
  /**
   * Capacity that it still has, in percent of its rating: less with age. From 20 to 100.
   *
   * Left out: taken as 100 %: as new.
   *
   * Example: `stateOfHealthPercent: 80`
   */
  readonly stateOfHealthPercent?: number;
  /**
   * Power that is drawn from it all the time by things that are not in the plan: an alarm, the electronics of a vehicle, its own
   * management, W. 12 V and 20 mA are 0.24 W. From 0 to 1,000.
   *
   * Left out: taken as 0 W.
   *
   * Example: `standbyW: 0.24`
   */
  readonly standbyW?: number;
}

/** Battery chemistries. */
export type Chemistry = "LiFePO4" | "AGM" | "gel" | "flooded lead-acid";
