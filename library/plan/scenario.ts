import type { PlannedAlternator } from "./alternator.ts";
import type { PlannedBattery } from "./battery.ts";
import type { PlannedCircuit } from "./circuit.ts";
import type { PlannedDcDcCharger } from "./dc-dc-charger.ts";
import type { PlannedDisconnect } from "./disconnect.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { PlannedInverter } from "./inverter.ts";
import type { PlannedLoad } from "./load.ts";
import type { PlannedMotor } from "./motor.ts";
import type { PlannedRelay } from "./relay.ts";
import type { PlannedSelectorSwitch } from "./selector-switch.ts";
import type { PlannedShoreCharger } from "./shore-charger.ts";
import type { PlannedSolarArray } from "./solar-array.ts";
import type { PlannedSolarController } from "./solar-controller.ts";
import type { PlannedStarterMotor } from "./starter-motor.ts";
import type { EitherTerminal } from "./terminal.ts";

/**
 * An operating state of the whole build, for calculation and checks: the loads that are on, and the sources that charge.
 * A plan without scenarios is checked with everything on, on the bank alone, and while charging with no load on. A plan with
 * scenarios is checked in those only. A relay or selector switch is also checked in the positions that no scenario states, and a
 * motor that no scenario starts is started in a further one.
 *
 * Example: `scenario({ name: "Night at anchor", chargePercent: 50 })`
 *
 * @returns The scenario as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function scenario(input: ScenarioInput): PlannedScenario {
  return frozenPlanData(input, "scenario") as PlannedScenario;
}

/** The result of {@link scenario}: its input, frozen. */
export type PlannedScenario = ScenarioInput & {
  readonly kind: "scenario";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link scenario}: its name, and optional properties. */
export type ScenarioInput = ScenarioOptions & (ListOfOff | ListOfOn) & (BankVoltage | BankCharge);

/** Anything that can be on or off: a circuit, a load, an inverter, a source, a switch. */
export type Switched =
  | PlannedCircuit
  | PlannedLoad
  | PlannedMotor
  | PlannedStarterMotor
  | PlannedInverter
  | PlannedDcDcCharger
  | PlannedAlternator
  | PlannedShoreCharger
  | PlannedSolarArray
  | PlannedSolarController
  | PlannedBattery
  | PlannedDisconnect
  | PlannedRelay
  | PlannedSelectorSwitch;

interface ListOfOn {
  /**
   * Circuits, loads and inverters that are on; all others of these are off. A source in the list is on, regardless of `engine`,
   * `shore` and `sunPercent`; a relay is closed. Give `on` or `off`, not both.
   *
   * Left out: taken as every circuit, load and inverter that is not in `off`.
   *
   * Example: `on: [fridge]`
   */
  readonly on?: readonly Switched[];
  readonly off?: GiveOnlyOneOf.on_or_off;
}

interface ListOfOff {
  /**
   * Parts that are off: circuits, loads, inverters, batteries, sources that charge, and disconnects, relays and selector switches,
   * which are then open. All other loads are on. Give `on` or `off`, not both; neither is needed.
   *
   * Example: `off: [fridge]`
   */
  readonly off: readonly Switched[];
  readonly on?: GiveOnlyOneOf.on_or_off;
}

interface BankCharge {
  /**
   * State of charge of the batteries, in percent. From 0 to 100. Their voltage at rest follows from published lists. Give
   * `chargePercent` or `bankV`, not both.
   *
   * Left out: taken as not known, and the batteries rest at 2 V a lead-acid cell and 3.2 V a cell of LiFePO4.
   *
   * Example: `chargePercent: 50`
   */
  readonly chargePercent?: number;
  readonly bankV?: GiveOnlyOneOf.chargePercent_or_bankV;
}

interface BankVoltage {
  /**
   * Voltage of the bank at rest, V, for a bank of the build's voltage. From 1 to 100. Give `chargePercent` or `bankV`, not both;
   * neither is needed.
   *
   * Example: `bankV: 12.2`
   */
  readonly bankV: number;
  readonly chargePercent?: GiveOnlyOneOf.chargePercent_or_bankV;
}

interface ScenarioOptions {
  /**
   * Name of the scenario, shown with each result that is worst in it. Shown up to 80 characters. Always needed.
   *
   * Example: `name: "Night at anchor"`
   */
  readonly name: string;
  /**
   * Motors that are starting, and draw their starting current.
   *
   * Left out: taken as none.
   *
   * Example: `starting: [windlass]`
   */
  readonly starting?: readonly (PlannedMotor | PlannedStarterMotor)[];
  /**
   * The inputs that selector switches connect with their common terminal: one, or several.
   *
   * Left out: taken as every position, one after the other.
   *
   * Example: `selected: [selector.input1]`
   */
  readonly selected?: readonly EitherTerminal[];
  /**
   * Whether the engine runs: alternators, and the chargers that run with it, then charge.
   *
   * Left out: taken as false.
   *
   * Example: `engine: true`
   */
  readonly engine?: boolean;
  /**
   * Whether shore power is connected: chargers on the mains then charge.
   *
   * Left out: taken as false.
   *
   * Example: `shore: true`
   */
  readonly shore?: boolean;
  /**
   * Irradiance of the solar modules, in percent of full sun. From 0 to 100.
   *
   * Left out: taken as 0 %.
   *
   * Example: `sunPercent: 60`
   */
  readonly sunPercent?: number;
  /**
   * State of charge of single batteries, if it differs from that of the others.
   *
   * Left out: taken from `chargePercent` or `bankV` for every battery.
   *
   * Example: `charges: [{ battery: house, percent: 90 }]`
   */
  readonly charges?: readonly BatteryCharge[];
}

/** The state of charge of one battery. */
export interface BatteryCharge {
  /**
   * The battery whose charge is stated, each battery once. Always needed: the others keep the charge of the whole scenario.
   *
   * Example: `battery: house`
   */
  readonly battery: PlannedBattery;
  /**
   * Its state of charge, in percent. From 0 to 100. Always needed: its voltage at rest follows from it.
   *
   * Example: `percent: 90`
   */
  readonly percent: number;
}
