import type { Citation } from "./citation.ts";

const document = "33 CFR 183 (Boats and Associated Equipment), Subpart I (Electrical Systems)";
const edition = "42 FR 5944 (1977) as amended 48 FR 55736 (1983); unchanged in the 2015 annual edition";

/**
 * Allowable amperage of insulated stranded copper conductors, each on its own.
 * One row per size, one figure per column; printed 0, 00, 000 and 0000 are written 1/0 to 4/0.
 * All 105 cells were read in two copies of the regulation. 3 AWG keeps its row, although it is not commonly made.
 */
export const table5 = {
  source: {
    document,
    section: "183.425(b), Table 5",
    edition,
    authority: "regulation",
    confirmed: "read",
    note: "Written for boats with gasoline engines; taken here for any low-voltage DC wiring. Taken for a place of 30 °C, as two boat-wiring suppliers explain it: the table itself prints no ambient.",
  } satisfies Citation,
  /** Temperature rating of the insulation, °C, at the head of each column. */
  columnsC: [60, 75, 80, 90, 105, 125, 200],
  rows: [
    { awg: 18, amperes: [10, 10, 15, 20, 20, 25, 25] },
    { awg: 16, amperes: [15, 15, 20, 25, 25, 30, 35] },
    { awg: 14, amperes: [20, 20, 25, 30, 35, 40, 45] },
    { awg: 12, amperes: [25, 25, 35, 40, 45, 50, 55] },
    { awg: 10, amperes: [40, 40, 50, 55, 60, 70, 70] },
    { awg: 8, amperes: [55, 65, 70, 70, 80, 90, 100] },
    { awg: 6, amperes: [80, 95, 100, 100, 120, 125, 135] },
    { awg: 4, amperes: [105, 125, 130, 135, 160, 170, 180] },
    { awg: 3, amperes: [120, 145, 150, 155, 180, 195, 210] },
    { awg: 2, amperes: [140, 170, 175, 180, 210, 225, 240] },
    { awg: 1, amperes: [165, 195, 210, 210, 245, 265, 280] },
    { awg: "1/0", amperes: [195, 230, 245, 245, 285, 305, 325] },
    { awg: "2/0", amperes: [225, 265, 285, 285, 330, 355, 370] },
    { awg: "3/0", amperes: [260, 310, 330, 330, 385, 410, 430] },
    { awg: "4/0", amperes: [300, 360, 385, 385, 445, 475, 510] },
  ],
} as const;

/** Note 1 to Table 5: factors on a column's amperage inside an engine space. Read in one copy. */
export const note1EngineSpace = {
  source: {
    document,
    section: "183.425(c), Table 5, note 1",
    edition,
    authority: "regulation",
    confirmed: "read",
    note: "The note prints factors, no temperature; two boat-wiring suppliers explain them as those of 50 °C.",
  } satisfies Citation,
  /** The usual explanation of the factors, as two boat-wiring suppliers print it. */
  ambientC: 50,
  /** In the order of the columns of Table 5. */
  factors: [0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1.0],
} as const;

/** Note 2 to Table 5: factors if current-carrying conductors share a duct, bundle or cable. Read in one copy. */
export const note2Bundling = {
  source: {
    document,
    section: "183.435(b), with 183.425 Table 5, note 2",
    edition,
    authority: "regulation",
    confirmed: "read",
    note: "The regulation asks for these factors from 50 V upward; applied here below 50 V too, which is stricter.",
  } satisfies Citation,
  rows: [
    { fromConductors: 3, factor: 0.7 },
    { fromConductors: 4, factor: 0.6 },
    { fromConductors: 7, factor: 0.5 },
    { fromConductors: 25, factor: 0.4 },
  ],
} as const;
