import { daysOfYear } from "./calendar.ts";
import type { Days } from "./days-of-period.ts";
import type { ConsumerEnergy } from "./energy-result.ts";
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
 * shared at the currents of the hour. `sum²` less the squares of each: that of one alone is in its own figure already.
 */
export function loadByHour(consumers: readonly ConsumerAtBank[], sharedOhm: number, days: Days): LoadByHour {
  const alike = new Map<RunningHours, Alike>();
  let standbyW = 0;
  const each = consumers.map(({ record, name, use, ...draw }) => {
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
      consumer: { record, name, dailyWh },
      wattsAt: (at: number) => hours.shares[at]! * aboveStandbyW + draw.standbyW,
    };
  });
  return { watts: sumOf([...alike.values()], { sharedOhm, standbyW, isIn: days.isIn }), each };
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
      let [watts, amps, squares] = [standbyW, 0, 0];
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
