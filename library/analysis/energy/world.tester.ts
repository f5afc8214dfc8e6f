import { readFileSync } from "node:fs";
import type { WorldTable } from "../../standards/world.ts";
import { daysOfYear, meansByMonth } from "./calendar.ts";
import { type World, worldOf } from "./energy-of-plan.ts";

let world: World | undefined;

/** The table of the world, read once in each process of tests. */
export function testWorld(): World {
  world ??= worldOf(
    JSON.parse(readFileSync(new URL("../../standards/world.json", import.meta.url), "utf8")) as WorldTable,
  );
  return world;
}

/** The means of the months of a whole year, in kWh a day for a series in W. */
export function dailyMeans(hourly: Float64Array): readonly number[] {
  return meansByMonth(hourly, Array<boolean>(daysOfYear).fill(true)).map((wh) => wh / 1_000);
}
