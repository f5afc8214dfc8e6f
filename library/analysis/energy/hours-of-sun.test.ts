import { describe, expect, test } from "vitest";
import { irradianceOn, sunOfYear } from "./hours-of-sun.ts";
import { isBehindHorizon } from "./sun-position.ts";
import { testWorld } from "./world.tester.ts";

const climate = testWorld().climate(45, 5);
const flat = { tiltDeg: 0, azimuthDeg: 180 };
const sum = (hourly: Float64Array) => hourly.reduce((total, watts) => total + watts, 0);
const all = (degrees: number) => Array<number>(8).fill(degrees);

describe("a horizon", () => {
  test("at noon on an equinox the sun is as high as the complement of the latitude, in the south or in the north", () => {
    // North, north-east, east, south-east, south, south-west, west, north-west.
    const south = (degrees: number) => [0, 0, 0, 0, degrees, 0, 0, 0];
    expect(isBehindHorizon(45, 0, 0, south(44.9))).toBe(false);
    expect(isBehindHorizon(45, 0, 0, south(45.1))).toBe(true);
    expect(isBehindHorizon(-45, 0, 0, south(89))).toBe(false);
    expect(isBehindHorizon(-45, 0, 0, [45.1, 0, 0, 0, 0, 0, 0, 0])).toBe(true);
  });

  test("at the equator on an equinox the sun rises in the east and sets in the west", () => {
    const east = [0, 0, 50, 0, 0, 0, 0, 0];
    const west = [0, 0, 0, 0, 0, 0, 50, 0];
    const threeHours = Math.PI / 4;
    expect([east, west].map((horizon) => isBehindHorizon(0, 0, -threeHours, horizon))).toEqual([true, false]);
    expect([east, west].map((horizon) => isBehindHorizon(0, 0, threeHours, horizon))).toEqual([false, true]);
  });

  test("takes the direct light, and leaves part of that of the sky", () => {
    const open = irradianceOn(climate, flat);
    const walled = irradianceOn(climate, { ...flat, horizonDeg: all(90) });
    const { diffuseW } = sunOfYear(climate);
    open.forEach((watts, at) => {
      expect(walled[at]).toBeLessThanOrEqual(watts + 1e-9);
      expect(walled[at]).toBeLessThanOrEqual(diffuseW[at]! + 1e-9);
    });
    expect(sum(walled)).toBeGreaterThan(0);
    const heights = [0, 10, 20, 40, 90].map((degrees) =>
      sum(irradianceOn(climate, { tiltDeg: 30, azimuthDeg: 180, horizonDeg: all(degrees) })),
    );
    expect(heights).toEqual([...heights].sort((one, other) => other - one));
    expect(sum(irradianceOn(climate, { tiltDeg: 30, azimuthDeg: 180, horizonDeg: all(0) }))).toBeCloseTo(
      sum(irradianceOn(climate, { tiltDeg: 30, azimuthDeg: 180 })),
      6,
    );
  });
});
