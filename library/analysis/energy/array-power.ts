import { solarControllerEfficiency } from "../../standards/device-practice.ts";
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
  return Math.max(
    0,
    (ratedW * irradianceW * (1 + (percentPerC / 100) * (cellC - standardTestC))) / standardTestWPerM2,
  );
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
  /** Between the modules and the battery in full sun, V, if the controller does not track: it falls with the light. */
  readonly dropV?: number | undefined;
}

/** Of an array behind its controller, W. */
export interface ArrayOutput {
  readonly deliveredW: number;
  /** The part that the controller's current limit cuts off. */
  readonly cutW: number;
  /** The further power that a controller that tracks would deliver, with the same limit. */
  readonly missedW: number;
  /** Without tracking: the cells are so hot that their voltage is below that of the battery and the wiring. They deliver nothing. */
  readonly isTooHot: boolean;
}

export function arrayOutput(array: ArrayOnController, irradianceW: number, airC: number): ArrayOutput {
  const { ratedW, maxPowerV, maxPowerA, tracking, efficiency, outputA, batteryV, dropV = 0 } = array;
  const cellC = cellTemperature(irradianceW, airC);
  const mostW = outputA * batteryV;
  const trackedW = powerOfModules(ratedW, irradianceW, cellC) * shareOfModules;
  const isTooHot =
    !tracking && hotVoltage(maxPowerV, cellC) < batteryV + dropV * (irradianceW / standardTestWPerM2);
  const offered = tracking
    ? trackedW * efficiency
    : isTooHot
      ? 0
      : batteryV * maxPowerA * (irradianceW / standardTestWPerM2) * shareOfModules;
  const deliveredW = Math.min(offered, mostW);
  const withTracking = tracking ? deliveredW : Math.min(mostW, trackedW * usualTracking);
  return {
    deliveredW,
    cutW: offered - deliveredW,
    missedW: Math.max(0, withTracking - deliveredW),
    isTooHot,
  };
}

const standardTestWPerM2 = 1_000;
const usualTracking = solarControllerEfficiency.percent / 100;

/** Voltage of a module at its maximum power, V: it falls with the power's coefficient, since its current hardly changes. */
function hotVoltage(maxPowerV: number, cellC: number): number {
  return maxPowerV * (1 + (moduleTemperature.powerPercentPerC / 100) * (cellC - standardTestC));
}
