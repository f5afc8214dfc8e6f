/** The next number: the count of DSL calls so far. */
let next = 0;

/**
 * The number of this call, counted from 0 over all DSL functions of a plan. It identifies a cable's terminals and a scenario's
 * loads. If calls leave records, it is also the index of the call's record.
 */
export function takeNumber(): number {
  return next++;
}

/** For the runner of a plan: 0 before each plan, or the number that follows the calls that the runner made itself. */
export function continueNumberingAt(number: number): void {
  next = number;
}
