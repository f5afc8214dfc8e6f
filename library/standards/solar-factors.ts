import type { Citation } from "./citation.ts";

const nfpa70 = "NFPA 70 (National Electrical Code)";

/**
 * Rise of the open-circuit voltage of crystalline silicon, by the lowest expected ambient temperature, for use if no maker's
 * coefficient is known. Rows as printed, whole degrees.
 */
export const coldVoltageFactors = {
  source: {
    document: nfpa70,
    section: "Table 690.7(A)",
    edition: "2017",
    authority: "standard",
    confirmed: "read",
    note: "For crystalline silicon. All 13 factors were read, coded alike, in two independent public programs that name the editions 2014 and 2017; the edition of 2023 was not seen.",
  } satisfies Citation,
  /** From the warmest to the coldest. */
  rows: [
    { fromC: 24, toC: 20, factor: 1.02 },
    { fromC: 19, toC: 15, factor: 1.04 },
    { fromC: 14, toC: 10, factor: 1.06 },
    { fromC: 9, toC: 5, factor: 1.08 },
    { fromC: 4, toC: 0, factor: 1.1 },
    { fromC: -1, toC: -5, factor: 1.12 },
    { fromC: -6, toC: -10, factor: 1.14 },
    { fromC: -11, toC: -15, factor: 1.16 },
    { fromC: -16, toC: -20, factor: 1.18 },
    { fromC: -21, toC: -25, factor: 1.2 },
    { fromC: -26, toC: -30, factor: 1.21 },
    { fromC: -31, toC: -35, factor: 1.23 },
    { fromC: -36, toC: -40, factor: 1.25 },
  ],
} as const;

/** A maker's coefficient for the open-circuit voltage replaces the table. Voc(T) = Voc(25 °C) · (1 + β (T − 25)). */
export const coldVoltageByCoefficient: Citation = {
  document: nfpa70,
  section: "690.7(A)",
  edition: "2023",
  authority: "standard",
  confirmed: "read",
  note: "Read in training notes on the 2023 edition that work an example with it.",
};

/** The temperature of standard test conditions, at which modules are rated, °C. */
export const standardTestC = 25;

/** Factors on the current of modules, applied before a conductor or a fuse is chosen for it. */
export const solarCurrentFactors = {
  /** More sun than at standard test conditions. */
  irradiance: 1.25,
  irradianceSource: {
    document: nfpa70,
    section: "690.8(A)(1)",
    edition: "2023",
    authority: "standard",
    confirmed: "read",
    note: "The factor was read in training notes on the 2023 edition and in a list of practitioners.",
  } satisfies Citation,
  /** Operation for hours: conductors and fuses are sized for 125 % of the maximum current. */
  continuous: 1.25,
  continuousSource: {
    document: nfpa70,
    section: "690.8(B)",
    edition: "2023",
    authority: "standard",
    confirmed: "read",
    note: "Printed together with 690.8(A)(1) as 1.56; here their product, 1.5625, is used.",
  } satisfies Citation,
} as const;

/** Parallel strings: the others feed a faulted string backwards. */
export const stringProtectionRequired: Citation = {
  document: nfpa70,
  section: "690.9",
  edition: "2023",
  authority: "standard",
  confirmed: "memory",
  note: "Recalled: no protection is needed where the others together cannot push more than the conductor bears, nor more than the greatest fuse that the maker allows in series with the panel.",
};
