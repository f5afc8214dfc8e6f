import type { Citation } from "./citation.ts";

/** Studs and screws that ring terminals are made for, and the hole that such a terminal has, mm. */
export const terminalStuds = {
  source: {
    document: "Ring terminals, usual holes for stud sizes",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Recalled. Hold the terminal against the stud before you crimp it.",
  } satisfies Citation,
  holeMm: {
    "#6": 3.7,
    "M3.5": 3.7,
    "#8": 4.3,
    M4: 4.3,
    "#10": 5.3,
    M5: 5.3,
    "1/4 in": 6.5,
    M6: 6.5,
    "5/16 in": 8.4,
    M8: 8.4,
    "3/8 in": 10.5,
    M10: 10.5,
    "1/2 in": 13,
    M12: 13,
  },
} as const;
