import { readFileSync } from "node:fs";
import type { WorldTable } from "../../standards/world.ts";
import { type World, worldOf } from "./energy-of-plan.ts";

let world: World | undefined;

/** The table of the world, read once in each process of tests. */
export function testWorld(): World {
  world ??= worldOf(
    JSON.parse(readFileSync(new URL("../../standards/world.json", import.meta.url), "utf8")) as WorldTable,
  );
  return world;
}
