import { counted } from "../../rules/wording/format-number.ts";
import type { Box } from "../diagram/drawing.ts";
import { bySeverity, drawMark, type MarkKind, markPx, markWords } from "../diagram/finding-mark.ts";
import type { Point } from "../diagram/graph.ts";
import { drawLegend, type LegendEntry } from "../diagram/legend.ts";
import { fontFamily, type GroupWords, px, type SvgWriter, textPx } from "../diagram/svg-writer.ts";
import { cutToWidth, linesOfText, textWidth } from "../diagram/text-measure.ts";
import { blockWidthPx, titleBlock } from "../diagram/title-block.ts";
import { xmlText } from "../diagram/xml-text.ts";
import type { FrontElement, FrontView, FrontViewOptions } from "./front-view.ts";
import { lengthOnTape, type TapeUnit } from "./lengths-on-tape.ts";
import type { Piece } from "./lines.ts";
import type { Scale } from "./scale.ts";
import { strokeAcross } from "./shared-lines.ts";
import type { SurfaceContent } from "./surface-content.ts";

/** A part without a place, for the list below the drawing. */
interface Unplaced {
  readonly name: string;
  readonly mark: MarkKind | undefined;
  /** Of its group. */
  readonly words: GroupWords;
}

interface FrontSheet {
  /** The surface with everything on it, in px from its top left corner, and the dimensions beyond its edges. */
  readonly drawn: string;
  readonly options: FrontViewOptions;
  readonly content: SurfaceContent;
  readonly scale: Scale;
  readonly board: Box;
  readonly along: { readonly topPx: number; readonly leftPx: number };
  /** Width of the labels on the right of the surface. */
  readonly columnPx: number;
  /** The bottom of the surface, and of its labels. */
  readonly lowestPx: number;
  readonly unplaced: readonly Unplaced[];
  readonly elements: readonly FrontElement[];
  readonly heading: string;
  readonly surfaceMark: MarkKind | undefined;
  readonly unit: TapeUnit;
  readonly plan: string;
  readonly notices: readonly string[];
  readonly signs: Signs;
}

/** Those that the picture uses, for the legend. */
interface Signs {
  readonly marks: ReadonlySet<MarkKind>;
  readonly air: boolean;
  readonly terminals: boolean;
  readonly frontTerminals: boolean;
  readonly channels: boolean;
  readonly openings: boolean;
  readonly conductors: boolean;
  /** Several conductors in one line. */
  readonly shared: boolean;
}

/** The whole SVG: heading, surface and dimensions; below, the parts without a place, the notices, a bar for the scale; on paper, the legend and the title block. */
export function frontSheet(pen: SvgWriter, sheet: FrontSheet): FrontView {
  const { options, content, scale, board, along, unit, heading } = sheet;
  const onPaper = options.medium === "paper";
  const left = -along.leftPx;
  const right = Math.max(board.width + sheet.columnPx, left + leastWidthPx);
  const room = right - left;
  const headingY = -along.topPx - 10;
  const mark = sheet.surfaceMark
    ? drawMark(pen, sheet.surfaceMark, { x: left + markPx / 2, y: headingY - 5 })
    : "";
  const headingX = left + (mark === "" ? 0 : markPx + 6);
  const pieces = [
    mark,
    pen.text({ x: headingX, y: headingY }, cutToWidth(heading, room - 20, 13, "bold"), {
      sizePx: 13,
      weight: "bold",
    }),
    sheet.drawn,
  ];
  let y = sheet.lowestPx + gapPx;
  pieces.push(scaleBar(pen, { x: 0, y }, scale, unit));
  y += 26;
  const list = unplacedList(pen, sheet.unplaced, { x: left, y, width: room });
  pieces.push(list.svg);
  y += list.height;
  const notices = sheet.notices.flatMap((notice) => linesOfText(notice, room, textPx, "bold"));
  if (notices.length > 0) {
    pieces.push(
      pen.group(
        { classes: ["loomwright-notices"] },
        ...notices.map((text, index) =>
          pen.text({ x: left, y: y + (index + 1) * linePx }, text, { weight: "bold" }),
        ),
      ),
    );
    y += notices.length * linePx;
  }
  y += gapPx;
  const title = `${sheet.plan}, front view of ${content.surface.name}`;
  if (onPaper) {
    const legend = drawLegend(pen, legendOf(sheet), {
      x: left,
      y,
      width: room - blockWidthPx - gapPx,
      height: 0,
    });
    const block = titleBlock(
      pen,
      { title: sheet.plan, facts: factsOf(sheet) },
      { x: right - blockWidthPx, y },
    );
    pieces.push(legend.svg, block.svg);
    y += Math.max(legend.height, block.height);
  }
  const top = headingY - 20;
  const [x0, y0] = [left - marginPx, top - marginPx];
  const width = Math.ceil(right + marginPx - x0);
  const height = Math.ceil(y + marginPx - y0);
  const description = descriptionOf(sheet);
  // The view box includes the margin: everything else counts from the corner of the surface.
  return {
    ...{ title, description, widthPx: width, heightPx: height },
    plan: sheet.plan,
    surface: content.index,
    surfaceName: content.surface.name,
    frame: { pxPerMm: scale.pxPerMm, x: -x0, y: -y0 },
    elements: sheet.elements.map((element) => ({
      ...element,
      ...(element.box && { box: { ...element.box, x: element.box.x - x0, y: element.box.y - y0 } }),
    })),
    notices: sheet.notices,
    svg: [
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"`,
      ` viewBox="${px(x0)} ${px(y0)} ${width} ${height}"`,
      ` font-family="${fontFamily}" font-size="${textPx}" role="group" aria-label="${xmlText(title)}">\n`,
      `<title>${xmlText(title)}</title>\n<desc>${xmlText(description)}</desc>\n`,
      "<metadata>Loomwright</metadata>\n",
      pen.definitions,
      ...pieces,
      "</svg>\n",
    ].join(""),
  };
}

const marginPx = 24;
const gapPx = 24;
const linePx = 16;
/** Narrow surfaces get a sheet that still holds a legend beside the title block. */
const leastWidthPx = 760;

function factsOf({ options, content, scale, unit }: FrontSheet): readonly string[] {
  return [
    `front view of ${content.surface.name}`,
    `scale 1:${scale.oneTo}, dimensions in ${unit === "in" ? "inches" : unit}`,
    ...(options.conductors ? ["with conductors"] : []),
    ...(options.revision === undefined ? [] : [`revision: ${options.revision}`]),
    ...(options.sheet ? [`sheet ${options.sheet.number} of ${options.sheet.of}`] : []),
  ];
}

function descriptionOf({ content, unplaced, heading, notices }: FrontSheet): string {
  const { bodies, channels, openings } = content;
  const ways = channels.length + openings.length;
  return [
    `${heading}, with ${counted(bodies.length, "part")} and ${counted(ways, "channel")}.`,
    unplaced.length > 0 ? `Without a place: ${unplaced.map(({ name }) => name).join(", ")}.` : "",
    ...notices,
  ]
    .filter(Boolean)
    .join(" ");
}

/** A bar that stays right if the sheet is printed larger or smaller. */
function scaleBar(pen: SvgWriter, { x, y }: Point, scale: Scale, unit: TapeUnit): string {
  const whole = (unit === "mm" ? 50 : 50.8) * scale.oneTo;
  const half = scale.px(whole) / 2;
  const tick = (at: number) =>
    pen.line(
      [
        { x: at, y: y - 4 },
        { x: at, y: y + 4 },
      ],
      "fine",
    );
  return [
    pen.line(
      [
        { x, y },
        { x: x + half, y },
      ],
      "thick",
    ),
    pen.line(
      [
        { x, y },
        { x: x + 2 * half, y },
      ],
      "thin",
    ),
    ...[0, half, 2 * half].map((at) => tick(x + at)),
    pen.text(
      { x: x + 2 * half + 8, y: y + 4 },
      `${lengthOnTape(whole, unit)} ${unit}; scale 1:${scale.oneTo} if printed at 100 %`,
      { faint: true },
    ),
  ].join("");
}

function unplacedList(
  pen: SvgWriter,
  unplaced: readonly Unplaced[],
  { x, y, width }: Point & { readonly width: number },
): { readonly svg: string; readonly height: number } {
  if (unplaced.length === 0) return { svg: "", height: 0 };
  const head = "Without a place:";
  let [left, foot] = [x + textWidth(head, textPx, "bold") + 8, y + linePx];
  const names = unplaced.map(({ name, mark, words }, index) => {
    const text = cutToWidth(`${name}${index < unplaced.length - 1 ? "," : ""}`, width - 20, textPx);
    const markRoom = mark ? markPx + 4 : 0;
    const wide = textWidth(text, textPx) + markRoom;
    if (left + wide > x + width && left > x) [left, foot] = [x, foot + linePx];
    const at = { x: left, y: foot };
    left += wide + 8;
    return pen.group(
      words,
      mark ? drawMark(pen, mark, { x: at.x + markPx / 2, y: at.y - 4 }) : "",
      pen.text({ x: at.x + markRoom, y: at.y }, text),
    );
  });
  return {
    svg: pen.text({ x, y: y + linePx }, head, { weight: "bold" }) + names.join(""),
    height: foot - y + 6,
  };
}

function legendOf({ signs, content }: FrontSheet): readonly LegendEntry[] {
  const { surface } = content;
  const { air, terminals, frontTerminals, channels, openings, conductors, shared, marks } = signs;
  const entries: readonly (readonly [shown: boolean, words: string, draw: LegendEntry["draw"]])[] = [
    [
      terminals,
      "terminal, with the side its lug leaves to",
      (pen, { x, y }) =>
        pen.circle({ x: x - 6, y }, 2.6) +
        pen.line([
          { x: x - 3.4, y },
          { x: x + 6, y },
        ]) +
        pen.line([
          { x: x + 3, y: y - 2 },
          { x: x + 6, y },
          { x: x + 3, y: y + 2 },
        ]),
    ],
    [
      frontTerminals,
      "terminal whose lug leaves to the front",
      (pen, at) => pen.circle(at, 2.6) + pen.circle(at, 1.1, "filled"),
    ],
    [air, "air that a part needs", (pen, at) => pen.rect(signBox(at), "hidden")],
    [
      channels,
      "channel, with its conductors",
      (pen, { x, y }) =>
        pen.line(
          [
            { x: x - 20, y: y - 3 },
            { x: x + 20, y: y - 3 },
          ],
          "thin",
        ) +
        pen.line(
          [
            { x: x - 20, y: y + 3 },
            { x: x + 20, y: y + 3 },
          ],
          "thin",
        ),
    ],
    [
      openings,
      "channel that leads away from here",
      (pen, { x, y }) =>
        pen.circle({ x, y }, 5) +
        pen.line(
          [
            { x: x - 3.5, y: y - 3.5 },
            { x: x + 3.5, y: y + 3.5 },
          ],
          "fine",
        ) +
        pen.line(
          [
            { x: x - 3.5, y: y + 3.5 },
            { x: x + 3.5, y: y - 3.5 },
          ],
          "fine",
        ),
    ],
    [
      surface.keepFree.length > 0,
      "keep free",
      (pen, at) => pen.hatched([signBox(at)], "slanted") + pen.rect(signBox(at)),
    ],
    [
      surface.outOfReach.length > 0,
      "out of reach",
      (pen, at) => pen.hatched([signBox(at)], "dotted") + pen.rect(signBox(at), "dotted"),
    ],
    [
      surface.fixtures.length > 0,
      "keep a distance from it",
      (pen, at) => pen.hatched([signBox(at)], "level") + pen.rect(signBox(at), "chain"),
    ],
    [conductors, "+ positive conductor", (pen, at) => pen.line(signLine(at), "positive")],
    [conductors, "− negative conductor (return)", (pen, at) => pen.line(signLine(at), "negative")],
    [
      shared,
      "several conductors in one line, and how many",
      (pen, at) => pen.line(signLine(at), "positive") + strokeAcross(pen, signLine(at)),
    ],
    ...[...bySeverity, "accepted" as const].map(
      (kind) =>
        [
          marks.has(kind),
          `finding: ${markWords[kind]}`,
          (pen: SvgWriter, at: Point) => drawMark(pen, kind, at),
        ] as const,
    ),
  ];
  return entries.filter(([shown]) => shown).map(([, words, draw]) => ({ words, draw, height: 24 }));
}

function signBox({ x, y }: Point): Box {
  return { x: x - 20, y: y - 7, width: 40, height: 14 };
}

function signLine({ x, y }: Point): Piece {
  return [
    { x: x - 24, y },
    { x: x + 24, y },
  ];
}
