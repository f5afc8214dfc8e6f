import { Body, Equator, Horizon, HourAngle, Observer, SearchAltitude } from "astronomy-engine";
import { expect, test } from "vitest";
import { cosZenith, sunOfDays, sunsetAngle } from "../../library/analysis/energy/sun-position.ts";
import { published } from "./published-data.ts";

/*
 * The sun of the energy balance against an ephemeris: astronomy-engine 2.1.19 (MIT), itself held here to the worked example of NREL's Solar
 * Position Algorithm. Our series of Spencer (1971) takes one declination a day, for a year of 365 days: near the equinoxes the sun's changes
 * by 0.4° a day. In 2023, while the sun is up, its greatest error is known to be
 * 0.45° at 39.7° N; half a day later, far in the west, it is 0.56° for a few days in September. In the other years of the leap cycle its
 * days are up to three quarters of a day early or late, and 29 February has none of its own.
 */
const toleranceDeg = 0.5;
const toleranceOfWestDeg = 0.6;
const toleranceOfOtherYearsDeg = 1;
const radians = Math.PI / 180;
const dayMs = 86_400_000;

interface Moment {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly utc: Date;
}

/** Times and places over the whole earth, without end; the same ones each time. */
function* moments(firstYear: number, years: number): Generator<Moment> {
  let state = 20_260_101;
  const next = () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
  const span = Date.UTC(firstYear + years) - Date.UTC(firstYear);
  for (;;)
    yield {
      latitudeDeg: Math.asin(2 * next() - 1) / radians,
      longitudeDeg: 360 * next() - 180,
      utc: new Date(Date.UTC(firstYear) + Math.floor(next() * span)),
    };
}

/** The day of the year, from 0, by the sun of the place; 29 February reads as the 28th. */
function dayOf(utc: Date, longitudeDeg: number): number {
  const local = new Date(utc.getTime() + (longitudeDeg / 360) * dayMs);
  const [month, day] = [local.getUTCMonth(), local.getUTCDate()];
  const inCommonYear = Date.UTC(2021, month, month === 1 ? Math.min(day, 28) : day);
  return Math.round((inCommonYear - Date.UTC(2021, 0, 1)) / dayMs);
}

function sunAt({ latitudeDeg, longitudeDeg, utc }: Moment) {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const { ra, dec } = Equator(Body.Sun, utc, observer, true, true);
  const ours = sunOfDays[dayOf(utc, longitudeDeg)]!.declination;
  const hourAngle = HourAngle(Body.Sun, utc, observer) * 15 * radians;
  const heightDeg = Horizon(utc, observer, ra, dec).altitude;
  return {
    ...{ latitudeDeg, observer, utc, heightDeg, ours },
    /** Of the sun itself: solar time less 12, in which the plan states its hours. */
    hourAngle,
    declinationDeg: dec,
    offDeg: Math.abs(ours / radians - dec),
    heightOffDeg: Math.abs(Math.asin(cosZenith(latitudeDeg, ours, hourAngle)) / radians - heightDeg),
  };
}

function drawn(count: number, from: Generator<Moment>, isWanted: (sun: ReturnType<typeof sunAt>) => boolean) {
  const found: ReturnType<typeof sunAt>[] = [];
  while (found.length < count) {
    const sun = sunAt(from.next().value as Moment);
    if (isWanted(sun)) found.push(sun);
  }
  return found;
}

test("the ephemeris: the worked example of NREL/TP-560-34302 to a thousandth of a degree", () => {
  const { input, expected } = published<{ cases: readonly SpaCase[] }>("solar-geometry.json").cases.find(
    ({ id }) => id === "SPA-1",
  )!;
  const utc = new Date(`${input.local.replace(" ", "T")}-07:00`);
  const observer = new Observer(input.lat_deg, input.lon_deg, input.elevation_m);
  const { ra, dec } = Equator(Body.Sun, utc, observer, true, true);
  expect(input.utc_offset_h).toBe(-7);
  expect(Math.abs(dec - expected.topocentric_declination_deg)).toBeLessThan(0.001);
  expect(
    Math.abs(Horizon(utc, observer, ra, dec).altitude - expected.elevation_unrefracted_deg),
  ).toBeLessThan(0.001);
  expect(Math.abs(HourAngle(Body.Sun, utc, observer) * 15 - expected.hour_angle_deg)).toBeLessThan(0.01);
});

interface SpaCase {
  readonly id: string;
  readonly input: {
    readonly local: string;
    readonly utc_offset_h: number;
    readonly lat_deg: number;
    readonly lon_deg: number;
    readonly elevation_m: number;
  };
  readonly expected: Readonly<
    Record<"topocentric_declination_deg" | "elevation_unrefracted_deg" | "hour_angle_deg", number>
  >;
}

const inDaylight = drawn(1_000, moments(2023, 1), ({ heightDeg }) => heightDeg > 0);

test("declination, and height by the hour of the sun, at 1,000 times and places in daylight", () => {
  for (const of of ["offDeg", "heightOffDeg"] as const) {
    const off = inDaylight.map((sun) => sun[of]);
    expect(off.filter((degrees) => degrees < toleranceDeg).length, of).toBeGreaterThanOrEqual(970);
    expect(Math.max(...off), of).toBeLessThan(toleranceOfWestDeg);
    // It can fail: the series are not the same.
    expect(Math.max(...off), of).toBeGreaterThan(0.3);
  }
});

test("the same in four years, a leap year among them, by day and night", () => {
  for (const { offDeg, heightOffDeg } of drawn(1_000, moments(2021, 4), () => true)) {
    expect(offDeg).toBeLessThan(toleranceOfOtherYearsDeg);
    expect(heightOffDeg).toBeLessThan(toleranceOfOtherYearsDeg);
  }
});

test("hours of daylight, up to those that 0.5° of declination make", () => {
  const days = drawn(300, moments(2023, 1), () => true);
  let [polar, compared] = [0, 0];
  for (const { latitudeDeg, observer, utc, hourAngle, declinationDeg, ours } of days) {
    // The noon of that day: its hour angle is from 0 to 360°, from noon to noon.
    const sinceNoon = hourAngle / (2 * Math.PI);
    const noon = new Date(utc.getTime() + (sinceNoon > 0.5 ? 1 - sinceNoon : -sinceNoon) * dayMs);
    const rise = SearchAltitude(Body.Sun, observer, 1, noon, -1, 0);
    const set = SearchAltitude(Body.Sun, observer, -1, noon, 1, 0);
    const isUp = cosZenith(latitudeDeg, declinationDeg * radians, 0) > 0;
    const hours = (declination: number) => (sunsetAngle(latitudeDeg, declination) / radians / 15) * 2;
    const bounds = [ours - toleranceDeg * radians, ours + toleranceDeg * radians].map(hours);
    const [least, most] = [Math.min(...bounds), Math.max(...bounds)];
    const span = rise && set ? (set.date.getTime() - rise.date.getTime()) / 3_600_000 : undefined;
    if (span === undefined || span > 24) {
      polar++;
      expect(isUp ? most : least).toBe(isUp ? 24 : 0);
      continue;
    }
    compared++;
    // The solar day is up to half a minute longer or shorter than 24 hours.
    expect(span).toBeGreaterThan(least - 0.01);
    expect(span).toBeLessThan(most + 0.01);
  }
  expect(compared).toBeGreaterThan(200);
  expect(polar).toBeGreaterThan(10);
});
