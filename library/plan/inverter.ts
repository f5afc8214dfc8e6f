import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { PermittedFuse } from "./permitted-fuse.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { HoursOfUse, Use } from "./use.ts";

/**
 * An inverter, seen from its direct-current side. It draws constant power: the lower the voltage, the more current.
 *
 * Example: `inverter({ continuousW: 2000, surgeW: 4000 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function inverter(input: InverterInput): PlannedInverter {
  return frozenPlanData(input, "inverter", terminals) as PlannedInverter;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link inverter}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedInverter {
  readonly kind: "inverter";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link inverter}. */
export interface InverterInput extends PartOptions, PermittedFuse {
  /**
   * Maximum output power for longer than a moment, W. Above 0, up to 100,000. Always needed.
   *
   * Example: `continuousW: 2000`
   */
  readonly continuousW: number;
  /**
   * Maximum output power for a moment, W, as for starting a motor. Above 0, up to 200,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `surgeW: 4000`
   */
  readonly surgeW?: number;
  /**
   * Efficiency in percent, from its data sheet. From 1 to 100.
   *
   * Left out: taken as 90 %.
   *
   * Example: `efficiencyPercent: 93`
   */
  readonly efficiencyPercent?: number;
  /**
   * Cut-off voltage at its terminals, V: below it, the inverter switches off. From 1 to 100.
   *
   * Left out: taken as 10.5 V for each 12 V of nominal voltage.
   *
   * Example: `cutOffV: 10.5`
   */
  readonly cutOffV?: number;
  /**
   * Greatest voltage that its input withstands, V, from its nameplate: 17 for one made for 10.5 to 17 V. From 1 to 200, and not below
   * `cutOffV`.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `maximumV: 17`
   */
  readonly maximumV?: number;
  /**
   * Its own consumption with no load on, W. From 0 to 10,000.
   *
   * Left out: taken as 0 W.
   *
   * Example: `idleW: 12`
   */
  readonly idleW?: number;
  /**
   * Load connected to it in use, W: the maximum drawn from it for longer than a moment. From 0 to 100,000.
   *
   * Left out: taken as the sum of its `devices`, at most its continuous power; without devices as its continuous power.
   *
   * Example: `loadW: 1200`
   */
  readonly loadW?: number;
  /**
   * The hours in which it is switched on, for the balance of energy of a `period`: it draws its idle power in each of them.
   *
   * Left out: taken as always.
   *
   * Example: `use: { hoursPerDay: 3 }`
   */
  readonly use?: HoursOfUse;
  /**
   * The devices for alternating current that it feeds, up to 100.
   *
   * Left out: taken as not known, and the balance of energy leaves them out.
   *
   * Example: `devices: [{ name: "Kettle", powerW: 1200, use: { hoursPerDay: 0.3 } }]`
   */
  readonly devices?: readonly AcDevice[];
}

/** A device for alternating current behind an inverter. */
export interface AcDevice {
  /**
   * Its name, shown with its use. Up to 40 characters. Always needed.
   *
   * Example: `name: "Laptop"`
   */
  readonly name: string;
  /**
   * Power that it draws, W. Above 0, up to 100,000. Always needed.
   *
   * Example: `powerW: 60`
   */
  readonly powerW: number;
  /**
   * How long it runs, for the balance of energy of a `period`. Always needed.
   *
   * Example: `use: { hoursPerDay: 3 }`
   */
  readonly use: Use;
}
