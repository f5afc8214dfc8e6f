import { bestTilt } from "../../library/analysis/energy/best-tilt.ts";
import { daysOfYear, meansByMonth } from "../../library/analysis/energy/calendar.ts";
import { type BankEnergy, isShort, type PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { sunOfYear } from "../../library/analysis/energy/hours-of-sun.ts";
import { runsOf } from "../../library/analysis/energy/load-by-hour.ts";
import {
  about,
  notInFigures,
  refusedInWords,
  summaryOf,
  verdictAt,
  verdictGlyphs,
} from "../../library/documents/energy/verdict-in-words.ts";
import { monthNames } from "../../library/model/use-properties.ts";
import { leastChangeFixes } from "../../library/rules/fixes/least-change-fixes.ts";
import type { JudgedPlan } from "../../library/rules/rule.ts";
import { banksInWords } from "../../library/rules/wording/banks-in-words.ts";
import { sourceInWords } from "../../library/rules/wording/source-in-words.ts";
import { withoutLossIn } from "../../library/rules/wording/unknown-length.ts";
import { clearnessSource, placesSource, temperatureSource } from "../../library/standards/world.ts";
import { markdownWords } from "./plain-words.ts";

/**
 * The energy of a part or a circuit in each period, as Markdown: of a consumer its use, of a battery the state of charge of its bank, of
 * an array its yield. "" without a period, or if the record is none of these.
 */
export function energySummary({ energy }: JudgedPlan, record: number): string {
  const shown = energy.flatMap((period) =>
    period.banks.flatMap((bank) => [
      ...ofConsumer(period, bank, record),
      ...ofBattery(period, bank, record),
      ...ofArray(period, bank, record),
    ]),
  );
  const more = shown.length - mostShown;
  return [
    ...shown.slice(0, mostShown),
    ...(more > 0 ? [`… and ${more} more; \`loomwright energy\` has them all.`] : []),
  ].join("\n\n");
}

/** No one reads more than these in one popup. */
const mostShown = 3;

function ofConsumer({ period }: PeriodEnergy, bank: BankEnergy, record: number): readonly string[] {
  const own = bank.consumers.filter((one) => one.record === record);
  const sum = (of: readonly { readonly dailyWh: number }[]) =>
    of.reduce((all, { dailyWh }) => all + dailyWh, 0);
  const [ownWh, allWh] = [sum(own), sum(bank.consumers)];
  const name = `**Energy in ${markdownWords(period.name)}**`;
  if (own.length === 0)
    return bank.withoutHours.some((one) => one.record === record)
      ? [`${name}: not in the balance, because the plan does not state how long it runs (\`use\`).`]
      : [];
  const share = allWh > 0 ? (ownWh / allWh) * 100 : 0;
  const each =
    own.length > 1
      ? own.map((one) => `- ${markdownWords(one.name)}: about ${about(one.dailyWh).text} Wh a day`)
      : [];
  return [
    [
      `${name}: about **${about(ownWh).text} Wh a day**, ${about(share).text} % of the use of ${markdownWords(banksInWords(bank))}${autonomyCost(bank, ownWh, allWh)}. _Mean of the period, the loss in its wiring included${markdownWords(withoutLossIn(own.flatMap(({ withoutLength = [] }) => withoutLength)))}._`,
      ...(each.length > 0 ? ["", ...each] : []),
    ].join("\n"),
  ];
}

/** The hours by which the bank would last longer without it, in the month in which it lasts least. */
function autonomyCost({ months }: BankEnergy, ownWh: number, allWh: number): string {
  const usableWh = Math.min(
    ...months.flatMap(({ autonomyDays, useWh }) => (autonomyDays ?? Infinity) * useWh),
  );
  if (!Number.isFinite(usableWh) || !(ownWh > 0)) return "";
  if (allWh - ownWh < leastUseWh) return "; it is the whole use of the bank";
  const hours = 24 * (usableWh / (allWh - ownWh) - usableWh / allWh);
  return `; it costs about ${about(hours).text} h of autonomy`;
}

/** Wh a day. */
const leastUseWh = 0.5;

function ofBattery({ period }: PeriodEnergy, bank: BankEnergy, record: number): readonly string[] {
  if (!bank.batteries.some((battery) => battery.record === record)) return [];
  const rows = bank.months.map(({ month, verdict, lowest, autonomyDays }) => [
    monthNames[month]!,
    `${verdictGlyphs[verdict]} ${verdictAt(bank, verdict)}`,
    `${about(lowest * 100).text} %`,
    autonomyDays === undefined ? "" : about(autonomyDays).text,
  ]);
  const of = bank.batteries.length > 1 ? `, the bank of ${markdownWords(banksInWords(bank))}` : "";
  return [
    [
      `**Energy in ${markdownWords(period.name)}**${of}:`,
      table(["Month", "Verdict", "Lowest charge", "Autonomy, days"], rows),
      ...notInFigures(bank).map(markdownWords),
    ].join("\n\n"),
  ];
}

function ofArray({ period }: PeriodEnergy, bank: BankEnergy, record: number): readonly string[] {
  const { flows, climate, days } = bank.hours;
  return flows.arrays.flatMap((array, index) => {
    const source = bank.sources.filter(({ kind }) => kind === "sun")[index];
    if (array.record !== record || !source) return [];
    const best = bestTilt(array, climate, days);
    const rows = bank.months.map(({ month }) => [
      monthNames[month]!,
      about(source.dailyWh[month]!).text,
      about(best.dailyWh[month]!).text,
    ]);
    return [
      `**Energy in ${markdownWords(period.name)}**: the yield of the sun, at the bank, the loss in its wiring included${markdownWords(withoutLossIn(runsOf(array.withoutLength ?? [])))}. The best tilt there is about ${best.tiltDeg}°, towards the equator.\n\n${table(["Month", "Wh a day", `At ${best.tiltDeg}°, Wh a day`], rows)}`,
    ];
  });
}

/** A period: its verdicts; on its place, the sun and the air of the months, with their source. Undefined for any other record. */
export function periodSummary({ energy }: JudgedPlan, record: number, property: string | undefined) {
  const found = energy.find(({ period }) => period.record === record);
  if (!found) return undefined;
  const ofPlace = property !== undefined && placeProperties.includes(property);
  return { name: found.period.name, text: ofPlace ? climateInWords(found) : verdictsInWords(found) };
}

const placeProperties: readonly string[] = ["place", "latitudeDeg", "longitudeDeg", "irradiation"];

function verdictsInWords(energy: PeriodEnergy): string {
  if (!energy.climate) return "not judged, because its place is not clear.";
  const { refusedParts } = energy;
  if (energy.banks.length === 0 && refusedParts.length > 0)
    return `not judged: ${markdownWords(refusedInWords(refusedParts))}.`;
  if (energy.banks.length === 0) return "not judged: no bank feeds a load or is charged by the sun.";
  return energy.banks
    .map((bank) => {
      const runsShort = bank.months.some(({ verdict }) => isShort(verdict));
      const advice = runsShort ? leastChangeFixes(energy, bank).advice : undefined;
      const words = [...summaryOf(energy, bank), ...(advice === undefined ? [] : [advice])];
      return `${markdownWords(banksInWords(bank))}\n\n${words.map(markdownWords).join(" ")}`;
    })
    .join("\n\n");
}

function climateInWords({ climate, places }: PeriodEnergy): string {
  if (!climate) return "its place is not clear, so its sun is unknown.";
  const [place] = places;
  const { latitudeDeg, longitudeDeg, irradiation, airC } = climate;
  const sun = meansByMonth(sunOfYear(climate).globalW, Array<boolean>(daysOfYear).fill(true));
  const rows = monthNames.map((name, month) => [
    name,
    about(sun[month]! / 1_000).text,
    about(airC[month]!).text,
  ]);
  const sources = [
    irradiation ? "Sun: stated in the plan." : `Sun: ${sourceInWords(clearnessSource)}; known to about 15 %.`,
    `Air: ${sourceInWords(temperatureSource)}.`,
    ...(place ? [`Place: ${sourceInWords(placesSource)}, CC BY 4.0.`] : []),
  ];
  return [
    `${place ? `${markdownWords(`${place.name}, ${place.country}`)}, ` : ""}${latitudeDeg}°, ${longitudeDeg}°`,
    table(["Month", "Sun on level ground, kWh/m² a day", "Air, °C"], rows),
    `_${sources.join(" ")}_`,
  ].join("\n\n");
}

function table(titles: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    line(titles),
    line(titles.map((_, index) => (index === 0 ? "---" : "---:"))),
    ...rows.map(line),
  ].join("\n");
}
