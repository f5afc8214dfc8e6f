/** How far a printed figure can be trusted. */
export type Confirmed =
  /** Seen in the document that is named. */
  | "read"
  /** Follows by arithmetic from a stated formula and stated inputs. */
  | "computed"
  /** Recalled, not seen: shown to the builder as an "unconfirmed figure". */
  | "memory";

/** What kind of authority stands behind a figure. */
type Authority =
  | "regulation"
  | "standard"
  | "maker's data"
  | "textbook"
  | "common practice"
  /** A limit that the builder set; no document stands behind it. */
  | "stated in the plan";

/** Where a table, a formula or a limit comes from. Every limit that a builder sees carries one. */
export interface Citation {
  /** The document's name, e.g. "33 CFR 183 (Boats and Associated Equipment), Subpart I". */
  readonly document: string;
  /** Clause, table or note, e.g. "183.425, Table 5". Empty for common practice and for limits stated in the plan. */
  readonly section: string;
  readonly edition?: string;
  readonly authority: Authority;
  readonly confirmed: Confirmed;
  /** What a reader must know before relying on it. */
  readonly note?: string;
}
