import type { ReportContent } from "../../library/documents/report/report-content.ts";
import type { Pages } from "./pages.ts";
import { artifact, marked, structure } from "./pdf-file.ts";
import { lineHeightPt, type TextStyle } from "./text-lines.ts";

/** A chapter in the list of contents: the position of its line and, once it has been placed, the page where it begins. */
export interface ContentsEntry {
  readonly id: string;
  readonly text: string;
  readonly y: number;
  readonly pageIndex: number;
  readonly element: PDFKit.PDFStructureElement;
  /** From 1. */
  beginsOnPage?: number;
}

/** Title, subtitle and room for the list of contents, whose page numbers are known only when everything is placed. */
export function placeTitle(pages: Pages, { title, subtitle, blocks }: ReportContent): ContentsEntry[] {
  pages.y -= 14;
  pages.paragraph(title, { bold: true, sizePt: 22 }, { tag: "H1" });
  pages.skip(3);
  if (subtitle !== "") pages.paragraph(subtitle, { bold: false, sizePt: 10.5 });
  pages.skip(8);
  pages.rule(1.2);
  pages.skip(10);
  const chapters = blocks.flatMap((block) => (block.kind === "heading" && block.level === 2 ? [block] : []));
  if (chapters.length < 3) return [];
  const list = structure(pages.pdf, pages.pdf.root, "TOC");
  const entries = chapters.map(({ id, number, text }): ContentsEntry => {
    pages.makeRoom(lineHeightPt(entryStyle));
    const entry = {
      id,
      text: number === "" ? text : `${number} ${text}`,
      y: pages.y,
      pageIndex: pageCount(pages) - 1,
      element: structure(pages.pdf, list, "TOCI"),
    };
    pages.y += lineHeightPt(entryStyle);
    return entry;
  });
  pages.skip(8);
  pages.rule(0.5);
  pages.skip(10);
  return entries;
}

/** Writes the text that is on every page, and the page numbers of the list of contents. */
export function finishPages(
  pages: Pages,
  { title, madeBy }: ReportContent,
  contents: readonly ContentsEntry[],
): void {
  const { doc } = pages.pdf;
  const count = pageCount(pages);
  for (const entry of contents) {
    doc.switchToPage(entry.pageIndex);
    drawEntry(pages, entry);
  }
  for (let index = 0; index < count; index++) {
    doc.switchToPage(index);
    const { width, height } = doc.page;
    const { left } = pages.area;
    const right = width - left;
    artifact(pages.pdf, () => {
      const foot = height - 34;
      const page = `page ${index + 1} of ${count}`;
      doc.save().lineWidth(0.4).strokeColor("#8a8a8a");
      doc
        .moveTo(left, foot - 5)
        .lineTo(right, foot - 5)
        .stroke();
      pages.text.draw(madeBy, small, { x: left, y: foot });
      pages.text.draw(page, small, { x: right - pages.text.widthPt(page, small), y: foot });
      if (index > 0) {
        const [first = ""] = pages.text.lines(title, small, right - left);
        pages.text.draw(first, small, { x: left, y: 30 });
        doc.moveTo(left, 44).lineTo(right, 44).stroke();
      }
      doc.restore();
    });
  }
}

function drawEntry(pages: Pages, { text, y, element, id, beginsOnPage }: ContentsEntry): void {
  const { pdf, text: setter } = pages;
  const { doc } = pdf;
  const left = pages.area.left;
  const right = doc.page.width - left;
  const page = String(beginsOnPage ?? "");
  const numberX = right - setter.widthPt(page, entryStyle);
  const [line = ""] = setter.lines(text, entryStyle, right - left - 40);
  marked(pdf, { element, tag: "TOCI" }, () => {
    setter.draw(line, entryStyle, { x: left, y });
    setter.draw(page, entryStyle, { x: numberX, y });
  });
  artifact(pdf, () => {
    doc.save().lineWidth(0.5).strokeColor("#8a8a8a").dash(0.5, { space: 2.5 });
    const base = y + lineHeightPt(entryStyle) * 0.72;
    doc
      .moveTo(left + setter.widthPt(line, entryStyle) + 4, base)
      .lineTo(numberX - 4, base)
      .stroke();
    doc.undash().restore();
  });
  doc.goTo(left, y, right - left, lineHeightPt(entryStyle), id);
}

export function pageCount({ pdf }: Pages): number {
  return pdf.doc.bufferedPageRange().count;
}

const entryStyle: TextStyle = { bold: false, sizePt: 9.5 };
const small: TextStyle = { bold: false, sizePt: 7.5 };
