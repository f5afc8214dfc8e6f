import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { cutToWidth, textWidth } from "../../library/documents/diagram/text-measure.ts";

test("the table of widths is what its script reads from the typeface", () => {
  const script = fileURLToPath(new URL("../../server/output/write-text-widths.mjs", import.meta.url));
  expect(() => execFileSync(process.execPath, [script, "--check"], { stdio: "pipe" })).not.toThrow();
});

test("what the table does not hold counts as wide", () => {
  expect(textWidth("冷", 10)).toBe(13);
  expect(textWidth("🧨", 10)).toBe(13);
});

test.each([
  ["fits", 200, "fits"],
  ["a name that is too long", 60, "a name…"],
  ["🧨🧨🧨", 30, "🧨…"],
  ["anything", 0, "…"],
])("%s, cut to %i px", (text, width, cut) => {
  expect(cutToWidth(text, width, 11)).toBe(cut);
  if (width > 0) expect(textWidth(cut, 11)).toBeLessThanOrEqual(width);
});
