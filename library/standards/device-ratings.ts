import type { Citation, Confirmed } from "./citation.ts";

/**
 * Ratings of fuses and breakers that are made, by family. Scopes were read: rated voltage, breaking capacity, greatest rating.
 * Lists of ratings are mostly recalled.
 */
export const deviceFamilies = {
  "ISO 8820-3 Type F": {
    form: "blade, miniature",
    ratingsA: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
    ratedVoltagesV: [32, 58],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 1000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-3 (Road vehicles, blade fuse-links)",
      section: "Type F, ratings",
      edition: "2015",
      authority: "standard",
      confirmed: "memory",
    },
  },
  "ISO 8820-3 Type C": {
    form: "blade, medium",
    ratingsA: [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40],
    ratedVoltagesV: [32, 58],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 1000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-3 (Road vehicles, blade fuse-links)",
      section: "Type C, ratings",
      edition: "2015",
      authority: "standard",
      confirmed: "read",
      note: "Read as the 13 ratings of a maker's range.",
    },
  },
  "ISO 8820-3 Type E": {
    form: "blade, high current",
    ratingsA: [20, 25, 30, 35, 40, 50, 60, 70, 80, 100],
    ratedVoltagesV: [32, 58],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 1000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-3 (Road vehicles, blade fuse-links)",
      section: "Type E, ratings",
      edition: "2015",
      authority: "standard",
      confirmed: "memory",
      note: "25 and 35 A were read in a maker's range; the standard's colour code has none for them.",
    },
  },
  "ISO 8820-12 Type N": {
    form: "blade, sub-miniature",
    ratingsA: [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
    ratedVoltagesV: [32],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 1000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-12 (Road vehicles, fuse-links Type N)",
      section: "Type N, ratings",
      edition: "2020",
      authority: "standard",
      confirmed: "memory",
    },
  },
  "ISO 8820-13 Type P": {
    form: "blade, sub-miniature, three tabs",
    ratingsA: [5, 7.5, 10, 15, 20, 25, 30],
    ratedVoltagesV: [32],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 1000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-13 (Road vehicles, fuse-links Type P)",
      section: "Type P, ratings",
      edition: "2020",
      authority: "standard",
      confirmed: "memory",
    },
  },
  "ISO 8820-4 Type A": {
    form: "female contact",
    ratingsA: [20, 25, 30, 40, 50, 60],
    // Read of the whole part of the standard, not by type.
    ratedVoltagesV: [32, 58],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 1000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-4 (Road vehicles, female contact and bolt-in fuse-links)",
      section: "Type A, ratings",
      edition: "2016",
      authority: "standard",
      confirmed: "memory",
    },
  },
  "ISO 8820-5 Type SF 30": {
    form: "strip, bolt-down, 30 mm hole spacing",
    ratingsA: [30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200],
    ratedVoltagesV: [32],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 2000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-5 (Road vehicles, strip fuse-links)",
      section: "Type SF 30, ratings",
      edition: "2015",
      authority: "standard",
      confirmed: "memory",
    },
  },
  "ISO 8820-5 Type SF 51": {
    form: "strip, bolt-down, 51 mm hole spacing",
    ratingsA: [60, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500],
    ratedVoltagesV: [32],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 2000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-5 (Road vehicles, strip fuse-links)",
      section: "Type SF 51, ratings",
      edition: "2015",
      authority: "standard",
      confirmed: "memory",
    },
  },
  "ISO 8820-6": {
    form: "single bolt",
    ratingsA: [30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300],
    ratedVoltagesV: [58],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 2000,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 8820-6 (Road vehicles, single-bolt fuse-links)",
      section: "ratings",
      edition: "2019",
      authority: "standard",
      confirmed: "memory",
      note: "Only the scope was read: up to 300 A. The list is taken over from the strip fuses of ISO 8820-5.",
    },
  },
  "ISO 20934": {
    form: "strip, bolt-down, for networks of 48 V",
    ratingsA: [30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500],
    ratedVoltagesV: [70],
    ratedVoltageConfirmed: "read",
    breakingCapacityA: 2500,
    breakingCapacityConfirmed: "read",
    ratingsSource: {
      document: "ISO 20934 (Road vehicles, fuse-links with axial terminals for 48 V networks)",
      section: "Types SF36-70V, SF51-70V and SF56-70V, ratings",
      edition: "2019",
      authority: "standard",
      confirmed: "memory",
      note: "Only the scope was read: 30 to 500 A. The list is taken over from the strip fuses of ISO 8820-5.",
    },
  },
  "UL 248-15 Class T": {
    form: "compact, fast acting, current limiting",
    ratingsA: [
      1, 2, 3, 6, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250,
      300, 350, 400, 450, 500, 600, 700, 800, 1000, 1200,
    ],
    // Rated for alternating current; DC voltage and DC breaking capacity are optional and marked on the fuse itself.
    ratedVoltagesV: [],
    ratedVoltageConfirmed: "memory",
    breakingCapacityA: null,
    breakingCapacityConfirmed: "memory",
    ratingsSource: {
      document: "UL 248-15 (Low-voltage fuses, Class T)",
      section: "300 V, ratings",
      authority: "standard",
      confirmed: "memory",
    },
  },
  // Fixed wiring's standard ratings, the smaller ones added to them for fuses (1, 3, 6 and 10 A; 601 A left out), and
  // the 5 and 7.5 A breakers of FAA AC 43.13-1B Table 11-3. A breaker's voltage and breaking capacity are marked on it.
  "circuit breaker": {
    form: "breaker",
    ratingsA: [
      1, 3, 5, 6, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225,
      250, 300, 350, 400, 450, 500, 600, 700, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000, 5000, 6000,
    ],
    ratedVoltagesV: [],
    ratedVoltageConfirmed: "memory",
    breakingCapacityA: null,
    breakingCapacityConfirmed: "memory",
    ratingsSource: {
      document: "NFPA 70 (National Electrical Code)",
      section: "240.6(A), standard ampere ratings",
      authority: "standard",
      confirmed: "read",
      note: "1, 3, 6 and 10 A are listed there for fuses. 5 and 7.5 A from FAA AC 43.13-1B CHG 1, Table 11-3, which was read.",
    },
    furtherRatingsA: [2, 4, 8, 13, 16, 32, 63, 160, 315, 630],
    furtherRatingsSource: {
      document: "IEC 60898-1 and IEC 60947-2 (Circuit-breakers)",
      section: "preferred rated currents",
      authority: "standard",
      confirmed: "memory",
      note: "Breakers of the metric countries. A plan may state them; none is chosen by itself.",
    },
  },
} as const satisfies Record<string, DeviceFamily>;

export interface DeviceFamily {
  readonly form: string;
  /** In ascending order. */
  readonly ratingsA: readonly number[];
  /** DC voltages in which the family is made; empty if only the marking of the device states them. */
  readonly ratedVoltagesV: readonly number[];
  readonly ratedVoltageConfirmed: Confirmed;
  /** Interrupting rating that the standard requires; null if only the marking of the device states it. */
  readonly breakingCapacityA: number | null;
  readonly breakingCapacityConfirmed: Confirmed;
  readonly ratingsSource: Citation;
  /** Those of another series, in ascending order: made, and not chosen by itself. */
  readonly furtherRatingsA?: readonly number[];
  readonly furtherRatingsSource?: Citation;
}
