import { createPen, fontFamily, px, textPx } from "../diagram/svg-writer.ts";
import { xmlText } from "../diagram/xml-text.ts";
import type { Template } from "./draw-front-view.ts";

/**
 * The template as SVG whose width and height are in mm, with a bar of 100 mm below the surface to be measured once it is printed or cut.
 */
export function templateSvg(template: Template): string {
  const pen = createPen("paper");
  const { title, description, drawn, widthPx, heightPx } = template;
  const y = heightPx + 30;
  const bar = pen.line([
    { x: 0, y: y - 6 },
    { x: 0, y },
    { x: barPx, y },
    { x: barPx, y: y - 6 },
  ]);
  const words =
    pen.text({ x: barPx + 10, y: y - 12 }, fixingWords) + pen.text({ x: barPx + 10, y: y + 2 }, checkWords);
  return pictured({ title, description }, drawn + bar + words, {
    width: Math.max(widthPx, barPx + wordsPx) + 2 * edgePx,
    height: y + 20 + edgePx,
    unit: "mm",
  });
}

/** The surface alone as a picture in px, for sheets of paper that have a bar of their own. */
export function templatePicture(template: Template): {
  readonly svg: string;
  readonly widthPx: number;
  readonly heightPx: number;
} {
  const width = template.widthPx + 2 * edgePx;
  const height = template.heightPx + 2 * edgePx;
  return {
    svg: pictured(template, template.drawn, { width, height, unit: "px" }),
    widthPx: width,
    heightPx: height,
  };
}

/** Around the surface: more than half of the line of its edge. */
const edgePx = 4;

export const checkWords = "100 mm: print at 100 %, without fitting to the page, and measure this bar first";

/** The plan has no word for the holes of fixings. */
export const fixingWords = "Fixing holes are not in the plan: mark them from the part itself.";

const pxPerMm = 96 / 25.4;
const barPx = 100 * pxPerMm;
const wordsPx = 520;

function pictured(
  { title, description }: Pick<Template, "title" | "description">,
  content: string,
  { width, height, unit }: { readonly width: number; readonly height: number; readonly unit: "mm" | "px" },
): string {
  const size = (ofPx: number) => (unit === "px" ? px(ofPx) : `${px(ofPx / pxPerMm)}mm`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size(width)}" height="${size(height)}"`,
    ` viewBox="${-edgePx} ${-edgePx} ${px(width)} ${px(height)}"`,
    ` font-family="${fontFamily}" font-size="${textPx}" role="group" aria-label="${xmlText(title)}">\n`,
    `<title>${xmlText(title)}</title>\n<desc>${xmlText(description)}</desc>\n`,
    "<metadata>Loomwright</metadata>\n",
    createPen("paper").definitions,
    content,
    "</svg>\n",
  ].join("");
}
