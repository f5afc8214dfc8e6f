import type { Citation } from "./citation.ts";

/** Change of copper's resistance with temperature, relative to 20 °C. */
export const temperatureCoefficient = {
  source: {
    document: "Annealed copper standard (IEC 60028, NBS Handbook 100)",
    section: "temperature coefficient of resistance at 20 °C",
    authority: "standard",
    confirmed: "read",
    note: "0.00393/K; textbooks print the same figure as 3.9e-3/K.",
  } satisfies Citation,
  perK: 0.00393,
  referenceC: 20,
} as const;

/** Density at 20 °C. */
export const copperDensity = {
  source: {
    document: "Annealed copper standard (IEC 60028, NBS Handbook 100)",
    section: "density at 20 °C",
    authority: "standard",
    confirmed: "memory",
  } satisfies Citation,
  kgPerDm3: 8.89,
} as const;

/** The lay makes each strand longer than the conductor. The factor applies to resistances given for solid wire. */
export const strandFactor = {
  source: {
    document: "NFPA 70 (National Electrical Code)",
    section: "Chapter 9, Table 8, stranded uncoated copper over the value for solid wire",
    authority: "standard",
    confirmed: "read",
    note: "Read in two transcriptions: the stranded values of 18 AWG to 4/0 are 1.8 to 2.6 % above solid wire.",
  } satisfies Citation,
  factor: 1.02,
} as const;
