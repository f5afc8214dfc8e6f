import type { BankEnergy, PeriodEnergy } from "../../analysis/energy/energy-result.ts";
import { worstMonth, worstWeek } from "../../analysis/energy/worst-week.ts";
import { banksInWords } from "../../rules/wording/banks-in-words.ts";
import { gridOrigin, placesSource } from "../../standards/world.ts";
import { type ChartOf, energyChart } from "../energy/energy-chart.ts";
import { energyAssumptions, energyTables } from "../energy/energy-tables.ts";
import { refusedInWords } from "../energy/verdict-in-words.ts";
import type { Table } from "../table.ts";
import { tableForPeople } from "../table-for-people.ts";
import { tableOf, words } from "../table-of.ts";
import type { Chapter, ReportContext, Section } from "./chapter.ts";
import type { Block } from "./report-content.ts";
import { standingInWords } from "./sources.ts";

/** Whether each bank keeps up, month by month, for each period; no chapter for a plan without one. */
export function energyChapter(context: ReportContext): readonly Chapter[] {
  const { energy } = context.judgement;
  if (energy.length === 0) return [];
  return [
    {
      id: "energy",
      title: "Energy",
      orientation: "portrait",
      blocks: [{ kind: "notice", title: "How to read these figures", lines: howToRead }],
      sections: [
        ...energy.map((period, index) => periodSection(context, period, index)),
        attributionSection(energy),
      ],
    },
  ];
}

const howToRead = [
  "Each hour of a year is balanced: the use of the loads, the power of sun, engine and shore, and the charge that the bank takes. Hours are solar hours: the sun is highest at 12.",
  "The sun of a month is known to about 15 %, and single years differ: a month that only barely keeps up will not do so every year. A verdict is no promise.",
  "Not judged: a horizon, snow, and how single years differ from the mean.",
  "A bank that runs empty can leave a pump, an alarm, navigation lights or heating without power: do not let lives depend on these figures.",
] as const;

function periodSection(context: ReportContext, energy: PeriodEnergy, index: number): Section {
  const { period, climate, banks, refusedParts, withoutBank } = energy;
  const head = { id: `energy-${index + 1}`, title: period.name };
  if (!climate)
    return {
      ...head,
      blocks: [
        {
          kind: "notice",
          title: "Not judged",
          lines: ["The place of this period is not clear, so its sun and its temperature are unknown."],
        },
      ],
    };
  const tables = energyTables(energy);
  const without = withoutBank.map(({ name }) => name).join(", ");
  return {
    ...head,
    blocks: [
      ...(refusedParts.length > 0
        ? [
            {
              kind: "notice",
              title: "Not judged",
              lines: [`Not in these figures: ${refusedInWords(refusedParts)}.`],
            } as const,
          ]
        : []),
      ...(banks.length === 0 && refusedParts.length === 0
        ? [
            {
              kind: "notice",
              title: "Not judged",
              lines: [
                `No bank feeds a load or is charged by the sun${without && `: ${without} get their power elsewhere`}.`,
              ],
            } as const,
          ]
        : []),
      ...banks.flatMap((bank, at) => bankBlocks(energy, bank, at, tables)),
      { kind: "table", table: assumptionsTable(context, energy, index) },
    ],
  };
}

function bankBlocks(
  energy: PeriodEnergy,
  bank: BankEnergy,
  at: number,
  tables: readonly Table[],
): readonly Block[] {
  const of = energy.banks.length > 1 ? `-${at + 1}` : "";
  const own = (name: string): readonly Block[] =>
    tables
      .filter(({ id }) => id === `${name}${of}`)
      .map((table) => ({ kind: "table", table: tableForPeople(table) }));
  return [
    ...own("months"),
    figure({ kind: "months", energy, bank }, "month by month"),
    ...weekFigure(energy, bank),
    ...own("use"),
    ...own("least-changes"),
    ...own("worksheet"),
  ];
}

function weekFigure(energy: PeriodEnergy, bank: BankEnergy): readonly Block[] {
  const month = worstMonth(bank);
  const week = month === undefined ? undefined : worstWeek(energy.period, bank, month);
  return week ? [figure({ kind: "week", energy, bank, week }, "the worst week, hour by hour")] : [];
}

function figure(chart: ChartOf, subject: string): Block {
  const { svg, widthPx, heightPx, description } = energyChart([chart], "paper");
  const caption = `${chart.energy.period.name}, ${banksInWords(chart.bank)}: ${subject}`;
  return { kind: "figure", svg, widthPx, heightPx, caption, description };
}

/** As the command line has it, with the numbers of the sources in this report. */
function assumptionsTable({ sources }: ReportContext, energy: PeriodEnergy, index: number): Table {
  return tableOf<ReturnType<typeof energyAssumptions>[number]>(
    {
      id: `energy-assumptions-${index + 1}`,
      title: `${energy.period.name}: assumptions and methods`,
      notes: ["1 January counts as a Monday, and 29 February as the 28th."],
    },
    [
      words("item", "Item", ({ item }) => item),
      words("takenAs", "Taken as", ({ as }) => as),
      words("source", "Source", ({ source }) => sources.cite(source)),
      words("standing", "How it is known", ({ source }) => standingInWords(source)),
    ],
    energyAssumptions(energy),
  );
}

function attributionSection(energy: readonly PeriodEnergy[]): Section {
  const named = energy.some(({ places }) => places.length > 0);
  return {
    id: "energy-data",
    title: "Where the data come from",
    blocks: [
      {
        kind: "list",
        items: [
          `Sun and air temperature: satellite data of NASA GISS and a reanalysis of NCEP, ${gridOrigin}; put on another grid.`,
          ...(named
            ? [`Places: ${placesSource.document}; reduced to name, country and position of larger places.`]
            : []),
        ],
      },
    ],
  };
}
