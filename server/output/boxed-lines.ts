import type { Pages } from "./pages.ts";
import { artifact, marked, structure } from "./pdf-file.ts";
import { lineHeightPt, type TextStyle } from "./text-lines.ts";

/** A text in a box, for a notice or a finding. */
export interface BoxedText {
  readonly text: string;
  readonly style: TextStyle;
  /** Space above it, pt. */
  readonly gapPt?: number;
}

/** A box of several texts: in one piece, or, if it would take most of a page, continued in a box on the next page. */
export function boxedLines(pages: Pages, texts: readonly BoxedText[], frame: Frame): Boxed {
  const width = pages.area.width - frame.barPt - 2 * inside.x;
  const lines: Line[] = texts.flatMap(({ text, style, gapPt = 0 }, textIndex) =>
    pages.text.lines(text, style, width).map((line, index) => ({
      line,
      style,
      textIndex,
      gapPt: index === 0 ? gapPt : 0,
    })),
  );
  const totalPt = heightPt(lines);
  const leadPt = totalPt <= mostInOnePiece * pages.fullPt ? totalPt : heightPt(lines.slice(0, leadLines));
  return {
    leadPt,
    place() {
      const { pdf } = pages;
      const section = structure(pdf, pdf.root, "Sect");
      const elements = texts.map(() => structure(pdf, section, "P"));
      pages.makeRoom(leadPt);
      for (let rest = lines; rest.length > 0; ) {
        let count = rest.length;
        while (count > 1 && heightPt(rest.slice(0, count)) > pages.freePt) count--;
        const here = rest.slice(0, count);
        rest = rest.slice(count);
        drawFrame(pages, heightPt(here), frame);
        let y = pages.y + inside.y;
        here.forEach(({ line, style, textIndex, gapPt }, index) => {
          y += index === 0 ? 0 : gapPt;
          marked(pdf, { element: elements[textIndex]!, tag: "P" }, () =>
            pages.text.draw(line, style, { x: pages.area.left + frame.barPt + inside.x, y }),
          );
          y += lineHeightPt(style);
        });
        pages.y += heightPt(here);
        if (rest.length > 0) pages.newPage();
      }
    },
  };
}

export interface Boxed {
  readonly leadPt: number;
  place(): void;
}

export interface Frame {
  /** Width of the bar at its left edge; the text states the severity, the bar only helps to find it. */
  readonly barPt: number;
  readonly bar: string;
  readonly line: string;
}

interface Line {
  readonly line: string;
  readonly style: TextStyle;
  readonly textIndex: number;
  readonly gapPt: number;
}

/** Fraction of a page. */
const mostInOnePiece = 0.5;
const leadLines = 5;

const inside = { x: 8, y: 6 };

function heightPt(lines: readonly Line[]): number {
  return lines.reduce(
    (sum, { style, gapPt }, index) => sum + lineHeightPt(style) + (index === 0 ? 0 : gapPt),
    2 * inside.y,
  );
}

function drawFrame({ pdf, area, y }: Pages, height: number, { barPt, bar, line }: Frame): void {
  artifact(pdf, () => {
    const { doc } = pdf;
    doc.save();
    doc.lineWidth(0.6).strokeColor(line).rect(area.left, y, area.width, height).stroke();
    if (barPt > 0) doc.rect(area.left, y, barPt, height).fill(bar);
    doc.restore();
  });
}
