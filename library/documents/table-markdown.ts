import type { Cell, Table } from "./table.ts";

/**
 * A table as Markdown: heading, table as GitHub's dialect has them, notes as a list. Whatever comes from a plan stands there as the
 * letters that it is: no link, no image, no HTML, no emphasis, no further cell or row.
 */
export function tableMarkdown({ title, columns, rows, notes }: Table): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    `## ${markdownText(title)}`,
    "",
    line(columns.map((column) => markdownText(column.title))),
    line(columns.map(({ align }) => (align === "end" ? "---:" : "---"))),
    ...rows.map((row) => line(row.map(cellText))),
    ...(rows.length === 0 ? ["", "Nothing."] : []),
    ...(notes.length > 0 ? ["", ...notes.map((note) => `- ${markdownText(note)}`)] : []),
    "",
  ].join("\n");
}

function cellText(cell: Cell): string {
  if (cell === null) return "";
  return markdownText(typeof cell === "string" ? cell : cell.text);
}

/**
 * Text in one line of Markdown, read as nothing but letters. Punctuation that could mean something is escaped; the characters of
 * HTML become entities; a line break becomes a space.
 */
export function markdownText(text: string): string {
  return text
    .replace(/[\s\p{Cc}]+/gu, " ")
    .trim()
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/[\\`*_{}[\]#|~!$@:^]/g, (mark) => `\\${mark}`)
    .replace(/^([-+=]|\d+[.)])/, (start) => start.replace(/[-+=.)]/, (mark) => `\\${mark}`))
    .replace(/\b(www|https?|ftp|mailto)(?=[.\\])/gi, "$1\u2060");
}
