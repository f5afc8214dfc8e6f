import type { Citation } from "./citation.ts";

const document = "ISO 10133 (Small craft, extra-low-voltage d.c. installations), Annex A";
const edition = "2012 (withdrawn 2020, carried into ISO 13297:2020)";

/** Ampacity of single copper conductors at 30 °C ambient. Recalled, not seen: every figure is unconfirmed. */
export const tableA1 = {
  source: {
    document,
    section: "Table A.1",
    edition,
    authority: "standard",
    confirmed: "memory",
  } satisfies Citation,
  /** Temperature rating of the insulation, °C. The column printed 85 to 90 is listed as 85. */
  columnsC: [60, 70, 85, 105, 125, 200],
  rows: [
    { mm2: 0.75, amperes: [6, 10, 12, 16, 20, 25] },
    { mm2: 1, amperes: [8, 14, 18, 20, 25, 35] },
    { mm2: 1.5, amperes: [12, 18, 21, 25, 30, 40] },
    { mm2: 2.5, amperes: [17, 25, 30, 35, 40, 45] },
    { mm2: 4, amperes: [22, 35, 40, 45, 50, 55] },
    { mm2: 6, amperes: [29, 45, 50, 60, 70, 75] },
    { mm2: 10, amperes: [40, 65, 70, 90, 100, 120] },
    { mm2: 16, amperes: [54, 90, 100, 130, 150, 170] },
    { mm2: 25, amperes: [71, 120, 140, 170, 185, 200] },
    { mm2: 35, amperes: [87, 160, 185, 210, 225, 240] },
    { mm2: 50, amperes: [105, 210, 230, 270, 300, 325] },
    { mm2: 70, amperes: [135, 265, 285, 330, 360, 375] },
    { mm2: 95, amperes: [165, 310, 330, 390, 410, 430] },
    { mm2: 120, amperes: [190, 360, 400, 450, 480, 520] },
    { mm2: 150, amperes: [220, 380, 430, 475, 520, 560] },
  ],
} as const;

/** Factors in an engine space of 60 °C. Recalled, not seen. */
export const engineSpace60C = {
  source: {
    document,
    section: "note to Table A.1, engine spaces",
    edition,
    authority: "standard",
    confirmed: "memory",
    note: "Milder than the ambient equation of NFPA 70 310.15(B)(1) at 60 °C (0.50 for 70 °C insulation); near its values at 50 °C. Unconfirmed, so the smaller of the two is taken.",
  } satisfies Citation,
  ambientC: 60,
  /** In the order of the columns of Table A.1; none for insulation of 60 °C, which is not allowed there. */
  factors: [null, 0.75, 0.82, 0.86, 0.89, 1.0],
} as const;

/** Factors for bundled conductors. Recalled, not seen. */
export const bundling = {
  source: {
    document,
    section: "note to Table A.1, bundling",
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
