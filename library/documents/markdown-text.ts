/**
 * Text of a plan as it may stand in Markdown, in a table too: it reads as it was written and means nothing. The one function for
 * this medium. What a forge makes of text after the Markdown is read, names of people and numbers of issues, is kept from it by a
 * space of no width, which no backslash could do. Marks that hide or turn text around become visible.
 */
export function markdownText(text: string): string {
  return text
    .replace(/[\s\p{Zs}\p{Zl}\p{Zp}]+/gu, " ")
    .replace(invisible, (mark) => `⟨U+${mark.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}⟩`)
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/[\\`*_[\]|~$]/g, "\\$&")
    .replace(/^(\s*\d+)([.)])(?=\s|$)/, "$1\\$2")
    .replace(/^(\s*)([-+])(?=\s|$|--)/, "$1\\$2")
    .replace(/@/g, `@${noWidth}`)
    .replace(/#/g, `\\#${noWidth}`)
    .replace(/\bGH-(?=\d)/gi, (found) => `${found}${noWidth}`)
    .replace(/:(?=\/\/)/g, `:${noWidth}`)
    .replace(/\bwww\./gi, (found) => `${found}${noWidth}`)
    .replace(/\b(?:mailto|xmpp):/gi, (found) => `${found}${noWidth}`);
}

/** Written as what it is, so that whoever reads the source sees it. */
const noWidth = "&#8203;";

/** Controls, zero-width and direction marks, tags. The two joiners stay: emoji and several scripts need them. */
const invisible = /(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Co}\p{Cs}]/gu;
