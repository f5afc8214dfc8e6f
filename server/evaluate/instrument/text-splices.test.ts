import { describe, expect, test } from "vitest";
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
  const spliced = splices.apply(text);
  return { splices: spliced, result: spliced.text };
}

test("what is left out leaves its line feeds, between what is inserted at its ends", () => {
  expect(spliced().result).toBe("<a\n>\n (; five");
});

test("ranges may lie in one another", () => {
  const splices = new TextSplices();
  splices.leaveOut(4, 7);
  splices.leaveOut(5, 6);
  expect(splices.apply("let x  = 1;\n").text).toBe("let = 1;\n");
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

describe("another token", () => {
  const change = (before: string, after: string) => ({ start: text.indexOf(before), before, after });
  const splices = () => {
    const made = new TextSplices();
    made.insert(0, "<<");
    made.leaveOut(4, 16);
    made.insert(18, "(");
    made.insert(22, ")");
    return made;
  };

  test.each([
    ["before every range", "one", "o"],
    ["in a range that is left out", "three", "thirteen"],
    ["between insertions", "four", "forty"],
    ["at the end", "five", "fifty"],
    ["of the same length", "five", "nine"],
  ])("%s gives what splicing anew gives", (_, before, after) => {
    const changed = text.replace(before, after);
    const by = after.length - before.length;
    const at = text.indexOf(before);
    const moved = (offset: number) => (offset > at ? offset + by : offset);
    const anew = new TextSplices();
    anew.insert(0, "<<");
    anew.leaveOut(moved(4), moved(16));
    anew.insert(moved(18), "(");
    anew.insert(moved(22), ")");
    const expected = anew.apply(changed);
    const found = splices().apply(text).withToken(change(before, after))!;
    expect(found.text).toBe(expected.text);
    for (let offset = 0; offset <= expected.text.length; offset++)
      expect(found.offsetBefore(offset)).toBe(expected.offsetBefore(offset));
  });

  test("is not put in the place of something else", () => {
    expect(splices().apply(text.replace("five", "    ")).withToken(change("five", "nine"))).toBeUndefined();
  });
});
