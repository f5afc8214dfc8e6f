import { randomBytes } from "node:crypto";
import { chmod, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import type { Edit } from "../evaluate/checked-plan.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { checkGroups, exitCode } from "./check.ts";
import { findPlans, type PlanGroup } from "./find-plans.ts";
import type { ExitCode, Outside } from "./run.ts";
import { printable } from "./terminal.ts";
import { textReport } from "./text-report.ts";

export interface FixOptions {
  readonly names: readonly string[];
  readonly maxWarnings: number;
  readonly dryRun: boolean;
}

/** `loomwright fix`: every repair that was proved by checking the repaired text, written to the files, then a fresh check. */
export async function fix({ names, maxWarnings, dryRun }: FixOptions, outside: Outside): Promise<ExitCode> {
  const groups = findPlans(names, outside.cwd);
  try {
    for (const group of groups) {
      for (const root of group.roots) await fixPlan(group, root, dryRun, outside);
    }
    const plans = await checkGroups(groups, outside);
    outside.out(textReport(plans, outside.terminal));
    return exitCode(plans, maxWarnings);
  } finally {
    await Promise.all(groups.map(({ checker }) => checker.dispose()));
  }
}

async function fixPlan(
  { checker, workspace }: PlanGroup,
  root: Uri,
  dryRun: boolean,
  outside: Outside,
): Promise<void> {
  const plan = await checker.check(root);
  const all = plan.state === "checked" ? await checker.fixAll(plan) : undefined;
  if (!all) return;
  for (const [uri, edits] of groupByFile(all.edits)) {
    const text = workspace.read(uri)!.text;
    const file = printable(relative(outside.cwd, fileURLToPath(uri)));
    for (const edit of edits) outside.out(`${file}: ${shown(edit.expected)} → ${shown(edit.newText)}\n`);
    if (!dryRun) await replaceFile(fileURLToPath(uri), text, applied(text, edits));
  }
  if (!dryRun) checker.changedOnDisk([...new Set(all.edits.map(({ uri }) => uri))]);
}

function groupByFile(edits: readonly Edit[]): Map<Uri, Edit[]> {
  const files = new Map<Uri, Edit[]>();
  for (const edit of edits) files.set(edit.uri, [...(files.get(edit.uri) ?? []), edit]);
  return files;
}

function shown(text: string): string {
  return text.trim() === "" ? "(nothing)" : printable(text.trim().replaceAll(/\s+/g, " "));
}

/** Edits never overlap; applied from the end, none moves another. */
function applied(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce((result, { start, end, newText }) => result.slice(0, start) + newText + result.slice(end), text);
}

/**
 * Writes beside the file and renames, so that a file is never half written; refuses when the file is no longer what was
 * checked, so that nobody's newer text is lost.
 */
async function replaceFile(path: string, expected: string, text: string): Promise<void> {
  if ((await readFile(path, "utf8")) !== expected) {
    throw new Error(
      `${path} changed while it was being fixed; nothing was written to it. Run the command again.`,
    );
  }
  const beside = `${path}.${randomBytes(6).toString("hex")}.tmp`;
  try {
    await writeFile(beside, text, { flag: "wx" });
    await chmod(beside, (await stat(path)).mode);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    throw error;
  }
}
