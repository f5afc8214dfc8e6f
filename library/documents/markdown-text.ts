/**
 * Text of a plan for use in Markdown, in a table too: it reads as it was written and has no effect as markup. The one function
 * for this medium. A forge looks for names of people and numbers of issues after the Markdown is read; a zero-width space
 * prevents that, which no backslash could. Marks that hide or reverse text become visible.
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

/** Written as an entity: a reader of the source sees it. */
const noWidth = "&#8203;";

/** Controls, zero-width and direction marks, tags. The two joiners stay: emoji and several scripts need them. */
const invisible = /(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Co}\p{Cs}]/gu;
