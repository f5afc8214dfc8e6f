import type { Period } from "../../model/read-periods.ts";
import { poorYear, worksheetAutonomy } from "../../standards/energy-practice.ts";
import { type BankMonths, monthlyBalanceOf } from "./bank-balance.ts";
import { bankModel, capacityInTheCold, heatedC, isLithium, reserveOf } from "./bank-of-plan.ts";
import type { Climate } from "./climate.ts";
import { daysOfPeriod } from "./days-of-period.ts";
import type { BankEnergy, HoursAtBank, MonthEnergy, SourceEnergy } from "./energy-result.ts";
import type { ConsumerAtBank, FlowsAtBank } from "./flows-at-bank.ts";
import { loadByHour, runsOf } from "./load-by-hour.ts";
import { monthsOf } from "./months-of-period.ts";
import { hoursOf, noSource, sourcesByHour, sumOf } from "./sources-by-hour.ts";
import { type Worksheet, worksheet } from "./worksheet.ts";

/** The balance of a bank over a period, hour by hour. A pure function; the same plan gives the same figures. */
export function energyOfPeriod(period: Period, climate: Climate, flows: FlowsAtBank): BankEnergy {
  const { values } = period;
  const { bank, temperatureC, days, used, load, sun, chargers, run } = hoursOfPeriod(period, climate, flows);
  const stated = used.filter(({ use }) => use !== undefined);
  const hours: HoursAtBank = {
    loadW: load.watts,
    sunW: sumOf(sun),
    chargersW: sumOf(chargers),
    ...{ flows, values, climate, bank, days, temperatureC, run },
  };
  const sources = [...sun, ...chargers].map(({ source }) => source);
  const months = monthsOf(hours, {
    sources,
    isJudged: stated.length > 0 || used.length === 0,
    year: yearOf(hours),
    poorYear: () => yearOf(hours, poorYear.sunShare),
  });
  return {
    batteries: flows.batteries,
    fullWh: bank.fullWh,
    withoutHours: used
      .filter(({ use }) => use === undefined)
      .map(({ record, name, lacks = "use" }) => ({ record, name, lacks })),
    ...unknownLengths(period, flows, stated),
    unsolved: flows.unsolved,
    consumers: load.each.map(({ consumer }) => consumer).sort((one, other) => other.dailyWh - one.dailyWh),
    sources,
    months,
    unmetHours: months.reduce((sum, { unmetHours }) => sum + unmetHours, 0),
    worksheet: worksheetOf(flows, months, sun[0]?.source),
    hours,
  };
}

/** Of the figures of a period: its consumers with hours, and its sources. A resistance draws more without the loss, never less. */
function unknownLengths(
  { values }: Period,
  { arrays, chargers, generators }: FlowsAtBank,
  consumers: readonly ConsumerAtBank[],
): Pick<BankEnergy, "withoutLength" | "drawLess"> {
  const running = chargers.filter(({ kind }) => hoursOf(kind, values) !== undefined);
  const losing = [
    ...consumers.filter(({ isResistance }) => !isResistance),
    ...[...arrays, ...running, ...generators],
  ];
  return {
    withoutLength: runsOf(losing.flatMap(({ withoutLength = [] }) => withoutLength)),
    drawLess: consumers.flatMap(({ isResistance, withoutLength, name }) =>
      isResistance && withoutLength ? [name] : [],
    ),
  };
}

/** The loads, the sources and the bank of a period, before they are balanced. Powers at the bank, by hour of the year. */
export function hoursOfPeriod({ values }: Period, climate: Climate, flows: FlowsAtBank) {
  // The plan may state how cold its place gets at most.
  const placeC = Math.min(...flows.batteries.map(({ lowestC = Number.NEGATIVE_INFINITY }) => lowestC));
  const temperatureC = climate.airC.map((air) => (values.bankHeated ? heatedC : Math.max(air, placeC)));
  const bank = bankModel(flows.batteries, temperatureC);
  const days = daysOfPeriod(values, climate);
  const used = flows.consumers.filter((consumer) => isUsed(values, consumer));
  const stated = used.filter(({ use }) => use !== undefined);
  return {
    load: loadByHour(stated, flows.sharedOhm, days),
    ...{ bank, temperatureC, days, used },
    ...sourcesByHour(flows, { values, climate, days }),
    run: { stretches: days.stretches, startWh: (bank.fullWh * (values.startPercent ?? 100)) / 100 },
  };
}

/** With a share of the sun. */
function yearOf({ bank, loadW, sunW, chargersW, run }: HoursAtBank, sunShare = 1): BankMonths {
  const chargers = chargersW === noSource ? {} : { chargersW };
  return monthlyBalanceOf(bank, { loadW, sourceW: sunW, sourceShare: sunShare, ...chargers }, run);
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
