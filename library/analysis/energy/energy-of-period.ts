import { dayOf } from "../../model/period-properties.ts";
import type { Period } from "../../model/read-periods.ts";
import { monthNames } from "../../model/use-properties.ts";
import { poorYear, worksheetAutonomy } from "../../standards/energy-practice.ts";
import { arrayOutput } from "./array-power.ts";
import { type BankModel, type BankYear, balanceOf, type Stretch } from "./bank-balance.ts";
import { bankModel, capacityInTheCold, heatedC, isLithium, reserveOf } from "./bank-of-plan.ts";
import { daysOfMonths, daysOfYear, firstDayOfMonth, meansByMonth, monthOfDay } from "./calendar.ts";
import type { Climate } from "./climate.ts";
import type { BankEnergy, ConsumerEnergy, MonthEnergy, SourceEnergy, Verdict } from "./energy-result.ts";
import type { ArrayAtBank, ChargerAtBank, ConsumerAtBank, FlowsAtBank } from "./flows-at-bank.ts";
import { irradianceOn, sunOfYear } from "./hours-of-sun.ts";
import { areSameDays, type Days, runningHours, type Schedule } from "./schedule.ts";
import { type Worksheet, worksheet } from "./worksheet.ts";

/** The balance of a bank over a period, hour by hour. A pure function; the same plan gives the same figures. */
export function energyOfPeriod(period: Period, climate: Climate, flows: FlowsAtBank): BankEnergy {
  const { bank, temperatureC, days, used, load, sun, chargers, run } = hoursOfPeriod(period, climate, flows);
  const { isIn } = days;
  const stated = used.filter(({ use }) => use !== undefined);
  const [sunW, chargersW] = [sumOf(sun), sumOf(chargers)];
  const yearWith = (sourceW: Float64Array) => balanceOf(bank, { loadW: load.watts, sourceW }, run);
  const sourceW = sunW.map((watts, at) => watts + chargersW[at]!);
  const months = monthsOf({
    hasHours: stated.length > 0 || used.length === 0,
    ...{ bank, isIn, loadW: load.watts, sourceW, temperatureC },
    year: yearWith(sourceW),
    poorYear: () => yearWith(sunW.map((watts, at) => watts * poorYear.sunShare + chargersW[at]!)),
  });
  return {
    batteries: flows.batteries,
    fullWh: bank.fullWh,
    withoutHours: used.filter(({ use }) => use === undefined).map(({ record, name }) => ({ record, name })),
    unsolved: flows.unsolved,
    consumers: load.each.map(({ consumer }) => consumer).sort((one, other) => other.dailyWh - one.dailyWh),
    sources: [...sun, ...chargers].map(({ source }) => source),
    months,
    unmetHours: months.reduce((sum, { unmetHours }) => sum + unmetHours, 0),
    worksheet: worksheetOf(flows, months, sun[0]?.source),
  };
}

/** The loads, the sources and the bank of a period, before they are balanced. Powers at the bank, by hour of the year. */
export function hoursOfPeriod({ values }: Period, climate: Climate, flows: FlowsAtBank) {
  const temperatureC = climate.airC.map((air) => (values.bankHeated ? heatedC : air));
  const bank = bankModel(flows.batteries, temperatureC);
  const stretches = stretchesOf(values);
  const isIn = daysIn(stretches);
  const days: Days = {
    isIn,
    count: isIn.filter(Boolean).length,
    firstDay: stretches[0]!.fromDay,
    clockAheadH: values.clockAheadH ?? 0,
    sun: sunOfYear(climate),
  };
  const used = flows.consumers.filter((consumer) => isUsed(values, consumer));
  return {
    ...{ bank, temperatureC, days, used },
    load: loadOf(
      used.filter(({ use }) => use !== undefined),
      flows.sharedOhm,
      days,
    ),
    sun: flows.arrays.map((array) => ofArray(array, climate, days)),
    chargers: flows.chargers.flatMap((charger) => ofCharger(charger, values, days)),
    run: { stretches, startWh: (bank.fullWh * (values.startPercent ?? 100)) / 100 },
  };
}

/** The plan does not name it among those that are not used in the period. */
export function isUsed({ notUsed }: Period["values"], { record }: { readonly record: number }): boolean {
  return !notUsed?.some(({ id }) => id === record);
}

/** With the greatest use and the coldest bank of any month, and the plane of the first array. */
function worksheetOf(
  { batteries, bank }: FlowsAtBank,
  months: readonly MonthEnergy[],
  sun: SourceEnergy | undefined,
): Worksheet | undefined {
  const loadWh = Math.max(...months.map(({ useWh }) => useWh));
  if (!sun?.planeKWh || !(loadWh > 0)) return undefined;
  const string = batteries.filter(({ index }) => bank.strings[0]?.includes(index));
  return worksheet({
    loadWh,
    nominalV: string.reduce((sum, { usualRestV }) => sum + usualRestV, 0),
    sunHours: months.map(({ month }) => sun.planeKWh![month]!),
    days: worksheetAutonomy.days,
    depth: 1 - Math.max(...batteries.map(reserveOf)) / 100,
    coldMultiplier: isLithium(batteries)
      ? 1
      : 1 / capacityInTheCold(Math.min(...months.map(({ bankC }) => bankC))),
  });
}

/** The days of a period, without gaps; the first stretch begins after the longest time outside of it. */
function stretchesOf({ months, fromDay, untilDay }: Period["values"]): readonly Stretch[] {
  if (fromDay !== undefined && untilDay !== undefined) {
    const [from, until] = [numberOf(fromDay), numberOf(untilDay)];
    return [{ fromDay: from, days: ((until - from + daysOfYear) % daysOfYear) + 1 }];
  }
  if (months === undefined || months.length === 12) return [{ fromDay: 0, days: daysOfYear }];
  const isIn = monthNames.map((name) => months.includes(name));
  const first = isIn.findIndex((is, month) => is && !isIn[(month + 11) % 12]);
  const stretches: { fromDay: number; days: number }[] = [];
  for (let step = 0; step < 12; step++) {
    const month = (first + step) % 12;
    if (!isIn[month]) continue;
    if (isIn[(month + 11) % 12] && step > 0) stretches.at(-1)!.days += daysOfMonths[month]!;
    else stretches.push({ fromDay: firstDayOfMonth[month]!, days: daysOfMonths[month]! });
  }
  return stretches;
}

function numberOf(written: string): number {
  const { month, day } = dayOf(written)!;
  return firstDayOfMonth[month]! + day - 1;
}

/** By day of the year. */
function daysIn(stretches: readonly Stretch[]): readonly boolean[] {
  const isIn = Array<boolean>(daysOfYear).fill(false);
  for (const { fromDay, days } of stretches)
    for (let step = 0; step < days; step++) isIn[(fromDay + step) % daysOfYear] = true;
  return isIn;
}

/**
 * The load on the bank: each consumer for its share of the hour, with the loss in its own conductors, and the loss in those that are
 * shared at the currents of the hour. `sum²` less the squares of each: that of one alone is in its own figure already.
 */
function loadOf(consumers: readonly ConsumerAtBank[], sharedOhm: number, days: Days): HourlyLoad {
  const watts = new Float64Array(daysOfYear * 24);
  const amps = new Float64Array(daysOfYear * 24);
  const squares = new Float64Array(daysOfYear * 24);
  const each = consumers.map(({ record, name, use, bankW, bankA, standbyW }) => {
    const { shares, sumH } = runningHours(use ?? always, days);
    const aboveStandbyW = bankW - standbyW;
    for (let at = 0; at < watts.length; at++) {
      const share = shares[at]!;
      const currentA = share * bankA;
      watts[at]! += share * aboveStandbyW;
      amps[at]! += currentA;
      squares[at]! += currentA * currentA;
    }
    const dailyWh = (sumH * aboveStandbyW) / days.count + 24 * standbyW;
    return {
      consumer: { record, name, dailyWh },
      wattsAt: (at: number) => shares[at]! * aboveStandbyW + standbyW,
    };
  });
  const standbyW = consumers.reduce((sum, one) => sum + one.standbyW, 0);
  for (let at = 0; at < watts.length; at++) {
    if (days.isIn[Math.floor(at / 24)]) watts[at]! += standbyW;
    watts[at]! += sharedOhm * (amps[at]! * amps[at]! - squares[at]!);
  }
  return { watts, each };
}

interface HourlyLoad {
  /** Of all of them, and the loss in the conductors that they share. */
  readonly watts: Float64Array;
  /** In the order of the plan; `wattsAt` for hours on days in the period. */
  readonly each: readonly {
    readonly consumer: ConsumerEnergy;
    readonly wattsAt: (at: number) => number;
  }[];
}

const always: Schedule = {};

interface HourlySource {
  readonly watts: Float64Array;
  readonly source: SourceEnergy;
}

function sumOf(sources: readonly HourlySource[]): Float64Array {
  const sum = new Float64Array(daysOfYear * 24);
  for (const { watts } of sources) for (let at = 0; at < sum.length; at++) sum[at]! += watts[at]!;
  return sum;
}

function ofArray(array: ArrayAtBank, climate: Climate, days: Days): HourlySource {
  const before = arraysBefore.get(array);
  if (before?.climate === climate && areSameDays(before.days, days)) return before.made;
  const made = arrayAfresh(array, climate, days.isIn);
  arraysBefore.set(array, { climate, days, made });
  return made;
}

/** An edit that leaves the charging of a bank as it was leaves an array the same object. */
const arraysBefore = new WeakMap<
  ArrayAtBank,
  { readonly climate: Climate; readonly days: Days; readonly made: HourlySource }
>();

function arrayAfresh(array: ArrayAtBank, climate: Climate, isIn: readonly boolean[]): HourlySource {
  const { tiltDeg, facingDeg = climate.latitudeDeg < 0 ? 0 : 180, unshaded, wiringLoss } = array;
  const light = irradianceOn(climate, { tiltDeg, azimuthDeg: facingDeg });
  const watts = new Float64Array(light.length);
  const cut = new Float64Array(light.length);
  for (let at = 0; at < light.length; at++) {
    const day = Math.floor(at / 24);
    if (light[at] === 0 || !isIn[day]) continue;
    const month = monthOfDay[day]!;
    const { deliveredW, cutW } = arrayOutput(array, light[at]! * unshaded[month]!, climate.airC[month]!);
    watts[at] = deliveredW * (1 - wiringLoss * Math.min(1, deliveredW / array.ratedW));
    cut[at] = cutW;
  }
  const dailyWh = meansByMonth(watts, isIn);
  const planeKWh = meansByMonth(light, isIn).map((wh) => wh / 1_000);
  return {
    watts,
    source: { kind: "sun", name: array.name, dailyWh, planeKWh, cutWh: meansByMonth(cut, isIn) },
  };
}

function ofCharger(
  { kind, names, bankW }: ChargerAtBank,
  values: Period["values"],
  days: Days,
): readonly HourlySource[] {
  const hours: Schedule | undefined = kind === "engine" ? values.driving : values.shore;
  if (hours === undefined) return [];
  const watts = runningHours(hours, days).shares.map((share) => share * bankW);
  return [{ watts, source: { kind, name: names.join(", "), dailyWh: meansByMonth(watts, days.isIn) } }];
}

function monthsOf(of: {
  readonly hasHours: boolean;
  readonly bank: BankModel;
  readonly isIn: readonly boolean[];
  readonly loadW: Float64Array;
  readonly sourceW: Float64Array;
  readonly year: BankYear;
  /** With the sun of a poor year; worked out only if a month keeps up without it. */
  readonly poorYear: () => BankYear;
  readonly temperatureC: readonly number[];
}): readonly MonthEnergy[] {
  const { hasHours, bank, isIn, loadW, sourceW, year, poorYear, temperatureC } = of;
  const [use, sources, unmet, spilled, lost] = [
    loadW,
    sourceW,
    year.unmetWh,
    year.spilledWh,
    year.lostWh,
  ].map((hourly) => meansByMonth(hourly, isIn)) as [
    readonly number[],
    readonly number[],
    readonly number[],
    readonly number[],
    readonly number[],
  ];
  let poor: BankYear | undefined;
  return daysOfMonths.flatMap((_, month): MonthEnergy[] => {
    const days = Array.from(
      { length: daysOfMonths[month]! },
      (_, day) => firstDayOfMonth[month]! + day,
    ).filter((day) => isIn[day]);
    if (days.length === 0) return [];
    const now = extremesOf(bank, year, days, month);
    const inPoorYear = () => {
      poor ??= poorYear();
      return extremesOf(bank, poor, days, month);
    };
    const sourcesWh = sources[month]!;
    const takesCharge = bank.chargeable[month]!;
    const usableWh = bank.fullWh - bank.reserveWh[month]!;
    return [
      {
        month,
        days: days.length,
        verdict: hasHours
          ? verdictOf(now, inPoorYear, sourcesWh * bank.efficiency < use[month]!)
          : "not judged",
        useWh: use[month]!,
        sourcesWh,
        spilledWh: spilled[month]!,
        unmetWh: unmet[month]!,
        lostWh: lost[month]!,
        ...now,
        autonomyDays: use[month]! > 0 ? usableWh / use[month]! : undefined,
        takesCharge,
        bankC: temperatureC[month]!,
      },
    ];
  });
}

interface Extremes {
  readonly lowest: number;
  readonly highest: number;
  readonly hoursBelowReserve: number;
  readonly unmetHours: number;
}

function extremesOf(bank: BankModel, year: BankYear, days: readonly number[], month: number): Extremes {
  let [lowestWh, highestWh, hoursBelowReserve, unmetHours] = [bank.fullWh, 0, 0, 0];
  for (const day of days)
    for (let at = day * 24; at < day * 24 + 24; at++) {
      const storedWh = year.storedWh[at]!;
      lowestWh = Math.min(lowestWh, storedWh);
      highestWh = Math.max(highestWh, storedWh);
      if (storedWh < bank.reserveWh[month]! - nearlyWh) hoursBelowReserve++;
      if (year.unmetWh[at]! > nearlyWh) unmetHours++;
    }
  const share = (wh: number) => (bank.fullWh > 0 ? wh / bank.fullWh : 0);
  return { lowest: share(lowestWh), highest: share(highestWh), hoursBelowReserve, unmetHours };
}

/** Rounding in the balance, Wh. */
const nearlyWh = 1e-6;

function verdictOf(now: Extremes, inPoorYear: () => Extremes, isShortOnAverage: boolean): Verdict {
  const runsShort = ({ unmetHours, hoursBelowReserve }: Extremes) => unmetHours > 0 || hoursBelowReserve > 0;
  if (runsShort(now)) return isShortOnAverage ? "not on average" : "runs short";
  return runsShort(inPoorYear()) ? "barely" : "keeps up";
}
