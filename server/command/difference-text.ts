import { becameWorse, type ComparedPlan } from "../../library/documents/difference/compared-plan.ts";
import {
  type DiffBlock,
  type DiffOptions,
  type DiffText,
  describeDiff,
} from "../../library/documents/difference/difference-in-words.ts";
import { type Comparison, closing } from "../../library/documents/difference/difference-markdown.ts";
import { type Paint, paintFor, printable, type Terminal } from "./terminal.ts";

/** Two states of a folder for a person at a terminal. Columns are aligned as far as names allow. */
export function differenceText(comparison: Comparison, options: DiffOptions, terminal: Terminal): string {
  const paint = paintFor(terminal);
  const { before, after, plans, notes } = comparison;
  const told = plans.map((plan) => ({ plan, words: describeDiff(plan, comparison, options) }));
  const loud = told.filter(({ words }) => !words.quiet);
  const quiet = told.filter(({ words }) => words.quiet).map(({ words }) => headline(words, paint));
  const blocks = [
    [
      paint("strong", `${printable(before)} → ${printable(after)}`),
      ...notes.map((note) => `  ${printable(note)}`),
    ].join("\n"),
    ...loud.map(({ plan, words }) => planText(plan, words, paint)),
    quietText(quiet),
    paint("faint", closing),
  ];
  return `${blocks.filter((block) => block !== "").join("\n\n")}\n`;
}

/** If more plans than this are without a difference, they are counted and not named. */
const mostQuiet = 10;

function quietText(lines: readonly string[]): string {
  if (lines.length <= mostQuiet) return lines.join("\n");
  return `${lines.length} plans without a difference`;
}

function headline({ path, movedFrom, summary }: DiffText, paint: Paint): string {
  const moved = movedFrom === undefined ? "" : ` (was ${printable(movedFrom)})`;
  return `${paint("strong", printable(path))}${moved}: ${printable(summary)}`;
}

function planText(plan: ComparedPlan, words: DiffText, paint: Paint): string {
  return [
    headline(words, paint),
    ...words.notices.map((notice) => `  ${paint("warning", printable(notice))}`),
    ...words.blocks.map((block) => blockText(block, paint)),
    ...(becameWorse(plan) ? [`  ${paint("error", "There are new findings.")}`] : []),
  ].join("\n\n");
}

function blockText({ title, columns, rows, folded }: DiffBlock, paint: Paint): string {
  const lines = isFindings(columns)
    ? rows.map((row) => findingLines(row, paint))
    : rows.length > 0
      ? columnsOf(columns, rows, paint)
      : [];
  const more = folded ? [paint("faint", `  ${folded.words} (--all shows them)`)] : [];
  return [paint("strong", title), ...lines, ...more].map((line) => `  ${line}`).join("\n");
}

function isFindings(columns: readonly string[]): boolean {
  return columns.at(-1) === "Rule";
}

/** A message is longer than any column, so it gets a line of its own. */
function findingLines(row: readonly string[], paint: Paint): string {
  const [what = "", severity = "", about = "", message = "", rule = ""] = row.map(printable);
  const painted =
    severity === "error" || severity === "warning" || severity === "info" || severity === "hint"
      ? paint(severity, severity)
      : paint("faint", severity);
  return `  ${what}  ${painted}  ${about} · ${rule}\n      ${message}`;
}

/** Wider columns overflow: one long name must not push everything to the right. */
const widest = 48;

function columnsOf(columns: readonly string[], rows: readonly (readonly string[])[], paint: Paint): string[] {
  const cells = [columns, ...rows.map((row) => row.map(printable))];
  const widths = columns.map((_, column) =>
    Math.min(
      widest,
      cells.reduce((most, row) => Math.max(most, widthOf(row[column] ?? "")), 0),
    ),
  );
  return cells.map((row, index) => {
    const line = row
      .map((cell, column) => cell + " ".repeat(Math.max(0, (widths[column] ?? 0) - widthOf(cell))))
      .join("  ")
      .trimEnd();
    return `  ${index === 0 ? paint("faint", line) : line}`;
  });
}

/** In characters, not in UTF-16 units. */
function widthOf(text: string): number {
  return [...text].length;
}
