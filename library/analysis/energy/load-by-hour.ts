import type { NetworkConductor } from "../../model/network.ts";
import { daysOfYear } from "./calendar.ts";
import type { Days } from "./days-of-period.ts";
import type { ConsumerEnergy, NamedRun } from "./energy-result.ts";
import type { ConsumerAtBank } from "./flows-at-bank.ts";
import { type RunningHours, runningHours, type Schedule } from "./schedule.ts";

/** The load on a bank. */
export interface LoadByHour {
  /** By hour of the year, W. */
  readonly watts: Float64Array;
  /** In the order of the plan; `wattsAt` for hours on days in the period. */
  readonly each: readonly {
    readonly consumer: ConsumerEnergy;
    readonly wattsAt: (at: number) => number;
  }[];
}

/**
 * The load on the bank: each consumer for its share of the hour, with the loss in its own conductors, and the loss in those that are
 * shared at the currents of the hour. `sum²` less the squares of each: that of one alone is in its own figure already. Consumers of one
 * inverter share its whole way from the bank.
 */
export function loadByHour(consumers: readonly ConsumerAtBank[], sharedOhm: number, days: Days): LoadByHour {
  const alike = new Map<RunningHours, Alike>();
  let standbyW = 0;
  const each = consumers.map(({ record, name, use, withoutLength, ...draw }) => {
    const hours = runningHours(use ?? always, days);
    const aboveStandbyW = draw.bankW - draw.standbyW;
    const together = alike.get(hours) ?? { shares: hours.shares, watts: 0, amps: 0, squares: 0 };
    together.watts += aboveStandbyW;
    together.amps += draw.bankA;
    together.squares += draw.bankA ** 2;
    alike.set(hours, together);
    standbyW += draw.standbyW;
    const dailyWh = (hours.sumH * aboveStandbyW) / days.count + 24 * draw.standbyW;
    return {
      consumer: { record, name, dailyWh, ...(withoutLength && { withoutLength: runsOf(withoutLength) }) },
      wattsAt: (at: number) => hours.shares[at]! * aboveStandbyW + draw.standbyW,
    };
  });
  const watts = sumOf([...alike.values()], { sharedOhm, standbyW, isIn: days.isIn });
  for (const inverter of byInverter(consumers)) addWithin(watts, inverter, { sharedOhm, days });
  return { watts, each };
}

/** The run of each conductor, once: a circuit has two. */
export function runsOf(conductors: readonly NetworkConductor[]): readonly NamedRun[] {
  return [...new Map(conductors.map(({ record, name }) => [record, { record, name }])).values()];
}

/** The consumers of each inverter that has several. */
function byInverter(consumers: readonly ConsumerAtBank[]): readonly (readonly ConsumerAtBank[])[] {
  const parts = new Map<number, ConsumerAtBank[]>();
  for (const one of consumers) {
    if (one.ownOhm === 0 || one.bankA === 0) continue;
    const there = parts.get(one.part);
    if (there) there.push(one);
    else parts.set(one.part, [one]);
  }
  return [...parts.values()].filter(({ length }) => length > 1);
}

/** Adds the further loss of several consumers in the conductors of their inverter; the part in shared ones is in `watts`. */
function addWithin(
  watts: Float64Array,
  consumers: readonly ConsumerAtBank[],
  { sharedOhm, days }: { readonly sharedOhm: number; readonly days: Days },
): void {
  const ohm = consumers[0]!.ownOhm - sharedOhm;
  const draws = consumers.map(({ use, bankA }) => ({ ...runningHours(use ?? always, days), bankA }));
  for (let at = 0; at < watts.length; at++) {
    let [amps, squares] = [0, 0];
    for (const { shares, bankA } of draws) {
      const currentA = shares[at]! * bankA;
      amps += currentA;
      squares += currentA * currentA;
    }
    watts[at]! += ohm * (amps * amps - squares);
  }
}

const always: Schedule = {};

/** Consumers that run in the same hours: the sums of their draws, W, A and A². */
interface Alike {
  readonly shares: Float64Array;
  watts: number;
  amps: number;
  squares: number;
}

function sumOf(
  groups: readonly Alike[],
  {
    sharedOhm,
    standbyW,
    isIn,
  }: { readonly sharedOhm: number; readonly standbyW: number; readonly isIn: readonly boolean[] },
): Float64Array {
  const sum = new Float64Array(daysOfYear * 24);
  for (let day = 0; day < daysOfYear; day++) {
    if (!isIn[day]) continue;
    for (let at = day * 24; at < day * 24 + 24; at++) {
      let watts = standbyW;
      let amps = 0;
      let squares = 0;
      for (const group of groups) {
        const share = group.shares[at]!;
        if (share === 0) continue;
        watts += share * group.watts;
        amps += share * group.amps;
        squares += share * share * group.squares;
      }
      sum[at] = watts + sharedOhm * (amps * amps - squares);
    }
  }
  return sum;
}
