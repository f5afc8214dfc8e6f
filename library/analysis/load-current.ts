import type { Draw } from "../model/network.ts";

/**
 * The current that a load draws at a voltage, A; of a motor, its running current.
 *
 *     I = P / U     constant power, W
 *     I = U / R     resistance, Ω
 */
export function loadCurrentA(draws: Draw, voltageV: number): number {
  switch (draws.as) {
    case "current":
      return draws.currentA;
    case "motor":
      return draws.runningA;
    case "power":
      return draws.powerW / voltageV;
    case "resistance":
      return voltageV / draws.ohm;
    default:
      return draws satisfies never;
  }
}
