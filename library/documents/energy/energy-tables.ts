import { isLithium } from "../../analysis/energy/bank-of-plan.ts";
import type {
  BankEnergy,
  ConsumerEnergy,
  MonthEnergy,
  PeriodEnergy,
  SourceEnergy,
} from "../../analysis/energy/energy-result.ts";
import { monthNames } from "../../model/use-properties.ts";
import { banksInWords } from "../../rules/wording/banks-in-words.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import { sourceInFull, sourceInWords } from "../../rules/wording/source-in-words.ts";
import { withoutLossIn } from "../../rules/wording/unknown-length.ts";
import type { Citation } from "../../standards/citation.ts";
import {
  chargeAcceptance,
  chargeEfficiency,
  leadAcidInTheCold,
  moduleLosses,
  modulePower,
  moduleTemperature,
  selfDischarge,
  usualReserve,
  worksheetAutonomy,
  worksheetFactors,
} from "../../standards/energy-practice.ts";
import { clearnessOfDays, orderOfDays, shareOfHour, skyOnPlane } from "../../standards/solar-geometry.ts";
import { usualChargeRates } from "../../standards/usual-charge-rates.ts";
import { clearnessSource, placesSource, temperatureSource } from "../../standards/world.ts";
import type { Cell, Table } from "../table.ts";
import { forPeople, forPrograms, numbers, quantity, tableOf, words } from "../table-of.ts";
import { leastChangesTable } from "./least-changes-table.ts";
import { about, namesInWords, summaryOf, verdictAt, verdictGlyphs } from "./verdict-in-words.ts";

/** The tables of one period: for each of its banks the months and the use, then the assumptions with their sources. */
export function energyTables(energy: PeriodEnergy): readonly Table[] {
  const { banks } = energy;
  return [
    ...banks.flatMap((bank, index) => {
      const of = banks.length > 1 ? `-${index + 1}` : "";
      return [
        monthTable(energy, bank, of),
        useTable(energy, bank, of),
        ...leastChangesTable(energy, bank, of),
        ...worksheetTable(energy, bank, of),
      ];
    }),
    assumptionTable(energy),
  ];
}

const kinds = ["sun", "engine", "shore", "generator"] as const;
const titleOf = { sun: "Sun", engine: "Engine", shore: "Shore", generator: "Generator" } as const;

/** Each month of the period: use, sources, state of charge, verdict. Wh a day. */
function monthTable(energy: PeriodEnergy, bank: BankEnergy, of: string): Table {
  const there = kinds.filter((kind) => bank.sources.some((source) => source.kind === kind));
  return tableOf<MonthEnergy>(
    {
      id: `months${of}`,
      title: `${energy.period.name}: ${banksInWords(bank)}`,
      notes: [...summaryOf(energy, bank), ...notesOf(energy, bank)],
    },
    [
      words("month", "Month", ({ month }) => monthNames[month]!),
      forPeople(
        words("sign", "Verdict", ({ verdict }) => `${verdictGlyphs[verdict]} ${verdictAt(bank, verdict)}`),
      ),
      forPrograms(words("verdict", "Verdict", ({ verdict }) => verdictAt(bank, verdict))),
      numbers("useWhPerDay", "Use, Wh/day", ({ useWh }) => about(useWh)),
      ...there.map((kind) =>
        numbers<MonthEnergy>(`${kind}WhPerDay`, `${titleOf[kind]}, Wh/day`, ({ month }) =>
          about(sumOf(bank.sources, kind, month)),
        ),
      ),
      numbers("notTakenWhPerDay", "Not taken, Wh/day", ({ spilledWh }) => about(spilledWh)),
      numbers("missingWhPerDay", "Missing, Wh/day", ({ unmetWh }) => about(unmetWh)),
      numbers("lowestPercent", "Lowest charge, %", ({ lowest }) => about(lowest * 100)),
      numbers("hoursBelowReserve", "Below reserve, h", ({ hoursBelowReserve }) => whole(hoursBelowReserve)),
      forPrograms(numbers("hoursWithoutSupply", "Without supply, h", ({ unmetHours }) => whole(unmetHours))),
      forPrograms(
        numbers("autonomyDays", "Autonomy, days", ({ autonomyDays }) =>
          autonomyDays === undefined ? null : about(autonomyDays),
        ),
      ),
    ],
    bank.months,
  );
}

function whole(value: number): Cell {
  return { value, text: formatRounded(value) };
}

function sumOf(sources: readonly SourceEnergy[], kind: SourceEnergy["kind"], month: number): number {
  return sources
    .filter((source) => source.kind === kind)
    .reduce((sum, { dailyWh }) => sum + dailyWh[month]!, 0);
}

function notesOf(
  { climate, withoutBank }: PeriodEnergy,
  { months, sources, fullWh, unsolved }: BankEnergy,
): string[] {
  const cold = months.filter(({ takesCharge }) => !takesCharge).map(({ month }) => monthNames[month]!);
  const cut = sources.filter(({ cutWh }) => months.some(({ month }) => (cutWh?.[month] ?? 0) > leastCutWh));
  return [
    `A full bank holds about ${about(fullWh).text} Wh${autonomyInWords(months)}. Hours are solar hours: the sun is highest at 12.`,
    `The sun is known to about 15 % (${sourceWords(climate)}).`,
    ...(cold.length > 0 ? [`In ${listInWords(cold, 12)} the bank is too cold to be charged.`] : []),
    ...(unsolved.length > 0
      ? [
          `No voltage exists at which ${listInWords(unsolved, 10)} can run: nominal power counts, without the loss in the wiring.`,
        ]
      : []),
    ...(withoutBank.length > 0 ? [`No bank feeds ${namesInWords(withoutBank)}: not in these figures.`] : []),
    ...cut.map(({ name }) => `The controller's current limits ${name} in some months.`),
  ];
}

/** From the month with the greatest use to that with the least. */
function autonomyInWords(months: readonly MonthEnergy[]): string {
  const days = months.flatMap(({ autonomyDays }) => autonomyDays ?? []);
  if (days.length === 0) return "";
  const [least, most] = [about(Math.min(...days)).text, about(Math.max(...days)).text];
  return `: without any source it serves the mean use for about ${least === most ? least : `${least} to ${most}`} days, down to its reserve`;
}

/** Wh a day. */
const leastCutWh = 1;

function sourceWords(climate: PeriodEnergy["climate"]): string {
  return climate?.irradiation ? "your own irradiation" : "the table of the world";
}

/** The use of each load and device, the greatest first. */
function useTable({ period }: PeriodEnergy, { consumers }: BankEnergy, of: string): Table {
  const all = consumers.reduce((sum, { dailyWh }) => sum + dailyWh, 0);
  return tableOf<ConsumerEnergy>(
    {
      id: `use${of}`,
      title: `${period.name}: use`,
      notes: [
        `At the bank, the loss in its wiring included${withoutLossIn(consumers.flatMap(({ withoutLength = [] }) => withoutLength))}.`,
      ],
    },
    [
      words("consumer", "Consumer", ({ name }) => name),
      numbers("whPerDay", "Wh/day", ({ dailyWh }) => about(dailyWh)),
      numbers("sharePercent", "Share, %", ({ dailyWh }) => about(all > 0 ? (dailyWh / all) * 100 : 0)),
    ],
    consumers,
  );
}

/** The classic worksheet beside the balance, for a reader who redoes it by hand. */
function worksheetTable(
  { period }: PeriodEnergy,
  { worksheet: sheet, months }: BankEnergy,
  of: string,
): Table[] {
  if (!sheet) return [];
  const { given, designMonth } = sheet;
  const month = monthNames[months[designMonth]!.month];
  const rows: readonly SheetRow[] = [
    ["a", "Load in the month of the greatest use, at the battery", given.loadWh, "Wh a day"],
    ["b", "Nominal voltage", given.nominalV, "V"],
    ["c", "Load: a / b", sheet.loadAh, "Ah a day"],
    ["d", "Wire factor", worksheetFactors.wire, ""],
    ["e", "Battery factor", worksheetFactors.battery, ""],
    ["f", "Corrected load: c / d / e", sheet.correctedAh, "Ah a day"],
    ["g", `Sun hours in the plane of the modules, ${month}`, given.sunHours[designMonth]!, "h a day"],
    arrayCurrent(sheet.arrayA[designMonth]!),
    ["i", "Days without sun", given.days, ""],
    ["j", "Share of the bank that may be used, above its reserve", given.depth, ""],
    ["k", "Multiplier for the cold", given.coldMultiplier, ""],
    ["l", "Bank: c / d × i / j × k", sheet.bankAh, "Ah"],
    ["m", "Bank with the battery factor too: f × i / j × k", sheet.bankOfCorrectedAh, "Ah"],
  ];
  return [
    tableOf<SheetRow>(
      {
        id: `worksheet${of}`,
        title: `${period.name}: the classic worksheet`,
        notes: [
          "It knows mean days only: the balance by the hour above decides.",
          `${sourceInFull(worksheetFactors.source)} Days: ${sourceInFull(worksheetAutonomy.source)}`,
        ],
      },
      [
        words("step", "Step", ([step]) => step),
        words("item", "Item", ([, item]) => item),
        numbers("value", "Value", ([, , value]) => (value === null ? null : quantity(value))),
        words("unit", "Unit", ([, , , unit]) => unit),
      ],
      rows,
    ),
  ];
}

type SheetRow = readonly [step: string, item: string, value: number | null, unit: string];

function arrayCurrent(amps: number): SheetRow {
  if (Number.isFinite(amps)) return ["h", "Current of the array at its peak: f / g", amps, "A"];
  return ["h", "Current of the array at its peak: without sun, no array is large enough", null, "A"];
}

interface EnergyAssumption {
  readonly item: string;
  readonly as: string;
  readonly source: Citation;
}

/** Everything that the plan does not state, and every method, with its source. */
export function energyAssumptions({
  period,
  climate,
  places,
  banks,
}: PeriodEnergy): readonly EnergyAssumption[] {
  const { bankHeated, irradiation } = period.values;
  const [place] = places;
  const where = climate && `${climate.latitudeDeg}°, ${climate.longitudeDeg}°`;
  const batteries = banks.flatMap((bank) => bank.batteries);
  const unreserved = batteries.filter(({ reservePercent }) => reservePercent === undefined);
  const lithium = batteries.length > 0 && isLithium(batteries);
  const lead = batteries.some(({ chemistry }) => chemistry !== "LiFePO4");
  const hasSun = banks.some(({ sources }) => sources.some(({ kind }) => kind === "sun"));
  const rows: readonly (EnergyAssumption | false)[] = [
    place !== undefined && {
      item: "Place",
      as: `${place.name}, ${place.country}: ${where}`,
      source: placesSource,
    },
    hasSun &&
      !irradiation && { item: "Sun of the months", as: "clearness at the place", source: clearnessSource },
    hasSun && {
      item: "Days of a month",
      as: "single days from its mean, from cloudy to clear",
      source: clearnessOfDays.source,
    },
    hasSun && { item: "Order of the days", as: "the same in every month", source: orderOfDays.source },
    hasSun && { item: "Hours of a day", as: "shares by the height of the sun", source: shareOfHour.source },
    hasSun && { item: "Light on tilted modules", as: "beam, sky and ground", source: skyOnPlane },
    !bankHeated && {
      item: "Temperature of the bank",
      as: "mean air of the month",
      source: temperatureSource,
    },
    hasSun && {
      item: "Losses of the modules",
      as: Object.entries(moduleLosses.percent)
        .filter(([, percent]) => percent > 0)
        .map(([name, percent]) => `${name} ${percent} %`)
        .join(", "),
      source: moduleLosses.source,
    },
    hasSun && {
      item: "Power of the modules",
      as: "by light and temperature of the cells",
      source: modulePower,
    },
    hasSun && {
      item: "Temperature of the modules",
      as: `${moduleTemperature.nominalOperatingC} °C nominal, ${moduleTemperature.powerPercentPerC} % power per °C`,
      source: moduleTemperature.source,
    },
    unreserved.length > 0 && {
      item: "Reserve",
      as: lithium
        ? `${usualReserve.lithiumPercent} %`
        : `${usualReserve.leadAcidPercent} % for lead-acid, ${usualReserve.lithiumPercent} % for LiFePO4`,
      source: usualReserve.source,
    },
    lithium
      ? {
          item: "Charge efficiency",
          as: `${chargeEfficiency.lithium * 100} % of the energy`,
          source: chargeEfficiency.lithiumSource,
        }
      : {
          item: "Charge efficiency",
          as: `${chargeEfficiency.leadAcid * 100} % of the energy`,
          source: chargeEfficiency.leadAcidSource,
        },
    {
      item: "Self-discharge",
      as: `${(lithium ? selfDischarge.lithium : selfDischarge.leadAcid) * 100} % a month`,
      source: selfDischarge.source,
    },
    {
      item: "Charging current near a full charge",
      as: `falls from ${(lithium ? chargeAcceptance.lithiumUpTo : chargeAcceptance.leadAcidUpTo) * 100} % on`,
      source: chargeAcceptance.source,
    },
    batteries.some(({ maxChargeA }) => maxChargeA === undefined) && {
      item: "Greatest charging current",
      as: "usual for the chemistry",
      source: usualChargeRates.source,
    },
    lead && { item: "Lead-acid in the cold", as: "capacity falls", source: leadAcidInTheCold.source },
  ];
  return rows.filter((row) => row !== false);
}

function assumptionTable(energy: PeriodEnergy): Table {
  return tableOf<EnergyAssumption>(
    {
      id: "assumptions",
      title: `${energy.period.name}: assumptions and methods`,
      notes: ["1 January counts as a Monday, and 29 February as the 28th."],
    },
    [
      words("item", "Item", ({ item }) => item),
      words("takenAs", "Taken as", ({ as }) => as),
      forPeople(words("sourceInShort", "Source", ({ source }) => sourceInWords(source))),
      forPrograms(words("source", "Source", ({ source }) => sourceInFull(source))),
    ],
    energyAssumptions(energy),
  );
}
