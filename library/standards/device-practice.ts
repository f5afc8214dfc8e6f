import type { Citation } from "./citation.ts";

const practice: Citation = {
  document: "Common practice, no source",
  section: "",
  authority: "common practice",
  confirmed: "memory",
};

/** Share of an inverter's input power that reaches its output. */
export const inverterEfficiency = {
  source: {
    document: "Magazine article on designing a stand-alone solar system",
    section: "inverter efficiency in the method of US design handbooks",
    authority: "common practice",
    confirmed: "read",
  } satisfies Citation,
  percent: 90,
} as const;

/** Share of a DC-DC charger's input power that reaches its output. */
export const dcDcChargerEfficiency = { source: practice, percent: 90 } as const;

/** Share of a solar controller's input power that reaches its output. */
export const solarControllerEfficiency = { source: practice, percent: 95 } as const;

/** Cut-off voltage of inverters and DC-DC chargers, to spare the battery, for each 12 V of the nominal voltage. */
export const cutOffVoltage = { source: practice, for12V: 10.5 } as const;

/** The lowest voltage of a cell at which devices draw current: soon after, the battery is empty, or its protection cuts off. */
export const lowestCellVoltage = { source: practice, leadAcidV: 1.75, lithiumIronPhosphateV: 3.0 } as const;

/** Assumed duration of an inverter's surge: a motor behind it has started by then. */
export const surgeDuration = { source: practice, seconds: 5 } as const;

/** Assumed duration of the start of a motor. */
export const motorStart = {
  source: { ...practice, note: "Pumps and small winches reach their speed within half a second." },
  seconds: 0.5,
} as const;

/** Assumed duration of the cranking of an engine. */
export const cranking = {
  source: { ...practice, note: "An engine that starts well is cranked for one to five seconds." },
  seconds: 5,
} as const;

/** Voltage drop of a shunt at its rated current. */
export const shuntVoltage = { source: practice, ratedMV: 50 } as const;
