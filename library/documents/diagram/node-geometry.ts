import type { View } from "./drawing.ts";
import { markPx, worstOf } from "./finding-mark.ts";
import { fixedSide } from "./flow.ts";
import type { GraphNode, GraphPort } from "./graph.ts";
import type { Schematic, SchematicPart, SymbolName } from "./schematic.ts";
import { columnsOf, labelOf, type Row, type StubColumns, stubWidth } from "./stub.ts";
import { textPx } from "./svg-writer.ts";
import { symbols } from "./symbols/symbols.ts";
import { cutToWidth, textWidth } from "./text-measure.ts";

/**
 * The geometry of a part before it has a place on the sheet: its symbol's body between the stubs of the lines that end there, its
 * words above the body, or behind it for a part at the end of its line.
 */
export interface NodeGeometry {
  readonly part: SchematicPart;
  readonly node: GraphNode;
  /** In the order of the node's ports. */
  readonly rows: readonly Row[];
  readonly west: StubColumns;
  readonly east: StubColumns;
  /** From the top left corner of the node. */
  readonly body: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly words: readonly PlacedWords[];
  /** The middle of its mark, if it has one. */
  readonly mark: { readonly x: number; readonly y: number };
}

interface PlacedWords {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: "start" | "middle";
  readonly bold: boolean;
}

/** The parts in their order, each with its rows; a line's label is at its upstream port. */
export function anatomiesOf(schematic: Schematic, view: View): readonly NodeGeometry[] {
  const rows = rowsByPart(schematic, view);
  return schematic.parts.map((part, index) => {
    const own = rows[index]!;
    switch (symbols[part.symbol].landing) {
      case "bar":
        return barPiece(part, own, schematic);
      case "two bars":
        return panelPiece(part, own, schematic);
      case "end of line":
        if (own.every(({ side }) => side === "west")) return endPiece(part, own, schematic, view);
    }
    return polePiece(part, own, schematic);
  });
}

const rowPx = 22;
const twoTextsRowPx = 42;
/** Extra height of a mark over a line of text. */
const moreForMarkPx = 8;
/** Height from line to line in the one-line view: one line for two conductors, with a name and words at its end. */
const oneLineRowPx = 34;
/** Gap that the layout leaves between two parts one above the other; with it, a load is as high as its rows at the panel. */
const betweenPx = 8;
const wordPx = 14;
const mostWordsPx = 220;
const mostNamePx = 200;

function rowsByPart(schematic: Schematic, view: View): readonly (readonly Row[])[] {
  const { parts, lines } = schematic;
  const rows: Row[][] = parts.map(() => []);
  for (const [line, one] of lines.entries()) {
    const [upstream, downstream] = one.forward ? (["from", "to"] as const) : (["to", "from"] as const);
    const far = parts[one[downstream].part]!;
    const own = one.name === far.name || one.name === `${far.name}, return`;
    const label = one.isMounting ? undefined : labelOf(one, own);
    const plain = view === "wiring" ? rowPx : oneLineRowPx;
    const marked = (end: "from" | "to") =>
      worstOf(one[end].device?.found ?? []) || (end === upstream && worstOf(one.found)) ? moreForMarkPx : 0;
    const upstreamPx = (label?.below ? twoTextsRowPx : plain) + marked(upstream);
    for (const which of ["from", "to"] as const) {
      const end = one[which];
      rows[end.part]!.push({
        ...{ line, which, end },
        label: which === upstream ? label : undefined,
        terminal: end.terminal,
        side: fixedSide(parts[end.part]!.symbol, end.terminal) ?? (which === upstream ? "east" : "west"),
        height: which === upstream ? upstreamPx : plain + marked(which),
        pitch: Math.max(upstreamPx, plain + marked(which)),
      });
    }
  }
  return rows.map((own, index) =>
    symbols[parts[index]!.symbol].landing === "series" ? onOppositeSides(own, parts[index]!) : own,
  );
}

/** A part that passes current on has one terminal on each side, in any order of its neighbours. */
function onOppositeSides(rows: readonly Row[], { terminals }: SchematicPart): readonly Row[] {
  const [first, second] = terminals.map(({ name }) => name);
  const eastward = (terminal: string | undefined) =>
    rows
      .filter((row) => row.terminal === terminal)
      .reduce((sum, { side }) => sum + (side === "east" ? 1 : -1), 0);
  const firstSide = eastward(first) > eastward(second) ? "east" : "west";
  return rows.map((row) => ({
    ...row,
    side: (row.terminal === first) === (firstSide === "east") ? "east" : "west",
  }));
}

/** A load: its symbol at the end of the line, its words behind it. */
function endPiece(part: SchematicPart, rows: readonly Row[], { lines }: Schematic, view: View): NodeGeometry {
  const symbol = symbols[part.symbol];
  const west = columnsOf(rows, lines);
  const plain = view === "wiring" ? rowPx : oneLineRowPx;
  const sorted = byTerminal(rows, part);
  // As far apart as at the other end of its lines, to keep them straight.
  const pitches = sorted.map(({ pitch }) => pitch);
  const least = view === "wiring" ? 2 * plain : plain;
  const height = Math.max(sumOf(pitches), least) - betweenPx;
  const top = (height - sumOf(pitches)) / 2;
  const ys = pitches.map((pitch, row) => top + sumOf(pitches.slice(0, row)) + pitch / 2);
  const bodyHeight = Math.max(symbol.heightPx, height - 4);
  const body = {
    x: stubWidth(west),
    y: (height - bodyHeight) / 2,
    width: symbol.widthPx,
    height: bodyHeight,
  };
  const marked = worstOf(part.found) ? markPx + 4 : 0;
  const left = body.x + body.width + 6;
  const name = cutToWidth(part.name, mostNamePx, textPx, "bold");
  const words = cutToWidth(part.words.join(" · "), mostWordsPx, textPx);
  const middle = height / 2;
  return {
    part,
    rows: sorted,
    west,
    east: columnsOf([], lines),
    body,
    mark: { x: left + markPx / 2, y: middle - 7 },
    words: [
      { x: left + marked, y: middle - 3, text: name, anchor: "start", bold: true },
      { x: left, y: middle + 11, text: words, anchor: "start", bold: false },
    ],
    node: {
      width: left + Math.max(marked + textWidth(name, textPx, "bold"), textWidth(words, textPx)),
      height,
      ports: "placed",
      rows: ys.map((y) => ({ side: "west", y, height: 0 })),
    },
  };
}

/** A part at which any number of lines may land in any order. */
function barPiece(part: SchematicPart, rows: readonly Row[], { lines }: Schematic): NodeGeometry {
  const symbol = symbols[part.symbol];
  const [west, east] = sidesOf(rows);
  const tallest = Math.max(sumOfHeights(west), sumOfHeights(east), symbol.heightPx);
  const foot = part.symbol === "chassis" ? 14 : 4;
  const head = headOf(part, columnsOf(west, lines), columnsOf(east, lines), symbol.widthPx);
  // Ports are stacked around the middle of the node: the room above them is needed below too.
  const margin = Math.max(head.height, foot);
  const heights: GraphPort[] = rows.map(({ side, height }) => ({ side, y: 0, height }));
  return {
    ...{ part, rows, words: head.words, mark: head.mark },
    west: columnsOf(west, lines),
    east: columnsOf(east, lines),
    body: { x: head.bodyX, y: head.height, width: symbol.widthPx, height: tallest + foot },
    node: { width: head.width, height: tallest + 2 * margin, ports: "free", rows: heights },
  };
}

/**
 * A part with a bar for each polarity. Its branches are in the order of the parts that they lead to. Its feed is in their middle, and its
 * returns towards the sources are below them all: below the end of the positive bar, which they would cross further up.
 */
function panelPiece(part: SchematicPart, rows: readonly Row[], { lines }: Schematic): NodeGeometry {
  const symbol = symbols[part.symbol];
  const [west, east] = sidesOf(rows);
  const farPart = ({ line, which }: Row) => lines[line]![which === "from" ? "to" : "from"].part;
  const isReturn = ({ terminal }: Row) => terminal === "negative";
  const branches = east.toSorted(
    (one, other) => farPart(one) - farPart(other) || Number(isReturn(one)) - Number(isReturn(other)),
  );
  const feeds = west.filter((row) => !isReturn(row));
  const returns = west.filter(isReturn);
  const head = headOf(part, columnsOf(west, lines), columnsOf(east, lines), symbol.widthPx);
  const upper = Math.max(
    sumOfHeights(branches),
    sumOfHeights(feeds),
    symbol.heightPx - sumOfHeights(returns),
  );
  const sorted = [...branches, ...feeds, ...returns];
  const ys = [
    ...stacked(branches, head.height + (upper - sumOfHeights(branches)) / 2),
    ...stacked(feeds, head.height + (upper - sumOfHeights(feeds)) / 2),
    ...stacked(returns, head.height + upper),
  ];
  const bodyHeight = upper + sumOfHeights(returns) + 4;
  return {
    ...{ part, rows: sorted, words: head.words, mark: head.mark },
    west: columnsOf(west, lines),
    east: columnsOf(east, lines),
    body: { x: head.bodyX, y: head.height, width: symbol.widthPx, height: bodyHeight },
    node: {
      width: head.width,
      height: head.height + bodyHeight + 12,
      ports: "placed",
      rows: sorted.map(({ side }, index) => ({ side, y: ys[index]!, height: 0 })),
    },
  };
}

/** The middles of rows one below the other. */
function stacked(rows: readonly Row[], top: number): readonly number[] {
  return rows.map(({ height }, index) => top + sumOfHeights(rows.slice(0, index)) + height / 2);
}

/** A part with poles: each terminal in a band of its own, positive above negative, on whichever sides its lines are. */
function polePiece(part: SchematicPart, rows: readonly Row[], { lines }: Schematic): NodeGeometry {
  const symbol = symbols[part.symbol];
  const sorted = byTerminal(rows, part);
  const [west, east] = sidesOf(sorted);
  const head = headOf(
    part,
    columnsOf(west, lines),
    columnsOf(east, lines),
    Math.max(symbol.widthPx, labelsWidth(part)),
  );
  const bands = bandsOf(part, sorted);
  const rowsHeight = bands.reduce((sum, { height }) => sum + height, 0) + gapPx(part) * (bands.length - 1);
  const bodyHeight = Math.max(symbol.heightPx, rowsHeight);
  let y = head.height + (bodyHeight - rowsHeight) / 2;
  const at = new Map<Row, number>();
  for (const band of bands) {
    for (const side of ["west", "east"] as const) {
      const own = band.rows.filter((row) => row.side === side);
      let next = y + (band.height - sumOfHeights(own)) / 2;
      for (const row of own) {
        at.set(row, next + row.height / 2);
        next += row.height;
      }
    }
    y += band.height + gapPx(part);
  }
  return {
    ...{ part, rows: sorted, words: head.words, mark: head.mark },
    west: columnsOf(west, lines),
    east: columnsOf(east, lines),
    body: {
      x: head.bodyX,
      y: head.height,
      width: head.bodyWidth,
      height: bodyHeight,
    },
    node: {
      width: head.width,
      height: head.height + bodyHeight + 12,
      ports: "placed",
      rows: sorted.map((row) => ({ side: row.side, y: at.get(row)!, height: 0 })),
    },
  };
}

/** Between two bands: plates need room between their leads. */
function gapPx({ symbol }: SchematicPart): number {
  return symbol === "battery" ? 24 : 0;
}

interface Band {
  readonly rows: readonly Row[];
  readonly height: number;
}

/** Terminals that lie at one height share a band: an input and an output, the two ends of a switch. */
function bandsOf(part: SchematicPart, rows: readonly Row[]): readonly Band[] {
  const bands = new Map<number, Row[]>();
  for (const [index, { name }] of part.terminals.entries()) {
    const band = bandNumber(part.symbol, name, index);
    const own = rows.filter(({ terminal }) => terminal === name);
    bands.set(band, [...(bands.get(band) ?? []), ...own]);
  }
  return [...bands.entries()]
    .sort(([one], [other]) => one - other)
    .map(([, own]) => ({ rows: own, height: Math.max(rowPx, ...sidesOf(own).map(sumOfHeights)) }));
}

function bandNumber(symbol: SymbolName, terminal: string, index: number): number {
  if (symbol === "part") return index;
  return /negative/i.test(terminal) ? 1 : 0;
}

interface Head {
  readonly words: readonly PlacedWords[];
  readonly mark: { readonly x: number; readonly y: number };
  readonly height: number;
  /** Of the whole part. */
  readonly width: number;
  readonly bodyX: number;
  readonly bodyWidth: number;
}

/** Name and words, centred above the body; if they are wider than body and stubs, they widen the node. */
function headOf(part: SchematicPart, west: StubColumns, east: StubColumns, bodyWidth: number): Head {
  const name = cutToWidth(part.name, mostNamePx, textPx, "bold");
  const rest = part.words.map((words) => cutToWidth(words, mostWordsPx, textPx));
  const marked = worstOf(part.found) ? markPx + 4 : 0;
  const nameWidth = textWidth(name, textPx, "bold");
  const half = Math.max((nameWidth + 2 * marked) / 2, ...rest.map((words) => textWidth(words, textPx) / 2));
  const left = Math.max(stubWidth(west), half - bodyWidth / 2);
  const right = Math.max(stubWidth(east), half - bodyWidth / 2);
  const x = left + bodyWidth / 2;
  const all = [name, ...rest];
  return {
    words: all.map((text, index) => ({
      ...{ x, text },
      y: 14 + index * wordPx,
      anchor: "middle",
      bold: index === 0,
    })),
    mark: { x: x - nameWidth / 2 - 4 - markPx / 2, y: 10 },
    height: all.length * wordPx + 10,
    width: left + bodyWidth + right,
    bodyX: left,
    bodyWidth,
  };
}

/** Labels inside a body, on both sides of the drawing in its middle. */
function labelsWidth({ symbol, terminals }: SchematicPart): number {
  const widest = Math.max(0, ...terminals.map(({ label }) => textWidth(cutToWidth(label, 80, 9), 9)));
  return symbol === "part" ? 2 * widest + 24 : 0;
}

function sidesOf(rows: readonly Row[]): readonly [readonly Row[], readonly Row[]] {
  return [rows.filter(({ side }) => side === "west"), rows.filter(({ side }) => side === "east")];
}

function sumOfHeights(rows: readonly { readonly height: number }[]): number {
  return sumOf(rows.map(({ height }) => height));
}

function sumOf(all: readonly number[]): number {
  return all.reduce((sum, one) => sum + one, 0);
}

function byTerminal(rows: readonly Row[], { terminals }: SchematicPart): readonly Row[] {
  const order = new Map(terminals.map(({ name }, index) => [name, index]));
  return rows
    .map((row, index) => ({ row, index }))
    .sort(
      (one, other) =>
        (order.get(one.row.terminal) ?? 0) - (order.get(other.row.terminal) ?? 0) || one.index - other.index,
    )
    .map(({ row }) => row);
}
