import type { Citation } from "./citation.ts";

/**
 * Ampacity of copper conductors with insulation rated 60 °C. It was recalled as a column of ISO 10133, Annex A, and is none: from
 * 35 to 150 mm² its figures are those of a classification society's table for ship cable. Another column that is recalled for
 * ISO 10133 allows 1.2 to 1.7 times as much; the stricter one is taken.
 */
export const shipCable60C = {
  source: {
    document: "Ship-cable table of a classification society",
    section: "PVC rated 60 °C",
    authority: "standard",
    confirmed: "memory",
    note: "Single core at 45 °C ambient. 35 to 150 mm² were read, the smaller sizes are recalled. Applied here from 30 °C ambient on, which is stricter. ISO 10133 has a column for 60 °C that is not known.",
  } satisfies Citation,
  insulationC: 60,
  rows: [
    { mm2: 0.75, ampereA: 6 },
    { mm2: 1, ampereA: 8 },
    { mm2: 1.5, ampereA: 12 },
    { mm2: 2.5, ampereA: 17 },
    { mm2: 4, ampereA: 22 },
    { mm2: 6, ampereA: 29 },
    { mm2: 10, ampereA: 40 },
    { mm2: 16, ampereA: 54 },
    { mm2: 25, ampereA: 71 },
    { mm2: 35, ampereA: 87 },
    { mm2: 50, ampereA: 105 },
    { mm2: 70, ampereA: 135 },
    { mm2: 95, ampereA: 165 },
    { mm2: 120, ampereA: 190 },
    { mm2: 150, ampereA: 220 },
  ],
} as const;
