import { SaxesParser } from "saxes";

/*
 * The content of a drawing, read back from its SVG as any program would: texts with the room they take, lines, shapes. It is
 * independent of the drawing code, and reads the widths of letters from the typeface itself.
 */

export interface Pieces {
  readonly texts: readonly TextPiece[];
  /** Straight segments of lines and outlines. */
  readonly segments: readonly Segment[];
  readonly elements: readonly ElementPiece[];
  readonly viewBox: readonly number[];
  readonly tags: ReadonlySet<string>;
  readonly attributes: ReadonlySet<string>;
}

export interface TextPiece {
  readonly text: string;
  readonly box: Rect;
}

export interface Segment {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  /** The whole shape that it belongs to. */
  readonly of: string;
}

export interface ElementPiece {
  readonly id: string;
  readonly label: string | undefined;
  readonly role: string | undefined;
  title: string | undefined;
  description: string | undefined;
}

export interface Rect {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Width of a text relative to its size, from the typeface. */
export type Measure = (text: string, bold: boolean) => number;

/** Throws if the SVG is not well-formed XML. */
export function piecesOf(svg: string, measure: Measure): Pieces {
  const texts: TextPiece[] = [];
  const segments: Segment[] = [];
  const elements: ElementPiece[] = [];
  const tags = new Set<string>();
  const attributes = new Set<string>();
  const open: { readonly tag: string; readonly given: Readonly<Record<string, string>>; text: string }[] = [];
  let viewBox: readonly number[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes: given }) => {
    tags.add(name);
    for (const key of Object.keys(given)) attributes.add(key);
    open.push({ tag: name, given, text: "" });
    if (name === "svg") viewBox = given.viewBox!.split(" ").map(Number);
    if (given["data-element"] !== undefined)
      elements.push({
        id: given["data-element"],
        label: given["aria-label"],
        role: given.role,
        title: undefined,
        description: undefined,
      });
    segments.push(...segmentsOf(name, given));
  });
  parser.on("text", (text) => {
    const last = open.at(-1);
    if (last) last.text += text;
  });
  parser.on("closetag", () => {
    const { tag, given, text } = open.pop()!;
    const parent = open.at(-1);
    if (tag === "text") texts.push(textPiece(text, given, measure));
    const element = parent?.given["data-element"] === undefined ? undefined : elements.at(-1);
    if (element && tag === "title") element.title = text;
    if (element && tag === "desc") element.description = text;
  });
  parser.write(svg).close();
  return { texts, segments, elements, viewBox, tags, attributes };
}

/** Pairs of overlapping texts, and texts crossed by a line; a person would call either a blot. */
export function blots({ texts, segments, viewBox }: Pieces): string[] {
  const found: string[] = [];
  for (const [index, one] of texts.entries()) {
    for (const other of texts.slice(index + 1))
      if (overlap(one.box, other.box)) found.push(`"${one.text}" and "${other.text}"`);
    for (const segment of segments)
      if (crosses(segment, one.box)) found.push(`"${one.text}" and ${segment.of}`);
    const [left = 0, top = 0, width = 0, height = 0] = viewBox;
    if (
      one.box.left < left ||
      one.box.top < top ||
      one.box.right > left + width ||
      one.box.bottom > top + height
    )
      found.push(`"${one.text}" leaves the sheet`);
  }
  return found;
}

function textPiece(text: string, given: Readonly<Record<string, string>>, measure: Measure): TextPiece {
  const sizePx = Number(given["font-size"]);
  const width = measure(text, given["font-weight"] === "bold") * sizePx;
  const x = Number(given.x) - width * (shares[given["text-anchor"] ?? "start"] ?? 0);
  const y = Number(given.y);
  // Turned by a quarter to the left around its foot.
  if (given.transform) {
    const start = Number(given.y) + width * (shares[given["text-anchor"] ?? "start"] ?? 0);
    const foot = Number(given.x);
    const box = {
      top: start - width,
      bottom: start,
      left: foot - 0.76 * sizePx,
      right: foot + 0.24 * sizePx,
    };
    return { text, box };
  }
  // From the foot of a "g" to the top of an "E": accents on capitals reach higher, into room that the row above leaves.
  return { text, box: { left: x, right: x + width, top: y - 0.76 * sizePx, bottom: y + 0.24 * sizePx } };
}

const shares: Readonly<Record<string, number>> = { start: 0, middle: 0.5, end: 1 };

function segmentsOf(name: string, given: Readonly<Record<string, string>>): Segment[] {
  const number = (key: string) => Number(given[key]);
  if (name === "path") {
    return given.d!.split(/(?=M)/).flatMap((line) => segmentsOfLine(line, given));
  }
  if (name !== "rect" && name !== "circle") return [];
  const [left, top, right, bottom] =
    name === "rect"
      ? [number("x"), number("y"), number("x") + number("width"), number("y") + number("height")]
      : [
          number("cx") - number("r"),
          number("cy") - number("r"),
          number("cx") + number("r"),
          number("cy") + number("r"),
        ];
  const corners = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
    [left, top],
  ] as const;
  return corners
    .slice(1)
    .map((to, index) => ({ from: corners[index]!, to, of: `${name} at ${left} ${top}` }));
}

function segmentsOfLine(line: string, given: Readonly<Record<string, string>>): Segment[] {
  const points = [...line.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
  const half = Number(given["stroke-width"]) / 2;
  return points.slice(1).flatMap((to, index) => {
    const from = points[index]!;
    const of = `path ${given.d}`;
    if (!(half > widestLine / 2)) return [{ from, to, of }];
    // A band is seen by its edges.
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
    const [x, y] = [(-(to[1] - from[1]) / length) * half, ((to[0] - from[0]) / length) * half];
    return [1, -1].map((side) => ({
      from: [from[0] + side * x, from[1] + side * y] as const,
      to: [to[0] + side * x, to[1] + side * y] as const,
      of,
    }));
  });
}

function overlap(one: Rect, other: Rect): boolean {
  return (
    one.left < other.right - slack &&
    other.left < one.right - slack &&
    one.top < other.bottom - slack &&
    other.top < one.bottom - slack
  );
}

/** Of a line of a symbol, px. */
const widestLine = 5;

/** Coordinates are rounded to a hundredth. */
const slack = 0.02;

/** Whether a straight line touches the inside of a rectangle (Liang and Barsky's clipping). */
function crosses({ from: [x1, y1], to: [x2, y2] }: Segment, { left, top, right, bottom }: Rect): boolean {
  let [enters, leaves] = [0, 1];
  for (const [step, room] of [
    [x1 - x2, x1 - left - slack],
    [x2 - x1, right - slack - x1],
    [y1 - y2, y1 - top - slack],
    [y2 - y1, bottom - slack - y1],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
      continue;
    }
    const at = room / step;
    if (step < 0) enters = Math.max(enters, at);
    else leaves = Math.min(leaves, at);
  }
  return enters < leaves;
}
