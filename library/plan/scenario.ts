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
import type { PlannedShoreCharger } from "./shore-charger.ts";
import type { PlannedSolarArray } from "./solar-array.ts";
import type { PlannedSolarController } from "./solar-controller.ts";

/**
 * A state of the whole build in which it is worked out and checked: what is on, and what charges. A plan that names none is
 * checked with everything on, on the bank alone, and while charging with nothing on. One that names some is checked in those.
 *
 * Example: `scenario({ name: "Night at anchor", chargePercent: 50 })`
 *
 * @returns The scenario as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function scenario(input: ScenarioInput): PlannedScenario {
  return frozenPlanData(input, "scenario") as PlannedScenario;
}

/** What {@link scenario} gives back: what it was given, frozen. */
export type PlannedScenario = ScenarioInput & {
  readonly kind: "scenario";
  /** The number of the call that made it. */
  readonly id: number;
};

/** What {@link scenario} is given: its name, and whatever else is known. */
export type ScenarioInput = ScenarioOptions & (ListOfOff | ListOfOn) & (BankVoltage | BankCharge);

/** What can be on or off: a circuit, a load, an inverter, a source, a disconnect. */
export type Switched =
  | PlannedCircuit
  | PlannedLoad
  | PlannedMotor
  | PlannedInverter
  | PlannedDcDcCharger
  | PlannedAlternator
  | PlannedShoreCharger
  | PlannedSolarArray
  | PlannedSolarController
  | PlannedBattery
  | PlannedDisconnect;

interface ListOfOn {
  /**
   * What is on: circuits, loads and inverters; all others of these are off. A source in the list is on whatever `engine`, `shore`
   * and `sunPercent` say. Give `on` or `off`, not both.
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
   * What is off: circuits, loads, inverters, batteries, sources that charge, and disconnects, which are then open. All other
   * loads are on. Give `on` or `off`, not both; neither is needed.
   *
   * Example: `off: [fridge]`
   */
  readonly off: readonly Switched[];
  readonly on?: GiveOnlyOneOf.on_or_off;
}

interface BankCharge {
  /**
   * How full the batteries are, in percent. From 0 to 100, and a row of the table of voltages at rest of their chemistry: 25, 50,
   * 75 or 100, and for LiFePO4 every 10. Give `chargePercent` or `bankV`, not both.
   *
   * Left out: taken as not known, and the batteries as resting at their nominal voltage.
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
   * What the scenario is called, wherever something is worst in it. Shown up to 80 characters. Always needed.
   *
   * Example: `name: "Night at anchor"`
   */
  readonly name: string;
  /**
   * Motors that are just starting, and so draw their starting current.
   *
   * Left out: taken as none.
   *
   * Example: `starting: [windlass]`
   */
  readonly starting?: readonly PlannedMotor[];
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
   * How much sun is on the panels, in percent of full sun. From 0 to 100.
   *
   * Left out: taken as 0 %.
   *
   * Example: `sunPercent: 60`
   */
  readonly sunPercent?: number;
}
