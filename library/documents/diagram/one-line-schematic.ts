import type { Judgement } from "../../judge.ts";
import type { Schematic } from "./schematic.ts";
import type { WiringSchematic } from "./wiring-schematic.ts";

/** The whole system at a glance. */
export function oneLineSchematic(wiring: WiringSchematic, _plan: Judgement): Schematic {
  return wiring;
}
