import { moduleLosses, moduleTemperature } from "../../standards/energy-practice.ts";
import { standardTestC } from "../../standards/solar-factors.ts";

/** Temperature of the cells of a module, °C, in an irradiance, W/m². Ross: Tc = Ta + (NOCT − 20)/800 · G. */
export function cellTemperature(
  irradianceW: number,
  airC: number,
  nominalOperatingC: number = moduleTemperature.nominalOperatingC,
): number {
  return airC + ((nominalOperatingC - 20) / 800) * irradianceW;
}

/** Power of modules, W, of a rating at standard test conditions. P = Pstc · G/1000 · (1 + γ (Tc − 25)); never negative. */
export function powerOfModules(
  ratedW: number,
  irradianceW: number,
  cellC: number,
  percentPerC: number = moduleTemperature.powerPercentPerC,
): number {
  return Math.max(0, (ratedW * irradianceW * (1 + (percentPerC / 100) * (cellC - standardTestC))) / 1_000);
}

/** The share that several losses in percent leave together. */
export function shareLeft(percent: readonly number[]): number {
  return percent.reduce((share, loss) => share * (1 - loss / 100), 1);
}

/** The share of the modules' power that arrives at the wiring: 0.9039. */
export const shareOfModules = shareLeft(Object.values(moduleLosses.percent));

/** Of an array on its controller. */
export interface ArrayOnController {
  /** At standard test conditions, W. */
  readonly ratedW: number;
  readonly maxPowerV: number;
  readonly maxPowerA: number;
  /** Tracks the maximum power point; else it connects the modules with the battery. */
  readonly tracking: boolean;
  readonly efficiency: number;
  /** The greatest output current, A. */
  readonly outputA: number;
  /** The battery while it is charged, V. */
  readonly batteryV: number;
}

/** Power that an array delivers behind its controller, W, and the part that the controller's current limit cuts off. */
export function arrayOutput(
  { ratedW, maxPowerV, maxPowerA, tracking, efficiency, outputA, batteryV }: ArrayOnController,
  irradianceW: number,
  airC: number,
): { readonly deliveredW: number; readonly cutW: number } {
  const cellC = cellTemperature(irradianceW, airC);
  const offered = tracking
    ? powerOfModules(ratedW, irradianceW, cellC) * shareOfModules * efficiency
    : batteryV * maxPowerA * (irradianceW / 1_000) * shareOfModules * share(maxPowerV, cellC, batteryV);
  const deliveredW = Math.min(offered, outputA * batteryV);
  return { deliveredW, cutW: offered - deliveredW };
}

/** A module whose voltage has fallen below the battery's no longer charges it. */
function share(maxPowerV: number, cellC: number, batteryV: number): number {
  return hotVoltage(maxPowerV, cellC) >= batteryV ? 1 : 0;
}

/** Voltage of a module at its maximum power, V: it falls with the power's coefficient, since its current hardly changes. */
function hotVoltage(maxPowerV: number, cellC: number): number {
  return maxPowerV * (1 + (moduleTemperature.powerPercentPerC / 100) * (cellC - standardTestC));
}
