import { expect, test } from "vitest";
import { fileName } from "./file-name.ts";

test.each([
  ["file:///plans/camper.ts", "camper.ts"],
  ["file:///c%3A/plans/Boot%20%2312.ts", "Boot #12.ts"],
  ["untitled:Untitled-1", "untitled:Untitled-1"],
  ["untitled:100%25", "untitled:100%"],
  ["untitled:100%", "untitled:100%"],
])("%s is called %s", (uri, name) => {
  expect(fileName(uri)).toBe(name);
});
