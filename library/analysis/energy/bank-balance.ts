import { monthOfDay } from "./calendar.ts";

/** A bank as the balance sees it. Energies at its nominal voltage. */
export interface BankModel {
  /** Energy of a full bank, Wh: its rating, less its age. */
  readonly fullWh: number;
  /** By month: the energy that stays in the bank when it is empty, because of its cut-off or the cold, Wh. */
  readonly floorWh: readonly number[];
  /** By month: the energy below which the reserve is touched, Wh. */
  readonly reserveWh: readonly number[];
  /** Energy stored over energy that charges. */
  readonly efficiency: number;
  /** Self-discharge in an hour, as a share of the energy in the bank. */
  readonly selfDischarge: number;
  /** The greatest power that it stores, W. */
  readonly greatestChargeW: number;
  /** Share of the full charge up to which it takes that power; above, it takes less in proportion to the missing charge. */
  readonly constantUpTo: number;
  readonly timeConstantH: number;
  /** By month: whether it can be charged at all; lithium cannot below freezing, and any bank not below its stated cut-off. */
  readonly chargeable: readonly boolean[];
}

/** By hour of the year, W. */
export interface Flows {
  readonly loadW: Float64Array;
  /** All sources, or those beside {@link chargersW}. */
  readonly sourceW: Float64Array;
  /** The share of `sourceW` that counts, as of the sun in a poor year; left out: all of it. */
  readonly sourceShare?: number;
  readonly chargersW?: Float64Array;
}

/**
 * The energy in the bank after each hour, what it could not serve or take, and what was lost in charging and by itself. By hour of the
 * year; NaN in `storedWh` for hours that were not run. sources = loads − unmet + spilled + lost + change of the energy in the bank.
 */
export interface BankYear {
  readonly storedWh: Float64Array;
  readonly unmetWh: Float64Array;
  readonly spilledWh: Float64Array;
  readonly lostWh: Float64Array;
}

/** The same by month, without the hours: sums over the days that were run, Wh, and extremes. */
export interface BankMonths {
  readonly unmetWh: Float64Array;
  readonly spilledWh: Float64Array;
  readonly lostWh: Float64Array;
  /** The least energy in the bank at the end of an hour, at most that of a full bank, and the greatest. */
  readonly lowestWh: Float64Array;
  readonly highestWh: Float64Array;
  /** Hours in which more than rounding is missing. */
  readonly hoursBelowReserve: Int32Array;
  readonly unmetHours: Int32Array;
}

/** Hours of a year that are run, in stretches without a gap; each begins with the bank at a charge. */
export interface Stretch {
  readonly fromDay: number;
  readonly days: number;
}

/** The hours of a balance, and the energy in the bank at the beginning of each stretch. */
export interface BalanceRun {
  readonly stretches: readonly Stretch[];
  readonly startWh: number;
}

/**
 * Steps a bank through the hours. A stretch that is a whole year is run twice, and the second year counts; any other begins with the
 * bank at `startWh` and runs once.
 */
export function balanceOf(bank: BankModel, flows: Flows, { stretches, startWh }: BalanceRun): BankYear {
  const hours = flows.loadW.length;
  const year: BankYear = {
    storedWh: new Float64Array(hours).fill(Number.NaN),
    unmetWh: new Float64Array(hours),
    spilledWh: new Float64Array(hours),
    lostWh: new Float64Array(hours),
  };
  for (const stretch of stretches) {
    let storedWh = Math.min(bank.fullWh, startWh);
    if (stretch.days * 24 === hours) storedWh = stepThrough(bank, flows, stretch, storedWh);
    stepThrough(bank, flows, stretch, storedWh, year);
  }
  return year;
}

/** {@link balanceOf} in sums by month: an edit needs no more, and each list of all hours costs time. */
export function monthlyBalanceOf(bank: BankModel, flows: Flows, run: BalanceRun): BankMonths {
  const year = emptyDays(flows.loadW.length / 24);
  for (const stretch of run.stretches) {
    let storedWh = Math.min(bank.fullWh, run.startWh);
    if (stretch.days * 24 === flows.loadW.length)
      storedWh = stepThrough(bank, flows, stretch, storedWh, year);
    stepThrough(bank, flows, stretch, storedWh, year);
  }
  return sumsByMonth(year, bank.fullWh);
}

/** By day of the year: the energy in the bank at its beginning, NaN if the day was not run, and {@link BankMonths} of the day. */
interface BankDays extends BankMonths {
  readonly startWh: Float64Array;
}

function emptyDays(count: number): BankDays {
  return { startWh: new Float64Array(count).fill(Number.NaN), ...emptySums(count) };
}

function emptySums(count: number): BankMonths {
  return {
    unmetWh: new Float64Array(count),
    spilledWh: new Float64Array(count),
    lostWh: new Float64Array(count),
    lowestWh: new Float64Array(count),
    highestWh: new Float64Array(count),
    hoursBelowReserve: new Int32Array(count),
    unmetHours: new Int32Array(count),
  };
}

function sumsByMonth(days: BankDays, fullWh: number): BankMonths {
  const months = emptySums(12);
  months.lowestWh.fill(fullWh);
  for (let day = 0; day < days.startWh.length; day++) {
    if (Number.isNaN(days.startWh[day])) continue;
    const month = monthOfDay[day]!;
    months.unmetWh[month]! += days.unmetWh[day]!;
    months.spilledWh[month]! += days.spilledWh[day]!;
    months.lostWh[month]! += days.lostWh[day]!;
    months.lowestWh[month] = Math.min(months.lowestWh[month]!, days.lowestWh[day]!);
    months.highestWh[month] = Math.max(months.highestWh[month]!, days.highestWh[day]!);
    months.hoursBelowReserve[month]! += days.hoursBelowReserve[day]!;
    months.unmetHours[month]! += days.unmetHours[day]!;
  }
  return months;
}

/** Whether everything is served and the reserve never touched: {@link balanceOf}, ended at the first hour that is short. */
export function keepsUp(bank: BankModel, flows: Flows, { stretches, startWh }: BalanceRun): boolean {
  return stretches.every((stretch) => {
    let storedWh = Math.min(bank.fullWh, startWh);
    if (stretch.days * 24 === flows.loadW.length) storedWh = stepThrough(bank, flows, stretch, storedWh);
    return !Number.isNaN(stepThrough(bank, flows, stretch, storedWh, "until short"));
  });
}

/** Rounding in the balance, Wh. */
const nearlyWh = 1e-6;

/**
 * The energy in the bank at the end of a stretch that begins with `storedWh`. Writes its hours or days, if there is a place. Days that
 * were run before are run again until one begins with the same energy: from there on the days are the same. "until short" ends at the
 * first hour that is not served or in which the reserve is touched, with NaN.
 */
function stepThrough(
  bank: BankModel,
  { loadW, sourceW, sourceShare = 1, chargersW }: Flows,
  { fromDay, days: count }: Stretch,
  storedWh: number,
  into?: BankYear | BankDays | "until short",
): number {
  const { fullWh, efficiency, selfDischarge, greatestChargeW, constantUpTo } = bank;
  const knee = constantUpTo * fullWh;
  const untilShort = into === "until short";
  const year = typeof into === "object" && "storedWh" in into ? into : undefined;
  const days = typeof into === "object" && "startWh" in into ? into : undefined;
  const daysOfYear = loadW.length / 24;
  let stored = storedWh;
  for (let step = 0; step < count; step++) {
    const day = (fromDay + step) % daysOfYear;
    const month = monthOfDay[day]!;
    const floor = bank.floorWh[month]!;
    const shortBelow = bank.reserveWh[month]! - nearlyWh;
    const takesCharge = bank.chargeable[month]!;
    if (days) {
      if (days.startWh[day] === stored) return stored;
      days.startWh[day] = stored;
    }
    let [ofDayUnmet, ofDaySpilled, ofDayLost, lowest, highest] = [0, 0, 0, fullWh, 0];
    let [belowReserve, withoutSupply] = [0, 0];
    for (let at = day * 24; at < day * 24 + 24; at++) {
      const faded = stored * selfDischarge;
      const start = stored - faded;
      const net = sourceW[at]! * sourceShare + (chargersW ? chargersW[at]! : 0) - loadW[at]!;
      let unmet = 0;
      let spilled = 0;
      let lost = faded;
      if (net > 0) {
        const offered = net * efficiency;
        // All of it is taken where the current is constant to the end of the hour: the common case, without an exponential.
        const isFree = takesCharge && offered <= greatestChargeW && start + offered <= knee;
        const taken = isFree ? offered : Math.min(offered, takesCharge ? acceptedWh(bank, start) : 0);
        const drawn = taken === offered ? net : taken / efficiency;
        stored = Math.min(fullWh, start + taken);
        spilled = net - drawn;
        lost += drawn - taken;
      } else {
        const given = Math.min(-net, Math.max(0, start - floor));
        stored = start - given;
        unmet = -net - given;
      }
      if (year) {
        year.storedWh[at] = stored;
        year.unmetWh[at] = unmet;
        year.spilledWh[at] = spilled;
        year.lostWh[at] = lost;
      } else if (days) {
        ofDayUnmet += unmet;
        ofDaySpilled += spilled;
        ofDayLost += lost;
        if (stored < lowest) lowest = stored;
        if (stored > highest) highest = stored;
        if (stored < shortBelow) belowReserve++;
        if (unmet > nearlyWh) withoutSupply++;
      } else if (untilShort && (unmet > nearlyWh || stored < shortBelow)) return Number.NaN;
    }
    if (!days) continue;
    days.unmetWh[day] = ofDayUnmet;
    days.spilledWh[day] = ofDaySpilled;
    days.lostWh[day] = ofDayLost;
    days.lowestWh[day] = lowest;
    days.highestWh[day] = highest;
    days.hoursBelowReserve[day] = belowReserve;
    days.unmetHours[day] = withoutSupply;
  }
  return stored;
}

/** The most that the bank stores within an hour, Wh: constant power up to a charge, then in proportion to the missing charge. */
function acceptedWh({ fullWh, greatestChargeW, constantUpTo, timeConstantH }: BankModel, stored: number) {
  const missing = fullWh - stored;
  if (missing <= 0 || greatestChargeW <= 0) return 0;
  if (constantUpTo >= 1) return Math.min(missing, greatestChargeW);
  const knee = constantUpTo * fullWh;
  const hoursAtFull = Math.max(0, knee - stored) / greatestChargeW;
  if (hoursAtFull >= 1) return greatestChargeW;
  const left = fullWh - Math.max(stored, knee);
  const taper = left * (1 - Math.exp(-(1 - hoursAtFull) / timeConstantH));
  return greatestChargeW * hoursAtFull + Math.min(taper, greatestChargeW * (1 - hoursAtFull));
}
