import { counted } from "../../rules/wording/format-number.ts";
import type { Drawing, DrawnElement, SheetNumber, View } from "./drawing.ts";
import type { PlacedGraph } from "./graph.ts";
import { drawLegend, legendOf } from "./legend.ts";
import type { Schematic } from "./schematic.ts";
import { fontFamily, px, type SvgWriter, textPx } from "./svg-writer.ts";
import { linesOfText } from "./text-measure.ts";
import { blockWidthPx, titleBlock } from "./title-block.ts";
import { xmlText } from "./xml-text.ts";

export interface SheetContent {
  readonly title: string;
  readonly view: View;
  /** A screen has no legend and no title block: the page around the picture names the plan and the elements. */
  readonly medium: "paper" | "screen";
  /** The colour edition. */
  readonly inColours: boolean;
  readonly scenario: string | undefined;
  readonly revision: string | undefined;
  readonly sheetNumber: SheetNumber | undefined;
  readonly schematic: Schematic;
  /** The diagram itself, in its own coordinates from 0, and its size. */
  readonly drawn: string;
  readonly diagram: Pick<PlacedGraph, "width" | "height">;
  readonly elements: readonly DrawnElement[];
}

/** The whole SVG: the diagram; below it the notices; on paper also the legend, and in the corner the title block. */
export function sheet(pen: SvgWriter, content: SheetContent): Omit<Drawing, "notices"> {
  const { schematic, diagram, elements } = content;
  const legend = legendOf(schematic);
  const onPaper = content.medium === "paper";
  const width = Math.max(
    diagram.width + 2 * marginPx,
    onPaper || schematic.notices.length > 0 ? leastWidthPx : 0,
  );
  const noticeLines = schematic.notices.flatMap((notice) =>
    linesOfText(notice, width - 2 * marginPx, textPx, "bold"),
  );
  const noticesTop = diagram.height + gapPx;
  const bottomTop = noticesTop + noticeLines.length * linePx + (noticeLines.length > 0 ? gapPx : 0);
  const legendBox = { x: 0, y: bottomTop, width: width - 2 * marginPx - blockWidthPx - gapPx, height: 0 };
  const drawnLegend = onPaper ? drawLegend(pen, legend, legendBox) : nothingDrawn;
  const block = onPaper
    ? titleBlock(
        pen,
        { title: content.title, facts: factsOf(content) },
        { x: width - 2 * marginPx - blockWidthPx, y: bottomTop },
      )
    : nothingDrawn;
  const height = bottomTop + Math.max(drawnLegend.height, block.height) + 2 * marginPx;
  const name = `${content.title}, ${viewWords[content.view]}`;
  const description = descriptionOf(content);
  const notices = noticeLines.map((text, index) =>
    pen.text({ x: 0, y: noticesTop + (index + 1) * linePx - 3 }, text, { weight: "bold" }),
  );
  return {
    elements,
    description,
    title: name,
    widthPx: Math.ceil(width),
    heightPx: Math.ceil(height),
    svg: [
      `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.ceil(width)}" height="${Math.ceil(height)}"`,
      // The view box includes the margin: everything else counts from the corner of the diagram.
      ` viewBox="${px(-marginPx)} ${px(-marginPx)} ${Math.ceil(width)} ${Math.ceil(height)}"`,
      ` font-family="${fontFamily}" font-size="${textPx}" role="group" aria-label="${xmlText(name)}">\n`,
      `<title>${xmlText(name)}</title>\n<desc>${xmlText(description)}</desc>\n`,
      "<metadata>Loomwright</metadata>\n",
      content.drawn,
      notices.length > 0 ? pen.group({ classes: ["loomwright-notices"] }, ...notices) : "",
      drawnLegend.svg,
      block.svg,
      "</svg>\n",
    ].join(""),
  };
}

const nothingDrawn = { svg: "", height: 0 };

const marginPx = 24;
const gapPx = 28;
const linePx = 16;
/** Narrow plans get a sheet that still holds a legend beside the title block. */
const leastWidthPx = 760;

const viewWords: Readonly<Record<View, string>> = {
  "one-line": "one-line diagram",
  wiring: "wiring diagram",
};

function descriptionOf({ schematic, view, scenario }: SheetContent): string {
  const { parts, notices } = schematic;
  const lines = schematic.lines.filter(({ isMounting }) => !isMounting);
  const said =
    view === "wiring"
      ? `Wiring diagram of ${counted(parts.length, "part")} and ${counted(lines.length, "conductor")}.`
      : `One-line diagram of ${counted(parts.length, "part")} and ${counted(lines.length, "line")}; one line shows both conductors.`;
  const state = scenario === undefined ? "" : `Currents and voltages as in the scenario "${scenario}".`;
  return [said, state, ...notices].filter(Boolean).join(" ");
}

function factsOf({ view, inColours, scenario, revision, sheetNumber }: SheetContent): readonly string[] {
  return [
    `${viewWords[view]}${inColours ? ", in conductor colours" : ""}`,
    scenario === undefined ? "no scenario chosen" : `scenario: ${scenario}`,
    ...(revision === undefined ? [] : [`revision: ${revision}`]),
    ...(sheetNumber ? [`sheet ${sheetNumber.number} of ${sheetNumber.of}`] : []),
  ];
}
