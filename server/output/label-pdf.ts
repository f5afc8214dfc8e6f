import {
  type LabelSheetGeometry,
  labelSheet,
  type PlacedLabel,
} from "../../library/documents/schedules/label-sheets.ts";
import { pageSizes, ptPerMm } from "./page-size.ts";
import { artifact, finishedPdf, marked, newPdf, type Paper, type Pdf, structure } from "./pdf-file.ts";
import { lineHeightPt, type TextSetter, type TextStyle, textSetter } from "./text-lines.ts";

/**
 * Labels at the positions of a label sheet. The first line of each is set large, and all lines shrink until they fit. Text that
 * does not fit at the smallest readable size ends in an ellipsis; `cut` counts such labels.
 */
export async function labelPdf(
  labels: readonly (readonly string[])[],
  { title, geometry, skip = 0, cuttingLines = false }: LabelOptions,
): Promise<Paper & { readonly cut: number }> {
  const pdf = await newPdf(title, { printScaling: false });
  const text = textSetter(pdf);
  const { widthPt, heightPt } = pageSizes[geometry.paper];
  let cut = 0;
  for (const sheet of labelSheet(labels, geometry, skip)) {
    pdf.doc.addPage({ size: [widthPt, heightPt], margin: 0 });
    const list = structure(pdf, pdf.root, "L");
    for (const label of sheet.labels) {
      if (cuttingLines) outline(pdf, label);
      const { lines, complete } = fitted(label, text);
      if (!complete) cut++;
      const element = structure(pdf, structure(pdf, list, "LI"), "LBody");
      marked(pdf, { element, tag: "LBody" }, () => drawInMiddle(label, lines, text));
    }
  }
  return { ...(await finishedPdf(pdf)), cut };
}

export interface LabelOptions {
  readonly title: string;
  readonly geometry: LabelSheetGeometry;
  /** How many labels are missing at the beginning of the first sheet. */
  readonly skip?: number;
  /** A hairline around each label, for cutting plain paper. */
  readonly cuttingLines?: boolean;
}

/** Kept free at each edge: no printer aligns a sheet of labels exactly. */
const edgePt = 1.8 * ptPerMm;

/**
 * Sizes of the lower lines, pt; the first line is larger by {@link firstLarger}. Below 4.5 pt a label is unreadable at the bench.
 */
const sizes = [9, 8, 7, 6.5, 6, 5.5, 5, 4.5];
const firstLarger = 1.5;

interface SetLine {
  readonly line: string;
  readonly style: TextStyle;
  /** The index of its text on the label, and its line within that text. */
  readonly textIndex: number;
  readonly row: number;
}

/** The lines at the largest size at which all of them fit, with whole words if possible. */
function fitted(
  { widthMm, heightMm, lines }: PlacedLabel<readonly string[]>,
  text: TextSetter,
): { readonly lines: readonly SetLine[]; readonly complete: boolean } {
  const roomPt = { width: widthMm * ptPerMm - 2 * edgePt, height: heightMm * ptPerMm - 2 * edgePt };
  const at = (sizePt: number) =>
    lines
      .filter((line) => line !== "")
      .flatMap((line, index) => {
        const style: TextStyle =
          index === 0 ? { bold: true, sizePt: sizePt * firstLarger } : { bold: false, sizePt };
        return text
          .lines(line, style, roomPt.width)
          .map((one, row): SetLine => ({ line: one, style, textIndex: index, row }));
      });
  const whole = (sizePt: number) =>
    lines.every(
      (line, index) =>
        text.widestWordPt(line, { bold: index === 0, sizePt: index === 0 ? sizePt * firstLarger : sizePt }) <=
        roomPt.width,
    );
  const fits = (sizePt: number) => totalPt(at(sizePt)) <= roomPt.height;
  const size = sizes.find((one) => whole(one) && fits(one)) ?? sizes.find(fits);
  if (size !== undefined) return { lines: at(size), complete: true };
  return { lines: shortened(at(sizes.at(-1)!), roomPt.height), complete: false };
}

/** As many lines as fit: the first of every text, then more of the earlier texts, each with an ellipsis where it is cut. */
function shortened(all: readonly SetLine[], roomPt: number): SetLine[] {
  const kept = new Set<SetLine>();
  const wanted = [...all].sort((a, b) => a.row - b.row || a.textIndex - b.textIndex);
  for (const line of wanted) {
    if (totalPt([...kept, line]) > roomPt && kept.size > 0) break;
    kept.add(line);
  }
  return all
    .filter((line) => kept.has(line))
    .map((line) => {
      const next = all[all.indexOf(line) + 1];
      const goesOn = next?.textIndex === line.textIndex && !kept.has(next);
      return goesOn ? { ...line, line: `${[...line.line].slice(0, -1).join("").trimEnd()}…` } : line;
    });
}

function drawInMiddle(
  { xMm, yMm, widthMm, heightMm }: PlacedLabel<readonly string[]>,
  lines: readonly SetLine[],
  text: TextSetter,
): void {
  const middle = (xMm + widthMm / 2) * ptPerMm;
  let y = yMm * ptPerMm + (heightMm * ptPerMm - totalPt(lines)) / 2;
  for (const { line, style } of lines) {
    text.draw(line, style, { x: middle - text.widthPt(line, style) / 2, y });
    y += lineHeightPt(style);
  }
}

function totalPt(lines: readonly SetLine[]): number {
  return lines.reduce((sum, { style }) => sum + lineHeightPt(style), 0);
}

function outline(pdf: Pdf, { xMm, yMm, widthMm, heightMm }: PlacedLabel<readonly string[]>): void {
  artifact(pdf, () => {
    const [x, y, width, height] = [xMm, yMm, widthMm, heightMm].map((mm) => mm * ptPerMm);
    pdf.doc.save().lineWidth(0.2).strokeColor("#8a8a8a").rect(x!, y!, width!, height!).stroke().restore();
  });
}
