import type { Citation } from "./citation.ts";

/**
 * Room for a conductor to bend in front of its terminal, in, for one and for two wires at the terminal; null where the table demands
 * none. Table 312.6(A): the conductor turns aside before the wall opposite its terminal.
 */
export const bendingSpace = {
  source: {
    document: "NFPA 70 (National Electrical Code)",
    section: "312.6, Table 312.6(A)",
    authority: "standard",
    confirmed: "read",
    note: "Read in a public reproduction; the row of 4/0 on a second page. Written for cabinets in buildings: on a board in a vehicle or boat it is a yardstick.",
  } satisfies Citation,
  rows: [
    { awg: [14, 12, 10], oneWireIn: null },
    { awg: [8, 6], oneWireIn: 1.5 },
    { awg: [4, 3], oneWireIn: 2 },
    { awg: [2], oneWireIn: 2.5 },
    { awg: [1], oneWireIn: 3 },
    { awg: ["1/0", "2/0"], oneWireIn: 3.5, twoWiresIn: 5 },
    { awg: ["3/0", "4/0"], oneWireIn: 4, twoWiresIn: 6 },
  ] satisfies readonly BendingSpaceRow[] as readonly BendingSpaceRow[],
} as const;

export interface BendingSpaceRow {
  readonly awg: readonly (number | string)[];
  readonly oneWireIn: number | null;
  /** Absent if the table prints none, or if its columns could not be paired. */
  readonly twoWiresIn?: number;
}

/** The same for sizes that the table does not have, as a multiple of the outside diameter of the insulated conductor. */
export const bendByDiameter = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "4 times the outside diameter: the figure was read in one unsigned sheet of a cable maker. The data sheet of the conductor comes first.",
  } satisfies Citation,
  timesDiameter: 4,
} as const;
