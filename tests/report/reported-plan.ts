import { layOut } from "../../library/documents/diagram/lay-out.ts";
import type { ReportEdition } from "../../library/documents/report/chapter.ts";
import { type Block, inOneLine, type ReportContent } from "../../library/documents/report/report-content.ts";
import type { Table } from "../../library/documents/table.ts";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";
import { planReportContent } from "../../server/output/plan-report.ts";

/** The report of a plan given as text, or as several files with the root `plan.ts`. */
export async function reported(
  files: string | Readonly<Record<string, string>>,
  edition: ReportEdition = "inspector",
): Promise<ReportContent> {
  const workspace = inMemory(typeof files === "string" ? { "plan.ts": files } : files);
  const checker = createChecker(workspace, { sandbox: sharedSandbox });
  try {
    const plan = await checker.check(uriOf("plan.ts"));
    if (plan.state !== "checked") throw new Error(`half typed: ${plan.unfinished.text}`);
    return await reportedOf(plan, workspace, edition);
  } finally {
    await checker.dispose();
  }
}

export function reportedOf(
  plan: CheckedPlan,
  workspace: Pick<Workspace, "read">,
  edition: ReportEdition = "inspector",
): Promise<ReportContent> {
  return planReportContent({ edition, plan, workspace, layOut });
}

/** Every readable text in a report, a line each. */
export function wordsOf({ title, subtitle, blocks }: ReportContent): readonly string[] {
  return [title, subtitle, ...blocks.flatMap(wordsOfBlock)];
}

export function wordsOfBlock(block: Block): readonly string[] {
  switch (block.kind) {
    case "heading":
      return [`${block.number} ${block.text}`];
    case "paragraph":
      return [block.text];
    case "notice":
      return [block.title, ...block.lines];
    case "list":
      return block.items;
    case "facts":
      return block.facts.map(({ name, value }) => `${name}: ${value}`);
    case "table":
      return [
        block.table.title,
        ...block.table.columns.map(({ title }) => title),
        ...(block.table.above === undefined ? [] : [block.table.above]),
        ...rowsOf(block.table),
        ...block.table.notes,
      ];
    case "figure":
      return [block.caption, block.description];
    case "finding": {
      const { number, severity, rule, subject, message, place, accepted = "", source } = block;
      const { followsFrom = "", following } = block;
      return [
        `${number} ${severity} ${rule} ${subject}: ${message} ${place} ${accepted} ${source}${followsFrom && ` ${followsFrom}`}`,
        ...(following ? [following.title, ...following.findings.map(inOneLine)] : []),
      ];
    }
    case "newPage":
      return [];
  }
}

/** Cells with a stroke between. */
export function rowsOf({ rows }: Table): readonly string[] {
  return rows.map((row) =>
    row.map((cell) => (cell === null ? "" : typeof cell === "string" ? cell : cell.text)).join(" | "),
  );
}

export function tableOf({ blocks }: ReportContent, id: string): Table {
  const found = blocks.flatMap((block) =>
    block.kind === "table" && block.table.id === id ? [block.table] : [],
  );
  const [table] = found;
  if (!table || found.length > 1) throw new Error(`${found.length} tables are called ${id}`);
  return table;
}

/** The blocks of one chapter, without its heading. */
export function chapterOf({ blocks }: ReportContent, id: string): readonly Block[] {
  const start = blocks.findIndex((block) => block.kind === "heading" && block.level === 2 && block.id === id);
  if (start === -1) throw new Error(`there is no chapter ${id}`);
  const end = blocks.findIndex(
    (block, index) => index > start && block.kind === "heading" && block.level === 2,
  );
  return blocks.slice(start + 1, end === -1 ? undefined : end);
}

function uriOf(file: string): string {
  return `file:///in-memory/${file}`;
}

function inMemory(files: Readonly<Record<string, string>>): Workspace {
  const texts = new Map(Object.entries(files).map(([file, text]) => [uriOf(file), text]));
  return {
    read(uri) {
      const text = texts.get(uri);
      return text === undefined ? undefined : { uri, version: "1", text };
    },
    folders: () => ["file:///in-memory"],
    realUri: (uri) => uri,
    planFiles: () => [...texts.keys()],
  };
}
