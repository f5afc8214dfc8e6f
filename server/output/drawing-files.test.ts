import { PNG } from "pngjs";
import { describe, expect, test } from "vitest";
import { version } from "../../library/package.json";
import { type DrawingToPrint, drawingPdf } from "./drawing-pdf.ts";
import { drawingPng, mostPixels } from "./drawing-png.ts";
import { readPdf } from "./pdf.tester.ts";
import { isAsSealed, sealed } from "./seal.ts";

/** A black square of 40 px at (20, 10), and one word in bold and one in regular. */
function drawing(widthPx: number, heightPx: number, word = "house bank"): DrawingToPrint {
  return {
    svg: `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}" viewBox="0 0 ${widthPx} ${heightPx}" font-family="DejaVu Sans, Verdana, sans-serif" font-size="16"><title>Bus</title><rect x="20" y="10" width="40" height="40" fill="#000000"/><text x="20" y="90">${word}</text><text x="20" y="120" font-weight="bold">2/0 AWG &amp; 12 V</text></svg>`,
    ...{ widthPx, heightPx, title: "Bus", description: "A bank." },
  };
}

describe("PNG", () => {
  test.each([1, 2])("at %d px a px: size, resolution, maker, and what is black", async (scale) => {
    const { bytes, missing } = await drawingPng(drawing(300, 150), { scale });
    expect(missing).toEqual([]);
    expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    // Verifies the checksum of each chunk, and that the picture is complete.
    const { width, height, data } = PNG.sync.read(Buffer.from(bytes), { checkCRC: true });
    expect([width, height]).toEqual([300 * scale, 150 * scale]);
    const at = (x: number, y: number) => [
      ...data.subarray((y * scale * width + x * scale) * 4).subarray(0, 4),
    ];
    expect(at(40, 30)).toEqual([0, 0, 0, 255]);
    expect(at(80, 30)).toEqual([255, 255, 255, 255]);
    expect(at(299, 149)).toEqual([255, 255, 255, 255]);
    const chunks = chunksOf(bytes);
    expect(chunks.map(({ type }) => type).slice(0, 3)).toEqual(["IHDR", "pHYs", "tEXt"]);
    expect(chunks[2]!.data.toString("latin1")).toBe(`Software\0Loomwright ${version}`);
    // 96 px an inch of 25.4 mm, in px a metre.
    expect(chunks[1]!.data.readUInt32BE(0)).toBe(Math.round((96 * scale * 1000) / 25.4));
    expect(isAsSealed("a.png", sealed("a.png", bytes))).toBe(true);
  });

  test("text is drawn, with the typeface that travels along and the weight that is asked for", async () => {
    const inkOf = async (word: string) => {
      const { data, width } = PNG.sync.read(
        Buffer.from((await drawingPng(drawing(300, 150, word), { scale: 1 })).bytes),
      );
      const rows = data.subarray(75 * width * 4, 95 * width * 4);
      return rows.filter((value, index) => index % 4 === 0 && value < 128).length;
    };
    expect(await inkOf("")).toBe(0);
    expect(await inkOf("ii")).toBeGreaterThan(5);
    expect(await inkOf("MMMM")).toBeGreaterThan(4 * (await inkOf("ii")));
  });

  test("the same drawing gives the same bytes", async () => {
    const [one, two] = [
      await drawingPng(drawing(300, 150), { scale: 2 }),
      await drawingPng(drawing(300, 150), { scale: 2 }),
    ];
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
  });

  test("characters that cannot be drawn are told", async () => {
    expect((await drawingPng(drawing(300, 150, "中 🔥"), { scale: 1 })).missing).toEqual(["中", "🔥"]);
  });

  test("one that would be too large for the memory is made smaller", async () => {
    const { bytes } = await drawingPng(drawing(20_000, 10_000), { scale: 4 });
    const width = Buffer.from(bytes).readUInt32BE(16);
    const height = Buffer.from(bytes).readUInt32BE(20);
    expect(width * height).toBeLessThanOrEqual(mostPixels * 1.001);
    expect(width / height).toBeCloseTo(2, 3);
  });
});

describe("PDF of a drawing", () => {
  test("without a page size the page is as large as the drawing: 96 px are 72 pt", async () => {
    const { bytes } = await drawingPdf(drawing(400, 200), { page: undefined });
    const { pages, info, tagged } = await readPdf(bytes);
    expect(pages.map(({ widthPt, heightPt }) => [widthPt, heightPt])).toEqual([[300, 150]]);
    expect(pages[0]!.texts.map(({ text }) => text)).toEqual(["house bank", "2/0 AWG & 12 V"]);
    expect(pages[0]!.texts[0]).toMatchObject({ x: expect.closeTo(15, 1), y: expect.closeTo(67.5, 1) });
    expect(pages[0]!.alternatives).toEqual(["A bank."]);
    expect(pages[0]!.missingGlyphs).toBe(0);
    expect([info.Title, tagged]).toEqual(["Bus", true]);
    expect(isAsSealed("a.pdf", sealed("a.pdf", bytes))).toBe(true);
  });

  test.each([
    ["A4", 800, 400, [841.89, 595.28]],
    ["A4", 400, 800, [595.28, 841.89]],
    ["Letter", 8000, 4000, [792, 612]],
    ["Letter", 4000, 8000, [612, 792]],
  ] as const)(
    "on %s, %d × %d px lie as they are larger, inside of the margins",
    async (page, width, height, size) => {
      const { pages } = await readPdf((await drawingPdf(drawing(width, height), { page })).bytes);
      expect([pages[0]!.widthPt, pages[0]!.heightPt]).toEqual(size.map((side) => expect.closeTo(side, 2)));
      const margin = (10 / 25.4) * 72;
      for (const { x, y, sizePt } of pages[0]!.texts) {
        expect(x).toBeGreaterThan(margin);
        expect(y).toBeGreaterThan(margin);
        // Never enlarged.
        expect(sizePt).toBeLessThanOrEqual(12.001);
      }
    },
  );

  test("the same drawing gives the same bytes", async () => {
    const [one, two] = [
      await drawingPdf(drawing(300, 150), { page: "A4" }),
      await drawingPdf(drawing(300, 150), { page: "A4" }),
    ];
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
  });

  test("what cannot be put on paper is an error, not a gap", async () => {
    const broken = { ...drawing(300, 150), svg: "<svg><path d='M 0 0 L'/><g></svg>" };
    await expect(drawingPdf(broken, { page: "A4" })).rejects.toThrow("could not be put on paper");
  });
});

function chunksOf(png: Uint8Array) {
  const bytes = Buffer.from(png);
  const chunks: { type: string; data: Buffer }[] = [];
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    chunks.push({
      type: bytes.toString("latin1", at + 4, at + 8),
      data: bytes.subarray(at + 8, at + 8 + length),
    });
    at += length + 12;
  }
  return chunks;
}
