import { solarConstant, sunSeries } from "../../standards/solar-geometry.ts";
import { daysOfMonths, daysOfYear, firstDayOfMonth } from "./calendar.ts";

const radians = Math.PI / 180;

/** The sun on one day, in solar time. */
export interface SunOfDay {
  /** Radians. */
  readonly declination: number;
  /** Irradiance above the atmosphere, facing the sun, W/m². */
  readonly outsideW: number;
}

/** By day of the year, from 0. The same everywhere on earth. */
export const sunOfDays: readonly SunOfDay[] = Array.from({ length: daysOfYear }, (_, day) => {
  const b = (2 * Math.PI * day) / daysOfYear;
  return {
    declination: declinationAt(day),
    outsideW: solarConstant.wattsPerM2 * seriesAt(sunSeries.distance, b),
  };
});

/**
 * Declination of the sun, radians, by the series of Spencer.
 *
 * @param day From 0 at the beginning of the year in Greenwich, with a fraction; the balance takes whole days, as the published daily sums do.
 */
export function declinationAt(day: number): number {
  return seriesAt(sunSeries.declination, (2 * Math.PI * day) / daysOfYear);
}

/** c₀ + c₁ cos b + c₂ sin b + c₃ cos 2b + … */
function seriesAt([constant, ...terms]: readonly [number, ...number[]], b: number): number {
  return terms.reduce((sum, term, place) => {
    const angle = (Math.floor(place / 2) + 1) * b;
    return sum + term * (place % 2 === 0 ? Math.cos(angle) : Math.sin(angle));
  }, constant);
}

/** Hour angle of sunset, radians: 0 in the polar night, π in the polar day. */
export function sunsetAngle(latitudeDeg: number, declination: number): number {
  return Math.acos(Math.min(1, Math.max(-1, cosOfSunset(latitudeDeg, declination))));
}

/** Cosine of the sunset angle: above 1 in the polar night, below -1 in the polar day. */
export function cosOfSunset(latitudeDeg: number, declination: number): number {
  return -Math.tan(latitudeDeg * radians) * Math.tan(declination);
}

/** Daily irradiation of a horizontal plane above the atmosphere, kWh/m². DB5 eq. 1.10.3, with the series of Spencer. */
export function outsideOfDay(latitudeDeg: number, day: number): number {
  const { declination, outsideW } = sunOfDays[day]!;
  const latitude = latitudeDeg * radians;
  const sunset = sunsetAngle(latitudeDeg, declination);
  const share =
    Math.cos(latitude) * Math.cos(declination) * Math.sin(sunset) +
    sunset * Math.sin(latitude) * Math.sin(declination);
  return Math.max(0, (24 / Math.PI) * (outsideW / 1_000) * share);
}

/** The mean of {@link outsideOfDay} over the days of each month, kWh/m² a day. */
export function outsideOfMonths(latitudeDeg: number): readonly number[] {
  return daysOfMonths.map((days, month) => {
    let sum = 0;
    for (let day = 0; day < days; day++) sum += outsideOfDay(latitudeDeg, firstDayOfMonth[month]! + day);
    return sum / days;
  });
}

/** Cosine of the angle between the sun and the zenith; negative below the horizon. */
export function cosZenith(latitudeDeg: number, declination: number, hourAngle: number): number {
  const latitude = latitudeDeg * radians;
  return (
    Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle)
  );
}

/** A plane: its tilt, and the compass direction that it faces, 0 for north, clockwise. Degrees. */
export interface Plane {
  readonly tiltDeg: number;
  readonly azimuthDeg: number;
  /** Height of the horizon in eight directions, from north clockwise; undefined: flat. */
  readonly horizonDeg?: readonly number[] | undefined;
}

/** Whether the sun is behind the horizon: straight lines between its eight heights. */
export function isBehindHorizon(
  latitudeDeg: number,
  declination: number,
  hourAngle: number,
  horizonDeg: readonly number[],
): boolean {
  const latitude = latitudeDeg * radians;
  const heightDeg =
    Math.asin(Math.min(1, Math.max(-1, cosZenith(latitudeDeg, declination, hourAngle)))) / radians;
  // From the south, positive in the west; then by the compass.
  const fromSouth = Math.atan2(
    Math.cos(declination) * Math.sin(hourAngle),
    Math.cos(declination) * Math.cos(hourAngle) * Math.sin(latitude) -
      Math.sin(declination) * Math.cos(latitude),
  );
  const sector = (((fromSouth / radians + 180) % 360) / 360) * horizonDeg.length;
  const [below, share] = [Math.floor(sector), sector % 1];
  const at = (index: number) => horizonDeg[index % horizonDeg.length]!;
  return heightDeg < at(below) * (1 - share) + at(below + 1) * share;
}

/** Cosine of the angle of incidence on a plane. DB5 eq. 1.6.2, whose azimuth is 0 in the south and positive in the west. */
export function cosIncidence(
  latitudeDeg: number,
  declination: number,
  hourAngle: number,
  { tiltDeg, azimuthDeg }: Plane,
): number {
  const p = latitudeDeg * radians;
  const b = tiltDeg * radians;
  const g = (azimuthDeg - 180) * radians;
  const [sinD, cosD] = [Math.sin(declination), Math.cos(declination)];
  return (
    sinD * Math.sin(p) * Math.cos(b) -
    sinD * Math.cos(p) * Math.sin(b) * Math.cos(g) +
    cosD * Math.cos(p) * Math.cos(b) * Math.cos(hourAngle) +
    cosD * Math.sin(p) * Math.sin(b) * Math.cos(g) * Math.cos(hourAngle) +
    cosD * Math.sin(b) * Math.sin(g) * Math.sin(hourAngle)
  );
}

/** Hour angle at the middle of an hour of solar time, 0 to 23, radians; positive in the afternoon. */
export function hourAngleAt(hour: number): number {
  return (hour + 0.5 - 12) * 15 * radians;
}
