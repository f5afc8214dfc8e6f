import type { Citation } from "./citation.ts";

/**
 * Usual internal resistance of batteries: fully charged, 25 °C, direct current. The ranges are wide on purpose: the low end is
 * for the maximum fault current, the high end for the minimum fault current and for use. The maker's figure is always better.
 */
export const internalResistance = {
  source: {
    document: "Ranges usual for the chemistry",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Scaled in proportion to the voltage and in inverse proportion to the capacity, which is common practice, no source. Give the maker's figure: internalMilliohm or shortCircuitA.",
  } satisfies Citation,
  rows: [
    {
      battery: "12 V flooded starter",
      chemistry: "flooded lead-acid",
      forV: 12,
      forAh: [60, 90],
      milliohm: [4, 8],
    },
    {
      battery: "12 V flooded deep-cycle",
      chemistry: "flooded lead-acid",
      forV: 12,
      forAh: [100, 100],
      milliohm: [5, 12],
    },
    { battery: "12 V AGM", chemistry: "AGM", forV: 12, forAh: [100, 100], milliohm: [2, 6] },
    { battery: "12 V gel", chemistry: "gel", forV: 12, forAh: [100, 100], milliohm: [4, 8] },
    { battery: "LiFePO4 cell", chemistry: "LiFePO4", forV: 3.2, forAh: [100, 100], milliohm: [0.3, 1.0] },
    {
      battery: "LiFePO4 cell, large",
      chemistry: "LiFePO4",
      forV: 3.2,
      forAh: [280, 280],
      milliohm: [0.15, 0.4],
    },
    {
      battery: "12.8 V LiFePO4 with protection circuit",
      chemistry: "LiFePO4",
      forV: 12.8,
      forAh: [100, 100],
      milliohm: [3, 10],
    },
  ],
} as const;
