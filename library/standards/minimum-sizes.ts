import type { Citation } from "./citation.ts";

const subpartI = "33 CFR 183 (Boats and Associated Equipment), Subpart I (Electrical Systems)";

/** Thinnest conductors allowed in AWG, regardless of their current. */
export const minimumAwg = {
  single: {
    awg: 16,
    source: {
      document: subpartI,
      section: "183.425(e)",
      authority: "regulation",
      confirmed: "read",
      note: "Exempt under 183.425(g), and not known to this check: pigtails of less than 7 in, and wiring wholly inside a housing.",
    } satisfies Citation,
  },
  sheathed: {
    awg: 18,
    source: {
      document: subpartI,
      section: "183.425(d)",
      authority: "regulation",
      confirmed: "read",
      note: "An 18 AWG conductor may leave its sheath by at most 30 in (183.425(f)).",
    } satisfies Citation,
  },
} as const;

const iso10133 = "ISO 10133 (Small craft, extra-low-voltage d.c. installations)";

/** Thinnest conductors allowed in mm². The clause covers conductors longer than 200 mm. */
export const minimumMm2 = {
  single: {
    mm2: 1,
    source: {
      document: iso10133,
      section: "7.7",
      edition: "2012",
      authority: "standard",
      confirmed: "read",
    } satisfies Citation,
  },
  sheathed: {
    mm2: 0.75,
    source: {
      document: iso10133,
      section: "7.7",
      edition: "2012",
      authority: "standard",
      confirmed: "read",
      note: "Such a conductor may leave its sheath by at most 800 mm.",
    } satisfies Citation,
  },
  appliesAboveMm: 200,
} as const;
