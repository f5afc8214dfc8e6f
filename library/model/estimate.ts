/** The figures behind a result that the plan does not state; each is present if the result depends on it. */
export interface Estimate {
  /** The lowest voltage at which constant powers draw, V. */
  readonly lowestV?: number;
  /** The voltage of the batteries at rest, or the lowest of several, V. */
  readonly restV?: number;
  /** That voltage follows from a charge below the published list. */
  readonly belowList?: true;
  /** It is all the current of several ways, because a length by which they share it is unknown. */
  readonly undivided?: true;
  /** The internal resistance of the batteries is the usual one of their chemistry. */
  readonly internalResistance?: true;
}
