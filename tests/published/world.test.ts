import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { climateTable } from "../../library/analysis/energy/climate.ts";
import { sunOfYear } from "../../library/analysis/energy/hours-of-sun.ts";
import { outsideOfMonths } from "../../library/analysis/energy/sun-position.ts";
import { dailyMeans } from "../../library/analysis/energy/world.tester.ts";
import type { WorldTable } from "../../library/standards/world.ts";
import { published } from "./published-data.ts";

/*
 * Satellite-based surface radiation (NASA GISS) and air temperature (NCEP) of the normal year of the Common Ocean-ice Reference
 * Experiments (Large and Yeager, NCAR Technical Note TN-460, 2004), by way of MITgcm; put on a grid of 2.5°. The places against which
 * it is held are typical years, a measured manual and satellite climatologies; each names itself in the data.
 */
interface Check {
  readonly place: string;
  readonly lat_deg: number;
  readonly lon_deg: number;
}
const data = published<{
  clearness: {
    bytes: number;
    sha256: string;
    checks: readonly (Check & {
      H0_kWh_m2_day: number[];
      KT: number[];
      GHI_kWh_m2_day: number[];
    })[];
  };
  temperature: { bytes: number; sha256: string; checks: readonly (Check & { T_degC: number[] })[] };
  stations: { rows: readonly (Check & { reference_kWh_m2_day: number[]; annual_ratio: number })[] };
}>("world.json");

const world = JSON.parse(
  readFileSync(new URL("../../library/standards/world.json", import.meta.url), "utf8"),
) as WorldTable;
const climateOf = climateTable(world);

test.each(["clearness", "temperature"] as const)("%s: 124,416 values, by their checksum", (grid) => {
  const bytes = Buffer.concat(world[grid].map((line) => Buffer.from(line, "base64")));
  expect(bytes.length).toBe(124_416);
  expect(bytes.length).toBe(data[grid].bytes);
  expect(createHash("sha256").update(bytes).digest("hex")).toBe(data[grid].sha256);
});

test("96 values of irradiation at eight places, within 0.006 kWh/m² a day", () => {
  const { checks } = data.clearness;
  expect(checks.flatMap(({ GHI_kWh_m2_day }) => GHI_kWh_m2_day)).toHaveLength(96);
  for (const { place, lat_deg, lon_deg, KT, H0_kWh_m2_day, GHI_kWh_m2_day } of checks) {
    const climate = climateOf(lat_deg, lon_deg);
    const outside = outsideOfMonths(lat_deg);
    const inHours = dailyMeans(sunOfYear(climate).globalW);
    GHI_kWh_m2_day.forEach((printed, month) => {
      const where = `${place}, month ${month + 1}`;
      expect(Math.abs(outside[month]! - H0_kWh_m2_day[month]!), where).toBeLessThan(0.001);
      // KT of a month without sun is filled in from its neighbours, and multiplied by nearly nothing.
      if (printed > 0.05)
        expect(Math.abs(climate.clearness[month]! - KT[month]!), where).toBeLessThan(0.0001);
      expect(Math.abs(climate.clearness[month]! * outside[month]! - printed), where).toBeLessThan(0.006);
      expect(Math.abs(inHours[month]! - printed), where).toBeLessThan(0.006);
    });
  }
});

test("air temperature at eight places", () => {
  const { checks } = data.temperature;
  expect(checks).toHaveLength(8);
  for (const { place, lat_deg, lon_deg, T_degC } of checks) {
    climateOf(lat_deg, lon_deg).airC.forEach((celsius, month) => {
      expect(Math.abs(celsius - T_degC[month]!), `${place}, month ${month + 1}`).toBeLessThan(0.06);
    });
  }
});

describe("the months of independent places within 20 %, their year within 10 %", () => {
  /** Months and years outside, as measured. Cloudy coasts, monsoon, valleys; the polar station beyond 70°. */
  const outside: Readonly<Record<string, { readonly months: number; readonly year?: number }>> = {
    "Sand Point, Alaska, USA": { months: 6, year: 1.17 },
    "Piedmont, Italy (45.000 N 8.": { months: 2 },
    "Hyakuri (Tokyo area), Japan": { months: 1 },
    "Shanghai Hongqiao, China": { months: 2 },
    "Halley, Antarctica (southern": { months: 0, year: 0.87 },
    "Singapore-Changi_1990_": { months: 0, year: 1.12 },
  };

  test.each(data.stations.rows)(
    "$place",
    ({ place, lat_deg, lon_deg, reference_kWh_m2_day, annual_ratio }) => {
      const found = dailyMeans(sunOfYear(climateOf(lat_deg, lon_deg)).globalW);
      const ratios = found.flatMap((value, month) => {
        const reference = reference_kWh_m2_day[month]!;
        // Below that a month has hardly any sun, and a ratio means nothing.
        return reference > 0.2 ? [value / reference] : [];
      });
      const far = ratios.filter((ratio) => Math.abs(ratio - 1) > 0.205);
      expect(far).toHaveLength(outside[place]?.months ?? 0);
      const known = outside[place]?.year;
      if (known === undefined) expect(Math.abs(annual_ratio - 1)).toBeLessThanOrEqual(0.101);
      else expect(annual_ratio).toBe(known);
      const sum = (list: readonly number[]) => list.reduce((total, value) => total + value, 0);
      expect(Math.abs(sum(found) / sum(reference_kWh_m2_day) - annual_ratio)).toBeLessThan(0.02);
    },
  );
});

test("the places are those that the script cuts from the package", async () => {
  const script = new URL("../../library/standards/write-world.mjs", import.meta.url);
  const { placesByCountry } = (await import(script.href)) as { placesByCountry(): WorldTable["places"] };
  const cut = placesByCountry();
  expect(Object.values(cut).flat()).toHaveLength(24_323);
  expect(world.places).toEqual(cut);
});
