import type { FuseFamily } from "../plan/sizes.ts";
import type { Citation } from "./citation.ts";

/** Permitted opening times of fuses by family, at 23 °C. All figures are recalled, none seen: unconfirmed. */
export const timeCurrentGates = [
  {
    families: ["ISO 8820-3 Type C", "ISO 8820-3 Type F"],
    ratingsA: [0, 40],
    source: gatesOf(
      "ISO 8820-3 (Road vehicles, blade fuse-links)",
      "Types C and F, operating time ratings",
      "2015",
    ),
    gates: [
      { percentOfRating: 110, minS: 360000, maxS: null },
      { percentOfRating: 135, minS: 0.75, maxS: 600 },
      { percentOfRating: 160, minS: 0.25, maxS: 50 },
      { percentOfRating: 200, minS: 0.15, maxS: 5 },
      { percentOfRating: 350, minS: 0.04, maxS: 0.5 },
      { percentOfRating: 600, minS: 0.02, maxS: 0.1 },
    ],
  },
  {
    families: ["ISO 8820-3 Type E"],
    ratingsA: [0, 100],
    source: gatesOf("ISO 8820-3 (Road vehicles, blade fuse-links)", "Type E, operating time ratings", "2015"),
    gates: [
      { percentOfRating: 110, minS: 360000, maxS: null },
      { percentOfRating: 135, minS: 60, maxS: 1800 },
      { percentOfRating: 200, minS: 2, maxS: 60 },
      { percentOfRating: 350, minS: 0.2, maxS: 7 },
      { percentOfRating: 600, minS: 0.04, maxS: 1 },
    ],
  },
  {
    families: ["ISO 8820-5 Type SF 30", "ISO 8820-5 Type SF 51"],
    ratingsA: [0, 500],
    source: gatesOf(
      "ISO 8820-5 (Road vehicles, strip fuse-links)",
      "Types SF 30 and SF 51, operating time ratings",
    ),
    gates: [
      { percentOfRating: 75, minS: 360000, maxS: null },
      { percentOfRating: 135, minS: 120, maxS: 1800 },
      { percentOfRating: 200, minS: 1, maxS: 15 },
      { percentOfRating: 350, minS: 0.3, maxS: 5 },
      { percentOfRating: 600, minS: 0.1, maxS: 1 },
    ],
  },
  {
    families: ["UL 248-15 Class T"],
    ratingsA: [0, 60],
    source: gatesOf("UL 248-15 (Low-voltage fuses, Class T)", "up to 60 A"),
    gates: [
      { percentOfRating: 100, minS: null, maxS: null },
      { percentOfRating: 135, minS: null, maxS: 3600 },
    ],
  },
  {
    families: ["UL 248-15 Class T"],
    ratingsA: [60, 600],
    source: gatesOf("UL 248-15 (Low-voltage fuses, Class T)", "61 to 600 A"),
    gates: [
      { percentOfRating: 100, minS: null, maxS: null },
      { percentOfRating: 135, minS: null, maxS: 7200 },
    ],
  },
] as const satisfies readonly TimeCurrentGates[];

export interface TimeCurrentGates {
  readonly families: readonly FuseFamily[];
  /** Above the first and up to the second, A. */
  readonly ratingsA: readonly [number, number];
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
}

function gatesOf(document: string, section: string, edition?: string): Citation {
  return {
    document,
    section,
    ...(edition === undefined ? {} : { edition }),
    authority: "standard",
    confirmed: "memory",
  };
}
