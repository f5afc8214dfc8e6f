import { workedOutOnce } from "../../model/worked-out-once.ts";
import { type ArrayOnController, arrayOutput } from "./array-power.ts";
import { daysOfYear, monthOfDay } from "./calendar.ts";
import type { Climate } from "./climate.ts";
import type { ArrayAtBank } from "./flows-at-bank.ts";
import { irradianceOn } from "./hours-of-sun.ts";
import type { Plane } from "./sun-position.ts";

/** An array on its controller, by hour of the whole year, W and W/m². */
export interface ArrayByHour {
  /** Light in the plane of the modules, without shade. */
  readonly light: Float64Array;
  /** Behind the controller, before the loss in the wiring. */
  readonly deliveredW: Float64Array;
  /** Cut off by the limit of the controller's current. */
  readonly cutW: Float64Array;
  /** That a controller that tracks would deliver besides. */
  readonly missedW: Float64Array;
  /** 1 in hours in which the voltage of its hot cells is too low, else 0. */
  readonly tooHot: Uint8Array;
}

/** The direction in which an array is mounted: towards the equator if the plan states none. */
function planeOf({ tiltDeg, facingDeg, horizonDeg }: ArrayAtBank, { latitudeDeg }: Climate): Plane {
  return { tiltDeg, azimuthDeg: facingDeg ?? (latitudeDeg < 0 ? 0 : 180), horizonDeg };
}

/** The same object for the same array in the same light: an edit of a conductor changes its loss alone. */
export function arrayByHour(array: ArrayAtBank, climate: Climate): ArrayByHour {
  const known = knownUnder(climate);
  const key = JSON.stringify([onControllerOf(array), planeOf(array, climate), array.unshaded]);
  const before = known.arrays.get(key);
  if (before) return before;
  if (known.arrays.size >= mostKept) known.arrays.clear();
  const made = arrayOnce(array, climate);
  known.arrays.set(key, made);
  return made;
}

/** {@link arrayByHour}, kept by nobody. */
export function arrayOnce(array: ArrayAtBank, climate: Climate): ArrayByHour {
  return {
    light: lightOn(planeOf(array, climate), climate),
    ...outputOf(onControllerOf(array), array, climate),
  };
}

/** The figures that decide its output, without those of its name and its wiring. */
function onControllerOf(array: ArrayAtBank): ArrayOnController {
  const { ratedW, maxPowerV, maxPowerA, tracking, efficiency, outputA, batteryV, dropV } = array;
  return { ratedW, maxPowerV, maxPowerA, tracking, efficiency, outputA, batteryV, dropV };
}

/** A figure that is typed passes a few of them. */
const mostKept = 12;

const knownUnder = workedOutOnce((_: Climate) => ({
  arrays: new Map<string, ArrayByHour>(),
  light: new Map<string, Float64Array>(),
}));

/** Irradiance of a plane by hour of the year, W/m²; kept, since the modules on it may change. */
function lightOn(plane: Plane, climate: Climate): Float64Array {
  const known = knownUnder(climate).light;
  const key = JSON.stringify(plane);
  const before = known.get(key);
  if (before) return before;
  if (known.size >= mostKept) known.clear();
  const made = irradianceOn(climate, plane);
  known.set(key, made);
  return made;
}

function outputOf(onController: ArrayOnController, array: ArrayAtBank, climate: Climate) {
  const light = lightOn(planeOf(array, climate), climate);
  const deliveredW = new Float64Array(light.length);
  const cutW = new Float64Array(light.length);
  const missedW = new Float64Array(light.length);
  const tooHot = new Uint8Array(light.length);
  for (let day = 0; day < daysOfYear; day++) {
    const month = monthOfDay[day]!;
    const [unshaded, airC] = [array.unshaded[month]!, climate.airC[month]!];
    for (let at = day * 24; at < day * 24 + 24; at++) {
      if (light[at] === 0) continue;
      const output = arrayOutput(onController, light[at]! * unshaded, airC);
      deliveredW[at] = output.deliveredW;
      cutW[at] = output.cutW;
      missedW[at] = output.missedW;
      if (output.isTooHot) tooHot[at] = 1;
    }
  }
  return { deliveredW, cutW, missedW, tooHot };
}
