import type { Period } from "../../model/read-periods.ts";
import { type ArrayByHour, arrayByHour, arrayOnce } from "./array-by-hour.ts";
import { daysOfYear, meansByMonth, monthOfDay } from "./calendar.ts";
import type { Climate } from "./climate.ts";
import type { Days } from "./days-of-period.ts";
import type { SourceEnergy } from "./energy-result.ts";
import type { ArrayAtBank, ChargerAtBank, FlowsAtBank, GeneratorAtBank } from "./flows-at-bank.ts";
import { runningHours, type Schedule } from "./schedule.ts";

/** A source by hour of the year, W at the bank, and by month. */
export interface SourceByHour {
  readonly watts: Float64Array;
  readonly source: SourceEnergy;
}

interface During {
  readonly values: Period["values"];
  readonly climate: Climate;
  readonly days: Days;
}

/** The sources of a bank in a period: the sun apart, because a poor year has less of it. */
export function sourcesByHour(
  { arrays, chargers, generators }: FlowsAtBank,
  during: During,
): { readonly sun: readonly SourceByHour[]; readonly chargers: readonly SourceByHour[] } {
  return {
    sun: arrays.map((array) => arraySource(array, during)),
    chargers: [
      ...chargers.flatMap((charger) => ofCharger(charger, during)),
      ...generators.map((generator) => ofGenerator(generator, during.days)),
    ],
  };
}

/** Without a source; never written to. */
export const noSource = new Float64Array(daysOfYear * 24);

export function sumOf(sources: readonly Pick<SourceByHour, "watts">[]): Float64Array {
  const [first, ...others] = sources;
  if (others.length === 0) return first?.watts ?? noSource;
  const sum = new Float64Array(daysOfYear * 24);
  for (const { watts } of sources) for (let at = 0; at < sum.length; at++) sum[at]! += watts[at]!;
  return sum;
}

/** The same object for the same array on the same days, with the same loss in its wiring. */
export function arraySource(array: ArrayAtBank, { climate, days }: Omit<During, "values">): SourceByHour {
  const byHour = arrayByHour(array, climate);
  const { name, record, wiringLoss, ratedW } = array;
  const before = known.get(byHour);
  const isSame =
    before?.days === days &&
    before.of.name === name &&
    before.of.record === record &&
    before.of.wiringLoss === wiringLoss;
  if (isSame) return before.source;
  const months = before?.days === days ? before.months : monthsOf(byHour, days.isIn, array.tracking);
  const source = sourceOf(array, { byHour, months, days });
  known.set(byHour, { days, of: { name, record, wiringLoss, ratedW }, months, source });
  return source;
}

const known = new WeakMap<
  ArrayByHour,
  {
    readonly days: Days;
    readonly of: Pick<ArrayAtBank, "name" | "record" | "wiringLoss" | "ratedW">;
    readonly months: MonthsOfArray;
    readonly source: SourceByHour;
  }
>();

/** Of arrays that somebody tries, W: kept by none of them, because the next try is another. */
export function sunOn(
  arrays: readonly ArrayAtBank[],
  { climate, days }: Omit<During, "values">,
): Float64Array {
  return sumOf(arrays.map((array) => ({ watts: behindWires(array, arrayOnce(array, climate), days) })));
}

function sourceOf(
  array: ArrayAtBank,
  {
    byHour,
    months,
    days,
  }: { readonly byHour: ArrayByHour; readonly months: MonthsOfArray; readonly days: Days },
): SourceByHour {
  const { name, record } = array;
  const watts = behindWires(array, byHour, days);
  return {
    watts,
    source: {
      kind: "sun",
      record,
      name,
      dailyWh: meansByMonth(watts, days.isIn),
      ...months,
    },
  };
}

function behindWires(
  { wiringLoss, ratedW }: ArrayAtBank,
  { deliveredW }: Pick<ArrayByHour, "deliveredW">,
  { isIn }: Days,
): Float64Array {
  const watts = new Float64Array(deliveredW.length);
  for (let day = 0; day < daysOfYear; day++) {
    if (!isIn[day]) continue;
    for (let at = day * 24; at < day * 24 + 24; at++) {
      const delivered = deliveredW[at]!;
      if (delivered > 0) watts[at] = delivered * (1 - Math.min(1, (wiringLoss * delivered) / ratedW));
    }
  }
  return watts;
}

type MonthsOfArray = ReturnType<typeof monthsOf>;

/** The figures of an array by month that its wiring does not change. */
function monthsOf(
  { light, cutW, missedW, tooHot }: ArrayByHour,
  isIn: readonly boolean[],
  tracking: boolean,
) {
  return {
    planeKWh: meansByMonth(light, isIn).map((wh) => wh / 1_000),
    cutWh: meansByMonth(cutW, isIn),
    ...(!tracking && { missedWh: meansByMonth(missedW, isIn), tooHotH: meansByMonth(tooHot, isIn) }),
  };
}

function ofGenerator({ name, bankW }: GeneratorAtBank, { isIn }: Days): SourceByHour {
  const watts = new Float64Array(daysOfYear * 24);
  for (let day = 0; day < daysOfYear; day++)
    if (isIn[day]) watts.fill(bankW[monthOfDay[day]!]!, day * 24, day * 24 + 24);
  return { watts, source: { kind: "generator", name, dailyWh: meansByMonth(watts, isIn) } };
}

/** In which chargers of a kind work; undefined if the period states none. */
export function hoursOf(kind: ChargerAtBank["kind"], values: Period["values"]): Schedule | undefined {
  return kind === "engine" ? values.driving : values.shore;
}

function ofCharger({ kind, names, bankW }: ChargerAtBank, { values, days }: During): SourceByHour[] {
  const hours = hoursOf(kind, values);
  if (hours === undefined) return [];
  const watts = runningHours(hours, days).shares.map((share) => share * bankW);
  return [{ watts, source: { kind, name: names.join(", "), dailyWh: meansByMonth(watts, days.isIn) } }];
}
