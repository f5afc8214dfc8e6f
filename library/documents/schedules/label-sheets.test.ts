import { describe, expect, test } from "vitest";
import { labelSheet, labelSheets, paperMm } from "./label-sheets.ts";

test("each sheet has a name of its own", () => {
  expect(new Set(labelSheets.map(({ id }) => id)).size).toBe(labelSheets.length);
});

describe.each(labelSheets)("$name", (geometry) => {
  const onPage = geometry.columns * geometry.rows;
  const { widthMm, heightMm } = paperMm[geometry.paper];
  const pages = labelSheet(
    Array.from({ length: 2 * onPage + 1 }, (_, index) => index),
    geometry,
  );

  test("a full sheet, and then the next", () => {
    expect(pages.map(({ page, labels }) => [page, labels.length])).toEqual([
      [1, onPage],
      [2, onPage],
      [3, 1],
    ]);
    expect(pages.flatMap(({ labels }) => labels.map(({ lines }) => lines))).toEqual(
      Array.from({ length: 2 * onPage + 1 }, (_, index) => index),
    );
  });

  test("labels lie on the paper, apart from each other, in the middle of it", () => {
    const { labels } = pages[0]!;
    for (const one of labels) {
      expect(one.xMm).toBeGreaterThanOrEqual(0);
      expect(one.yMm).toBeGreaterThanOrEqual(0);
      expect(one.xMm + one.widthMm).toBeLessThanOrEqual(widthMm + 1e-9);
      expect(one.yMm + one.heightMm).toBeLessThanOrEqual(heightMm + 1e-9);
      for (const other of labels) {
        if (other === one) continue;
        const besideMm = Math.abs(one.xMm - other.xMm) - one.widthMm;
        const belowMm = Math.abs(one.yMm - other.yMm) - one.heightMm;
        expect(Math.max(besideMm, belowMm)).toBeGreaterThanOrEqual(-1e-9);
      }
    }
    const [first, last] = [labels[0]!, labels.at(-1)!];
    expect(first.xMm).toBeCloseTo(widthMm - last.xMm - last.widthMm, 9);
    expect(first.yMm).toBeCloseTo(heightMm - last.yMm - last.heightMm, 9);
  });

  test("labels that were used before are left out", () => {
    const [page] = labelSheet(["a", "b"], geometry, onPage - 1);
    expect(page!.labels).toHaveLength(1);
    expect(page!.labels[0]).toMatchObject({ lines: "a", xMm: pages[0]!.labels.at(-1)!.xMm });
  });
});
