import { expect, test } from "vitest";
import { readFromPage } from "./messages.ts";

const place = { record: 3, on: 1, left: 120.5, top: 80, turnedDeg: 90 };

test.each([
  { type: "ready" },
  { type: "leaveAsIs" },
  { type: "cancel" },
  { type: "suggest", on: 2 },
  { type: "move", places: [place] },
  { type: "letGo", number: 2, places: [place, { ...place, record: 4 }] },
  { type: "goTo", record: 3, take: true },
])("takes $type as it is, and nothing that was put beside it", (said) => {
  expect(readFromPage({ ...said, more: "of it", uri: "file:///etc/passwd" })).toEqual(said);
});

test.each([
  undefined,
  { type: "take" },
  { type: "suggest" },
  { type: "suggest", on: -1 },
  { type: "suggest", on: "1" },
  { type: "move", places: [] },
  { type: "move", places: [{ ...place, turnedDeg: 45 }] },
  { type: "letGo", number: 2, places: [place, { ...place, left: Number.NaN }] },
])("refuses %j", (said) => {
  expect(readFromPage(said)).toBeUndefined();
});
