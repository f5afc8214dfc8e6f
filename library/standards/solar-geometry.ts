import type { Citation } from "./citation.ts";

/**
 * Series for the declination of the sun and the distance to it; B = 2π (n − 1)/365 for day n of the year. Constant term, then cos B,
 * sin B, cos 2B, sin 2B, cos 3B, sin 3B.
 */
export const sunSeries = {
  source: {
    document: "J. W. Spencer, Fourier series representation of the position of the sun, Search 2 (1971)",
    section: "p. 172",
    authority: "textbook",
    confirmed: "read",
    note: "Read in public code that cites it. The height of the sun is right within 0.45°.",
  } satisfies Citation,
  /** Radians. */
  declination: [0.006918, -0.399912, 0.070257, -0.006758, 0.000907, -0.002697, 0.00148],
  /** Mean distance over distance, squared. */
  distance: [1.00011, 0.034221, 0.00128, 0.000719, 0.000077],
} as const;

/** Irradiance outside of the atmosphere at the mean distance of the sun: the value with which the clearness grid was made. */
export const solarConstant = {
  source: {
    document: "Present value of the total solar irradiance",
    section: "",
    authority: "textbook",
    confirmed: "memory",
    note: "The clearness grid was made with it, so that the irradiation from the two does not depend on it.",
  } satisfies Citation,
  wattsPerM2: 1361,
} as const;

const duffieBeckman =
  "J. A. Duffie, W. A. Beckman, N. Blair, Solar Engineering of Thermal Processes, Photovoltaics and Wind";

/** Diffuse share of a day's irradiation by its clearness K: polynomials in K. */
export const diffuseShareOfDay = {
  source: {
    document: duffieBeckman,
    section: "eq. 2.11.1 (Erbs, Klein, Duffie 1982)",
    edition: "5th, 2020",
    authority: "textbook",
    confirmed: "read",
    note: "Read in public code that cites the book.",
  } satisfies Citation,
  /** The first row up to this sunset hour angle, degrees. */
  winterUpToDeg: 81.4,
  winter: { belowK: 0.715, terms: [1, -0.2727, 2.4495, -11.9514, 9.3879], above: 0.143 },
  otherwise: { belowK: 0.722, terms: [1, 0.2832, -2.5557, 0.8448, 0], above: 0.175 },
} as const;

/** Share of a day's irradiation in an hour, a + b cos ω; a and b follow from the sunset hour angle ωs: a₀ + a₁ sin(ωs − 60°). */
export const shareOfHour = {
  source: {
    document: duffieBeckman,
    section: "eqs. 2.13.2 (Collares-Pereira, Rabl 1979) and 2.13.4 (Liu, Jordan 1960)",
    edition: "5th, 2020",
    authority: "textbook",
    confirmed: "read",
    note: "Read in public code that cites the book. Divided by their sum over the hours of the day.",
  } satisfies Citation,
  a: [0.409, 0.5016],
  b: [0.6609, -0.4767],
} as const;

/** The distribution of the days of a month by clearness. */
export const clearnessOfDays = {
  source: {
    document: "P. Bendt, M. Collares-Pereira, A. Rabl, Solar Energy 27 (1981)",
    section: "p. 1; greatest clearness after Hollands and Huget (1983)",
    authority: "textbook",
    confirmed: "read",
    note: "Read in public code that cites it. The days at the middle of equal shares, scaled to the month's mean, are our own choice.",
  } satisfies Citation,
  least: 0.05,
  /** c₀ + c₁ K − c₂ (K − c₃)⁸ */
  greatest: [0.6313, 0.267, 11.9, 0.75],
} as const;

/** The order of a month's days, 1 for the cloudiest, by the month's mean clearness; numbers above its days are left out. */
export const orderOfDays = {
  source: {
    document:
      "K. M. Knight, S. A. Klein, J. A. Duffie, A methodology for the synthesis of hourly weather data, Solar Energy 46 (1991)",
    section: "p. 109",
    authority: "textbook",
    confirmed: "read",
    note: "The three sequences were read in public code; the paper as their origin is recalled.",
  } satisfies Citation,
  upToK: [0.45, 0.55, 1],
  // biome-ignore format: a sequence a line.
  sequences: [
    [24, 28, 11, 19, 18, 3, 2, 4, 9, 20, 14, 23, 8, 16, 21, 26, 15, 10, 22, 17, 5, 1, 6, 29, 12, 7, 31, 30, 27, 13, 25],
    [24, 27, 11, 19, 18, 3, 2, 4, 9, 20, 14, 23, 8, 16, 21, 7, 22, 10, 28, 6, 5, 1, 26, 29, 12, 17, 31, 30, 15, 13, 25],
    [24, 27, 11, 4, 18, 3, 2, 19, 9, 25, 14, 23, 8, 16, 21, 26, 22, 10, 15, 17, 5, 1, 6, 29, 12, 7, 31, 20, 28, 13, 30],
  ],
} as const;

/** Diffuse light of the sky on a tilted plane. */
export const skyOnPlane: Citation = {
  document: "J. E. Hay, J. A. Davies (1980), diffuse irradiance on a tilted plane",
  section: "",
  authority: "textbook",
  confirmed: "read",
  note: "Read in public code that cites it, with its test values.",
};

/** Share of the light that the ground reflects: grass. Snow reflects more, asphalt and the sea less. */
export const groundReflectance = {
  source: {
    document: "Table of ground reflectances in public code for solar radiation",
    section: "grass",
    authority: "textbook",
    confirmed: "read",
  } satisfies Citation,
  share: 0.2,
} as const;

/** The least cosine of the sun's angle from the zenith that the conversion to a tilted plane divides by: a sun 5° high. */
export const leastCosZenith = 0.087;
