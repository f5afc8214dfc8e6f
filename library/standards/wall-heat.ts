import type { WallMaterial } from "../plan/compartment.ts";
import type { Citation } from "./citation.ts";

/**
 * Heat through the walls of a closed space, still air outside: P = U · A · (Ti − Ta). Of two figures for a material the smaller is
 * taken, with which the space becomes warmer. No figure for wood was found.
 */
export const wallHeat = {
  source: {
    document: "Heat through enclosure walls, three unsigned calculation pages",
    section: "",
    authority: "common practice",
    confirmed: "read",
    note: "The pages disagree about aluminium and stainless steel: the smaller figure is taken.",
  } satisfies Citation,
  /** W/(m²·K), the least and the greatest that was found. */
  conductance: {
    "painted steel": [5.5, 5.5],
    "stainless steel": [3.6, 3.7],
    plastic: [3.5, 3.5],
    aluminium: [6.5, 12],
  } satisfies Partial<Record<WallMaterial, readonly [number, number]>>,
} as const;
