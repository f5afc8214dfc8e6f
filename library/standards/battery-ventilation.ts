import type { Citation } from "./citation.ts";

/**
 * Air that carries off the hydrogen of lead-acid batteries.
 *
 *     Q = 0.05 · n · I · C        n cells in series, I gas current in A per Ah, C rated capacity in Ah, Q in m³/h
 *     A = 28 · Q                  free area of the inlet and of the outlet, each, cm²
 *
 * 0.05: dilution 24 × 0.42·10⁻³ m³ of hydrogen per Ah × safety 5. A: air at 0.1 m/s at least.
 */
export const batteryVentilation = {
  airM3PerAh: 0.05,
  areaCm2PerM3h: 28,
  /** Batteries of a building. */
  stationary: {
    document: "EN 62485-2 (Secondary batteries, safety: stationary batteries)",
    section: "ventilation",
    authority: "standard",
    confirmed: "read",
    note: "Formula and float current of valve-regulated batteries read in public texts on it; the other gas currents are recalled from memory.",
  } satisfies Citation,
  /** Gas currents while a charger boosts, A per Ah: recalled from memory, all but the float current of valve-regulated ones. */
  stationaryBoostAPerAh: { vented: 0.02, valveRegulated: 0.008 },
  stationaryBoost: {
    document: "EN 62485-2 (Secondary batteries, safety: stationary batteries)",
    section: "gas currents in boost charge",
    authority: "standard",
    confirmed: "memory",
  } satisfies Citation,
  /** Batteries of a vehicle or boat. */
  traction: {
    document: "EN 62485-3 (Secondary batteries, safety: traction batteries)",
    section: "ventilation",
    authority: "standard",
    confirmed: "read",
    note: "Read in public texts of battery makers; one of them prints 0.055 instead of 0.05.",
  } satisfies Citation,
  /** Gas currents with a charger that limits its voltage to 2.4 V a cell (IU), A per Ah. */
  tractionLimitedAPerAh: { vented: 0.02, valveRegulated: 0.01 },
  /** Hydrogen is let out of a boat; no figure. */
  boats: {
    document: "33 CFR 183 (Boats and Associated Equipment), Subpart I (Electrical Systems)",
    section: "183.420(e)",
    authority: "regulation",
    confirmed: "read",
  } satisfies Citation,
} as const;
