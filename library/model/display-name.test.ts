import { expect, it } from "vitest";
import { displayName, harmlessText, longestName } from "./display-name.ts";

it.each([
  ["plain", "Reading lamps", "Reading lamps"],
  ["other scripts and emoji", "Küche 台所 👩‍🔧", "Küche 台所 👩‍🔧"],
  ["space around and within", "  a \t\n b  ", "a b"],
  ["control characters", "a\u0000b\u001b[31mc\u0085d", "a b [31mc d"],
  ["line separators", "a\u2028b\u2029c", "a b c"],
  ["marks that turn the direction of text", "a\u202eb\u2066c\u2069d\u200ee\u061cf", "abcdef"],
  ["marks that take no room", "a\u200bb\ufeffc\u00add", "abcd"],
  ["half a character", "a\ud83db", "a\ufffdb"],
  ["nothing to see", "\u202e\u200b\n", ""],
  ["text of a web page is left to whoever shows it", "<b>x</b>", "<b>x</b>"],
])("%s", (_, name, shown) => {
  expect(displayName(name)).toBe(shown);
});

it.each([
  [longestName, "x".repeat(longestName)],
  [longestName + 1, `${"x".repeat(longestName - 1)}…`],
  [100_000, `${"x".repeat(longestName - 1)}…`],
])("a name of %i characters", (length, shown) => {
  expect(displayName("x".repeat(length))).toBe(shown);
});

it("cuts between characters, not within one", () => {
  const shown = displayName("👍".repeat(longestName + 1));
  expect([...shown]).toHaveLength(longestName);
  expect(harmlessText(shown)).toBe(shown);
});
