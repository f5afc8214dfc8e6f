import { bankModel } from "../../analysis/energy/bank-of-plan.ts";
import {
  type BankEnergy,
  isShort,
  type MonthEnergy,
  type PeriodEnergy,
} from "../../analysis/energy/energy-result.ts";
import { monthNames } from "../../model/use-properties.ts";
import { banksInWords } from "../../rules/wording/banks-in-words.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { cutToWidth, textWidth } from "../diagram/text-measure.ts";
import { drawEntries, entryPx } from "./chart-legend.ts";
import { type ChartPiece, chartWidthPx } from "./chart-piece.ts";
import { linearScale, roundSteps, stacked } from "./chart-scale.ts";
import { drawGlyph, glyphRadiusPx } from "./drawn-glyph.ts";
import { fewSeries } from "./few-series.ts";
import { about, verdictAt } from "./verdict-in-words.ts";

/**
 * A row for each month: its verdict as a sign and in words, the yield of each source as a bar with the use as a mark across it, and the
 * lowest charge between empty and full, with the reserve.
 */
export function monthsChart(
  pen: SvgWriter,
  { energy, bank }: { readonly energy: PeriodEnergy; readonly bank: BankEnergy },
  topPx: number,
): ChartPiece {
  const title = `${energy.period.name}: ${banksInWords(bank)}, month by month`;
  const { months } = bank;
  const series = fewSeries(bank.sources.map(({ name, dailyWh }) => ({ name, values: dailyWh })));
  const layout = layoutOf(bank);
  const { bar, charge } = layout;
  const most = Math.max(...months.flatMap(({ useWh, sourcesWh }) => [useWh, sourcesWh]));
  const steps = stepsThatFit(most, bar.to - bar.from);
  const energyAt = linearScale(steps.at(-1)!, bar.from, bar.to);
  const chargeAt = linearScale(1, charge.from, charge.to);
  const rowsTop = topPx + headPx;
  const rowsBottom = rowsTop + months.length * rowPx;
  const reserves = reservesOf(bank);
  const upright = (x: number) =>
    pen.line(
      [
        { x, y: rowsTop - 4 },
        { x, y: rowsBottom },
      ],
      "fine",
    );
  const axis = [
    ...steps.map(
      (step) => upright(energyAt(step)) + label(pen, energyAt(step), rowsTop - 8, formatRounded(step)),
    ),
    ...[0, 0.5, 1].map(
      (share) => upright(chargeAt(share)) + label(pen, chargeAt(share), rowsTop - 8, `${share * 100}`),
    ),
  ];
  const rows = months.map((month, index) => {
    const middle = rowsTop + (index + 0.5) * rowPx;
    const edges = stacked(series.map(({ values }) => [values[month.month]!]));
    return [
      pen.text({ x: 0, y: middle + 4 }, monthNames[month.month]!, { weight: "bold" }),
      drawGlyph(pen, month.verdict, { x: glyphX, y: middle }),
      pen.text({ x: wordsX, y: middle + 4 }, verdictAt(bank, month.verdict), {
        weight: isShort(month.verdict) ? "bold" : "regular",
      }),
      ...edges.flatMap(({ lower, upper }, at) =>
        upper[0]! > lower[0]!
          ? [pen.filled(block(energyAt(lower[0]!), energyAt(upper[0]!), middle, 5.5), series[at]!.fill)]
          : [],
      ),
      useMark(pen, energyAt(month.useWh), middle),
      pen.line(
        [
          { x: charge.from, y: middle },
          { x: charge.to, y: middle },
        ],
        "fine",
      ),
      reserveMark(pen, chargeAt(reserves[index]!), middle),
      pen.circle({ x: chargeAt(month.lowest), y: middle }, 3.4, "filled"),
      pen.text({ x: charge.to + 8, y: middle + 4 }, `${about(month.lowest * 100).text} %`),
    ].join("");
  });
  const legend = drawEntries(
    pen,
    [
      ...series.map(({ name, fill }) => ({ mark: fill, text: name })),
      { mark: (_, { x, y }) => useMark(pen, x, y), text: "use" },
      { mark: (_, at) => pen.circle(at, 3.4, "filled"), text: "lowest charge" },
      { mark: (_, { x, y }) => reserveMark(pen, x, y), text: "reserve" },
    ],
    { x: 0, y: rowsBottom + 10, width: chartWidthPx },
  );
  return {
    title,
    description: `${title}. ${months.map((month) => sentenceOf(bank, month)).join(" ")}`,
    heightPx: rowsBottom + 10 + legend.heightPx - topPx,
    svg: [
      pen.text({ x: 0, y: topPx + 12 }, cutToWidth(title, chartWidthPx, 13, "bold"), {
        ...{ sizePx: 13, weight: "bold" },
      }),
      pen.text({ x: bar.from, y: topPx + 32 }, "Yield and use, Wh a day", { sizePx: entryPx }),
      pen.text({ x: charge.from, y: topPx + 32 }, "Lowest charge, % of a full bank", { sizePx: entryPx }),
      ...axis,
      ...rows,
      legend.svg,
    ].join(""),
  };
}

const headPx = 58;
const rowPx = 20;
const glyphX = 40;
const wordsX = glyphX + glyphRadiusPx + 8;

/** The bars begin after the longest verdict, and take all room that the charge leaves. */
function layoutOf(bank: BankEnergy) {
  const widest = Math.max(
    ...bank.months.map(({ verdict }) => textWidth(verdictAt(bank, verdict), 11, "bold")),
  );
  const charge = { from: chartWidthPx - 170, to: chartWidthPx - 46 };
  return { bar: { from: wordsX + widest + 22, to: charge.from - 34 }, charge };
}

function reservesOf({ batteries, months }: BankEnergy): readonly number[] {
  const { fullWh, reserveWh } = bankModel(
    batteries,
    months.map(({ bankC }) => bankC),
  );
  return reserveWh.map((wh) => (fullWh > 0 ? wh / fullWh : 0));
}

/** As many as leave room between their labels. */
function stepsThatFit(most: number, widthPx: number): readonly number[] {
  for (let count = 5; count > 1; count--) {
    const steps = roundSteps(most, count);
    const widest = Math.max(...steps.map((step) => textWidth(formatRounded(step), labelPx)));
    if ((steps.length - 1) * (widest + 10) <= widthPx) return steps;
  }
  return roundSteps(most, 1);
}

const labelPx = 9;

function label(pen: SvgWriter, x: number, y: number, text: string): string {
  return pen.text({ x, y }, text, { sizePx: labelPx, anchor: "middle", faint: true });
}

function block(from: number, to: number, middle: number, half: number) {
  return [
    { x: from, y: middle - half },
    { x: to, y: middle - half },
    { x: to, y: middle + half },
    { x: from, y: middle + half },
  ];
}

function useMark(pen: SvgWriter, x: number, middle: number): string {
  return pen.solid(block(x - 1.5, x + 1.5, middle, 9));
}

function reserveMark(pen: SvgWriter, x: number, middle: number): string {
  return pen.line([
    { x, y: middle - 6 },
    { x, y: middle + 6 },
  ]);
}

function sentenceOf(bank: BankEnergy, month: MonthEnergy): string {
  const { useWh, sourcesWh, lowest } = month;
  return `${monthNames[month.month]}: ${verdictAt(bank, month.verdict)}; use about ${about(useWh).text} Wh a day, yield about ${about(sourcesWh).text} Wh a day, lowest charge about ${about(lowest * 100).text} %.`;
}
