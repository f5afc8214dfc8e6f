import type { Point } from "./graph.ts";
import { type SvgWriter, textPx } from "./svg-writer.ts";
import { cutToWidth, linesOfText } from "./text-measure.ts";

/** The block in the corner of a drawing on paper: its title, its facts a line each, and the caution. */
export function titleBlock(
  pen: SvgWriter,
  { title, facts }: { readonly title: string; readonly facts: readonly string[] },
  { x, y }: Point,
): { readonly svg: string; readonly height: number } {
  const room = blockWidthPx - 20;
  const rows = [
    ...facts.map((fact) => cutToWidth(fact, room, textPx)),
    ...linesOfText(caution, room, textPx),
  ];
  const height = (rows.length + 1) * linePx + 22;
  const rule = (at: number) =>
    pen.line(
      [
        { x, y: y + at },
        { x: x + blockWidthPx, y: y + at },
      ],
      "fine",
    );
  return {
    height,
    svg: pen.group(
      { classes: ["loomwright-title-block"] },
      pen.rect({ x, y, width: blockWidthPx, height }),
      rule(linePx + 9),
      rule((facts.length + 1) * linePx + 15),
      pen.text({ x: x + 10, y: y + 17 }, cutToWidth(title, room, titlePx, "bold"), {
        weight: "bold",
        sizePx: titlePx,
      }),
      ...rows.map((text, index) =>
        pen.text({ x: x + 10, y: y + 17 + (index + 1) * linePx + (index >= facts.length ? 10 : 5) }, text, {
          faint: true,
        }),
      ),
    ),
  };
}

export const blockWidthPx = 300;
const linePx = 16;
const titlePx = 13;

const caution =
  "Loomwright is a planning aid. Batteries can deliver thousands of amperes: disconnect before work. Local codes rule.";
