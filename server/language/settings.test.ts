import { expect, test } from "vitest";
import { defaultSettings, limitsOf, readSettings } from "./settings.ts";

test.each([
  { given: undefined, expected: defaultSettings },
  { given: null, expected: defaultSettings },
  { given: "fast", expected: defaultSettings },
  { given: { inlayHints: false }, expected: { ...defaultSettings, inlayHints: false } },
  { given: { timeLimitMs: 50 }, expected: { ...defaultSettings, timeLimitMs: 50 } },
  { given: { timeLimitMs: 49 }, expected: defaultSettings },
  { given: { timeLimitMs: 60_001 }, expected: defaultSettings },
  { given: { timeLimitMs: Number.NaN, memoryLimitMiB: "64" }, expected: defaultSettings },
  { given: { memoryLimitMiB: 128 }, expected: { ...defaultSettings, memoryLimitMiB: 128 } },
])("settings read from $given", ({ given, expected }) => {
  expect(readSettings(given)).toEqual(expected);
});

test("the defaults are those of the sandbox: 1 s and 64 MiB", () => {
  expect(limitsOf(defaultSettings)).toEqual({ timeMs: 1_000, memoryBytes: 67_108_864 });
});
