import { expect, test } from "vitest";
import { editorWords, markdownWords, plainWords } from "./plain-words.ts";

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

/** The texts that VS Code 1.100 and later show as a link and as an icon, from its own sources. */
const linkInMessage = /\[([^\]]+)\]\(((?:https?:\/\/|command:|file:)[^)\s]+)(?: (["'])(.+?)(\3))?\)/i;
const iconInLabel = /\$\(\s*[A-Za-z0-9-]+(?:~[A-Za-z]+)?\s*\)/;

const traps = [
  "[click](command:evil)",
  "[a](b)](command:workbench.action.quit)",
  "[[x]](https://127.0.0.1/)",
  "[x](file:///etc/passwd 'title')",
  "[x]\u2060(command:evil)",
  "[x]\u200b(command:evil)",
  "[x]\n(command:evil)",
  "$(alert)",
  "\\$(alert)",
  "$$(loading~spin)",
  "$\u2060\u2060(alert)",
  "]($(alert)](command:evil)",
];

test.each(traps)(
  "%j is neither a link nor an icon in the editor's own messages, and reads the same",
  (trap) => {
    const shown = editorWords(`lamp ${trap} [b`);
    expect(shown).not.toMatch(linkInMessage);
    expect(shown).not.toMatch(iconInLabel);
    expect(editorWords(shown)).toBe(shown);
    const read = (text: string) => plainWords(text.replaceAll("\u2060", ""));
    expect(read(shown)).toBe(read(`lamp ${trap} [b`));
  },
);

test("pieces that are harmless alone make no link or icon when they are put together", () => {
  const pieces = ["[", "x", "]", "(", "command:evil", ")", "$", "alert", "\u2060", " "];
  for (const one of pieces)
    for (const two of pieces)
      for (const three of pieces) {
        const shown = editorWords(`[x${one}${two}${three}command:evil) $${one}${two}${three}alert)`);
        expect(shown).not.toMatch(linkInMessage);
        expect(shown).not.toMatch(iconInLabel);
      }
});
