import { boldWidths, regularWidths } from "./text-widths.ts";

/**
 * Maximum width of a text, px: in DejaVu Sans, or in Verdana, which is as wide. Characters that the table lacks count as {@link
 * widest}: no script and no emoji ever runs into its neighbours.
 */
export function textWidth(text: string, sizePx: number, weight: Weight = "regular"): number {
  const widths = weight === "bold" ? bold : regular;
  let thousandths = 0;
  for (const character of text) thousandths += widths.get(character.codePointAt(0)!) ?? widest;
  return (thousandths * sizePx) / 1000;
}

/** The text, or as much of it as fits with an ellipsis behind it. Cuts between characters. */
export function cutToWidth(
  text: string,
  widthPx: number,
  sizePx: number,
  weight: Weight = "regular",
): string {
  if (textWidth(text, sizePx, weight) <= widthPx) return text;
  const characters = [...text];
  let left = widthPx - textWidth("…", sizePx, weight);
  const kept: string[] = [];
  for (const character of characters) {
    left -= textWidth(character, sizePx, weight);
    if (left < 0) break;
    kept.push(character);
  }
  return `${kept.join("").trimEnd()}…`;
}

export type Weight = "regular" | "bold";

/** Thousandths of the font size. The widest emoji of common typefaces are 1.28 of it. */
const widest = 1300;

const regular = tableOf(regularWidths);
const bold = tableOf(boldWidths);

function tableOf(ranges: typeof regularWidths): ReadonlyMap<number, number> {
  return new Map(
    ranges.flatMap(({ first, widths }) => widths.map((width, index) => [first + index, width] as const)),
  );
}

/** A sentence in lines of at most that width, broken between words; a word that is too long for a line is cut. */
export function linesOfText(
  text: string,
  widthPx: number,
  sizePx: number,
  weight: Weight = "regular",
): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, sizePx, weight) > widthPx) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines.map((one) => cutToWidth(one, widthPx, sizePx, weight));
}
