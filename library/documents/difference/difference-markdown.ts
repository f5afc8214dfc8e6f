import { markdownText } from "../markdown-text.ts";
import type { ComparedPlan } from "./compared-plan.ts";
import { type DiffBlock, type DiffOptions, type DiffText, describeDiff } from "./difference-in-words.ts";

/** Two states of one folder or one plan, and the result for every plan in them. */
export interface Comparison {
  /** "HEAD~1 (1a2b3c4)", "the working tree", a folder: not yet fit to be shown. */
  readonly before: string;
  readonly after: string;
  readonly plans: readonly ComparedPlan[];
  /** Omissions from the comparison, in sentences. */
  readonly notes: readonly string[];
}

/** For a pull request, and for the editor's page: compact, every name escaped, ending in a line break. */
export function differenceMarkdown(comparison: Comparison, options: DiffOptions): string {
  const { before, after, plans, notes } = comparison;
  const told = plans.map((plan) => describeDiff(plan, comparison, options));
  const [quietOnes, loud] = [told.filter(({ quiet }) => quiet), told.filter(({ quiet }) => !quiet)];
  return `${[
    `**${markdownText(before)} → ${markdownText(after)}**`,
    ...notes.map((note) => `> ${markdownText(note)}`),
    ...loud.map(planMarkdown),
    ...(quietOnes.length > 0 ? [quietMarkdown(quietOnes)] : []),
    `_${closing}_`,
    "<!-- made by Loomwright -->",
  ].join("\n\n")}\n`;
}

/** The same words under every form. */
export const closing =
  "Compared as planned and worked out by Loomwright, a planning aid; not as built. Local codes rule.";

function planMarkdown({ path, movedFrom, summary, notices, blocks }: DiffText): string {
  const moved = movedFrom === undefined ? "" : ` (was ${markdownText(movedFrom)})`;
  return [
    `### ${markdownText(path)}${moved}`,
    markdownText(summary),
    ...notices.map((notice) => `> ${markdownText(notice)}`),
    ...blocks.map(blockMarkdown),
  ].join("\n\n");
}

function quietMarkdown(plans: readonly DiffText[]): string {
  if (plans.length === 1) return `${markdownText(plans[0]!.path)}: ${markdownText(plans[0]!.summary)}`;
  const lines = plans.map(({ path, summary }) => `- ${markdownText(path)}: ${markdownText(summary)}`);
  return plans.length > mostQuiet
    ? details(`${plans.length} plans without a difference`, lines.join("\n"))
    : lines.join("\n");
}

const mostQuiet = 5;

function blockMarkdown({ title, columns, rows, folded }: DiffBlock): string {
  return [
    `**${title}**`,
    ...(rows.length > 0 ? [table(columns, rows)] : []),
    ...(folded ? [details(folded.words, table(columns, folded.rows))] : []),
  ].join("\n\n");
}

function table(columns: readonly string[], rows: readonly (readonly string[])[]): string {
  const row = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [
    row(columns),
    row(columns.map(() => "---")),
    ...rows.map((cells) => row(cells.map(markdownText))),
  ].join("\n");
}

/** A forge and the editor's page both know this much HTML. */
function details(summary: string, inside: string): string {
  return `<details><summary>${summary}</summary>\n\n${inside}\n\n</details>`;
}
