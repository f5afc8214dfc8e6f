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

/** By hour of the year, W; all sources together. */
export interface Flows {
  readonly loadW: Float64Array;
  readonly sourceW: Float64Array;
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

/** Hours of a year that are run, in stretches without a gap; each begins with the bank at a charge. */
export interface Stretch {
  readonly fromDay: number;
  readonly days: number;
}

/**
 * Steps a bank through the hours. A stretch that is a whole year is run twice, and the second year counts; any other begins with the
 * bank at `startWh` and runs once.
 */
export function balanceOf(
  bank: BankModel,
  flows: Flows,
  { stretches, startWh }: { readonly stretches: readonly Stretch[]; readonly startWh: number },
): BankYear {
  const hours = flows.loadW.length;
  const year: BankYear = {
    storedWh: new Float64Array(hours).fill(Number.NaN),
    unmetWh: new Float64Array(hours),
    spilledWh: new Float64Array(hours),
    lostWh: new Float64Array(hours),
  };
  for (const { fromDay, days } of stretches) {
    let storedWh = Math.min(bank.fullWh, startWh);
    const isYear = days * 24 === hours;
    for (let round = isYear ? 0 : 1; round < 2; round++) {
      for (let step = 0; step < days * 24; step++) {
        const at = (fromDay * 24 + step) % hours;
        storedWh = hourOf(bank, storedWh, flows.sourceW[at]!, flows.loadW[at]!, at, year);
      }
    }
  }
  return year;
}

/** One hour; writes its result, and returns the energy in the bank at its end. */
function hourOf(
  bank: BankModel,
  before: number,
  sourceW: number,
  loadW: number,
  at: number,
  year: BankYear,
): number {
  const month = monthOfDay[Math.floor(at / 24)] ?? 0;
  const faded = before * bank.selfDischarge;
  const start = before - faded;
  const net = sourceW - loadW;
  let stored = start;
  let unmet = 0;
  let spilled = 0;
  let lost = faded;
  if (net > 0) {
    const most = bank.chargeable[month] ? acceptedWh(bank, start) : 0;
    const offered = net * bank.efficiency;
    const taken = Math.min(offered, most);
    const drawn = taken === offered ? net : taken / bank.efficiency;
    stored = Math.min(bank.fullWh, start + taken);
    spilled = net - drawn;
    lost += drawn - taken;
  } else {
    const given = Math.min(-net, Math.max(0, start - bank.floorWh[month]!));
    stored = start - given;
    unmet = -net - given;
  }
  year.storedWh[at] = stored;
  year.unmetWh[at] = unmet;
  year.spilledWh[at] = spilled;
  year.lostWh[at] = lost;
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
