import type { Box } from "./drawing.ts";
import { type Fill, fillDefinitions, fillReference } from "./fill-patterns.ts";
import type { Point } from "./graph.ts";
import { coloursOnPaper, type InsulationColour } from "./insulation-colours.ts";
import type { Weight } from "./text-measure.ts";
import { xmlText } from "./xml-text.ts";

/**
 * Draws lines, shapes and texts as SVG, all in the coordinates of the whole picture. Nothing else writes SVG: a plan's content
 * gets into the picture only as text.
 */
export interface SvgWriter {
  line(points: readonly Point[], stroke?: Stroke): string;
  /** A conductor in the colour of its insulation, with a stripe if there are two, between two lines of ink. */
  insulated(points: readonly Point[], stroke: Stroke, colours: readonly InsulationColour[]): string;
  /** A band of a width between two edges: all edges of crossing bands first, then their insides, and the bands join. */
  band(points: readonly Point[], widthPx: number, draws: "edges" | "inside"): string;
  /** Closed and filled. */
  solid(points: readonly Point[]): string;
  /** Closed, and filled with a pattern; a picture that uses one holds `definitions`. */
  filled(points: readonly Point[], fill: Fill): string;
  /** Boxes filled with a pattern, without an outline. */
  hatched(boxes: readonly Box[], fill: Fill): string;
  /** The patterns of `filled` and `hatched`, for the beginning of a picture. */
  readonly definitions: string;
  rect(box: Box, stroke?: Stroke): string;
  circle(centre: Point, radius: number, inside?: "empty" | "filled", stroke?: Stroke): string;
  text(at: Point, text: string, style?: TextStyle): string;
  group(about: GroupWords, ...content: readonly string[]): string;
}

/** `positive`, `negative`, `pair`, `unknown`: conductors. `edge`, `hidden`, `dotted`, `chain`: of front views. The others are of symbols. */
export type Stroke =
  | "thin"
  | "fine"
  | "thick"
  | "heavy"
  | "positive"
  | "negative"
  | "pair"
  | "link"
  | "unknown"
  | "mark"
  | "edge"
  | "hidden"
  | "dotted"
  | "chain"
  | "extension";

interface TextStyle {
  readonly sizePx?: number;
  readonly weight?: Weight;
  readonly anchor?: "start" | "middle" | "end";
  /** Less important. */
  readonly faint?: boolean;
  /** It reads from below to above. */
  readonly turned?: boolean;
}

export interface GroupWords {
  /** Classes on the screen; the first one names the kind. */
  readonly classes: readonly string[];
  /** `data-element`; absent if it cannot be pointed at. */
  readonly id?: string;
  /** `id` of the element, unique in its picture. */
  readonly elementId?: string;
  /** Attributes whose names begin with `data-`, such as the index of a record. */
  readonly data?: Readonly<Record<string, number>>;
  readonly title?: string;
  readonly description?: string;
}

export const fontFamily = "DejaVu Sans, Verdana, sans-serif";
export const textPx = 11;

/**
 * `paper`: black on white. `screen`: the page may set these custom properties on anything around the picture; otherwise the
 * page's text colour applies: --loomwright-ink, --loomwright-paper (its background), --loomwright-faint, --loomwright-positive, --loomwright-negative,
 * --loomwright-mark, and --loomwright-colour-red and the like in the colour edition. Classes: loomwright-part, loomwright-conductor, loomwright-protection on elements that can be pointed at
 * (with `data-element`), with loomwright-error, -warning, -info, -hint, -accepted for their findings;
 * loomwright-polarity-positive, -negative, -pair, -link, -unknown on conductors and on loomwright-mounting; loomwright-legend, loomwright-title-block and
 * loomwright-notices at the edge of the picture.
 */
export function createPen(medium: "paper" | "screen"): SvgWriter {
  const colours = medium === "paper" ? onPaper : onScreen;
  const classes = (names: readonly string[]) =>
    medium === "paper" || names.length === 0 ? "" : ` class="${names.join(" ")}"`;
  const strokeOf = (stroke: Stroke) => {
    const { width, dash, colour } = strokes[stroke];
    return `fill="none" stroke="${colours[colour]}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ""}`;
  };
  return {
    line: (points, stroke = "thin") => `<path d="${pathOf(points)}" ${strokeOf(stroke)}/>`,
    insulated: (points, stroke, [base, stripe]) => {
      const { dash } = strokes[stroke];
      const path = (paint: string, width: number, dashes: string | undefined) =>
        `<path d="${pathOf(points)}" fill="none" stroke="${paint}" stroke-width="${width}"${dashes ? ` stroke-dasharray="${dashes}"` : ""}/>`;
      const paintOf = (colour: InsulationColour) =>
        medium === "paper" ? coloursOnPaper[colour] : `var(--loomwright-colour-${colour}, currentColor)`;
      return [
        path(colours.ink, 4.6, dash),
        base ? path(paintOf(base), 3, dash) : "",
        // Half of each dash, or a dash in every 14 px of a whole line.
        stripe ? path(paintOf(stripe), 3, dash ? stripesOf(dash) : "6 8") : "",
      ].join("");
    },
    band: (points, widthPx, draws) => {
      const isEdges = draws === "edges";
      const [paint, width] = isEdges ? [colours.ink, widthPx + 1] : [colours.paper, widthPx - 1];
      return `<path d="${pathOf(points)}" fill="none" stroke="${paint}" stroke-width="${px(width)}"/>`;
    },
    solid: (points) => `<path d="${pathOf(points)}Z" fill="${colours.ink}"/>`,
    filled: (points, fill) =>
      `<path d="${pathOf(points)}Z" fill="${fillReference(fill, colours.ink)}" stroke="${colours.ink}" stroke-width="0.6"/>`,
    hatched: (boxes, fill) =>
      boxes.length === 0
        ? ""
        : `<path d="${boxes.map((box) => `${pathOf(cornersOf(box))}Z`).join("")}" fill="${fillReference(fill, colours.ink)}"/>`,
    definitions: fillDefinitions(colours.ink),
    rect: ({ x, y, width, height }, stroke = "thin") =>
      `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}" ${strokeOf(stroke)}/>`,
    circle: ({ x, y }, radius, inside = "empty", stroke = "thin") => {
      const look = inside === "filled" ? `fill="${colours.ink}"` : strokeOf(stroke);
      return `<circle cx="${px(x)}" cy="${px(y)}" r="${px(radius)}" ${look}/>`;
    },
    text: (
      { x, y },
      text,
      { sizePx = textPx, weight = "regular", anchor = "start", faint = false, turned = false } = {},
    ) =>
      `<text x="${px(x)}" y="${px(y)}" font-size="${sizePx}"${weight === "bold" ? ' font-weight="bold"' : ""}${
        anchor === "start" ? "" : ` text-anchor="${anchor}"`
      }${turned ? ` transform="rotate(-90 ${px(x)} ${px(y)})"` : ""} fill="${faint ? colours.faint : colours.ink}">${xmlText(text)}</text>`,
    group: ({ classes: names, id, elementId, data = {}, title, description }, ...content) => {
      const pointed = [
        elementId === undefined ? "" : ` id="${xmlText(elementId)}"`,
        id === undefined ? "" : ` data-element="${xmlText(id)}"`,
        ...Object.entries(data).map(([name, value]) => ` data-${name}="${value}"`),
      ].join("");
      const role = title === undefined ? "" : ` role="img" aria-label="${xmlText(title)}"`;
      const words = [
        title === undefined ? "" : `<title>${xmlText(title)}</title>`,
        description === undefined ? "" : `<desc>${xmlText(description)}</desc>`,
      ].join("");
      return `<g${classes(names)}${pointed}${role}>${words}${content.join("")}</g>\n`;
    },
  };
}

/** Coordinates to a hundredth of a pixel: rounding of the layout never shows in the file. */
export function px(value: number): string {
  return String(Math.round(value * 100) / 100 + 0);
}

type Colour = "ink" | "paper" | "faint" | "positive" | "negative" | "mark";

const onPaper: Readonly<Record<Colour, string>> = {
  ink: "#000000",
  paper: "#ffffff",
  faint: "#444444",
  positive: "#000000",
  negative: "#000000",
  mark: "#000000",
};

const onScreen: Readonly<Record<Colour, string>> = {
  ink: "var(--loomwright-ink, currentColor)",
  paper: "var(--loomwright-paper, Canvas)",
  faint: "var(--loomwright-faint, currentColor)",
  positive: "var(--loomwright-positive, currentColor)",
  negative: "var(--loomwright-negative, currentColor)",
  mark: "var(--loomwright-mark, currentColor)",
};

const strokes: Readonly<
  Record<Stroke, { readonly width: number; readonly dash?: string; readonly colour: Colour }>
> = {
  thin: { width: 1.2, colour: "ink" },
  fine: { width: 0.6, colour: "faint" },
  thick: { width: 3, colour: "ink" },
  heavy: { width: 5, colour: "ink" },
  positive: { width: 1.6, colour: "positive" },
  negative: { width: 1.6, dash: "7 4", colour: "negative" },
  pair: { width: 1.6, colour: "positive" },
  link: { width: 1.6, colour: "positive" },
  unknown: { width: 1.6, dash: "9 3 2 3", colour: "ink" },
  mark: { width: 1.6, colour: "mark" },
  edge: { width: 2.2, colour: "ink" },
  hidden: { width: 0.9, dash: "5 3", colour: "ink" },
  dotted: { width: 0.9, dash: "1 3", colour: "ink" },
  chain: { width: 0.9, dash: "10 3 2 3", colour: "ink" },
  extension: { width: 0.35, colour: "faint" },
};

function cornersOf({ x, y, width, height }: Box): readonly Point[] {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

/** "7 4" becomes "3.5 7.5". */
function stripesOf(dash: string): string {
  const lengths = dash.split(" ").map(Number);
  return lengths
    .map((length, index) => (index % 2 === 0 ? length / 2 : length + lengths[index - 1]! / 2))
    .join(" ");
}

function pathOf(points: readonly Point[]): string {
  return points.map(({ x, y }, index) => `${index === 0 ? "M" : "L"}${px(x)} ${px(y)}`).join("");
}
