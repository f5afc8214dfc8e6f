import type { BankEnergy, PeriodEnergy, Verdict } from "../../analysis/energy/energy-result.ts";
import { monthNames } from "../../model/use-properties.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import { banksInWords } from "../../rules/wording/banks-in-words.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import { about, verdictAt } from "../energy/verdict-in-words.ts";

/** The effect of a change on one bank in one period; only if some figure of it visibly differs. */
export interface EnergyChange {
  readonly period: string;
  readonly bank: string;
  /** The month in which the bank lasts least without any source, days; undefined on a side without it, or without use. */
  readonly autonomyDays: Sides<number>;
  /** Months with a visible difference, or that only one side has. */
  readonly months: readonly MonthChange[];
}

interface Sides<Value> {
  readonly before: Value | undefined;
  readonly after: Value | undefined;
}

interface MonthChange extends Sides<MonthFigures> {
  /** From 0. */
  readonly month: number;
}

export interface MonthFigures {
  readonly verdict: Verdict;
  /** "at best keeps up". */
  readonly words: string;
  /** As a share of a full charge. */
  readonly lowest: number;
  readonly hoursWithoutSupply: number;
}

/** Pairs periods by their names, and banks by the names of their batteries. A period that one side could not judge is one without months. */
export function energyChanges(
  before: Pick<JudgedPlan, "energy">,
  after: Pick<JudgedPlan, "energy">,
): readonly EnergyChange[] {
  const [old, now] = [banksOf(before.energy), banksOf(after.energy)];
  return [...new Set([...old.keys(), ...now.keys()])].flatMap((key) => {
    const [was, is] = [old.get(key), now.get(key)];
    const { period, name } = (is ?? was)!;
    const months = monthNames.flatMap((_, month): MonthChange[] => {
      const change = { month, before: figuresOf(was?.bank, month), after: figuresOf(is?.bank, month) };
      return monthInWords(change.before) === monthInWords(change.after) ? [] : [change];
    });
    const autonomyDays = { before: leastAutonomy(was?.bank), after: leastAutonomy(is?.bank) };
    const isSame =
      months.length === 0 && autonomyInWords(autonomyDays.before) === autonomyInWords(autonomyDays.after);
    return isSame ? [] : [{ period, bank: name, autonomyDays, months }];
  });
}

function banksOf(energy: readonly PeriodEnergy[]) {
  return new Map(
    energy.flatMap(({ period, banks }) =>
      banks.map((bank) => {
        const name = banksInWords(bank);
        return [JSON.stringify([period.name, name]), { period: period.name, name, bank }] as const;
      }),
    ),
  );
}

function leastAutonomy(bank: BankEnergy | undefined): number | undefined {
  const days = bank?.months.flatMap(({ autonomyDays }) => autonomyDays ?? []) ?? [];
  return days.length > 0 ? Math.min(...days) : undefined;
}

function figuresOf(bank: BankEnergy | undefined, month: number): MonthFigures | undefined {
  const found = bank?.months.find((one) => one.month === month);
  if (!bank || !found) return undefined;
  const { verdict, lowest, unmetHours } = found;
  return { verdict, words: verdictAt(bank, verdict), lowest, hoursWithoutSupply: unmetHours };
}

/** "runs short, lowest charge about 0 %, 120 h without supply"; "" for a month that is not there. */
export function monthInWords(figures: MonthFigures | undefined): string {
  if (!figures) return "";
  const { words, lowest, hoursWithoutSupply } = figures;
  return [
    words,
    `lowest charge about ${about(lowest * 100).text} %`,
    ...(hoursWithoutSupply > 0 ? [`${formatRounded(hoursWithoutSupply)} h without supply`] : []),
  ].join(", ");
}

/** "about 1.9 days"; "" if it is not known. */
export function autonomyInWords(days: number | undefined): string {
  if (days === undefined) return "";
  const { text } = about(days);
  return `about ${text} ${text === "1" ? "day" : "days"}`;
}
