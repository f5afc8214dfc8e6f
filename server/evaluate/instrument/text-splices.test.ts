import { expect, test } from "vitest";
import { TextSplices } from "./text-splices.ts";

const text = "one(two,\n three)\n four; five";

function spliced() {
  const splices = new TextSplices();
  splices.insert(0, "<");
  splices.insert(0, "a");
  splices.leaveOut(0, 16);
  splices.insert(16, ">");
  splices.insert(18, "(");
  splices.leaveOut(18, 22);
  return { splices, result: splices.apply(text) };
}

test("what is left out leaves its line feeds, between what is inserted at its ends", () => {
  expect(spliced().result).toBe("<a\n>\n (; five");
});

test("ranges may lie in one another", () => {
  const splices = new TextSplices();
  splices.leaveOut(4, 7);
  splices.leaveOut(5, 6);
  expect(splices.apply("let x  = 1;\n")).toBe("let = 1;\n");
});

test.each([
  ["<", 0],
  [">", 16],
  ["(", 18],
  [";", 22],
  ["five", 24],
])("%s of the result stands for offset %i", (found, offset) => {
  const { splices, result } = spliced();
  expect(splices.offsetBefore(result.indexOf(found))).toBe(offset);
});
