import type { Pdf } from "./pdf-file.ts";

/** The typography of a text. Sizes in points. */
export interface TextStyle {
  readonly bold: boolean;
  readonly sizePt: number;
}

/** From one line of a text to the next. DejaVu Sans is wide and open: less looks crammed, more falls apart. */
export const lineHeightPt = ({ sizePt }: TextStyle) => sizePt * 1.32;

/** Measures and breaks texts for one PDF, and remembers each word's width. */
export function textSetter({ doc, drawable }: Pdf) {
  const widths = { regular: new Map<string, number>(), bold: new Map<string, number>() };

  /** Width of a text on one line, pt. */
  function widthPt(text: string, { bold, sizePt }: TextStyle): number {
    const face = bold ? "bold" : "regular";
    let perPoint = widths[face].get(text);
    if (perPoint === undefined) {
      perPoint = doc.font(face).fontSize(1000).widthOfString(drawable(text)) / 1000;
      widths[face].set(text, perPoint);
    }
    return perPoint * sizePt;
  }

  /**
   * The text on lines no wider than this, broken at spaces; a longer word after its marks ("house.bus/") or, if even that is not
   * enough, anywhere. An empty text is one empty line.
   */
  function lines(text: string, style: TextStyle, widthPtOfRoom: number): string[] {
    const roomPt = widthPtOfRoom + dustPt;
    const found: string[] = [];
    const space = widthPt(" ", style);
    let line = "";
    let used = 0;
    for (const word of drawable(text).split(breaks)) {
      const width = widthPt(word, style);
      if (line !== "" && used + space + width <= roomPt) {
        line += ` ${word}`;
        used += space + width;
        continue;
      }
      if (line !== "") found.push(line);
      line = word;
      used = width;
      if (width <= roomPt) continue;
      const pieces = brokenWord(word, style, roomPt);
      found.push(...pieces.slice(0, -1));
      line = pieces.at(-1)!;
      used = widthPt(line, style);
    }
    found.push(line);
    return found;
  }

  function brokenWord(word: string, style: TextStyle, roomPt: number): string[] {
    const pieces: string[] = [];
    let piece = "";
    const parts = word
      .split(breaksBehind)
      .flatMap((part) => (widthPt(part, style) <= roomPt ? [part] : [...part]));
    for (const part of parts) {
      if (piece !== "" && widthPt((piece + part).trimEnd(), style) > roomPt) {
        pieces.push(piece.trimEnd());
        piece = "";
      }
      piece += part;
    }
    return [...pieces, piece];
  }

  /** Width of the widest piece that should not be broken, pt. */
  function widestWordPt(text: string, style: TextStyle): number {
    return Math.max(
      ...drawable(text)
        .split(breaks)
        .map((word) => widthPt(word, style)),
    );
  }

  /** Width of the widest piece between spaces and marks, pt: narrower, and a word breaks in its middle. */
  function widestPiecePt(text: string, style: TextStyle): number {
    return Math.max(
      ...drawable(text)
        .split(breaks)
        .flatMap((word) => word.split(breaksBehind))
        .map((piece) => widthPt(piece.trimEnd(), style)),
    );
  }

  /** Draws one line with its upper left corner here; without breaking or cutting it. */
  function draw(line: string, style: TextStyle, at: { readonly x: number; readonly y: number }): void {
    if (line === "") return;
    doc.font(style.bold ? "bold" : "regular").fontSize(style.sizePt);
    // Half of the extra line height goes above the letters.
    const above = (lineHeightPt(style) - doc.currentLineHeight()) / 2;
    doc.text(line, at.x, at.y + above, { lineBreak: false });
  }

  return { widthPt, lines, widestWordPt, widestPiecePt, draw };
}

export type TextSetter = ReturnType<typeof textSetter>;

/** A column as wide as its widest word, less the rounding of sums, holds that word. */
const dustPt = 0.01;

/** Spaces, except the one between a number and its unit: "14 AWG", "2.1 mm²", "30 °C". */
const breaks =
  / +(?!(?<=\d +)(?:AWG|[mk]?(?:A|V|W|Ω|Hz|Ah|Wh|Nm)|mm²?|cm|m|in|ft|%|°[CF]|s|ms|h)(?![\p{L}\d]))/u;

/** A long name may continue in the next line after one of these. */
const breaksBehind = /(?<=[-/._:,;·→ ])/;
