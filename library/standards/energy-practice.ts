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
