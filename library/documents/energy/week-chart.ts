import { firstDayOfMonth, weekdayOf } from "../../analysis/energy/calendar.ts";
import type { BankEnergy, PeriodEnergy } from "../../analysis/energy/energy-result.ts";
import type { WeekEnergy } from "../../analysis/energy/worst-week.ts";
import { monthNames, weekdayNames } from "../../model/use-properties.ts";
import { banksInWords } from "../../rules/wording/banks-in-words.ts";
import { formatRounded } from "../../rules/wording/format-number.ts";
import { listInWords } from "../../rules/wording/part-in-words.ts";
import type { Fill } from "../diagram/fill-patterns.ts";
import type { Point } from "../diagram/graph.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { cutToWidth } from "../diagram/text-measure.ts";
import { drawEntries, entryPx, type LegendEntry } from "./chart-legend.ts";
import { type ChartPiece, chartWidthPx } from "./chart-piece.ts";
import { linearScale, roundSteps, stacked } from "./chart-scale.ts";
import { fewSeries } from "./few-series.ts";
import { about } from "./verdict-in-words.ts";

/** Some days hour by hour: the power of each source, the use of each load, and the state of charge, over one axis of solar hours. */
export function weekChart(
  pen: SvgWriter,
  of: { readonly energy: PeriodEnergy; readonly bank: BankEnergy; readonly week: WeekEnergy },
  topPx: number,
): ChartPiece {
  const { energy, bank, week } = of;
  const title = `${energy.period.name}: ${banksInWords(bank)}, ${week.days === 7 ? "the worst week" : "the worst days"} of ${monthNames[week.month]}`;
  const used = week.loads.reduce((sum, { watts }) => sum + whOf(watts), 0);
  const shared =
    whOf(week.sharedLossW) > leastShownShare * used
      ? [{ name: "loss in shared wires", watts: week.sharedLossW }]
      : [];
  const notTaken = whOf(week.spilledW);
  const charging = powerStrip(pen, week, {
    ...{ top: topPx + 24, title: "Charging, W", powers: week.sources, none: "no source gives any power" },
    further: notTaken >= 0.5 ? [`about ${about(notTaken).text} Wh of it not taken`] : [],
  });
  const use = powerStrip(pen, week, {
    ...{ top: charging.bottom + 16, title: "Use, W", powers: [...week.loads, ...shared] },
    ...{ none: "no load states its hours", further: [] },
  });
  const charge = chargeStrip(pen, week, use.bottom + 16);
  const axis = hourAxis(pen, week, charge.bottom);
  return {
    title,
    description: descriptionOf(title, week),
    heightPx: axis.bottom - topPx,
    svg: [
      pen.text({ x: 0, y: topPx + 12 }, cutToWidth(title, chartWidthPx, 13, "bold"), {
        ...{ sizePx: 13, weight: "bold" },
      }),
      ...[charging.svg, use.svg, charge.svg, axis.svg],
    ].join(""),
  };
}

/** Of the use: a loss that is less cannot be seen. */
const leastShownShare = 0.005;

interface Strip {
  readonly svg: string;
  /** The lower edge of its field. */
  readonly bottom: number;
}

const plot = { from: 44, to: chartWidthPx - 6 };
const fieldPx = 96;
const emptyFieldPx = 16;

function powerStrip(
  pen: SvgWriter,
  week: WeekEnergy,
  strip: {
    readonly top: number;
    readonly title: string;
    readonly powers: WeekEnergy["loads"];
    readonly none: string;
    readonly further: readonly string[];
  },
): Strip {
  const series = fewSeries(strip.powers.map(({ name, watts }) => ({ name, values: watts })));
  const head = stripHead(pen, strip.title, strip.top, [
    ...series.map(({ name, values, fill }) => ({
      mark: fill,
      text: `${name}, about ${about(whOf(values)).text} Wh`,
    })),
    ...[...(series.length === 0 ? [strip.none] : []), ...strip.further].map((text) => ({
      mark: undefined,
      text,
    })),
  ]);
  const top = head.bottom + 8;
  const bottom = top + (series.length === 0 ? emptyFieldPx : fieldPx);
  const edges = stacked(series.map(({ values }) => values));
  const steps = roundSteps(Math.max(0, ...(edges.at(-1)?.upper ?? [])), 4);
  const powerAt = linearScale(steps.at(-1)!, bottom, top);
  const hourAt = hourScale(week);
  const areas = edges.map(({ lower, upper }, index) =>
    areaOf(lower, upper, hourAt, powerAt)
      .map((outline) => pen.filled(outline, series[index]!.fill))
      .join(""),
  );
  return {
    bottom,
    svg: [
      head.svg,
      field(pen, week, top, bottom),
      ...steps.map((step) => levelLine(pen, powerAt(step), formatRounded(step))),
      ...areas,
    ].join(""),
  };
}

/** The outlines between two edges, hour by hour, where there is anything between them. */
function areaOf(
  lower: readonly number[],
  upper: readonly number[],
  hourAt: (hour: number) => number,
  powerAt: (watts: number) => number,
): readonly (readonly Point[])[] {
  const outlines: (readonly Point[])[] = [];
  for (let from = 0; from < upper.length; from++) {
    if (upper[from]! <= lower[from]!) continue;
    let until = from;
    while (until < upper.length && upper[until]! > lower[until]!) until++;
    const along = (edge: readonly number[]) =>
      Array.from({ length: until - from }, (_, step) => from + step).flatMap((hour) => {
        const y = powerAt(edge[hour]!);
        return [
          { x: hourAt(hour), y },
          { x: hourAt(hour + 1), y },
        ];
      });
    outlines.push(withoutMiddles([...along(upper), ...along(lower).reverse()]));
    from = until;
  }
  return outlines;
}

/** Without points on a level line between two others. */
function withoutMiddles(points: readonly Point[]): readonly Point[] {
  return points.filter(
    ({ x, y }, index) =>
      !(points[index - 1]?.y === y && points[index + 1]?.y === y) ||
      (points[index - 1]?.x === x && points[index + 1]?.x === x),
  );
}

function chargeStrip(pen: SvgWriter, week: WeekEnergy, top: number): Strip {
  const unmet = whOf(week.unmetW);
  const head = stripHead(pen, "State of charge, %", top, [
    { mark: (_, { x, y }) => pen.line(levelFrom(x - 9, x + 9, y), "pair"), text: "charge" },
    { mark: (_, { x, y }) => pen.line(levelFrom(x - 9, x + 9, y), "negative"), text: "reserve" },
    ...(unmet > 0
      ? [{ mark: "solid" as Fill, text: `loads without supply, about ${about(unmet).text} Wh missing` }]
      : []),
  ]);
  const [fieldTop, bottom] = [head.bottom + 8, head.bottom + 8 + fieldPx];
  const chargeAt = linearScale(1, bottom, fieldTop);
  const hourAt = hourScale(week);
  const missing = areaOf(
    week.unmetW.map(() => 0),
    week.unmetW.map((watts) => (watts > 1e-6 ? 0.06 : 0)),
    hourAt,
    chargeAt,
  );
  return {
    bottom,
    svg: [
      head.svg,
      field(pen, week, fieldTop, bottom),
      ...[0, 0.5, 1].map((share) => levelLine(pen, chargeAt(share), String(share * 100))),
      ...missing.map((outline) => pen.filled(outline, "solid")),
      pen.line(levelFrom(plot.from, plot.to, chargeAt(week.reserve)), "negative"),
      pen.line(
        week.charge.map((share, hour) => ({ x: hourAt(hour), y: chargeAt(share) })),
        "pair",
      ),
    ].join(""),
  };
}

function stripHead(pen: SvgWriter, title: string, top: number, entries: readonly LegendEntry[]) {
  const legend = drawEntries(pen, entries, { x: plot.from, y: top + 16, width: plot.to - plot.from });
  return {
    svg: pen.text({ x: 0, y: top + 11 }, title, { weight: "bold" }) + legend.svg,
    bottom: top + 16 + legend.heightPx,
  };
}

/** A frame, and a line between two days. */
function field(pen: SvgWriter, week: WeekEnergy, top: number, bottom: number): string {
  const hourAt = hourScale(week);
  return Array.from({ length: week.days + 1 }, (_, day) =>
    pen.line(
      [
        { x: hourAt(day * 24), y: top },
        { x: hourAt(day * 24), y: bottom },
      ],
      "fine",
    ),
  ).join("");
}

function levelLine(pen: SvgWriter, y: number, text: string): string {
  return (
    pen.line(levelFrom(plot.from, plot.to, y), "fine") +
    pen.text({ x: plot.from - 6, y: y + 3 }, text, { sizePx: 9, anchor: "end", faint: true })
  );
}

function levelFrom(from: number, to: number, y: number): readonly Point[] {
  return [
    { x: from, y },
    { x: to, y },
  ];
}

function hourAxis(pen: SvgWriter, week: WeekEnergy, top: number): Strip {
  const hourAt = hourScale(week);
  const hours = Array.from({ length: week.days * 4 + 1 }, (_, step) => step * 6);
  const small = { sizePx: 9, anchor: "middle", faint: true } as const;
  return {
    bottom: top + 50,
    svg: [
      ...hours.map(
        (hour) =>
          pen.line([
            { x: hourAt(hour), y: top },
            { x: hourAt(hour), y: top + (hour % 24 === 0 ? 6 : 3) },
          ]) + pen.text({ x: hourAt(hour), y: top + 15 }, String(hour % 24), small),
      ),
      ...Array.from({ length: week.days }, (_, day) =>
        pen.text({ x: hourAt(day * 24 + 12), y: top + 29 }, dayInWords(week.firstDay + day), {
          anchor: "middle",
        }),
      ),
      pen.text({ x: (plot.from + plot.to) / 2, y: top + 46 }, "Solar hours: the sun is highest at 12", {
        ...{ sizePx: entryPx, anchor: "middle" },
      }),
    ].join(""),
  };
}

function hourScale({ days }: WeekEnergy): (hour: number) => number {
  return linearScale(days * 24, plot.from, plot.to);
}

/** "Tue 9 Jan". */
function dayInWords(day: number): string {
  const month = firstDayOfMonth.findLastIndex((first) => first <= day);
  return `${weekdayNames[weekdayOf(day)]} ${day - firstDayOfMonth[month]! + 1} ${monthNames[month]}`;
}

function whOf(watts: readonly number[]): number {
  return watts.reduce((sum, one) => sum + one, 0);
}

function descriptionOf(title: string, week: WeekEnergy): string {
  const { charge, loads, sources, unmetW, reserve, days, firstDay } = week;
  const giving = sources.filter(({ watts }) => whOf(watts) > 0);
  const named = (powers: WeekEnergy["loads"]) =>
    listInWords(
      powers.map(({ name, watts }) => `${name} about ${about(whOf(watts)).text} Wh`),
      10,
    );
  const lowest = charge.indexOf(Math.min(...charge));
  const hours = unmetW.filter((watts) => watts > 1e-6).length;
  const when = Math.min(days * 24 - 1, Math.max(0, lowest - 1));
  return [
    `${title}: ${dayInWords(firstDay)} to ${dayInWords(firstDay + days - 1)}, in solar hours.`,
    giving.length > 0 ? `Charging: ${named(giving)}.` : "No source gives any power.",
    loads.length > 0 ? `Use: ${named(loads)}.` : "No load states its hours.",
    `The charge is lowest, about ${about(charge[lowest]! * 100).text} %, on ${dayInWords(firstDay + Math.floor(when / 24))} at ${(when % 24) + 1} h; the reserve is ${about(reserve * 100).text} %.`,
    ...(hours > 0 ? [`Loads are without supply in ${hours} of these hours.`] : []),
  ].join(" ");
}
