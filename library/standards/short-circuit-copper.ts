import type { Citation } from "./citation.ts";

/** Adiabatic heating of copper: a short heats it so fast that all heat remains in it. */
export const adiabaticCopper = {
  source: {
    document: "IEC 60949 (Thermally permissible short-circuit currents)",
    section: "adiabatic equation, constants of copper",
    edition: "1988",
    authority: "standard",
    confirmed: "computed",
    note: "K = 226 A·√s/mm² was read in a ship-cable maker's sheet, β = 234.5 °C in FAA AC 43.13-1B. k worked out from them agrees within 0.3 with the values of IEC 60364-4-43, Table 43A, that were read.",
  } satisfies Citation,
  /** A·√s/mm² */
  bigK: 226,
  /** °C; copper's resistance would vanish at this many degrees below 0 °C. */
  betaC: 234.5,
  /** For longer times, s, the insulation takes heat away, and the equation requires more copper than necessary. */
  validUpToS: 5,
} as const;

/** Maximum temperature of insulation for the seconds of a short, °C. */
export const finalTemperatures = {
  source: {
    document: "IEC 60364-4-43 (Protection against overcurrent)",
    section: "Table 43A, final temperatures",
    edition: "2008",
    authority: "standard",
    confirmed: "read",
    note: "Up to a rating of 105 °C that of PVC, the lower one, because a plan does not state the insulation's material; above, that of XLPE. Ratings of 105 °C and more are not in the table: taken over from there.",
  } satisfies Citation,
  rows: [
    { ratedUpToC: 105, finalC: 160 },
    { ratedUpToC: 200, finalC: 250 },
  ],
} as const;
