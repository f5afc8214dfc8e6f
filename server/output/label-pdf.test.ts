import { describe, expect, test } from "vitest";
import { labelSheets } from "../../library/documents/schedules/label-sheets.ts";
import { labelPdf } from "./label-pdf.ts";
import { readPdf } from "./pdf.tester.ts";

const ptPerMm = 72 / 25.4;
const labels = (count: number) =>
  Array.from({ length: count }, (_, index) => [
    `${index + 1}`,
    "galley light, positive",
    `to fuse panel, position ${index}`,
  ]);

describe.each(labelSheets)("$name", (geometry) => {
  const { columns, rows, leftMm, topMm, pitchXMm, pitchYMm, labelWidthMm, labelHeightMm } = geometry;

  test("every text stands within its own label, the number larger than the rest", async () => {
    const { bytes, cut, missing } = await labelPdf(labels(columns * rows + 2), {
      title: "Labels",
      geometry,
      skip: 1,
    });
    expect([cut, missing]).toEqual([0, []]);
    const { pages, preferences } = await readPdf(bytes);
    expect(pages).toHaveLength(2);
    // A printer that shrinks the page would miss every label.
    expect(preferences?.PrintScaling).toBe("None");
    const texts = pages.flatMap((page) => page.texts.filter(({ text }) => text.trim() !== ""));
    let label = -1;
    for (const { text, x, y, widthPt, sizePt } of texts) {
      if (text === `${label + 2}`) label++;
      const cell = (label + 1) % (columns * rows);
      const left = (leftMm + (cell % columns) * pitchXMm) * ptPerMm;
      const top = (topMm + Math.floor(cell / columns) * pitchYMm) * ptPerMm;
      expect(x, text).toBeGreaterThan(left + 1);
      expect(x + widthPt, text).toBeLessThan(left + labelWidthMm * ptPerMm - 1);
      expect(y - sizePt, text).toBeGreaterThan(top);
      expect(y, text).toBeLessThan(top + labelHeightMm * ptPerMm - 1);
      expect(sizePt).toBeGreaterThanOrEqual(4.5);
    }
    expect(label).toBe(columns * rows + 1);
    expect(texts[0]!.sizePt).toBeGreaterThan(texts[1]!.sizePt);
  });

  test("what does not fit ends in an ellipsis and is counted; the number stays", async () => {
    const long = "a very long name of a device ".repeat(60);
    const { bytes, cut } = await labelPdf([["12", long, long]], { title: "Labels", geometry });
    expect(cut).toBe(1);
    const texts = (await readPdf(bytes)).pages[0]!.texts.map(({ text }) => text);
    expect(texts[0]).toBe("12");
    expect(texts.some((text) => text.endsWith("…"))).toBe(true);
  });
});

test("the same labels give the same bytes, with lines to cut by and without", async () => {
  for (const cuttingLines of [true, false]) {
    const options = { title: "Labels", geometry: labelSheets[0]!, cuttingLines };
    const [one, two] = [await labelPdf(labels(9), options), await labelPdf(labels(9), options)];
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
  }
});
