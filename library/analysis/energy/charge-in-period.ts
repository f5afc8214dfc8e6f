import { monthOfDay } from "./calendar.ts";
import type { BankEnergy } from "./energy-result.ts";

/** The currents that the sources of a bank offer it in a period, at its poles and beside the loads. */
export interface ChargeInPeriod {
  /** The greatest of any hour, A. */
  readonly greatestA: number;
  /** The greatest that the bank may be charged with: as stated, else the usual one, A. */
  readonly limitA: number;
  /** Hours in which they offer more than that. */
  readonly hoursAbove: number;
}

/** Months in which the bank is too cold to be charged do not count. The bank is at rest, behind its internal resistance. */
export function chargeInPeriod({ batteries, hours }: BankEnergy): ChargeInPeriod {
  const { bank, flows, loadW, sunW, chargersW } = hours;
  const strings = flows.bank.strings.map((string) => batteries.filter(({ index }) => string.includes(index)));
  const restV = strings[0]!.reduce((sum, { usualRestV }) => sum + usualRestV, 0);
  const siemens = strings.reduce(
    (sum, string) => sum + 1 / string.reduce((ohm, { internal }) => ohm + internal.highOhm, 0),
    0,
  );
  const limitA = bank.greatestChargeW / bank.efficiency / restV;
  const limitW = limitA * (restV + limitA / siemens);
  let greatestW = 0;
  let hoursAbove = 0;
  for (let at = 0; at < loadW.length; at++) {
    const offeredW = sunW[at]! + chargersW[at]! - loadW[at]!;
    if (offeredW <= 0 || !bank.chargeable[monthOfDay[Math.floor(at / 24)]!]) continue;
    if (offeredW > greatestW) greatestW = offeredW;
    if (offeredW > limitW * slightlyMore) hoursAbove++;
  }
  // W = I (restV + I / siemens).
  const greatestA = (2 * greatestW) / (restV + Math.sqrt(restV ** 2 + (4 * greatestW) / siemens));
  return { greatestA, limitA, hoursAbove };
}

/** Rounding is no excess. */
const slightlyMore = 1.001;
