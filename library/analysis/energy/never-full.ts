import type { MonthEnergy } from "./energy-result.ts";

/** A month of a bank without a full charge. */
export function isNeverFull({ days, highest }: MonthEnergy): boolean {
  return days >= fewestDays && highest < asGoodAsFull;
}

/** In a few days of a month no full charge is missed. */
const fewestDays = 14;

/** As a share of a full charge; our choice: the last per cent takes hours. */
const asGoodAsFull = 0.98;
