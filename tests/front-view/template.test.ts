import DxfParser, { type ICircleEntity, type ILineEntity, type ITextEntity } from "dxf-parser";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import { textWidth } from "../../library/documents/diagram/text-measure.ts";
import { drawTemplates } from "../../library/documents/front-view/draw-front-view.ts";
import { judge } from "../../library/judge.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { templatesFile } from "../../server/output/board-files.ts";
import type { PageSize } from "../../server/output/page-size.ts";
import { readPdf } from "../../server/output/pdf.tester.ts";
import { isAsSealed, sealed } from "../../server/output/seal.ts";
import { blots, piecesOf } from "../diagram/pieces-of-svg.ts";
import { sampled } from "../setup/sampled.ts";
import { camperPlan } from "./camper-plan.ts";

const { records, problems } = runExample(camperPlan);
const [board, floor] = drawTemplates(judge(records, problems), "camper.ts");
if (!board || !floor) throw new Error("the plan has two surfaces");

const fileOf = async (...asked: Parameters<typeof templatesFile>) => {
  const file = await templatesFile(...asked);
  if ("why" in file) throw new Error(file.why);
  return file;
};
const pdfOf = async (page: PageSize) => {
  const { bytes, missing } = await fileOf([board, floor], "pdf", page);
  expect(missing).toEqual([]);
  return bytes as Uint8Array;
};

/** The canvas of pdf.js outside of a browser, without the types of one. */
interface Drawable {
  readonly canvas: { readonly width: number; readonly height: number };
  readonly context: {
    getImageData(
      x: number,
      y: number,
      width: number,
      height: number,
    ): { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number };
  };
}

/** A page as grey pixels, 10 a millimetre. */
async function rendered(bytes: Uint8Array, number: number) {
  const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const doc = await loading.promise;
  try {
    const page = await doc.getPage(number);
    const viewport = page.getViewport({ scale: 254 / 72 });
    const factory = doc.canvasFactory as { create(width: number, height: number): Drawable };
    const { canvas, context } = factory.create(Math.round(viewport.width), Math.round(viewport.height));
    await page.render({ canvas, canvasContext: context, viewport } as never).promise;
    const { data, width, height } = context.getImageData(0, 0, canvas.width, canvas.height);
    return { width, height, isDark: (x: number, y: number) => data[4 * (y * width + x)]! < 200 };
  } finally {
    await loading.destroy();
  }
}

describe("the drilling template as PDF", () => {
  test.each(sampled("papers of a template", ["A4", "A3", "Letter"] as const))(
    "on %s, the bar of each sheet is 100.0 mm",
    async (page) => {
      const bytes = await pdfOf(page);
      const { pages, preferences } = await readPdf(bytes);
      expect(preferences?.PrintScaling).toBe("None");
      for (const { texts, alternatives } of pages) {
        const words = texts.map(({ text }) => text).join(" ");
        expect(words).toContain("print at 100 %");
        expect(words).toContain("Fixing holes are not in the plan");
        expect(words).toMatch(/row \d+ of \d+, column \d+ of \d+/);
        expect(alternatives).toHaveLength(1);
      }
      for (const number of [1, pages.length]) {
        const { height, width, isDark } = await rendered(bytes, number);
        const bars = Array.from({ length: 200 }, (_, up) => height - 1 - up).map((y) =>
          longestRun(width, (x) => isDark(x, y)),
        );
        const longest = bars.reduce((one, other) => (other.length > one.length ? other : one));
        // Both ends are drawn half a line beyond it.
        expect(longest.length / 10).toBeCloseTo(100.2, 0.3);
        expect(Math.abs(longest.length / 10 - 0.18 - 100)).toBeLessThan(0.15);
        expect(Math.abs(longest.start / 10 + 0.09 - 10)).toBeLessThan(0.15);
      }
    },
  );

  test("the corner of a part is at its place, on the sheet where it falls", async () => {
    const bytes = await pdfOf("A3");
    const { isDark, width } = await rendered(bytes, 1);
    // The first sheet begins at the corner of the surface, a margin of 10 mm and the room of its line from the edge of the paper.
    const edge = 10 + (4 * 25.4) / 96;
    const y = Math.round((edge + 70) * 10);
    const row = longestRun(
      Math.min(width, Math.round((edge + 420) * 10)),
      (x) => isDark(x, y) || isDark(x, y - 1) || isDark(x, y + 1),
    );
    expect(Math.abs(row.start / 10 - edge - 90)).toBeLessThan(0.3);
  });

  test("neighbours share a strip of 10 mm: the sheets cover the surface, and no fewer would", async () => {
    const { pages } = await readPdf(await pdfOf("A4"));
    const names = pages
      .flatMap(({ texts }) => texts.map(({ text }) => text))
      .filter((text) => text.includes("row"));
    const boards = names.filter((name) => name.startsWith("Board behind the bench"));
    const [, rows, columns] = /row 1 of (\d+), column 1 of (\d+)/.exec(boards[0]!)!.map(Number);
    expect(boards).toHaveLength(rows! * columns!);
    const [, a4Width, a4Height] = [0, pages[0]!.widthPt, pages[0]!.heightPt].map((pt) => (pt / 72) * 25.4);
    const covers = (count: number, paper: number, foot: number) => count * (paper - 20 - foot - 10) + 10;
    const surface = { width: 1200 + 2.2, height: 800 + 2.2 };
    expect(covers(columns!, a4Width!, 0)).toBeGreaterThanOrEqual(surface.width);
    expect(covers(columns! - 1, a4Width!, 0)).toBeLessThan(surface.width);
    expect(covers(rows!, a4Height!, 14)).toBeGreaterThanOrEqual(surface.height);
    expect(covers(rows! - 1, a4Height!, 14)).toBeLessThan(surface.height);
  });

  test("a wall that takes too many sheets is refused with their number", async () => {
    const { records: wall } = runExample(
      `surface({ name: "wall", size: { widthMm: 20_000, heightMm: 20_000 } });`,
    );
    const [large] = drawTemplates(judge(wall, []), "wall.ts");
    expect(await templatesFile([large!], "pdf", "A4")).toEqual({
      why: expect.stringMatching(/^it would take \d{4} sheets of A4, and a template has at most 300$/),
    });
  });

  test("the same plan gives the same bytes", async () => {
    expect(Buffer.from(await pdfOf("A4")).equals(Buffer.from(await pdfOf("A4")))).toBe(true);
  });
});

describe("the drilling template as SVG", () => {
  test("is in millimetres: a unit of its view box is 1/96 in, and the bar is 100 mm", async () => {
    const svg = String((await fileOf([board], "svg", "A4")).bytes);
    const [, width, boxWidth] = /width="([\d.]+)mm" [^>]*viewBox="-4 -4 ([\d.]+) /.exec(svg)!.map(Number);
    expect(width! / boxWidth!).toBeCloseTo(25.4 / 96, 5);
    const { texts, segments } = piecesOf(svg, (text, isBold) =>
      textWidth(text, 1, isBold ? "bold" : "regular"),
    );
    expect(
      blots({ ...piecesOf(svg, (text, isBold) => textWidth(text, 1, isBold ? "bold" : "regular")) }),
    ).toEqual([]);
    const lengths = segments.map(
      ({ from, to }) => (Math.hypot(to[0] - from[0], to[1] - from[1]) * 25.4) / 96,
    );
    expect(lengths.some((length) => Math.abs(length - 100) < 0.01)).toBe(true);
    expect(lengths.some((length) => Math.abs(length - 1200) < 0.01)).toBe(true);
    expect(texts.map(({ text }) => text)).toContain("left 90, top 70");
  });
});

describe("the drilling template as DXF", () => {
  const read = async () => new DxfParser().parseSync(String((await fileOf([board], "dxf", "A4")).bytes))!;
  const on = <Entity>(entities: readonly { readonly layer: string }[], layer: string) =>
    entities.filter((entity) => entity.layer === layer) as unknown as readonly Entity[];

  test("another reader finds each part on its layer, in mm with y up", async () => {
    const { entities, header, tables } = await read();
    expect(header.$ACADVER).toBe("AC1009");
    expect(Object.keys(tables.layer.layers)).toEqual([
      "SURFACE",
      "PARTS",
      "TERMINALS",
      "CHANNELS",
      "HOLES",
      "KEEP_FREE",
      "TEXT",
    ]);
    const corners = on<ILineEntity>(entities, "PARTS").flatMap(({ vertices }) =>
      vertices.map(({ x, y }) => `${x} ${y}`),
    );
    // The inverter is 320 × 260, 90 from the left and 70 from the top of 800.
    for (const corner of ["90 730", "410 730", "410 470", "90 470"]) expect(corners).toContain(corner);
    const edge = on<ILineEntity>(entities, "SURFACE").flatMap(({ vertices }) =>
      vertices.map(({ x, y }) => `${x} ${y}`),
    );
    expect(new Set(edge)).toEqual(new Set(["0 0", "1200 0", "1200 800", "0 800"]));
    const terminals = on<ICircleEntity>(entities, "TERMINALS").map(({ center }) => `${center.x} ${center.y}`);
    expect(terminals).toContain("150 485");
  });

  test("its unit is written, and that holes of fixings are not in it", async () => {
    const words = on<ITextEntity>((await read()).entities, "TEXT").map(({ text }) => text);
    expect(words).toContain("All dimensions in mm, scale 1:1.");
    expect(words).toContain("Fixing holes are not in the plan: mark them from the part itself.");
    expect(words).toContain("Inverter 2 kW");
  });

  test("it is known as ours until somebody changes it", async () => {
    const file = sealed("board.dxf", (await fileOf([board], "dxf", "A4")).bytes);
    expect(isAsSealed("board.dxf", file)).toBe(true);
    expect(new DxfParser().parseSync(Buffer.from(file).toString())!.entities.length).toBeGreaterThan(50);
    expect(isAsSealed("board.dxf", Buffer.from(String(Buffer.from(file)).replace("\n90\n", "\n91\n")))).toBe(
      false,
    );
  });
});

function longestRun(length: number, isDark: (at: number) => boolean) {
  let best = { start: 0, length: 0 };
  let start = 0;
  for (let at = 0; at <= length; at++) {
    if (at < length && isDark(at)) continue;
    if (at - start > best.length) best = { start, length: at - start };
    start = at + 1;
  }
  return best;
}
