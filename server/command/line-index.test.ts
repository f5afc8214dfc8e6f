import { expect, test } from "vitest";
import { createLineIndex } from "./line-index.ts";

test.each([
  ["one\ntwo\r\nthree\rfour", 0, 1, 1, "one"],
  ["one\ntwo\r\nthree\rfour", 4, 2, 1, "two"],
  ["one\ntwo\r\nthree\rfour", 9, 3, 1, "three"],
  ["one\ntwo\r\nthree\rfour", 17, 4, 3, "four"],
  ["", 0, 1, 1, ""],
  ["😀 x", 3, 1, 4, "😀 x"],
])("in %j, offset %d is line %d, column %d", (text, offset, line, column, lineText) => {
  const index = createLineIndex(text);
  expect(index.positionAt(offset)).toEqual({ line, column });
  expect(index.lineText(line)).toBe(lineText);
});

test("past the end there is no line", () => {
  expect(createLineIndex("one").lineText(2)).toBeUndefined();
});
