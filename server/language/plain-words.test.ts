import { expect, test } from "vitest";
import { markdownWords, plainWords } from "./plain-words.ts";

test.each([
  ["a name over\ntwo lines", "a name over two lines"],
  ["right-to-left \u202Eoverride", "right-to-left ⟨U+202E⟩override"],
  ["bell \u0007 and zero width\u200B", "bell ⟨U+0007⟩ and zero width⟨U+200B⟩"],
  ["Kühlbox 冷蔵庫 °C µΩ", "Kühlbox 冷蔵庫 °C µΩ"],
])("plain words of %j", (given, expected) => {
  expect(plainWords(given)).toBe(expected);
});

test.each([
  ["<img src=x onerror=alert(1)>", "\\<img src\\=x onerror\\=alert\\(1\\)\\>"],
  ["[click](command:evil)", "\\[click\\]\\(command\\:evil\\)"],
  ["a | b", "a \\| b"],
  ["# top\n# next", "\\# top \\# next"],
  ["$(alert) `code` **bold** ~~gone~~", "\\$\\(alert\\) \\`code\\` \\*\\*bold\\*\\* \\~\\~gone\\~\\~"],
])("Markdown of %j has no meaning of its own", (given, expected) => {
  expect(markdownWords(given)).toBe(expected);
});
