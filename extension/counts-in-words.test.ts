import { expect, test } from "vitest";
import { countsInWords, sumOf } from "./counts-in-words.ts";

const none = { circuits: 0, parts: 0, cables: 0, errors: 0, warnings: 0, infos: 0, hints: 0, accepted: 0 };

test.each([
  { counts: { ...none, circuits: 1 }, words: "1 circuit, no findings" },
  { counts: { ...none, circuits: 12, errors: 2, warnings: 1 }, words: "12 circuits, 2 errors, 1 warning" },
  { counts: { ...none, circuits: 3, hints: 3 }, words: "3 circuits, 3 hints" },
  { counts: { ...none, circuits: 2, accepted: 1 }, words: "2 circuits, 1 accepted" },
  {
    counts: { ...none, circuits: 3, parts: 12, cables: 1, warnings: 1 },
    words: "3 circuits, 12 parts, 1 cable, 1 warning",
  },
  { counts: none, words: "0 circuits, no findings" },
])("says $words", ({ counts, words }) => {
  expect(countsInWords(counts)).toBe(words);
});

test("plans are summed count by count", () => {
  expect(
    sumOf([
      { ...none, circuits: 2, parts: 4, errors: 1 },
      { ...none, circuits: 3, parts: 1, cables: 2, errors: 2, accepted: 1 },
    ]),
  ).toEqual({
    ...none,
    circuits: 5,
    parts: 5,
    cables: 2,
    errors: 3,
    accepted: 1,
  });
});
