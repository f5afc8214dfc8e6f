import type { BankEnergy, PeriodEnergy } from "../../analysis/energy/energy-result.ts";
import type { WeekEnergy } from "../../analysis/energy/worst-week.ts";
import { createPen, fontFamily, px, textPx } from "../diagram/svg-writer.ts";
import { xmlText } from "../diagram/xml-text.ts";
import { chartWidthPx } from "./chart-piece.ts";
import { monthsChart } from "./months-chart.ts";
import { weekChart } from "./week-chart.ts";

/** One subject of a chart: the months at a bank, or some days of one of them hour by hour. */
export type ChartOf =
  | { readonly kind: "months"; readonly energy: PeriodEnergy; readonly bank: BankEnergy }
  | {
      readonly kind: "week";
      readonly energy: PeriodEnergy;
      readonly bank: BankEnergy;
      readonly week: WeekEnergy;
    };

export interface Chart {
  /** A whole SVG document of the given size, with a title and a description. */
  readonly svg: string;
  readonly title: string;
  /** The figures, in sentences, for those who cannot see them. */
  readonly description: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * Charts of energy as one picture. The same results give the same bytes. `paper` is black on white; `screen` takes its colours from the
 * page around it, as drawings do. Patterns tell the areas apart, and no meaning rests on a colour.
 */
export function energyChart(charts: readonly ChartOf[], medium: "paper" | "screen"): Chart {
  const pen = createPen(medium);
  let heightPx = 0;
  const pieces = charts.map((chart) => {
    const top = heightPx === 0 ? 0 : heightPx + gapPx;
    const piece = chart.kind === "months" ? monthsChart(pen, chart, top) : weekChart(pen, chart, top);
    heightPx = top + piece.heightPx;
    return piece;
  });
  const title = pieces.map((piece) => piece.title).join("; ");
  const description = pieces.map((piece) => piece.description).join(" ");
  const [width, height] = [chartWidthPx + 2 * marginPx, Math.ceil(heightPx + 2 * marginPx)];
  return {
    ...{ title, description, widthPx: width, heightPx: height },
    svg: [
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"`,
      ` viewBox="${px(-marginPx)} ${px(-marginPx)} ${width} ${height}"`,
      ` font-family="${fontFamily}" font-size="${textPx}" role="img" aria-label="${xmlText(title)}">\n`,
      `<title>${xmlText(title)}</title>\n<desc>${xmlText(description)}</desc>\n`,
      "<metadata>Loomwright</metadata>\n",
      pen.definitions,
      ...pieces.map(({ svg, title: name, description: words }) =>
        pen.group({ classes: ["loomwright-chart"], title: name, description: words }, svg),
      ),
      "</svg>\n",
    ].join(""),
  };
}

const marginPx = 12;
const gapPx = 26;
