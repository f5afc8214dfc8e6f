/** How far a printed figure can be trusted. */
export type Confirmed =
  /** Seen in the named document. */
  | "read"
  /** Follows by arithmetic from a stated formula and stated inputs. */
  | "computed"
  /** Recalled, not seen: shown to the builder as an "unconfirmed figure". */
  | "memory";

/** The kind of authority for a figure. */
type Authority =
  | "regulation"
  | "standard"
  | "maker's data"
  | "textbook"
  | "common practice"
  /** A limit that the builder set, without a document. */
  | "stated in the plan";

/** Source of a table, a formula or a limit. Every limit that a builder sees has one. */
export interface Citation {
  /** The document's name, e.g. "33 CFR 183 (Boats and Associated Equipment), Subpart I". */
  readonly document: string;
  /** Clause, table or note, e.g. "183.425, Table 5". Empty for common practice and for limits stated in the plan. */
  readonly section: string;
  readonly edition?: string;
  readonly authority: Authority;
  readonly confirmed: Confirmed;
  /** Caveats that a reader must know before relying on it. */
  readonly note?: string;
}
