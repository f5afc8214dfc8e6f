import * as z from "zod";
import type { BankEnergy, MonthEnergy, PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { leastChangesOf } from "../../library/analysis/energy/least-changes.ts";
import { energyTables } from "../../library/documents/energy/energy-tables.ts";
import { leverWords } from "../../library/documents/energy/least-changes-table.ts";
import { tableJson } from "../../library/documents/table-json.ts";
import { monthNames } from "../../library/model/use-properties.ts";
import { name, version } from "../../library/package.json";

const month = z.enum(monthNames);

/** One month. Energies in Wh a day at the bank, states of charge as shares of a full charge. */
const monthSchema = z.strictObject({
  month,
  /** In the period. */
  days: z.int().min(1),
  /** "barely": with the mean sun, but not with 15 % less. "not on average": the sources do not even give the mean use. */
  verdict: z.enum(["not judged", "keeps up", "barely", "runs short", "not on average"]),
  useWhPerDay: z.number(),
  /** The energy that the sources can give; part of it may not be taken. */
  sourcesWhPerDay: z.number(),
  notTakenWhPerDay: z.number(),
  missingWhPerDay: z.number(),
  lostWhPerDay: z.number(),
  lowestCharge: z.number(),
  highestCharge: z.number(),
  hoursBelowReserve: z.int(),
  hoursWithoutSupply: z.int(),
  /** null without use. */
  autonomyDays: z.number().nullable(),
  takesCharge: z.boolean(),
  bankC: z.number(),
});

/** The least of one change with which the bank keeps up in every hour of the period, with the mean sun. */
const leverSchema = z.strictObject({
  change: z.enum(["bank", "array", "array and controller", "controller", "driving", "shore"]),
  /** Of `now`, `least`, `most` and `step`; hours on each day of driving or shore power. */
  unit: z.enum(["Ah", "W", "A", "h a day"]),
  now: z.number(),
  /** null: not even `most` is enough. */
  least: z.number().nullable(),
  most: z.number(),
  /** `least` is a multiple of it. */
  step: z.number(),
  /** "own": a string of the plan's own batteries or modules. "round": a round figure. */
  stepIs: z.enum(["own", "round"]),
});

/** The classic worksheet, which knows mean days only: SAND87-7023, worksheets 1 to 3. */
const worksheetSchema = z.strictObject({
  /** In the month of the greatest use, at the battery. */
  loadWhPerDay: z.number(),
  nominalV: z.number(),
  loadAhPerDay: z.number(),
  /** Over the wire and the battery factor. */
  correctedAhPerDay: z.number(),
  /** The month that asks for the greatest array; its sun in the plane of the modules, and the current of that array at its peak. */
  designMonth: month,
  sunHoursPerDay: z.number(),
  /** null without sun. */
  arrayA: z.number().nullable(),
  daysWithoutSun: z.number(),
  usableShare: z.number(),
  coldMultiplier: z.number(),
  bankAh: z.number(),
  bankOfCorrectedAh: z.number(),
});

/**
 * The shape of `loomwright energy --format json`. Within a `schemaVersion`, properties are added, never renamed or removed. Numbers have
 * twelve figures, which leaves out the noise of the arithmetic; files are relative to where the command ran, with forward slashes.
 */
export const energyJsonSchema = z.strictObject({
  schemaVersion: z.literal(1),
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  plans: z.array(
    z.strictObject({
      file: z.string(),
      periods: z.array(
        z.strictObject({
          period: z.string(),
          latitudeDeg: z.number(),
          longitudeDeg: z.number(),
          /** null if the plan gives degrees. */
          place: z.string().nullable(),
          banks: z.array(
            z.strictObject({
              batteries: z.array(z.string()),
              fullWh: z.number(),
              hoursWithoutSupply: z.int(),
              /** They draw, and the plan states no hours: with any of them, every verdict is "at best". */
              withoutHours: z.array(z.string()),
              /** Runs of unknown length, whose loss is in no figure: with any of them, every verdict is "at best". */
              withoutLength: z.array(z.string()),
              /** Resistances behind such a run: they draw less than these figures have. */
              drawLess: z.array(z.string()),
              /** No voltage exists at which they can run: their nominal power counts, without the loss in the wiring. */
              unsolved: z.array(z.string()),
              consumers: z.array(z.strictObject({ name: z.string(), whPerDay: z.number() })),
              sources: z.array(
                z.strictObject({
                  kind: z.enum(["sun", "engine", "shore", "generator"]),
                  name: z.string(),
                  /** By month from January; null for months outside of the period. */
                  whPerDay: z.array(z.number().nullable()).length(12),
                }),
              ),
              months: z.array(monthSchema),
              /** One change at a time, with everything else as it is; empty for a bank that is not judged. */
              leastChanges: z.array(leverSchema),
              /** null without sun or without use. */
              worksheet: worksheetSchema.nullable(),
            }),
          ),
          /** Consumers that no bank feeds: they are in none of the balances. */
          withoutBank: z.array(z.string()),
          assumptions: z.array(z.strictObject({ item: z.string(), takenAs: z.string(), source: z.string() })),
        }),
      ),
    }),
  ),
});

type EnergyJson = z.infer<typeof energyJsonSchema>;
type PeriodJson = EnergyJson["plans"][number]["periods"][number];

/** Periods of plans as text, ending in a line break; every figure as it was calculated, not rounded. */
export function energyJson(
  plans: readonly { readonly file: string; readonly periods: readonly PeriodEnergy[] }[],
): string {
  const report: EnergyJson = {
    schemaVersion: 1,
    tool: { name, version },
    plans: plans.map(({ file, periods }) => ({ file, periods: periods.map(periodJson) })),
  };
  return `${JSON.stringify(report, undefined, 2)}\n`;
}

function periodJson(energy: PeriodEnergy): PeriodJson {
  const { period, climate, places, banks, withoutBank } = energy;
  const [place] = places;
  const assumptions = tableJson(energyTables(energy).at(-1)!).rows;
  return {
    period: period.name,
    latitudeDeg: climate!.latitudeDeg,
    longitudeDeg: climate!.longitudeDeg,
    place: place ? `${place.name}, ${place.country}` : null,
    banks: banks.map(bankJson),
    withoutBank: withoutBank.map((consumer) => consumer.name),
    assumptions: assumptions.map(({ item, takenAs, source }) => ({
      item: String(item),
      takenAs: String(takenAs),
      source: String(source),
    })),
  };
}

function bankJson(bank: BankEnergy): PeriodJson["banks"][number] {
  return {
    batteries: bank.batteries.map((battery) => battery.name),
    fullWh: bank.fullWh,
    hoursWithoutSupply: bank.unmetHours,
    withoutHours: bank.withoutHours.map((consumer) => consumer.name),
    withoutLength: bank.withoutLength.map((run) => run.name),
    drawLess: [...bank.drawLess],
    unsolved: [...bank.unsolved],
    consumers: bank.consumers.map((consumer) => ({ name: consumer.name, whPerDay: consumer.dailyWh })),
    sources: bank.sources.map((source) => ({
      kind: source.kind,
      name: source.name,
      whPerDay: source.dailyWh.map((value) => (Number.isFinite(value) ? value : null)),
    })),
    months: bank.months.map(monthJson),
    leastChanges: leastChangesJson(bank),
    worksheet: worksheetJson(bank),
  };
}

function worksheetJson({ worksheet, months }: BankEnergy): z.infer<typeof worksheetSchema> | null {
  if (!worksheet) return null;
  const { given, loadAh, correctedAh, arrayA, designMonth, bankAh, bankOfCorrectedAh } = worksheet;
  const amps = arrayA[designMonth]!;
  return {
    loadWhPerDay: given.loadWh,
    nominalV: given.nominalV,
    loadAhPerDay: loadAh,
    correctedAhPerDay: correctedAh,
    designMonth: monthNames[months[designMonth]!.month]!,
    sunHoursPerDay: given.sunHours[designMonth]!,
    arrayA: Number.isFinite(amps) ? amps : null,
    daysWithoutSun: given.days,
    usableShare: given.depth,
    coldMultiplier: given.coldMultiplier,
    bankAh,
    bankOfCorrectedAh,
  };
}

function leastChangesJson(bank: BankEnergy): z.infer<typeof leverSchema>[] {
  if (bank.months.every(({ verdict }) => verdict === "not judged")) return [];
  return leastChangesOf(bank).levers.map(({ change, now, least, most, step, stepIs }) => ({
    ...{ change, unit: leverWords[change].unit, now, least: least ?? null, most, step, stepIs },
  }));
}

function monthJson(one: MonthEnergy): z.infer<typeof monthSchema> {
  return {
    month: monthNames[one.month]!,
    days: one.days,
    verdict: one.verdict,
    useWhPerDay: one.useWh,
    sourcesWhPerDay: one.sourcesWh,
    notTakenWhPerDay: one.spilledWh,
    missingWhPerDay: one.unmetWh,
    lostWhPerDay: one.lostWh,
    lowestCharge: one.lowest,
    highestCharge: one.highest,
    hoursBelowReserve: one.hoursBelowReserve,
    hoursWithoutSupply: one.unmetHours,
    autonomyDays: one.autonomyDays ?? null,
    takesCharge: one.takesCharge,
    bankC: one.bankC,
  };
}
