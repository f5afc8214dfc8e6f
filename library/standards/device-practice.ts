import type { Citation } from "./citation.ts";

const practice: Citation = {
  document: "Common practice, no source",
  section: "",
  authority: "common practice",
  confirmed: "memory",
};

/** Share of what an inverter takes that reaches its output. */
export const inverterEfficiency = {
  source: {
    document: "Magazine article on designing a stand-alone solar system",
    section: "inverter efficiency in the method of US design handbooks",
    authority: "common practice",
    confirmed: "read",
  } satisfies Citation,
  percent: 90,
} as const;

/** Share of what a DC-DC charger takes that reaches its output. */
export const dcDcChargerEfficiency = { source: practice, percent: 90 } as const;

/** Share of what a solar controller takes that reaches its output. */
export const solarControllerEfficiency = { source: practice, percent: 95 } as const;

/** Where inverters and DC-DC chargers switch off to spare the battery, for each 12 V of the nominal voltage. */
export const cutOffVoltage = { source: practice, for12V: 10.5 } as const;

/** How long an inverter's surge is taken to last: a motor behind it has started by then. */
export const surgeDuration = { source: practice, seconds: 5 } as const;

/** What a shunt drops at its rated current. */
export const shuntVoltage = { source: practice, ratedMV: 50 } as const;
