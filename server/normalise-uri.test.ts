import { expect, test } from "vitest";
import { normalisedUri } from "./normalise-uri.ts";

test.each([
  ["file:///c%3A/plans/van.ts", "file:///c:/plans/van.ts"],
  ["file:///C:/plans/van.ts", "file:///c:/plans/van.ts"],
  ["file:///c:/plans%20%28old%29/van.ts", "file:///c:/plans%20(old)/van.ts"],
  ["file://server/share/Van.ts", "file://server/share/Van.ts"],
])("on Windows %s is %s", (written, spelt) => {
  expect(normalisedUri(written, true)).toBe(spelt);
  expect(normalisedUri(spelt, true)).toBe(spelt);
});

test.each([
  ["file:///plans%20%28old%29/K%C3%BChlbox%20%2312.ts", "file:///plans%20(old)/K%C3%BChlbox%20%2312.ts"],
  ["file:///C:/plans/van.ts", "file:///C:/plans/van.ts"],
])("elsewhere %s is %s", (written, spelt) => {
  expect(normalisedUri(written, false)).toBe(spelt);
  expect(normalisedUri(spelt, false)).toBe(spelt);
});

test.each([
  "untitled:Untitled-1",
  "untitled:100%",
  "vscode-vfs://github/van.ts",
  "file:///a%2Fb.ts",
  "file:///%zz",
])("%s stays as it is", (uri) => {
  expect(normalisedUri(uri, false)).toBe(uri);
});
