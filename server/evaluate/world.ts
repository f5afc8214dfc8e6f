import { readFileSync } from "node:fs";
import { type World, worldOf } from "../../library/analysis/energy/energy-of-plan.ts";
import type { WorldTable } from "../../library/standards/world.ts";

/**
 * The table of the world, for plans with a period: read and decoded when the first one is checked, and then kept. The file lies beside
 * the bundles, and in none of them.
 */
export function worldOnDemand(): () => World {
  let world: World | undefined;
  return () => {
    world ??= worldOf(
      JSON.parse(readFileSync(new URL("../dist/world.json", import.meta.url), "utf8")) as WorldTable,
    );
    return world;
  };
}
