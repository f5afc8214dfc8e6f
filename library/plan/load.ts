import { frozenPlanData } from "./frozen-copy.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { PartOptions } from "./part-options.ts";
import type { PermittedFuse } from "./permitted-fuse.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { Use } from "./use.ts";

/**
 * A load as a part with two terminals, for cables that are written one by one. Give one of `currentA`, `powerW` and
 * `resistanceOhm`. A `circuit` is shorter for a load with its own pair of conductors.
 *
 * Example: `load({ powerW: 60 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function load(input: LoadPartInput): PlannedLoad {
  return frozenPlanData(input, "load", terminals) as PlannedLoad;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link load}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedLoad {
  readonly kind: "load";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link load}: its current, power or resistance, and optional properties. */
export type LoadPartInput = LoadOptions & (ConstantResistance | ConstantPower | ConstantCurrent);

interface ConstantCurrent {
  /**
   * Current that the load draws at any voltage, A. Above 0, up to 2,000.
   * Give `currentA`, `powerW` or `resistanceOhm`, and no other; one of them is needed.
   *
   * Example: `currentA: 4`
   */
  readonly currentA: number;
  readonly powerW?: GiveOnlyOneOf.currentA_or_powerW_or_resistanceOhm;
  readonly resistanceOhm?: GiveOnlyOneOf.currentA_or_powerW_or_resistanceOhm;
}

interface ConstantPower {
  /**
   * Power that the load draws at any voltage, W: the lower the voltage, the more current. Above 0, up to 100,000.
   * Give `currentA`, `powerW` or `resistanceOhm`, and no other; one of them is needed.
   *
   * Example: `powerW: 60`
   */
  readonly powerW: number;
  readonly currentA?: GiveOnlyOneOf.currentA_or_powerW_or_resistanceOhm;
  readonly resistanceOhm?: GiveOnlyOneOf.currentA_or_powerW_or_resistanceOhm;
}

interface ConstantResistance {
  /**
   * Resistance of the load, Ω, as of a heater: the lower the voltage, the less current. From 0.001 to 1,000,000.
   * Give `currentA`, `powerW` or `resistanceOhm`, and no other; one of them is needed.
   *
   * Example: `resistanceOhm: 0.6`
   */
  readonly resistanceOhm: number;
  readonly currentA?: GiveOnlyOneOf.currentA_or_powerW_or_resistanceOhm;
  readonly powerW?: GiveOnlyOneOf.currentA_or_powerW_or_resistanceOhm;
}

/** The properties of loads and motors besides their consumption. Every property may be left out. */
export interface LoadOptions extends PartOptions, PermittedFuse {
  /**
   * Minimum voltage at which the device still works, V, from its data sheet. From 1 up to the nominal voltage.
   *
   * Left out: taken as not known, and only the drop in percent is checked.
   *
   * Example: `minimumV: 10.5`
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
  /**
   * Whether people depend on this load: navigation lights, a bilge pump, medical equipment. Less voltage drop is then allowed.
   *
   * Left out: taken as false.
   *
   * Example: `critical: true`
   */
  readonly critical?: boolean;
  /**
   * The use of the device: "bilge pump" for one that runs by itself, "alarm", or "other". A bilge pump should stay on with the main
   * switch off, and an alarm have a fuse of its own.
   *
   * Left out: taken from the name, if that contains these words in English.
   *
   * Example: `purpose: "bilge pump"`
   */
  readonly purpose?: LoadPurpose;
  /**
   * How long it runs, for the balance of energy of a `period`.
   *
   * Left out: taken as not known, and the balance leaves it out.
   *
   * Example: `use: { hoursPerDay: 4, when: "dark" }`
   */
  readonly use?: Use;
  /**
   * Whether the load runs for three hours or longer at a time.
   *
   * Left out: taken from `build`, else as true.
   *
   * Example: `continuous: false`
   */
  readonly continuous?: boolean;
  /**
   * Maximum voltage drop on the way from the bank and back, in percent of the nominal voltage. Above 0, up to 20.
   *
   * Left out: taken from `build`, else as 3 % when `critical`, and 10 % when not.
   *
   * Example: `dropLimitPercent: 5`
   */
  readonly dropLimitPercent?: number;
}

/** The uses of a device that rules ask about, and any other. */
export type LoadPurpose = "bilge pump" | "alarm" | "other";
