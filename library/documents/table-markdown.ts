import { markdownText } from "./markdown-text.ts";
import type { Cell, Table } from "./table.ts";
import { tableForPeople } from "./table-for-people.ts";

/**
 * A table as Markdown: heading, table as in GitHub's dialect, notes as a list. Text from a plan appears literally: see {@link
 * markdownText}. Ends in a line break.
 *
 * Our own: joining cells is one line, and escaping a stranger's text is the rest.
 */
export function tableMarkdown(table: Table): string {
  const { title, columns, rows, notes } = tableForPeople(table);
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    `## ${markdownText(title)}`,
    "",
    ...(rows.length === 0
      ? ["No entries."]
      : [
          line(columns.map((column) => markdownText(column.title))),
          line(columns.map(({ align }) => (align === "end" ? "---:" : "---"))),
          ...rows.map((row) => line(row.map(cellText))),
        ]),
    ...(notes.length > 0 ? ["", ...notes.map((note) => `- ${markdownText(note)}`)] : []),
    "",
  ].join("\n");
}

function cellText(cell: Cell): string {
  if (cell === null) return "";
  return markdownText(typeof cell === "string" ? cell : cell.text).trim();
}
