import { expect, test } from "vitest";
import { readFromPage, readViewState } from "./messages.ts";
import { energyPageHtml } from "./page-html.ts";

test.each([
  { type: "ready" },
  { type: "undo" },
  { type: "redo" },
  { type: "leave" },
  { type: "leaveAsIs" },
  { type: "choose", period: "winter", bank: 1, month: 11 },
  { type: "move", lever: "3 capacityAh", value: 120.5 },
  { type: "letGo", number: 2, lever: "3 capacityAh", value: 120 },
  { type: "least", wanted: true },
  { type: "refused", why: "a script" },
])("takes $type as it is, and nothing that was put beside it", (said) => {
  expect(readFromPage({ ...said, more: "of it", uri: "file:///etc/passwd" })).toEqual(said);
});

test.each([
  undefined,
  null,
  "ready",
  {},
  { type: "write" },
  { type: "choose", period: "winter", bank: -1, month: 1 },
  { type: "choose", period: 3, bank: 0, month: 1 },
  { type: "move", lever: "3", value: Number.NaN },
  { type: "move", lever: "3", value: "4" },
  { type: "move", lever: "x".repeat(10_001), value: 4 },
  { type: "letGo", lever: "3", value: 4 },
  { type: "least", wanted: "yes" },
  { type: "refused" },
])("refuses %j", (said) => {
  expect(readFromPage(said)).toBeUndefined();
});

test("a kept state that is damaged counts as never chosen", () => {
  const kept = { uri: "file:///hut.ts", period: "winter", bank: 1, month: 11 };
  expect(readViewState(kept)).toEqual(kept);
  for (const damaged of [undefined, null, 3, "x", {}, { uri: 3, period: null, bank: "1", month: 12 }])
    expect(readViewState(damaged)).toEqual({ uri: "", period: "", bank: 0 });
});

test("everything is forbidden to the page but its one script and its one sheet", () => {
  const files = {
    source: "https://files.test",
    script: "https://files.test/a.js",
    style: "https://files.test/a.css",
  };
  const html = energyPageHtml({ nonce: "n0nce", ...files });
  expect(/Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1]).toBe(
    "default-src 'none'; script-src 'nonce-n0nce'; style-src https://files.test; base-uri 'none'; form-action 'none'",
  );
  expect(html.match(/<script/g)).toHaveLength(1);
  expect(html).not.toMatch(/<style|\bstyle=|\bon[a-z]+=|javascript:/);
});
