import type { FuseFamily } from "../plan/sizes.ts";
import type { Citation, Confirmed } from "./citation.ts";

/**
 * Permitted opening times of fuses by family, at 23 °C. The standards' own tables were not seen. A gate that is `read` equals
 * makers' data sheets that claim the standard. If a maker's window is narrower than the recalled one, the wider is kept, recalled:
 * a maker may promise more than the standard asks.
 */
export const timeCurrentGates = [
  {
    families: ["ISO 8820-3 Type F"],
    ratingsA: [0, 30],
    source: bladeGates("Type F"),
    gates: [
      { percentOfRating: 110, minS: 360000, maxS: null, confirmed: "read" },
      { percentOfRating: 135, minS: 0.75, maxS: 600, confirmed: "read" },
      { percentOfRating: 200, minS: 0.15, maxS: 5, confirmed: "read" },
      { percentOfRating: 350, minS: 0.04, maxS: 0.5, confirmed: "memory" },
      { percentOfRating: 600, minS: 0.02, maxS: 0.1, confirmed: "memory" },
    ],
  },
  {
    families: ["ISO 8820-3 Type C"],
    ratingsA: [0, 30],
    source: bladeGates("Type C, up to 30 A"),
    gates: [
      { percentOfRating: 110, minS: 360000, maxS: null, confirmed: "memory" },
      { percentOfRating: 135, minS: 0.75, maxS: 600, confirmed: "memory" },
      { percentOfRating: 160, minS: 0.25, maxS: 50, confirmed: "read" },
      { percentOfRating: 200, minS: 0.15, maxS: 5, confirmed: "read" },
      { percentOfRating: 350, minS: 0.04, maxS: 0.5, confirmed: "memory" },
      { percentOfRating: 600, minS: 0.02, maxS: 0.1, confirmed: "memory" },
    ],
  },
  {
    families: ["ISO 8820-3 Type C"],
    ratingsA: [30, 40],
    source: bladeGates("Type C, 35 and 40 A"),
    gates: [
      { percentOfRating: 100, minS: 360000, maxS: null, confirmed: "read" },
      { percentOfRating: 135, minS: 0.75, maxS: 600, confirmed: "read" },
      { percentOfRating: 200, minS: 0.15, maxS: 5, confirmed: "read" },
      { percentOfRating: 350, minS: 0.04, maxS: 0.5, confirmed: "memory" },
      { percentOfRating: 600, minS: null, maxS: 0.15, confirmed: "read" },
    ],
  },
  {
    families: ["ISO 8820-3 Type E"],
    ratingsA: [0, 100],
    source: bladeGates("Type E"),
    gates: [
      { percentOfRating: 100, minS: 360000, maxS: null, confirmed: "read" },
      { percentOfRating: 135, minS: 60, maxS: 1800, confirmed: "read" },
      { percentOfRating: 200, minS: 2, maxS: 60, confirmed: "memory" },
      { percentOfRating: 350, minS: 0.2, maxS: 7, confirmed: "read" },
      { percentOfRating: 600, minS: 0.04, maxS: 1, confirmed: "read" },
    ],
  },
  {
    families: ["ISO 8820-5 Type SF 30", "ISO 8820-5 Type SF 51"],
    ratingsA: [0, 500],
    source: recalledGates(
      "ISO 8820-5 (Road vehicles, strip fuse-links)",
      "Types SF 30 and SF 51, operating time ratings",
      "2015",
    ),
    gates: [
      { percentOfRating: 75, minS: 360000, maxS: null, confirmed: "memory" },
      { percentOfRating: 135, minS: 120, maxS: 1800, confirmed: "memory" },
      { percentOfRating: 200, minS: 1, maxS: 15, confirmed: "memory" },
      { percentOfRating: 350, minS: 0.3, maxS: 5, confirmed: "memory" },
      { percentOfRating: 600, minS: 0.1, maxS: 1, confirmed: "memory" },
    ],
  },
  {
    families: ["UL 248-15 Class T"],
    ratingsA: [0, 60],
    source: recalledGates("UL 248-15 (Low-voltage fuses, Class T)", "up to 60 A"),
    gates: [
      { percentOfRating: 100, minS: null, maxS: null, confirmed: "memory" },
      { percentOfRating: 135, minS: null, maxS: 3600, confirmed: "memory" },
    ],
  },
  {
    families: ["UL 248-15 Class T"],
    ratingsA: [60, 600],
    source: recalledGates("UL 248-15 (Low-voltage fuses, Class T)", "61 to 600 A"),
    gates: [
      { percentOfRating: 100, minS: null, maxS: null, confirmed: "memory" },
      { percentOfRating: 135, minS: null, maxS: 7200, confirmed: "memory" },
    ],
  },
] as const satisfies readonly TimeCurrentGates[];

export interface TimeCurrentGates {
  readonly families: readonly FuseFamily[];
  /** Above the first and up to the second, A. */
  readonly ratingsA: readonly [number, number];
  /** Of the table; each gate says how far it is confirmed itself. */
  readonly source: Citation;
  /** In ascending order of current. */
  readonly gates: readonly Gate[];
}

export interface Gate {
  readonly percentOfRating: number;
  /** It must not open sooner, s; null: no minimum is stated. */
  readonly minS: number | null;
  /** It must have opened by then, s; null: it need not open at all. */
  readonly maxS: number | null;
  readonly confirmed: Confirmed;
}

function bladeGates(type: string): Citation {
  return {
    ...recalledGates(
      "ISO 8820-3 (Road vehicles, blade fuse-links)",
      `${type}, operating time ratings`,
      "2015",
    ),
    note: "Some of its gates were read in makers' data sheets that claim the standard; a message says so if its own was not.",
  };
}

function recalledGates(document: string, section: string, edition?: string): Citation {
  return {
    document,
    section,
    ...(edition === undefined ? {} : { edition }),
    authority: "standard",
    confirmed: "memory",
  };
}
