import type { Lines } from "./reported-lines.ts";
import { type Paint, printable } from "./terminal.ts";

/** Lines of the plan around a value, with the value underlined. `lineText` returns a line by its number. */
export function codeFrame(at: Lines, lineText: (line: number) => string | undefined, paint: Paint): string {
  const first = Math.max(1, at.line - 1);
  const last = at.line + 1;
  const gutter = String(last).length;
  const rows: string[] = [];
  for (let line = first; line <= last; line++) {
    const text = lineText(line);
    if (text === undefined || (line !== at.line && text.trim() === "")) continue;
    const number = String(line).padStart(gutter);
    rows.push(`  ${paint("faint", `${number} │`)} ${printable(text)}`);
    if (line === at.line)
      rows.push(`  ${paint("faint", `${" ".repeat(gutter)} │`)} ${underline(text, at, paint)}`);
  }
  return rows.join("\n");
}

/** Carets below the value, up to the end of the line if the value continues. Measured on the text as printed. */
function underline(text: string, { line, column, endLine, endColumn }: Lines, paint: Paint): string {
  const before = printable(text.slice(0, column - 1));
  const value = printable(text.slice(column - 1, endLine === line ? endColumn - 1 : undefined));
  return `${" ".repeat(before.length)}${paint("error", "^".repeat(Math.max(1, value.trimEnd().length)))}`;
}
