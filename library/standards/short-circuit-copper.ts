import type { Citation } from "./citation.ts";

/** Copper that a short heats so fast that all of the heat stays in it. */
export const adiabaticCopper = {
  source: {
    document: "IEC 60949 (Thermally permissible short-circuit currents)",
    section: "adiabatic equation, constants of copper",
    edition: "1988",
    authority: "standard",
    confirmed: "computed",
    note: "K = 226 A·√s/mm² and β = 234.5 °C are recalled. k worked out from them agrees within 0.3 with the values of IEC 60364-4-43, Table 43A, that were read.",
  } satisfies Citation,
  /** A·√s/mm² */
  bigK: 226,
  /** °C; below 0 °C by as much, copper's resistance would vanish. */
  betaC: 234.5,
  /** Longer than this, s, and the insulation takes heat away: the equation then asks for more than is needed. */
  validUpToS: 5,
} as const;

/** How hot insulation may get for the seconds of a short, °C. */
export const finalTemperatures = {
  source: {
    document: "IEC 60364-4-43 (Protection against overcurrent)",
    section: "Table 43A, final temperatures",
    edition: "2008",
    authority: "standard",
    confirmed: "read",
    note: "Up to a rating of 105 °C that of PVC, the lower one, because a plan does not say what the insulation is made of; above, that of XLPE. Ratings of 105 °C and more are not in the table: taken over from there.",
  } satisfies Citation,
  rows: [
    { ratedUpToC: 105, finalC: 160 },
    { ratedUpToC: 200, finalC: 250 },
  ],
} as const;
