import { describe, expect, test } from "vitest";
import { clearnessOfMonth } from "../../library/analysis/energy/clearness-of-days.ts";
import { diffuseShare, sharesOfHour, skyDiffuse } from "../../library/analysis/energy/hours-of-sun.ts";
import {
  cosIncidence,
  cosZenith,
  outsideOfDay,
  outsideOfMonths,
  sunOfDays,
  sunsetAngle,
} from "../../library/analysis/energy/sun-position.ts";
import { groundReflectance, solarConstant } from "../../library/standards/solar-geometry.ts";
import { published } from "./published-data.ts";

/*
 * Duffie, Beckman, Blair, Solar Engineering of Thermal Processes, Photovoltaics and Wind, 5th edition (2020), examples by number;
 * Collares-Pereira and Rabl, Solar Energy 22 (1979) 155; Liu and Jordan, Solar Energy 4 (1960) 1; Bendt and others, Solar Energy 27
 * (1981) 1; Knight and others, Solar Energy 46 (1991) 109; test values of pvlib for Hay and Davies (1980), isotropic sky and ground.
 * Each case names its own source in the data.
 */
// biome-ignore lint/suspicious/noExplicitAny: each case has figures of its own.
type Case = { readonly id: string; readonly input: any; readonly expected: any };
const { cases } = published<{ cases: readonly Case[] }>("solar-geometry.json");
const caseOf = (id: string) => cases.find((one) => one.id === id)!;

const radians = Math.PI / 180;
const firstOf = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
const dayOf = ({ month, day, n }: { month: number; day: number; n?: number }) =>
  n === undefined ? firstOf[month - 1]! + day - 1 : n - 1;
const hourAngle = (solarTime: number) => (solarTime - 12) * 15 * radians;
const cooper = (day: number) => 23.45 * Math.sin(((284 + day + 1) / 365) * 2 * Math.PI) * radians;
/** The book's irradiation above the atmosphere: its constant is 1367 W/m², 3.6 MJ are a kWh. */
const inBook = (kWh: number) => (kWh * 3.6 * 1367) / solarConstant.wattsPerM2;

test("SER-1: declination and distance by the series of Spencer", () => {
  const { input, expected } = caseOf("SER-1");
  input.n.forEach((n: number, index: number) => {
    const { declination, outsideW } = sunOfDays[n - 1]!;
    expect(declination / radians).toBeCloseTo(expected.delta_spencer_deg[index], 3);
    expect(outsideW / solarConstant.wattsPerM2).toBeCloseTo(expected.E0_spencer[index], 4);
  });
});

test("DB-1.6.1 and DB-1.8.1: angle of incidence, and its ratio to a horizontal plane", () => {
  const { input, expected } = caseOf("DB-1.6.1");
  const declination = cooper(dayOf(input));
  expect(declination / radians).toBeCloseTo(expected.declination_deg, 2);
  const plane = { tiltDeg: input.tilt_deg, azimuthDeg: 180 + input.azimuth_west_deg };
  const at = hourAngle(input.solar_time);
  const facing = cosIncidence(input.lat_deg, declination, at, plane);
  expect(Math.acos(facing) / radians).toBeCloseTo(expected.theta_deg, 1);
  expect(facing / cosZenith(input.lat_deg, declination, at)).toBeCloseTo(expected.Rb, 2);
});

test("DB-1.6.3: height of the sun and sunset", () => {
  const { input, expected } = caseOf("DB-1.6.3");
  const declination = cooper(dayOf(input));
  expect(sunsetAngle(input.lat_deg, declination) / radians).toBeCloseTo(expected.ws_deg, 2);
  const height = Math.asin(cosZenith(input.lat_deg, declination, hourAngle(input.solar_time)));
  expect(height / radians).toBeCloseTo(expected.elevation_deg, 1);
});

test("DB-1.8.2: ratio of the beam on a tilted plane", () => {
  const { input, expected } = caseOf("DB-1.8.2");
  const declination = cooper(dayOf(input));
  const at = hourAngle(input.solar_time);
  input.tilt_deg.forEach((tiltDeg: number, index: number) => {
    const facing = cosIncidence(input.lat_deg, declination, at, { tiltDeg, azimuthDeg: 180 });
    expect(facing / cosZenith(input.lat_deg, declination, at)).toBeCloseTo(expected.Rb[index], 2);
  });
});

test("DB-1.10.1: irradiation of a day above the atmosphere; the book's series differ by 0.5 %", () => {
  const { input, expected } = caseOf("DB-1.10.1");
  const ratio = inBook(outsideOfDay(input.lat_deg, dayOf(input))) / expected.H0_MJ_m2;
  expect(Math.abs(ratio - 1)).toBeLessThan(0.008);
});

test("H0-1: means of the months at five latitudes", () => {
  const { input, expected } = caseOf("H0-1");
  for (const latitude of input.lat_deg) {
    outsideOfMonths(latitude).forEach((mean, month) => {
      expect(mean, `${latitude}°, month ${month + 1}`).toBeCloseTo(expected[String(latitude)][month], 3);
    });
  }
});

test("DB-2.11.1: diffuse share of a day", () => {
  const { input, expected } = caseOf("DB-2.11.1");
  const sunset = sunsetAngle(input.lat_deg, cooper(dayOf(input)));
  expect(sunset / radians).toBeCloseTo(expected.ws_deg, 1);
  expect(diffuseShare(expected.K, sunset)).toBeCloseTo(expected.diffuse_fraction, 2);
});

test("RT-1, DB-2.13.1 and DB-2.13.2: shares of the hours", () => {
  const { input, expected } = caseOf("RT-1");
  input.ws_deg.forEach((sunset: number, row: number) => {
    input.hour_angle_deg.forEach((angle: number, column: number) => {
      const { global, diffuse } = sharesOfHour(sunset * radians, angle * radians);
      expect(global).toBeCloseTo(expected.rt[row][column], 4);
      expect(diffuse).toBeCloseTo(expected.rd[row][column], 4);
    });
  });
  const south = caseOf("DB-2.13.1");
  const sunset = sunsetAngle(south.input.lat_deg, cooper(dayOf(south.input)));
  expect(sunset / radians).toBeCloseTo(south.expected.ws_deg, 1);
  expect(sharesOfHour(sunset, hourAngle(8.5)).global).toBeCloseTo(south.expected.rt, 3);
  const august = caseOf("DB-2.13.2");
  const evening = sunsetAngle(august.input.lat_deg, cooper(dayOf(august.input)));
  expect(sharesOfHour(evening, hourAngle(13.5)).global).toBeCloseTo(august.expected.rt, 3);
});

test("DB-2.13.3: an hour's light, and its diffuse part from that of the day (DB-2.12.1)", () => {
  const { input, expected } = caseOf("DB-2.13.3");
  const day = caseOf("DB-2.12.1").expected;
  const sunset = sunsetAngle(input.lat_deg, cooper(dayOf(input)));
  const { global, diffuse } = sharesOfHour(sunset, hourAngle(10.5));
  expect(global * input.H_MJ_m2).toBeCloseTo(expected.I_MJ_m2, 1);
  expect(diffuse * day.Hd_MJ_m2).toBeCloseTo(expected.Id_MJ_m2, 1);
});

test("DB-2.15.1: beam, sky and ground of a steep plane in an hour, after Hay and Davies and with an even sky", () => {
  const { input, expected } = caseOf("DB-2.15.1");
  const { I0, Id, Ib, Rb } = expected;
  const tilt = Math.cos(input.tilt_deg * radians);
  const ground = (input.I_MJ_m2 * input.rho * (1 - tilt)) / 2;
  const total = (aroundSun: number) => Ib * Rb + skyDiffuse(Id, { aroundSun, toPlane: Rb, tilt }) + ground;
  expect(total(0)).toBeCloseTo(expected.isotropic.total, 2);
  expect(total(Ib / I0)).toBeCloseTo(expected.hay_davies_total, 2);
});

test("SPA-1: declination and height to half a degree, which is enough for months (NREL/TP-560-34302)", () => {
  const { input, expected } = caseOf("SPA-1");
  const { declination } = sunOfDays[dayOf({ month: 10, day: 17 })]!;
  expect(input.local).toContain("-10-17");
  expect(Math.abs(declination / radians - expected.topocentric_declination_deg)).toBeLessThan(0.5);
  const height = Math.asin(cosZenith(input.lat_deg, declination, expected.hour_angle_deg * radians));
  expect(Math.abs(height / radians - expected.elevation_unrefracted_deg)).toBeLessThan(0.5);
});

describe("light on a plane, test values of pvlib", () => {
  test.each(["HD-1", "HD-2"])("%s: sky after Hay and Davies", (id) => {
    const { input, expected } = caseOf(id);
    const [zenith, tilt] = [input.zenith * radians, input.tilt_deg * radians];
    const turned = (input.sun_azimuth - input.plane_azimuth) * radians;
    const facing = Math.max(
      0,
      Math.cos(zenith) * Math.cos(tilt) + Math.sin(zenith) * Math.sin(tilt) * Math.cos(turned),
    );
    const sky = skyDiffuse(input.dhi, {
      aroundSun: input.dni / input.dni_extra,
      toPlane: facing / Math.cos(zenith),
      tilt: Math.cos(tilt),
    });
    expect(sky).toBeCloseTo(expected.sky, 3);
  });

  test("ISO-1: an even sky", () => {
    const { input, expected } = caseOf("ISO-1");
    const tilt = Math.cos(input.tilt_deg * radians);
    expect(skyDiffuse(input.dhi, { aroundSun: 0, toPlane: 5, tilt })).toBeCloseTo(expected.sky, 9);
  });

  test("the ground reflects as grass", () => {
    expect(groundReflectance.share).toBe(0.2);
  });
});

test("DAYS-1: single days of a month, in order", () => {
  const { input, expected } = caseOf("DAYS-1");
  input.Km.forEach((mean: number, index: number) => {
    const days = clearnessOfMonth(mean, input.days[index]);
    expect(days).toHaveLength(input.days[index]);
    days.slice(0, 6).forEach((day, at) => {
      expect(day).toBeCloseTo(expected.first_six[index][at], 4);
    });
    expect(Math.min(...days)).toBeCloseTo(expected.min[index], 4);
    expect(Math.max(...days)).toBeCloseTo(expected.max[index], 4);
    expect(days.reduce((sum, day) => sum + day, 0) / days.length).toBeCloseTo(mean, 12);
  });
});
