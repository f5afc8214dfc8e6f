import type { Citation } from "./citation.ts";

const nrel62641 = {
  document: "A. P. Dobos, NREL/TP-6A20-62641 (technical manual of a photovoltaic model)",
  edition: "2014",
  authority: "textbook",
  confirmed: "read",
} as const;

/** Losses between the rating of modules and their controller. Availability is left out; wiring follows from the plan's conductors. */
export const moduleLosses = {
  source: {
    ...nrel62641,
    section: "losses",
    note: "Availability is left out, and the loss in the wiring is that of the plan's own conductors.",
  } satisfies Citation,
  percent: {
    soiling: 2,
    shading: 3,
    snow: 0,
    mismatch: 2,
    connections: 0.5,
    "light-induced": 1.5,
    nameplate: 1,
    age: 0,
  },
} as const;

/** Power of a module against its temperature, where the plan states no figures of its data sheet. */
export const moduleTemperature = {
  source: {
    document: "Data sheets of crystalline silicon modules",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Typical values. A module flat on a roof, without air behind it, runs 10 to 20 °C hotter.",
  } satisfies Citation,
  /** Nominal operating cell temperature. */
  nominalOperatingC: 45,
  powerPercentPerC: -0.4,
} as const;

/** Of the cells: air + (NOCT − 20)/800 · G, with G in W/m². P = Pstc · G/1000 · (1 + γ (Tc − 25)). */
export const modulePower: Citation = {
  ...nrel62641,
  section: "DC model, with the cell temperature after Ross",
};

/** Usable capacity of a lead-acid battery in the cold: the capacity needed, as a multiple. */
export const leadAcidInTheCold = {
  source: {
    document: "Battery bank worksheet with a temperature multiplier",
    section: "",
    authority: "common practice",
    confirmed: "read",
    note: "Four copies of the same table, in handbooks and worksheets; its origin was not found.",
  } satisfies Citation,
  /** From the warmest to the coldest. */
  rows: [
    { atC: 26.7, multiplier: 1 },
    { atC: 21.2, multiplier: 1.04 },
    { atC: 15.6, multiplier: 1.11 },
    { atC: 10, multiplier: 1.19 },
    { atC: 4.4, multiplier: 1.3 },
    { atC: -1.1, multiplier: 1.4 },
    { atC: -6.7, multiplier: 1.59 },
  ],
} as const;

/** Energy that a battery gives back, as a share of the energy that charged it. Counted once, on the way in. */
export const chargeEfficiency = {
  leadAcidSource: {
    document: "Public page of a dealer on lead-acid batteries",
    section: "energy round trip",
    authority: "common practice",
    confirmed: "read",
  } satisfies Citation,
  leadAcid: 0.8,
  lithiumSource: {
    document: "Recalled range for cells of LiFePO4, 0.92 to 0.97",
    section: "energy round trip",
    authority: "common practice",
    confirmed: "memory",
    note: "The middle of the range.",
  } satisfies Citation,
  lithium: 0.95,
} as const;

/** Charge that a battery loses by itself in a month, as a share of its capacity; the middle of the ranges. */
export const selfDischarge = {
  source: {
    document: "Two public science reference sites, tables of self-discharge",
    section: "",
    authority: "common practice",
    confirmed: "read",
    note: "Lithium 2 to 3 % a month, lead-acid 4 to 6 %; it doubles about every 10 °C.",
  } satisfies Citation,
  lithium: 0.025,
  leadAcid: 0.05,
} as const;

/** How the greatest charging current falls as a battery fills: constant up to a state of charge, then with the missing charge. */
export const chargeAcceptance = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "An approximation: constant current up to 80 % (lead-acid) or 95 % (LiFePO4), then a time constant of about 2 h.",
  } satisfies Citation,
  leadAcidUpTo: 0.8,
  lithiumUpTo: 0.95,
  timeConstantH: 2,
} as const;

/** The charge that a builder keeps in the bank, percent, if the plan states none. */
export const usualReserve = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Half of a lead-acid battery, a fifth of one of LiFePO4.",
  } satisfies Citation,
  leadAcidPercent: 50,
  lithiumPercent: 20,
} as const;

/** Sun of a poor year, as a share of the mean: the grid's own error by month is 11 %, and years differ. */
export const poorYear = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "The table of the sun differs by 11 % (standard deviation) from the months of 16 independent places.",
  } satisfies Citation,
  sunShare: 0.85,
} as const;

/** Factors of the classic worksheet: charge that arrives, and charge given back over charge put in. */
export const worksheetFactors = {
  source: {
    document:
      "Sandia National Laboratories, Stand-Alone Photovoltaic Systems: A Handbook of Recommended Design Practices, SAND87-7023",
    section: "worksheets 1 to 3, blocks 18 and 19",
    edition: "March 1995",
    authority: "textbook",
    confirmed: "read",
    note: "The sheets and their defaults were read; the worked examples were not.",
  } satisfies Citation,
  wire: 0.98,
  battery: 0.9,
} as const;

/** Days that a bank lasts without sun, for the classic worksheet. */
export const worksheetAutonomy = {
  source: {
    document: "Dealers' worksheets for systems without a grid",
    section: "3 to 5 days",
    authority: "common practice",
    confirmed: "read",
    note: "The least of the range.",
  } satisfies Citation,
  days: 3,
} as const;
