import { expect, test } from "vitest";
import manifest from "../../extension/package.json" with { type: "json" };
import { allowedLimits, defaultSettings, limitsOf, readSettings } from "./settings.ts";

test.each([
  { given: undefined, expected: defaultSettings },
  { given: null, expected: defaultSettings },
  { given: "fast", expected: defaultSettings },
  { given: { inlayHints: false }, expected: { ...defaultSettings, inlayHints: false } },
  { given: { timeLimitMs: 50 }, expected: { ...defaultSettings, timeLimitMs: 50 } },
  { given: { timeLimitMs: 60_000 }, expected: { ...defaultSettings, timeLimitMs: 60_000 } },
  { given: { timeLimitMs: 99.6 }, expected: { ...defaultSettings, timeLimitMs: 100 } },
  { given: { memoryLimitMiB: 128 }, expected: { ...defaultSettings, memoryLimitMiB: 128 } },
])("settings read from $given", ({ given, expected }) => {
  expect(readSettings(given)).toEqual(expected);
});

const limits = Object.keys(allowedLimits) as (keyof typeof allowedLimits)[];

test.each(limits)("%s is kept within its range, and what is no number keeps the default", (name) => {
  const { least, most } = allowedLimits[name];
  const read = (value: unknown) => readSettings({ [name]: value })[name];
  for (const tooLittle of [least - 1, least - 0.001, 0, -0, -1, -1e308, Number.NEGATIVE_INFINITY]) {
    expect(read(tooLittle), String(tooLittle)).toBe(least);
  }
  for (const tooMuch of [most + 1, most + 0.001, 2 ** 31, 1e308, Number.POSITIVE_INFINITY]) {
    expect(read(tooMuch), String(tooMuch)).toBe(most);
  }
  for (const noNumber of [Number.NaN, "1", "1e9", "", null, true, [most], { valueOf: () => most }, 9n]) {
    expect(read(noNumber), String(noNumber)).toBe(defaultSettings[name]);
  }
});

test.each(limits)(
  "the editor's manifest states the same range and default of %s, for the machine alone",
  (name) => {
    const { least: minimum, most: maximum } = allowedLimits[name];
    expect(manifest.contributes.configuration.properties[`loomwright.${name}`]).toMatchObject({
      ...{ scope: "machine", default: defaultSettings[name], minimum, maximum },
    });
  },
);

test("the defaults are those of the sandbox: 1 s and 64 MiB", () => {
  expect(limitsOf(defaultSettings)).toEqual({ timeMs: 1_000, memoryBytes: 67_108_864 });
});
