import type { Citation } from "./citation.ts";

/** Source of the ampacity correction for ambient temperature. The equation is in the analysis that uses it. */
export const ambientCorrection = {
  source: {
    document: "NFPA 70 (National Electrical Code)",
    section: "310.15(B)(1), ambient correction equation",
    edition: "2020",
    authority: "standard",
    confirmed: "read",
    note: "The table was read in a residential code of a US state, 2021, Table E3705.2, which quotes it. The equation, stated by a practitioner, gives all 39 of its factors above 30 °C to two places. At 50 °C it agrees with note 1 of 33 CFR 183.425 Table 5 to 0.01 for all but 200 °C insulation, where the note is milder.",
  } satisfies Citation,
  /** The ambient temperature for which the ampacity tables are made. */
  baseAmbientC: 30,
} as const;
