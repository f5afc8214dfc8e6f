import { type Orientation, type PageSize, pageSizes } from "./page-size.ts";
import { artifact, marked, type Pdf, structure } from "./pdf-file.ts";
import { lineHeightPt, type TextSetter, type TextStyle, textSetter } from "./text-lines.ts";

/**
 * Pages that fill from the top. The caller asks for room first, draws at {@link y}, and moves it down.
 *
 * Not the layout of pdfmake, although that is installed for its drawing of SVG: it does not write the structure that screen
 * readers follow.
 */
export class Pages {
  readonly text: TextSetter;
  orientation: Orientation = "portrait";
  /** The position of the next element, from the top of the page, pt. */
  y = 0;

  constructor(
    readonly pdf: Pdf,
    readonly size: PageSize,
  ) {
    this.text = textSetter(pdf);
  }

  /** The part of a page between its margins, pt. */
  get area() {
    return areaOf(this.size, this.orientation);
  }

  get freePt(): number {
    return this.area.bottom - this.y;
  }

  /** True while the page is empty. */
  get fresh(): boolean {
    return this.y === this.area.top;
  }

  /** The maximum height on one page, pt. */
  get fullPt(): number {
    return this.area.bottom - this.area.top;
  }

  newPage(orientation: Orientation = this.orientation): void {
    this.orientation = orientation;
    const { widthPt, heightPt } = pageSizes[this.size];
    const size = orientation === "portrait" ? [widthPt, heightPt] : [heightPt, widthPt];
    this.pdf.doc.addPage({ size, margin: 0 });
    this.y = this.area.top;
  }

  /** Goes to a new page unless this height still fits on the current one. */
  makeRoom(heightPt: number): void {
    if (heightPt > this.freePt && !this.fresh) this.newPage();
  }

  /** Leaves this much empty, except at the top of a page. */
  skip(heightPt: number): void {
    if (!this.fresh) this.y = Math.min(this.y + heightPt, this.area.bottom);
  }

  /** A text of any length as one element, over as many pages as needed; never one line alone on either side. */
  paragraph(
    text: string,
    style: TextStyle,
    { tag = "P", parent = this.pdf.root, indentPt = 0 }: ParagraphOptions = {},
  ): void {
    const element = structure(this.pdf, parent, tag);
    const { left, width } = this.area;
    let rest = this.text.lines(text, style, width - indentPt);
    while (rest.length > 0) {
      let fit = Math.floor(this.freePt / lineHeightPt(style));
      if (fit < rest.length) fit = Math.min(fit, rest.length - 2);
      if (fit < Math.min(2, rest.length) && !this.fresh) {
        this.newPage();
        continue;
      }
      const lines = rest.slice(0, Math.max(fit, 1));
      rest = rest.slice(lines.length);
      marked(this.pdf, { element, tag }, () => {
        for (const line of lines) {
          this.text.draw(line, style, { x: left + indentPt, y: this.y });
          this.y += lineHeightPt(style);
        }
      });
      if (rest.length > 0) this.newPage();
    }
  }

  rule(widthPt: number, colour = "black"): void {
    const { left, width } = this.area;
    artifact(this.pdf, () => {
      this.pdf.doc.lineWidth(widthPt).strokeColor(colour);
      this.pdf.doc
        .moveTo(left, this.y)
        .lineTo(left + width, this.y)
        .stroke();
    });
  }
}

interface ParagraphOptions {
  readonly tag?: string;
  readonly parent?: PDFKit.PDFStructureElement;
  readonly indentPt?: number;
}

/** The margins hold a binder's holes, the running head and the page number. */
const margin = { side: 51, top: 60, bottom: 56 };

export function areaOf(size: PageSize, orientation: Orientation) {
  const { widthPt, heightPt } = pageSizes[size];
  const [pageWidth, pageHeight] = orientation === "portrait" ? [widthPt, heightPt] : [heightPt, widthPt];
  return {
    left: margin.side,
    top: margin.top,
    bottom: pageHeight - margin.bottom,
    width: pageWidth - 2 * margin.side,
    pageWidth,
    pageHeight,
  };
}
