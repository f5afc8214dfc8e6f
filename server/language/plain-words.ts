/**
 * Names come from plans, and plans may come from strangers: a name must not be able to draw, link, hide or reorder anything in
 * what the editor shows. These two functions are the only way for text of a plan into a message or a popup.
 */

/** For places that show plain text: control and direction marks become visible, line breaks become spaces. */
export function plainWords(text: string): string {
  return text.replace(/\s+/g, " ").replace(invisible, (mark) => `⟨U+${codeOf(mark)}⟩`);
}

/** For places that render Markdown: as {@link plainWords}, and no character keeps a meaning of its own. */
export function markdownWords(text: string): string {
  return plainWords(text).replace(/[!-/:-@[-`{-~]/g, "\\$&");
}

/** Controls, zero-width and direction marks, line separators, tags. */
const invisible = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}\p{Cs}]/gu;

function codeOf(mark: string): string {
  return mark.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0");
}
