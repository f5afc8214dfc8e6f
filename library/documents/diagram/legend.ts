import { displayName } from "../../model/display-name.ts";
import { conductor, pairStrokes } from "./draw-line.ts";
import type { Box } from "./drawing.ts";
import { bySeverity, drawMark, type MarkKind, markWords, worstOf } from "./finding-mark.ts";
import type { Point } from "./graph.ts";
import { drawnColours } from "./insulation-colours.ts";
import type { Polarity, Schematic } from "./schematic.ts";
import { type SvgWriter, textPx } from "./svg-writer.ts";
import type { Lead } from "./symbols/part-symbol.ts";
import { drawDevice } from "./symbols/protection.ts";
import { symbols } from "./symbols/symbols.ts";
import { cutToWidth, textWidth } from "./text-measure.ts";

/** One sign of the picture and its meaning. */
export interface LegendEntry {
  readonly words: string;
  readonly height: number;
  /** Draws it around a middle. */
  draw(pen: SvgWriter, middle: Point): string;
}

/** Only the signs that this picture uses. */
export function legendOf({ parts, lines }: Schematic): readonly LegendEntry[] {
  const polarities = new Set(lines.map(({ polarity }) => polarity));
  const colours = [...new Set(lines.map(({ colour }) => colour))].filter(
    (one) => drawnColours(one).length > 0,
  );
  const kinds = new Set(parts.map(({ symbol }) => symbol));
  const devices = lines.flatMap(({ from, to }) =>
    [from.device, to.device].filter((device) => device !== undefined),
  );
  const breakers = devices.filter(({ protection }) => protection.family === "circuit breaker");
  const marks = new Set([...parts, ...lines, ...devices].map(({ found }) => worstOf(found)));
  return [
    ...allPolarities.filter((one) => polarities.has(one)).map(lineEntry),
    ...colours.map(colourEntry),
    ...(devices.length > breakers.length ? [deviceEntry("fuse, with its rating", {})] : []),
    ...(breakers.length > 0
      ? [deviceEntry("circuit breaker, with its rating", { family: "circuit breaker" } as const)]
      : []),
    ...symbolOrder.filter((name) => kinds.has(name)).map(symbolEntry),
    ...([...bySeverity, "accepted"] as const).filter((one) => marks.has(one)).map(markEntry),
  ];
}

/** In columns within the width of the box, from its top. */
export function drawLegend(
  pen: SvgWriter,
  entries: readonly LegendEntry[],
  { x, y, width }: Box,
): { readonly svg: string; readonly height: number } {
  if (entries.length === 0) return { svg: "", height: 0 };
  const column =
    signPx + 10 + entries.reduce((widest, { words }) => Math.max(widest, textWidth(words, textPx)), 0) + 16;
  const columns = Math.max(1, Math.floor(width / column));
  const perColumn = Math.ceil(entries.length / columns);
  const drawn = entries.map((entry, index) => {
    const left = x + Math.floor(index / perColumn) * column;
    const middle = y + (index % perColumn) * rowPx + rowPx / 2;
    return (
      entry.draw(pen, { x: left + signPx / 2, y: middle }) +
      pen.text({ x: left + signPx + 10, y: middle + 4 }, entry.words, { faint: true })
    );
  });
  return { svg: pen.group({ classes: ["loomwright-legend"] }, ...drawn), height: perColumn * rowPx };
}

const signPx = 56;
const rowPx = 24;

const allPolarities = ["positive", "negative", "pair", "link", "unknown"] as const;

const polarityWords: Readonly<Record<Polarity, string>> = {
  positive: "+ positive conductor",
  negative: "− negative conductor (return)",
  pair: "both conductors as one line",
  link: "link in series, live on both sides",
  unknown: "conductor whose polarity is not known",
};

function lineEntry(polarity: Polarity): LegendEntry {
  return {
    words: polarityWords[polarity],
    height: rowPx,
    draw: (pen, { x, y }) =>
      pen.line(
        [
          { x: x - signPx / 2, y },
          { x: x + signPx / 2, y },
        ],
        polarity,
      ) + (polarity === "pair" ? pairStrokes(pen, { x, y }) : ""),
  };
}

function colourEntry(colour: string): LegendEntry {
  return {
    words: cutToWidth(displayName(colour), mostColourPx, textPx),
    height: rowPx,
    draw: (pen, { x, y }) =>
      conductor(
        pen,
        [
          { x: x - signPx / 2, y },
          { x: x + signPx / 2, y },
        ],
        { polarity: "positive", colour },
      ),
  };
}

const mostColourPx = 180;

function deviceEntry(words: string, kind: Parameters<typeof drawDevice>[1]): LegendEntry {
  return { words, height: rowPx, draw: (pen, middle) => drawDevice(pen, kind, middle) };
}

function markEntry(kind: MarkKind): LegendEntry {
  return {
    words: `finding: ${markWords[kind]}`,
    height: rowPx,
    draw: (pen, middle) => drawMark(pen, kind, middle),
  };
}

const symbolOrder = Object.keys(symbols) as (keyof typeof symbols)[];

/** The symbol itself, small, with its usual leads. */
function symbolEntry(name: keyof typeof symbols): LegendEntry {
  const { legend, widthPx: width, heightPx: height, draw } = symbols[name];
  const factor = Math.min(1, 20 / height, 44 / width);
  return {
    words: legend,
    height: rowPx,
    draw: (pen, middle) => {
      const box = { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
      return draw(smallPen(pen, middle, factor), box, usualLeads(name, box));
    },
  };
}

function usualLeads(name: keyof typeof symbols, { y, height }: Box): readonly Lead[] {
  const upper = y + height / 4;
  const lower = y + (height * 3) / 4;
  const { landing, spreads } = symbols[name];
  const fed = spreads === true || landing === "series";
  const returns = landing !== "series";
  return [
    ...(fed ? [{ terminal: "feed", side: "west", y: upper } as const] : []),
    { terminal: "positive", side: "east", y: upper },
    ...(returns ? [{ terminal: "negative", side: "east", y: lower } as const] : []),
  ];
}

/** Draws everything closer to a middle, by a factor. */
function smallPen(pen: SvgWriter, { x, y }: Point, factor: number): SvgWriter {
  const near = (point: Point): Point => ({ x: x + (point.x - x) * factor, y: y + (point.y - y) * factor });
  return {
    ...pen,
    insulated: (points, stroke, colours) => pen.insulated(points.map(near), stroke, colours),
    line: (points, stroke) => pen.line(points.map(near), stroke === "heavy" ? "thick" : stroke),
    solid: (points) => pen.solid(points.map(near)),
    rect: (box, stroke) =>
      pen.rect({ ...near(box), width: box.width * factor, height: box.height * factor }, stroke),
    circle: (centre, radius, inside, stroke) => pen.circle(near(centre), radius * factor, inside, stroke),
    text: (at, text, style = {}) =>
      pen.text(near(at), text, { ...style, sizePx: Math.round((style.sizePx ?? textPx) * factor) }),
  };
}
