import type { Citation } from "./citation.ts";

const iso10133 = "ISO 10133 (Small craft, extra-low-voltage d.c. installations)";

/** Distance of the supports of a conductor that no trunking, conduit or tray supports throughout. */
export const supports = {
  everyMm: 450,
  source: {
    document: iso10133,
    section: "7.3",
    edition: "2012",
    authority: "standard",
    confirmed: "read",
  } satisfies Citation,
  /** Of the conductors from a battery to its disconnect switch. */
  toDisconnect: {
    everyMm: 300,
    /** The first one, from the terminal of the battery. */
    firstMm: 1_000,
    source: {
      document: iso10133,
      section: "7.4",
      edition: "2012",
      authority: "standard",
      confirmed: "read",
    } satisfies Citation,
  },
} as const;

const sheet: Citation = {
  document: "Common practice, no source",
  section: "",
  authority: "common practice",
  confirmed: "memory",
  note: "The cable's own data sheet comes first. 4 and 6 times the outside diameter, 6 and 9 times above 25 mm, were read in one unsigned sheet for unarmoured low-voltage cables; no public rule sets them for single conductors at 12 to 48 V.",
};

/** Least inner radius of a bend, in outside diameters. */
export const bendRadius = {
  source: sheet,
  laid: { upTo25mm: 4, above25mm: 6 },
  /** Pulled through a conduit. */
  pulled: { upTo25mm: 6, above25mm: 9 },
} as const;

/** Conductors through a bulkhead or another rigid surface are protected from abrasion. */
export const abrasion: Citation = {
  document: "33 CFR 183 (Boats and Associated Equipment), Subpart I (Electrical Systems)",
  section: "183.445(a)",
  authority: "regulation",
  confirmed: "read",
};

const boatScheme: Citation = {
  document: "Boat Safety Scheme (standards for non-private boats), 2002",
  section: "3.4",
  authority: "standard",
  confirmed: "read",
};

/** Distance of conductors from sources of heat. */
export const distanceFromHeat = { leastMm: 75, aimMm: 125, source: boatScheme } as const;

/** Distance of conductors from fuel and gas lines, unless they are in a conduit. */
export const distanceFromFuel = {
  leastMm: 30,
  source: { ...boatScheme, note: "The page prints 30 mm and 2 in together, which disagree." },
} as const;

/** A stated length this much longer than the way is worth a word. */
export const longerThanWay = {
  factor: 1.5,
  byM: 0.5,
  /** Lengths are measured and rounded to the centimetre: a stated one may be shorter by so much, m. */
  roundedToM: 0.01,
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
  } satisfies Citation,
} as const;
