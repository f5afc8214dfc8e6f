import type { Citation } from "./citation.ts";

/** Output voltage of chargers of all kinds at their full current. */
export const chargingVoltage = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Within the absorption voltages recalled for every chemistry.",
  } satisfies Citation,
  for12V: 14.4,
  /** Absorption voltage of a 12 V battery, minimum and maximum. */
  absorptionFor12V: {
    "flooded lead-acid": [14.4, 14.8],
    AGM: [14.2, 14.7],
    gel: [14.1, 14.4],
    LiFePO4: [14.0, 14.6],
  },
} as const;

/** Voltage that only the protection of a LiFePO4 battery keeps from its cells. */
export const overchargedCell = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Protection circuits of LiFePO4 cut a cell off at 3.65 to 3.8 V; no charge needs more, and such cells take no equalising charge.",
  } satisfies Citation,
  lithiumIronPhosphateV: 3.8,
} as const;

/** Voltage with which a lead-acid battery is held full. */
export const floatVoltage = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Lead-acid is held full with 2.2 to 2.3 V a cell; below that it discharges itself slowly, and sulphates.",
  } satisfies Citation,
  leastLeadAcidCellV: 2.2,
} as const;

/** Temperature below which LiFePO4 must not be charged. */
export const coldCharging = {
  source: {
    document: "Data sheets of LiFePO4 cells",
    section: "",
    authority: "maker's data",
    confirmed: "read",
    note: "Figures of cells of 100 and 280 Ah, quoted on public pages: below 0 °C metallic lithium is deposited, a permanent loss.",
  } satisfies Citation,
  lithiumIronPhosphateFromC: 0,
} as const;

/** Output that an alternator may deliver for hours. */
export const alternatorShare = {
  source: {
    document: "FAA AC 43.13-1B (Acceptable Methods, Techniques, and Practices), chapter 11",
    section: "11-35a",
    edition: "1998, Change 1 of 2001",
    authority: "standard",
    confirmed: "read",
    note: "A rule of thumb for aircraft generators whose load is not monitored.",
  } satisfies Citation,
  continuousPercent: 80,
} as const;
