import type { Citation } from "./citation.ts";

/** The terminal, conductor or device with the lowest temperature rating determines the ampacity. */
export const coolestEnd: Citation = {
  document: "NFPA 70 (National Electrical Code)",
  section: "110.14(C)",
  authority: "standard",
  confirmed: "read",
  note: "Read in reproductions. Written for fixed wiring of buildings; taken here for any low-voltage DC wiring. Derating may start from the column of the insulation; the result is at most the ampacity in the column of the terminal.",
};

/** The terminals of equipment that states no temperature rating. */
export const usualTerminal = {
  source: {
    document: "NFPA 70 (National Electrical Code)",
    section: "110.14(C)(1)",
    authority: "standard",
    confirmed: "read",
    note: "Read in reproductions. Without a marking, 60 °C up to 100 A and 75 °C above; equipment of today is usually marked for 75 °C.",
  } satisfies Citation,
  ratedC: 75,
} as const;
