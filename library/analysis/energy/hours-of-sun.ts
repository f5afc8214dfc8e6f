import { workedOutOnce } from "../../model/worked-out-once.ts";
import {
  diffuseShareOfDay,
  groundReflectance,
  leastCosZenith,
  shareOfHour,
} from "../../standards/solar-geometry.ts";
import { daysOfMonths, daysOfYear, firstDayOfMonth } from "./calendar.ts";
import { clearnessOfMonth } from "./clearness-of-days.ts";
import type { Climate } from "./climate.ts";
import {
  cosIncidence,
  cosOfSunset,
  cosZenith,
  hourAngleAt,
  isBehindHorizon,
  outsideOfDay,
  outsideOfMonths,
  type Plane,
  sunOfDays,
  sunsetAngle,
} from "./sun-position.ts";

/** The sun of a year at a place, on a horizontal plane, by hour of the year (day × 24 + hour of solar time). W/m². */
export interface SunOfYear {
  readonly globalW: Float64Array;
  readonly diffuseW: Float64Array;
  /** By day of the year: the hour angle of sunset, radians; 0 in the polar night, π in the polar day. */
  readonly sunset: readonly number[];
}

/** Diffuse share of a day's irradiation, by its clearness. DB5 eq. 2.11.1 (Erbs). */
export function diffuseShare(clearness: number, sunset: number): number {
  const { winterUpToDeg, winter, otherwise } = diffuseShareOfDay;
  const { belowK, terms, above } = sunset <= (winterUpToDeg * Math.PI) / 180 ? winter : otherwise;
  if (clearness >= belowK) return above;
  return terms.reduce<number>((sum, term, power) => sum + term * clearness ** power, 0);
}

/**
 * Shares of a day's irradiation in an hour, of all light (Collares-Pereira and Rabl) and of diffuse light (Liu and Jordan), before they
 * are divided by their sums; 0 while the sun is down at the middle of the hour. Angles in radians.
 *
 * @param cosSunset Cosine of the sunset angle; below -1 on a polar day, when the sun only sinks and does not set.
 */
export function sharesOfHour(
  sunset: number,
  hourAngle: number,
  cosSunset = Math.cos(sunset),
): { readonly global: number; readonly diffuse: number } {
  const height = Math.cos(hourAngle) - cosSunset;
  if (height <= 0 || sunset === 0) return { global: 0, diffuse: 0 };
  const diffuse = ((Math.PI / 24) * height) / (Math.sin(sunset) - sunset * cosSunset);
  const shifted = Math.sin(sunset - Math.PI / 3);
  const a = shareOfHour.a[0] + shareOfHour.a[1] * shifted;
  const b = shareOfHour.b[0] + shareOfHour.b[1] * shifted;
  return { global: (a + b * Math.cos(hourAngle)) * diffuse, diffuse };
}

/**
 * Single days from the monthly means of a place, and their hours. The irradiation of each month is exactly that of its mean clearness,
 * except where the sun is up for less than an hour: such days have none.
 */
export const sunOfYear = workedOutOnce((climate: Climate): SunOfYear => {
  const { latitudeDeg } = climate;
  const globalW = new Float64Array(daysOfYear * 24);
  const diffuseW = new Float64Array(daysOfYear * 24);
  const outside = outsideOfMonths(latitudeDeg);
  const sunsetOfDays = sunOfDays.map(({ declination }) => sunsetAngle(latitudeDeg, declination));
  daysOfMonths.forEach((days, month) => {
    const mean = meanClearness(climate, month, outside[month]!);
    const clearness = clearnessOfMonth(mean, days);
    const outsideWh = clearness.map(
      (_, day) => 1_000 * outsideOfDay(latitudeDeg, firstDayOfMonth[month]! + day),
    );
    const asStated = mean * 1_000 * outside[month]! * days;
    const ofDays = clearness.reduce((sum, ofDay, day) => sum + ofDay * outsideWh[day]!, 0);
    clearness.forEach((ofDay, index) => {
      const day = firstDayOfMonth[month]! + index;
      const wh = ofDays > 0 ? (ofDay * outsideWh[index]! * asStated) / ofDays : 0;
      const { declination } = sunOfDays[day]!;
      const sunset = sunsetOfDays[day]!;
      const cosSunset = cosOfSunset(latitudeDeg, declination);
      const shares = Array.from({ length: 24 }, (_, hour) =>
        sharesOfHour(sunset, hourAngleAt(hour), cosSunset),
      );
      const globalSum = shares.reduce((sum, { global }) => sum + global, 0);
      const diffuseSum = shares.reduce((sum, { diffuse }) => sum + diffuse, 0);
      if (globalSum <= 0) return;
      const diffuseWh = wh * diffuseShare(ofDay, sunset);
      shares.forEach(({ global, diffuse }, hour) => {
        const all = (wh * global) / globalSum;
        globalW[day * 24 + hour] = all;
        diffuseW[day * 24 + hour] = Math.min(all, (diffuseWh * diffuse) / diffuseSum);
      });
    });
  });
  return { globalW, diffuseW, sunset: sunsetOfDays };
});

/** As the table of the world has it, or from the plan's own irradiation, kWh/m² a day. Never above 1. */
function meanClearness({ clearness, irradiation }: Climate, month: number, outside: number): number {
  const stated = irradiation?.[month];
  return Math.min(1, stated === undefined ? clearness[month]! : stated / Math.max(outside, leastOutside));
}

/** Below it a month has no sun to speak of, kWh/m² a day. */
const leastOutside = 0.01;

/**
 * Irradiance of a plane by hour of the year, W/m²: beam, sky (Hay and Davies) and ground. The conversion of the beam holds the cosine of
 * the sun's angle from the zenith at {@link leastCosZenith} or more.
 */
export function irradianceOn(climate: Climate, plane: Plane): Float64Array {
  const { globalW, diffuseW } = sunOfYear(climate);
  const { horizonDeg } = plane;
  if (plane.tiltDeg === 0 && !horizonDeg) return globalW;
  const made = new Float64Array(globalW.length);
  const tilt = Math.cos((plane.tiltDeg * Math.PI) / 180);
  for (let at = 0; at < globalW.length; at++) {
    const global = globalW[at]!;
    if (global === 0) continue;
    const { declination, outsideW } = sunOfDays[Math.floor(at / 24)]!;
    const hourAngle = hourAngleAt(at % 24);
    const height = Math.max(leastCosZenith, cosZenith(climate.latitudeDeg, declination, hourAngle));
    const facing = Math.max(0, cosIncidence(climate.latitudeDeg, declination, hourAngle, plane));
    const diffuse = diffuseW[at]!;
    const toPlane = facing / height;
    const aroundSun = Math.min(1, (global - diffuse) / (outsideW * height));
    if (horizonDeg && isBehindHorizon(climate.latitudeDeg, declination, hourAngle, horizonDeg)) {
      const sky = skyDiffuse(diffuse, { aroundSun, toPlane: 0, tilt });
      made[at] = sky + (diffuse * groundReflectance.share * (1 - tilt)) / 2;
      continue;
    }
    if (plane.tiltDeg === 0) {
      made[at] = global;
      continue;
    }
    made[at] =
      (global - diffuse) * toPlane +
      skyDiffuse(diffuse, { aroundSun, toPlane, tilt }) +
      (global * groundReflectance.share * (1 - tilt)) / 2;
  }
  return made;
}

/** Hay and Davies: part of the diffuse light comes from around the sun, the rest evenly from the sky. `tilt` is the cosine. */
export function skyDiffuse(
  diffuse: number,
  {
    aroundSun,
    toPlane,
    tilt,
  }: { readonly aroundSun: number; readonly toPlane: number; readonly tilt: number },
): number {
  return diffuse * (aroundSun * toPlane + ((1 - aroundSun) * (1 + tilt)) / 2);
}
