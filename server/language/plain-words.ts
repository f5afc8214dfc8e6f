/**
 * Names come from plans, and plans may come from strangers: a name must not be able to draw, link, hide or reorder anything that
 * the editor shows. The same applies to names of files and folders, and to the errors that quote them. These functions are the
 * only way for such text into a message or a popup.
 */

/** For places that show plain text: control and direction marks become visible, line breaks become spaces. */
export function plainWords(text: string): string {
  return text.replace(/\s+/g, " ").replace(invisible, (mark) => `⟨U+${codeOf(mark)}⟩`);
}

/** For places that render Markdown: as {@link plainWords}, and no character keeps a special meaning. */
export function markdownWords(text: string): string {
  return plainWords(text).replace(/[!-/:-@[-`{-~]/g, "\\$&");
}

/**
 * For all text that the editor draws itself: notifications, dialogs, progress, questions and their answers, lists, the status
 * bar, lenses, titles of tabs, names in an outline. As {@link plainWords}, without any link or icon.
 *
 * VS Code makes a link of `[text](address)` in most of these places, including `command:` addresses, and an icon of `$(name)`.
 * This cannot be switched off, and only some of the places take a backslash as an escape; the others show it. A word joiner
 * between the two characters works in all of them, has no width, and breaks no line: the text reads as it was written. A copy of
 * it contains the joiner too; the log holds paths and reasons as they are. The function is idempotent.
 */
export function editorWords(text: string): EditorWords {
  const written = text.replace(/([\]$])\u2060+(?=\()/g, "$1");
  return plainWords(written).replace(/[\]$](?=\()/g, "$&\u2060") as EditorWords;
}

/** Text that has been through {@link editorWords}. A test requires this type for all text given to the editor to show. */
export type EditorWords = string & { readonly [editorMayShow]: true };

declare const editorMayShow: unique symbol;

/** Controls, zero-width and direction marks, line separators, tags. */
const invisible = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Co}\p{Cs}]/gu;

function codeOf(mark: string): string {
  return mark.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0");
}
