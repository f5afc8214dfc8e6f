import type { Citation } from "./citation.ts";

const document = "ISO 10133 (Small craft, extra-low-voltage d.c. installations)";
const edition = "2012 (withdrawn 2020, carried into ISO 13297:2020)";

/**
 * Ampacity of single copper conductors at 30 °C ambient. Recalled, not seen: every figure is unconfirmed. The column for
 * 60 °C insulation is unknown: see `ampacity-ship-cable.ts`.
 */
export const annexA = {
  source: {
    document,
    section: "Annex A",
    edition,
    authority: "standard",
    confirmed: "memory",
    note: "Its table is A.2 by clause 7.6 of the edition of 2012, A.1 by ISO 13297:2020. The figures of the 200 °C column, 2.5 to 150 mm², were met in a battery maker's manual that prints them under 105 °C, which is taken as its error.",
  } satisfies Citation,
  /** Temperature rating of the insulation, °C. The column printed 85 to 90 is listed as 85. */
  columnsC: [70, 85, 105, 125, 200],
  rows: [
    { mm2: 0.75, amperes: [10, 12, 16, 20, 25] },
    { mm2: 1, amperes: [14, 18, 20, 25, 35] },
    { mm2: 1.5, amperes: [18, 21, 25, 30, 40] },
    { mm2: 2.5, amperes: [25, 30, 35, 40, 45] },
    { mm2: 4, amperes: [35, 40, 45, 50, 55] },
    { mm2: 6, amperes: [45, 50, 60, 70, 75] },
    { mm2: 10, amperes: [65, 70, 90, 100, 120] },
    { mm2: 16, amperes: [90, 100, 130, 150, 170] },
    { mm2: 25, amperes: [120, 140, 170, 185, 200] },
    { mm2: 35, amperes: [160, 185, 210, 225, 240] },
    { mm2: 50, amperes: [210, 230, 270, 300, 325] },
    { mm2: 70, amperes: [265, 285, 330, 360, 375] },
    { mm2: 95, amperes: [310, 330, 390, 410, 430] },
    { mm2: 120, amperes: [360, 400, 450, 480, 520] },
    { mm2: 150, amperes: [380, 430, 475, 520, 560] },
  ],
} as const;

/** Factors in an engine space of 60 °C. Recalled, not seen. */
export const engineSpace60C = {
  source: {
    document,
    section: "Annex A, engine spaces",
    edition,
    authority: "standard",
    confirmed: "memory",
    note: "Milder than the ambient equation of NFPA 70 310.15(B)(1) at 60 °C (0.50 for 70 °C insulation); near its values at 50 °C. Unconfirmed, so the smaller of the two is taken.",
  } satisfies Citation,
  ambientC: 60,
  /** In the order of the columns of the table. Insulation of 60 °C is not allowed there. */
  factors: [0.75, 0.82, 0.86, 0.89, 1.0],
} as const;

/** Factors for bundled conductors. Recalled, not seen. */
export const bundling = {
  source: {
    document,
    section: "Annex A, bundling",
    edition,
    authority: "standard",
    confirmed: "memory",
  } satisfies Citation,
  rows: [
    { fromConductors: 4, factor: 0.7 },
    { fromConductors: 7, factor: 0.6 },
    { fromConductors: 25, factor: 0.5 },
  ],
} as const;
