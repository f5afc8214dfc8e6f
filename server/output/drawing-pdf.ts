import { drawSvg, naturalPtPerPx, type SvgPicture } from "./draw-svg.ts";
import { type PageSize, pageSizes, ptPerMm } from "./page-size.ts";
import { finishedPdf, marked, newPdf, type Paper, structure } from "./pdf-file.ts";

/**
 * A drawing for paper as a PDF of one page; its lines are lines and its text is text. Without a page size the page is as large as
 * the drawing. With one, the sheet is turned to make the drawing larger, and the drawing is scaled down to fit between margins of
 * 10 mm, which any printer can keep.
 */
export function drawingPdf(
  drawing: DrawingToPrint,
  { page }: { readonly page: PageSize | undefined },
): Promise<Paper> {
  return drawingsPdf([drawing], { title: drawing.title, page });
}

/** Several drawings, each on a page of its own as {@link drawingPdf} makes it. */
export async function drawingsPdf(
  drawings: readonly DrawingToPrint[],
  { title, page }: { readonly title: string; readonly page: PageSize | undefined },
): Promise<Paper> {
  const pdf = await newPdf(title);
  for (const drawing of drawings) {
    const { width, height, ptPerPx } = sheet(drawing, page);
    pdf.doc.addPage({ size: [width, height], margin: 0 });
    const element = structure(pdf, pdf.root, "Figure", { alt: pdf.drawable(drawing.description) });
    marked(pdf, { element, tag: "Figure" }, () =>
      drawSvg(pdf, drawing, {
        x: (width - drawing.widthPx * ptPerPx) / 2,
        y: (height - drawing.heightPx * ptPerPx) / 2,
        ptPerPx,
      }),
    );
  }
  return finishedPdf(pdf);
}

export interface DrawingToPrint extends SvgPicture {
  readonly title: string;
  /** For people who cannot see it. */
  readonly description: string;
}

const marginPt = 10 * ptPerMm;

function sheet({ widthPx, heightPx }: SvgPicture, page: PageSize | undefined): Sheet {
  if (page === undefined) {
    return { width: widthPx * naturalPtPerPx, height: heightPx * naturalPtPerPx, ptPerPx: naturalPtPerPx };
  }
  const { widthPt, heightPt } = pageSizes[page];
  const upright = fitted(widthPt, heightPt);
  const lying = fitted(heightPt, widthPt);
  return lying.ptPerPx > upright.ptPerPx ? lying : upright;

  function fitted(width: number, height: number): Sheet {
    const room = { width: width - 2 * marginPt, height: height - 2 * marginPt };
    return { width, height, ptPerPx: Math.min(naturalPtPerPx, room.width / widthPx, room.height / heightPx) };
  }
}

interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly ptPerPx: number;
}
