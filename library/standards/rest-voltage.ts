import type { Citation } from "./citation.ts";

/*
 * Rest voltage of a battery by state of charge: 25 °C, hours after the last current in or out. The rows are as printed; between
 * two of them the voltage is taken from a straight line.
 */

/** Rest voltage of a 12 V battery. */
export const floodedRestVoltage = {
  source: {
    document: "Magazine for recreational vehicles, answers on checking and maintaining batteries",
    section: "rest voltages and specific gravities",
    authority: "common practice",
    confirmed: "read",
    note: "Other lists differ by up to 0.15 V: at half charge they have 12.20 or 12.24 V where this one has 12.30 V.",
  } satisfies Citation,
  forV: 12,
  rows: [
    { chargePercent: 25, restV: 12.15 },
    { chargePercent: 50, restV: 12.3 },
    { chargePercent: 75, restV: 12.45 },
    { chargePercent: 100, restV: 12.66 },
  ],
} as const;

/** Rest voltage of an empty 12 V battery, below the lowest row of {@link floodedRestVoltage}. */
export const emptyFloodedRestVoltage = {
  source: {
    document: "Engineering mailing list, rule-of-thumb rest voltages of flooded batteries",
    section: "",
    authority: "common practice",
    confirmed: "read",
    note: "Rounded to 0.1 V there. Another list, from memory, has 11.89 V.",
  } satisfies Citation,
  forV: 12,
  restV: 11.6,
} as const;

/** Rest voltage of a 12 V battery. Recalled, not seen. */
export const sealedRestVoltage = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Typical AGM battery at rest. Taken for gel too, whose electrolyte is bound in another way but whose cells are the same.",
  } satisfies Citation,
  forV: 12,
  rows: [
    { chargePercent: 0, restV: 11.6 },
    { chargePercent: 25, restV: 11.95 },
    { chargePercent: 50, restV: 12.25 },
    { chargePercent: 75, restV: 12.55 },
    { chargePercent: 100, restV: 12.85 },
  ],
} as const;

/**
 * Rest voltage of one cell. Of three such lists that were read, this one has every row and, from 10 % to 80 %, the lowest
 * voltages: the current of constant-power loads is then not underestimated.
 */
export const lithiumIronPhosphateRestVoltage = {
  source: {
    document:
      "Approximate LiFePO4 rest-voltage list in public battery software, the third of three that were compared",
    section: "",
    authority: "common practice",
    confirmed: "read",
    note: "None of the three states a measurement. Between 20 % and 90 % they differ by 30 to 50 mV, while the voltage itself rises by only 50 to 80 mV from 30 % to 80 %: on this plateau the voltage says little about the charge.",
  } satisfies Citation,
  forV: 3.2,
  rows: [
    { chargePercent: 0, restV: 2.5 },
    { chargePercent: 10, restV: 3.0 },
    { chargePercent: 20, restV: 3.2 },
    { chargePercent: 30, restV: 3.25 },
    { chargePercent: 40, restV: 3.27 },
    { chargePercent: 50, restV: 3.28 },
    { chargePercent: 60, restV: 3.29 },
    { chargePercent: 70, restV: 3.3 },
    { chargePercent: 80, restV: 3.32 },
    { chargePercent: 90, restV: 3.4 },
    { chargePercent: 100, restV: 3.65 },
  ],
} as const;

/** Voltages of one LiFePO4 cell that no state of charge of the list above gives. */
export const lithiumIronPhosphateCell = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "The list above ends at 3.65 V, which is a charging voltage: hours later a full cell rests at 3.35 to 3.40 V.",
  } satisfies Citation,
  /** Nominal voltage, and the voltage at rest if the charge is unknown. */
  restV: 3.2,
  /** At rest and fully charged, from and to. */
  fullAtRestV: [3.35, 3.4],
  /** At the end of charge. */
  chargedV: 3.65,
} as const;

/** Number of cells for a nominal voltage. */
export const cellsInSeries = {
  /** LiFePO4: 12 V and 12.8 V both mean four cells of 3.2 V, and 48 V sixteen. */
  lithiumIronPhosphateFor12V: 4,
} as const;
