import type { Citation } from "./citation.ts";

/**
 * Maximum resistance of flexible (class 5) conductors of plain copper at 20 °C, as cable suppliers' pages quote it.
 * A real conductor may be a few per cent better. 50 mm² (0.386) is below its class 2 value; that is not a misprint.
 */
export const resistanceOfClass5 = {
  source: {
    document: "IEC 60228 (Conductors of insulated cables)",
    section: "Table 3, class 5, plain copper",
    edition: "2004",
    authority: "standard",
    confirmed: "read",
    note: "Read in cable suppliers' pages that quote the table, 0.5 to 240 mm², without a difference.",
  } satisfies Citation,
  rows: [
    { mm2: 0.75, maxOhmPerKm20C: 26.0 },
    { mm2: 1, maxOhmPerKm20C: 19.5 },
    { mm2: 1.5, maxOhmPerKm20C: 13.3 },
    { mm2: 2.5, maxOhmPerKm20C: 7.98 },
    { mm2: 4, maxOhmPerKm20C: 4.95 },
    { mm2: 6, maxOhmPerKm20C: 3.3 },
    { mm2: 10, maxOhmPerKm20C: 1.91 },
    { mm2: 16, maxOhmPerKm20C: 1.21 },
    { mm2: 25, maxOhmPerKm20C: 0.78 },
    { mm2: 35, maxOhmPerKm20C: 0.554 },
    { mm2: 50, maxOhmPerKm20C: 0.386 },
    { mm2: 70, maxOhmPerKm20C: 0.272 },
    { mm2: 95, maxOhmPerKm20C: 0.206 },
    { mm2: 120, maxOhmPerKm20C: 0.161 },
    { mm2: 150, maxOhmPerKm20C: 0.129 },
  ],
} as const;
