/** The rating of a switch for the start of an engine or a motor. */
export interface ContactsForSeconds {
  /**
   * Maximum current that its contacts may carry for the seconds of a start, A, as its maker states it: its cranking or intermittent
   * rating. Above 0, up to 10,000; not below `ratedA`.
   *
   * Left out: taken as 1.5 times `ratedA` for the starter motor of an engine, which is common practice; other starts are not checked.
   *
   * Example: `momentaryA: 500`
   */
  readonly momentaryA?: number;
}
