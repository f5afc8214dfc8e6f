import type { BatteryPart } from "../../model/network.ts";
import type { Period } from "../../model/read-periods.ts";
import type { BalanceRun, BankModel } from "./bank-balance.ts";
import type { Climate } from "./climate.ts";
import type { Days } from "./days-of-period.ts";
import type { FlowsAtBank, IdleArray, Lacking } from "./flows-at-bank.ts";
import type { Place } from "./places.ts";
import type { Worksheet } from "./worksheet.ts";

/** The energy of a period: at each of its banks, or the reason why there is none. */
export interface PeriodEnergy {
  readonly period: Period;
  /** Undefined if the place is not known, or several places have its name. */
  readonly climate: Climate | undefined;
  /** The places that the name may mean: one if it is clear. Empty for a place by its degrees, and for an unknown one. */
  readonly places: readonly Place[];
  /** For a name that is not known: places whose names begin alike. */
  readonly alike: readonly Place[];
  readonly banks: readonly BankEnergy[];
  /** Batteries, arrays and chargers with a refused value that the balance reads: their banks are not in {@link banks}. */
  readonly refusedParts: readonly NamedConsumer[];
  /** Consumers used in the period that no bank feeds: they are in none of the balances. */
  readonly withoutBank: readonly NamedConsumer[];
  /** Arrays that charge no bank. */
  readonly idleArrays: readonly IdleArray[];
}

/** The balance of one bank. Energies in Wh at the bank, unrounded. */
export interface BankEnergy {
  readonly batteries: readonly BatteryPart[];
  /** Energy of a full bank, less its age, Wh. */
  readonly fullWh: number;
  /** Consumers without hours in the plan: with any of them, every verdict is "at best". */
  readonly withoutHours: readonly NamedConsumer[];
  /**
   * Runs of unknown length between the bank and its consumers or sources: their loss is not in the figures. With any of them, every
   * verdict is "at best".
   */
  readonly withoutLength: readonly NamedRun[];
  /** Resistances that such a run feeds: these figures have their power at the voltage of the bank, and they draw less, by name. */
  readonly drawLess: readonly string[];
  /** Consumers without an operating point, by name: their nominal power counts, without the loss in their wiring. */
  readonly unsolved: readonly string[];
  readonly consumers: readonly ConsumerEnergy[];
  readonly sources: readonly SourceEnergy[];
  /** In the order in which they are lived through: a winter begins with its first month. Only months with days in the period. */
  readonly months: readonly MonthEnergy[];
  readonly unmetHours: number;
  /** Of the months in {@link months}; undefined without sun or without use. */
  readonly worksheet: Worksheet | undefined;
  /** The figures behind the months. */
  readonly hours: HoursAtBank;
}

/** A bank and what flows at it, by hour of the year (day × 24 + hour of solar time), W at the bank; 0 outside of the period. */
export interface HoursAtBank {
  readonly flows: FlowsAtBank;
  readonly values: Period["values"];
  readonly climate: Climate;
  readonly bank: BankModel;
  readonly days: Days;
  /** Of the bank, by month, °C. */
  readonly temperatureC: readonly number[];
  readonly run: BalanceRun;
  readonly loadW: Float64Array;
  readonly sunW: Float64Array;
  /** Driving, shore power and generators. */
  readonly chargersW: Float64Array;
}

/** A circuit or cable. */
export interface NamedRun {
  readonly record: number;
  readonly name: string;
}

export interface NamedConsumer {
  readonly record: number;
  readonly name: string;
  /** A value of it was refused: its hours, or one without which the network has no such circuit. */
  readonly isInvalid?: true;
  readonly lacks?: Lacking;
}

export interface ConsumerEnergy {
  readonly record: number;
  readonly name: string;
  /** Mean of the period, Wh a day, the loss in its wiring included. */
  readonly dailyWh: number;
  /** The runs on its way whose length, and so whose loss, is unknown. Absent if there are none. */
  readonly withoutLength?: readonly NamedRun[];
}

export interface SourceEnergy {
  readonly kind: "sun" | "engine" | "shore" | "generator";
  /** Of an array. */
  readonly record?: number;
  readonly name: string;
  /** The energy that it can give, by month from January, Wh a day; NaN for months outside of the period. */
  readonly dailyWh: readonly number[];
  /** Of the sun: irradiation in the plane of the modules, by month, kWh/m² a day. */
  readonly planeKWh?: readonly number[];
  /** The energy that its controller's current limit cuts off, by month, Wh a day. */
  readonly cutWh?: readonly number[];
  /** Behind a controller that does not track: the energy that one that does would give besides, by month, Wh a day. */
  readonly missedWh?: readonly number[];
  /** Behind such a controller: hours a day in which hot cells have too little voltage to charge the bank, by month. */
  readonly tooHotH?: readonly number[];
}

/**
 * - `not judged`: no load of the bank states its hours.
 * - `keeps up`: nothing is unmet, and the reserve is never touched.
 * - `barely`: only with the mean sun, and not with that of a poor year.
 * - `runs short`: something is unmet, or the reserve is touched.
 * - `not on average`: the sources do not even give the month's mean use.
 */
export type Verdict = "not judged" | "keeps up" | "barely" | "runs short" | "not on average";

/** A figure that is missing can only make every verdict on the bank worse. */
export function isAtBest({ withoutHours, withoutLength }: BankEnergy): boolean {
  return withoutHours.length > 0 || withoutLength.length > 0;
}

/** The bank does not keep up. */
export function isShort(verdict: Verdict): boolean {
  return verdict === "runs short" || verdict === "not on average";
}

export interface MonthEnergy {
  /** From 0. */
  readonly month: number;
  /** In the period. */
  readonly days: number;
  readonly verdict: Verdict;
  /** Wh a day. */
  readonly useWh: number;
  readonly sourcesWh: number;
  readonly spilledWh: number;
  readonly unmetWh: number;
  /** Lost in charging and by self-discharge, Wh a day. */
  readonly lostWh: number;
  /** The lowest state of charge, as a share of a full charge. */
  readonly lowest: number;
  readonly highest: number;
  readonly hoursBelowReserve: number;
  readonly unmetHours: number;
  /** Usable capacity over the mean use, days; undefined without use. */
  readonly autonomyDays: number | undefined;
  /** False: the bank is too cold to be charged in this month. */
  readonly takesCharge: boolean;
  /** Temperature of the bank, °C. */
  readonly bankC: number;
}
