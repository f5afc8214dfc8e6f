import type { Template } from "../../library/documents/front-view/draw-front-view.ts";
import { checkWords, fixingWords, templatePicture } from "../../library/documents/front-view/template-svg.ts";
import { drawSvg, naturalPtPerPx, type SvgPicture } from "./draw-svg.ts";
import { type PageSize, pageSizes, ptPerMm } from "./page-size.ts";
import { finishedPdf, marked, newPdf, type Paper, type Pdf, structure } from "./pdf-file.ts";
import { textSetter } from "./text-lines.ts";

/**
 * Templates in true size over as many sheets as they need. Neighbours share a strip of 10 mm with crosses in its middle; each sheet has
 * its row and column, and a bar of 100 mm to be measured, because a print dialogue may scale all the same.
 */
export async function templatePdf(
  templates: readonly Template[],
  { title, page }: { readonly title: string; readonly page: PageSize },
): Promise<Paper> {
  const pdf = await newPdf(title, { printScaling: false });
  for (const template of templates) drawSheets(pdf, template, page);
  return finishedPdf(pdf);
}

/** How many sheets of paper the templates need. */
export function countSheets(templates: readonly Template[], page: PageSize): number {
  return templates.reduce((sum, template) => {
    const { columns, rows } = sheetsOf(templatePicture(template), page);
    return sum + columns * rows;
  }, 0);
}

const marginMm = 10;
const overlapMm = 10;
/** At the foot of each sheet, for the bar and the words. */
const footMm = 14;

interface Sheets {
  /** Of a sheet of paper. */
  readonly paper: { readonly widthMm: number; readonly heightMm: number };
  /** Of the strip of the template on one sheet. */
  readonly tile: { readonly widthMm: number; readonly heightMm: number };
  readonly columns: number;
  readonly rows: number;
}

/** Upright or lying, whichever needs fewer sheets. */
function sheetsFor(widthMm: number, heightMm: number, page: PageSize): Sheets {
  const { widthPt, heightPt } = pageSizes[page];
  const upright = sheetsOn(widthPt / ptPerMm, heightPt / ptPerMm);
  const lying = sheetsOn(heightPt / ptPerMm, widthPt / ptPerMm);
  return lying.columns * lying.rows < upright.columns * upright.rows ? lying : upright;

  function sheetsOn(paperWidth: number, paperHeight: number): Sheets {
    const tile = {
      widthMm: paperWidth - 2 * marginMm,
      heightMm: paperHeight - 2 * marginMm - footMm,
    };
    const count = (length: number, room: number) =>
      Math.max(1, Math.ceil((length - overlapMm) / (room - overlapMm)));
    return {
      paper: { widthMm: paperWidth, heightMm: paperHeight },
      tile,
      columns: count(widthMm, tile.widthMm),
      rows: count(heightMm, tile.heightMm),
    };
  }
}

function sheetsOf({ widthPx, heightPx }: SvgPicture, page: PageSize): Sheets {
  const mmOf = (px: number) => (px * naturalPtPerPx) / ptPerMm;
  return sheetsFor(mmOf(widthPx), mmOf(heightPx), page);
}

function drawSheets(pdf: Pdf, template: Template, page: PageSize): void {
  const picture = templatePicture(template);
  const sheets = sheetsOf(picture, page);
  const { paper, tile, columns, rows } = sheets;
  const { doc } = pdf;
  const text = textSetter(pdf);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const name = `row ${row + 1} of ${rows}, column ${column + 1} of ${columns}`;
      doc.addPage({ size: [paper.widthMm * ptPerMm, paper.heightMm * ptPerMm], margin: 0 });
      const alt = pdf.drawable(`${template.description} Sheet ${name}.`);
      const element = structure(pdf, pdf.root, "Figure", { alt });
      const left = column * (tile.widthMm - overlapMm);
      const top = row * (tile.heightMm - overlapMm);
      marked(pdf, { element, tag: "Figure" }, () => {
        doc.save();
        rectangle(pdf, marginMm, marginMm, tile.widthMm, tile.heightMm).clip();
        drawSvg(pdf, picture, {
          x: (marginMm - left) * ptPerMm,
          y: (marginMm - top) * ptPerMm,
          ptPerPx: naturalPtPerPx,
        });
        doc.restore();
        doc.lineWidth(0.3).strokeColor("black");
        rectangle(pdf, marginMm, marginMm, tile.widthMm, tile.heightMm)
          .dash(2, { space: 2 })
          .stroke()
          .undash();
        crosses(pdf, sheets, { row, column });
      });
      const words = structure(pdf, pdf.root, "P");
      marked(pdf, { element: words, tag: "P" }, () => {
        const y = paper.heightMm - marginMm - 4;
        bar(pdf, marginMm, y);
        text.draw(checkWords, { bold: false, sizePt: 7 }, { x: marginMm * ptPerMm, y: (y - 8.5) * ptPerMm });
        text.draw(
          fixingWords,
          { bold: false, sizePt: 7 },
          { x: (marginMm + 106) * ptPerMm, y: (y - 8.5) * ptPerMm },
        );
        const title = pdf.drawable(`${template.surfaceName}, ${name}`);
        const [line = ""] = text.lines(title, { bold: true, sizePt: 8 }, (tile.widthMm - 108) * ptPerMm);
        text.draw(line, { bold: true, sizePt: 8 }, { x: (marginMm + 106) * ptPerMm, y: (y - 3) * ptPerMm });
      });
    }
}

function rectangle({ doc }: Pdf, x: number, y: number, width: number, height: number) {
  return doc.rect(x * ptPerMm, y * ptPerMm, width * ptPerMm, height * ptPerMm);
}

function bar({ doc }: Pdf, x: number, y: number): void {
  const at = (mm: number) => mm * ptPerMm;
  doc.lineWidth(0.5).strokeColor("black");
  doc
    .moveTo(at(x), at(y))
    .lineTo(at(x + 100), at(y))
    .stroke();
  for (const end of [x, x + 100])
    doc
      .moveTo(at(end), at(y - 2))
      .lineTo(at(end), at(y + 2))
      .stroke();
}

/** In the middle of each strip that a sheet shares with a neighbour, at the same places of the template on both. */
function crosses(
  { doc }: Pdf,
  { tile, columns, rows }: Sheets,
  { row, column }: { readonly row: number; readonly column: number },
): void {
  const half = overlapMm / 2;
  const xs = [...(column > 0 ? [half] : []), ...(column < columns - 1 ? [tile.widthMm - half] : [])];
  const ys = [...(row > 0 ? [half] : []), ...(row < rows - 1 ? [tile.heightMm - half] : [])];
  const shares = [0.2, 0.5, 0.8];
  const places = [
    ...xs.flatMap((x) => shares.map((share) => ({ x, y: tile.heightMm * share }))),
    ...ys.flatMap((y) => shares.map((share) => ({ x: tile.widthMm * share, y }))),
  ];
  const at = (mm: number) => (marginMm + mm) * ptPerMm;
  doc.lineWidth(0.4).strokeColor("black");
  for (const { x, y } of places) {
    doc
      .moveTo(at(x - 4), at(y))
      .lineTo(at(x + 4), at(y))
      .stroke();
    doc
      .moveTo(at(x), at(y - 4))
      .lineTo(at(x), at(y + 4))
      .stroke();
  }
}
