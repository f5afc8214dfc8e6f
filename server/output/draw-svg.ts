import svgToPdfkit from "pdfmake/js/3rd-party/svg-to-pdfkit/source.js";
import type { Pdf } from "./pdf-file.ts";

/**
 * Draws an SVG for paper onto the current page, with its upper left corner here; text stays text. Throws an error if the SVG
 * needs something that cannot be drawn: no part is left out silently.
 */
export function drawSvg({ doc, drawable }: Pdf, { svg, widthPx, heightPx }: SvgPicture, place: Place): void {
  const warnings: string[] = [];
  doc.save().translate(place.x, place.y).scale(place.ptPerPx);
  svgToPdfkit(doc, drawable(svg), 0, 0, {
    width: widthPx,
    height: heightPx,
    assumePt: true,
    fontCallback: (_, bold) => (bold ? "bold" : "regular"),
    // A drawing never causes a download.
    imageCallback: () => "",
    documentCallback: () => undefined,
    warningCallback: (warning) => warnings.push(warning),
  });
  doc.restore();
  if (warnings.length > 0) throw new Error(`the drawing could not be put on paper: ${warnings.join("; ")}`);
}

export interface SvgPicture {
  readonly svg: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** From the top left corner of the page, pt. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly ptPerPx: number;
}

/** From CSS: 96 px and 72 pt are an inch. */
export const naturalPtPerPx = 0.75;
