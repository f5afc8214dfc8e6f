import { expect, test } from "vitest";
import type { Days } from "./days-of-period.ts";
import { sunOfYear } from "./hours-of-sun.ts";
import { runningHours } from "./schedule.ts";

const daysAt = (latitudeDeg: number, irradiation?: readonly number[]): Days => ({
  isIn: Array<boolean>(365).fill(true),
  count: 365,
  stretches: [{ fromDay: 0, days: 365 }],
  firstDay: 0,
  clockAheadH: 0,
  sun: sunOfYear({
    ...{ latitudeDeg, longitudeDeg: 0, irradiation },
    ...{ clearness: Array<number>(12).fill(0.5), airC: Array<number>(12).fill(10) },
  }),
});

const hoursOn = (day: number, when: "dark" | "daylight", days: Days) =>
  runningHours({ when }, days)
    .shares.slice(day * 24, day * 24 + 24)
    .reduce((sum, share) => sum + share, 0);

/**
 * Duffie, Beckman, Blair, Solar Engineering of Thermal Processes (2020), example 1.6.3: sunset at 87.74° on 16 March at 43° N. The book's
 * declination is that of Cooper, -2.42°; that of Spencer is 0.4° more, which is 3 minutes of daylight.
 */
test("the light of a day ends at sunset, within an hour as well", () => {
  expect(hoursOn(74, "daylight", daysAt(43))).toBeGreaterThan((2 * 87.74) / 15);
  expect(hoursOn(74, "daylight", daysAt(43))).toBeLessThan((2 * 87.74) / 15 + 0.06);
});

test.each([-90, -66.6, -30, 0, 51, 78.2])(
  "at %s° dark and light are a day together, and no part is negative",
  (at) => {
    const days = daysAt(at);
    for (let day = 0; day < 365; day++) {
      const [dark, light] = [hoursOn(day, "dark", days), hoursOn(day, "daylight", days)];
      expect(dark).toBeGreaterThanOrEqual(0);
      expect(light).toBeGreaterThanOrEqual(0);
      expect(dark + light).toBeCloseTo(24, 9);
    }
  },
);

test("beyond the polar circle midwinter is dark and midsummer light", () => {
  const days = daysAt(78.2);
  expect([hoursOn(0, "daylight", days), hoursOn(0, "dark", days)]).toEqual([0, 24]);
  expect([hoursOn(171, "daylight", days), hoursOn(171, "dark", days)]).toEqual([24, 0]);
});

test("a month without sun on the modules still has its days", () => {
  const shaded = daysAt(43, Array<number>(12).fill(0));
  expect(hoursOn(74, "daylight", shaded)).toBeCloseTo(hoursOn(74, "daylight", daysAt(43)), 9);
});
