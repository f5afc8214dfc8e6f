import { cutToWidth, textWidth } from "./text-measure.ts";

/** A sentence in lines of at most that width, broken between words; a word that is too long for a line is cut. */
export function linesOfText(text: string, widthPx: number, sizePx: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, sizePx) > widthPx) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines.map((one) => cutToWidth(one, widthPx, sizePx));
}
