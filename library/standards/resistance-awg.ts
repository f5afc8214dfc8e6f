import type { Citation } from "./citation.ts";

/**
 * Resistance of solid annealed copper wire at 20 °C.
 * Computed: diameter 0.005 in × 92^((36 − n) / 39) of ASTM B258, resistivity 1/58 Ω·mm²/m of the annealed copper
 * standard (IEC 60028, NBS Handbook 100), rounded to four figures.
 * 4/0 to 6 AWG were compared with a table read elsewhere; 3 AWG keeps its row, although it is not commonly made.
 */
export const resistanceOfAwg = {
  source: {
    document:
      "ASTM B258 (diameters of AWG sizes) with the annealed copper standard, IEC 60028 and NBS Handbook 100",
    section: "diameter formula; resistivity at 20 °C",
    authority: "standard",
    confirmed: "computed",
    note: "For solid wire; a strand factor of 1.02 is multiplied in.",
  } satisfies Citation,
  rows: [
    { awg: 18, solidOhmPerKm20C: 20.95 },
    { awg: 16, solidOhmPerKm20C: 13.17 },
    { awg: 14, solidOhmPerKm20C: 8.286 },
    { awg: 12, solidOhmPerKm20C: 5.211 },
    { awg: 10, solidOhmPerKm20C: 3.277 },
    { awg: 8, solidOhmPerKm20C: 2.061 },
    { awg: 6, solidOhmPerKm20C: 1.296 },
    { awg: 4, solidOhmPerKm20C: 0.8152 },
    { awg: 3, solidOhmPerKm20C: 0.6465 },
    { awg: 2, solidOhmPerKm20C: 0.5127 },
    { awg: 1, solidOhmPerKm20C: 0.4066 },
    { awg: "1/0", solidOhmPerKm20C: 0.3224 },
    { awg: "2/0", solidOhmPerKm20C: 0.2557 },
    { awg: "3/0", solidOhmPerKm20C: 0.2028 },
    { awg: "4/0", solidOhmPerKm20C: 0.1608 },
  ],
} as const;
