/** The next number: how many words were called so far. */
let next = 0;

/**
 * The number of this call, counted from 0 over all words of a plan. It is what a cable's terminals and a scenario's loads are
 * known by, and the index of the call's record where calls leave records.
 */
export function takeNumber(): number {
  return next++;
}

/** For what runs a plan: 0 before each, or the number at which the calls that it has made itself leave off. */
export function continueNumberingAt(number: number): void {
  next = number;
}
