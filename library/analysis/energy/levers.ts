import type { BatteryPart } from "../../model/network.ts";
import { hoursBetween } from "../../model/use-properties.ts";
import { arrayByHour } from "./array-by-hour.ts";
import type { BankModel } from "./bank-balance.ts";
import type { HoursAtBank } from "./energy-result.ts";
import { runningHours, type Schedule } from "./schedule.ts";
import { sunOn } from "./sources-by-hour.ts";

/**
 * One thing that could be changed, with everything else as it is, and the least of it with which the bank keeps up in every hour of the
 * period with the mean sun.
 */
export interface Lever {
  /**
   * - `bank`: Ah. - `array`: W of the modules, on the plan's own controllers and conductors.
   * - `array and controller`: the same, with controllers and conductors that grow with it.
   * - `controller`: its output current, A. - `driving`, `shore`: hours on each of its days.
   */
  readonly change: "bank" | "array" | "array and controller" | "controller" | "driving" | "shore";
  /** The record of the controller, which may be one of several. */
  readonly controllerRecord?: number;
  readonly now: number;
  /** Undefined: not even `most` is enough. */
  readonly least: number | undefined;
  readonly most: number;
  /** Sizes are multiples of it: a string of the plan's own batteries or modules, or a round figure. */
  readonly step: number;
  readonly stepIs: "own" | "round";
}

/** Changes to the hours at a bank; the rest stays as it is. */
export interface Tried {
  readonly bank?: BankModel;
  readonly sunW?: Float64Array;
  readonly chargersW?: Float64Array;
}

/** A lever, and the hours with another size of it. */
export interface TriedLever extends Omit<Lever, "least"> {
  /** The least size that makes sense. */
  readonly from: number;
  tried(size: number): Tried;
}

/** Times the present size of a bank or an array, beyond which none is looked for. */
const mostTimes = 32;

/** Sizes where the plan's own parts give no step. */
const round = { ah: 10, watts: 10, amps: 5, hours: 0.5 } as const;

/** The levers that a bank has: hours of driving only with a charger that then charges it, a controller only where its current limits. */
export function leversOf(hours: HoursAtBank): readonly TriedLever[] {
  return [
    ...[bankLever(hours), arrayLever(hours), arrayAndController(hours)],
    ...controllerLevers(hours),
    ...[chargerLever("engine", hours), chargerLever("shore", hours)],
  ].flatMap((lever) => lever ?? []);
}

function bankLever({
  bank,
  flows: {
    batteries,
    bank: { strings },
  },
}: HoursAtBank): TriedLever | undefined {
  const firsts = strings.flatMap(([first]) => batteries.filter(({ index }) => index === first));
  const now = firsts.reduce((sum, { capacityAh }) => sum + capacityAh, 0);
  const [one] = batteries;
  if (!one || now <= 0 || bank.fullWh <= 0) return undefined;
  const isOwn = batteries.every((other) => isAlike(one, other));
  const step = isOwn ? one.capacityAh : round.ah;
  return {
    change: "bank",
    ...{ now, step, stepIs: isOwn ? "own" : "round", from: step, most: mostTimes * now },
    tried: (ah) => ({ bank: scaled(bank, ah / now) }),
  };
}

function isAlike(one: BatteryPart, other: BatteryPart): boolean {
  return (
    one.capacityAh === other.capacityAh &&
    one.systemV === other.systemV &&
    one.stateOfHealthPercent === other.stateOfHealthPercent
  );
}

function scaled(bank: BankModel, times: number): BankModel {
  const each = (wh: number) => wh * times;
  return {
    ...bank,
    fullWh: bank.fullWh * times,
    floorWh: bank.floorWh.map(each),
    reserveWh: bank.reserveWh.map(each),
    greatestChargeW: bank.greatestChargeW * times,
  };
}

/** Their controllers keep their limits, and the loss in the wiring rises with the current. */
function arrayLever(hours: HoursAtBank): TriedLever | undefined {
  const { flows, climate, days } = hours;
  const times = (by: number) =>
    flows.arrays.map((array) => ({
      ...array,
      ratedW: array.ratedW * by,
      maxPowerA: array.maxPowerA * by,
      wiringLoss: array.wiringLoss * by,
      ...(array.dropV !== undefined && { dropV: array.dropV * by }),
    }));
  const sizes = arraySizes(hours);
  return (
    sizes && {
      change: "array",
      ...sizes,
      tried: (watts) => ({ sunW: sunOn(times(watts / sizes.now), { climate, days }) }),
    }
  );
}

function arrayAndController(hours: HoursAtBank): TriedLever | undefined {
  const sizes = arraySizes(hours);
  return (
    sizes && {
      change: "array and controller",
      ...sizes,
      tried: (watts) => ({ sunW: hours.sunW.map((power) => (power * watts) / sizes.now) }),
    }
  );
}

function arraySizes({ flows: { arrays } }: HoursAtBank) {
  const [first, ...others] = arrays;
  if (!first) return undefined;
  const now = arrays.reduce((sum, { ratedW }) => sum + ratedW, 0);
  const isOwn = others.length === 0;
  const step = isOwn ? first.ratedW / first.stringsInParallel : round.watts;
  const stepIs: Lever["stepIs"] = isOwn ? "own" : "round";
  return { now, step, stepIs, from: 0, most: mostTimes * now };
}

/** Of each controller whose current cuts off some power. */
function controllerLevers({ flows: { arrays }, climate, days }: HoursAtBank): readonly TriedLever[] {
  return [...new Set(arrays.map(({ controller }) => controller))].flatMap((controller) => {
    const own = arrays.filter((array) => array.controller === controller);
    const now = own.reduce((sum, { outputA }) => sum + outputA, 0);
    // The greatest power that its current cuts off, over the voltage of the battery.
    const wanted = own.map(
      (array) => 1 + greatest(arrayByHour(array, climate).cutW) / array.batteryV / array.outputA,
    );
    const missingA = now * (Math.max(...wanted) - 1);
    if (missingA < leastA) return [];
    const withLimit = (amps: number) =>
      arrays.map((array) =>
        array.controller === controller ? { ...array, outputA: (array.outputA * amps) / now } : array,
      );
    return [
      {
        change: "controller",
        controllerRecord: own[0]!.controllerRecord,
        ...{ now, step: round.amps, stepIs: "round", from: round.amps },
        most: Math.ceil((now + missingA) / round.amps) * round.amps,
        tried: (amps) => ({ sunW: sunOn(withLimit(amps), { climate, days }) }),
      },
    ];
  });
}

function greatest(hourly: Float64Array): number {
  return hourly.reduce((most, value) => Math.max(most, value), 0);
}

/** Less is no limit worth a larger controller, A. */
const leastA = 0.1;

function chargerLever(kind: "engine" | "shore", hours: HoursAtBank): TriedLever | undefined {
  const { flows, values, days, chargersW } = hours;
  const charger = flows.chargers.find((one) => one.kind === kind);
  if (!charger) return undefined;
  const stated = kind === "engine" ? values.driving : values.shore;
  const most =
    stated?.fromHour === undefined || stated.untilHour === undefined
      ? 24
      : hoursBetween(stated.fromHour, stated.untilHour);
  const hoursOf = (schedule: Schedule) => runningHours(schedule, days).shares;
  const sharesNow = stated && hoursOf(stated);
  return {
    change: kind === "engine" ? "driving" : "shore",
    ...{ now: stated ? (stated.hoursPerDay ?? most) : 0, step: round.hours, stepIs: "round", from: 0, most },
    tried: (hoursPerDay) => {
      const shares = hoursOf({ ...stated, hoursPerDay });
      const added = shares.map((share, at) => (share - (sharesNow?.[at] ?? 0)) * charger.bankW);
      return { chargersW: chargersW.map((watts, at) => watts + added[at]!) };
    },
  };
}
