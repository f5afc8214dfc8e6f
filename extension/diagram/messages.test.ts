import { expect, test } from "vitest";
import { readFromPage } from "./messages.ts";

test.each([
  { type: "ready" },
  { type: "leave", number: 3 },
  { type: "goTo", number: 3, element: "part fuse panel", take: true },
  { type: "choose", number: 3, view: "wiring", scenario: "", colours: false },
  { type: "choose", number: 3, view: "one-line", scenario: "everything on", colours: true },
  { type: "refused", number: 3, why: "a script" },
])("takes $type as it is, and nothing that was put beside it", (said) => {
  expect(readFromPage({ ...said, more: "of it", uri: "file:///etc/passwd" })).toEqual(said);
});

test.each([
  undefined,
  null,
  "ready",
  ["ready"],
  {},
  { type: "open", number: 1 },
  { type: "leave" },
  { type: "leave", number: "1" },
  { type: "leave", number: Number.NaN },
  { type: "leave", number: 1.5 },
  { type: "goTo", number: 1, element: 7, take: true },
  { type: "goTo", number: 1, element: { toString: "x" }, take: true },
  { type: "goTo", number: 1, element: "x", take: "yes" },
  { type: "goTo", number: 1, element: "x".repeat(10_001), take: false },
  { type: "choose", number: 1, view: "three-line", scenario: "", colours: false },
  { type: "choose", number: 1, view: "wiring", colours: false },
  { type: "choose", number: 1, view: "wiring", scenario: null, colours: false },
  { type: "choose", number: 1, view: "wiring", scenario: "" },
  { type: "choose", number: 1, view: "wiring", scenario: "", colours: "yes" },
  { type: "refused", number: 1 },
])("refuses %j", (said) => {
  expect(readFromPage(said)).toBeUndefined();
});
