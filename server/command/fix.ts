import { readFile, realpath } from "node:fs/promises";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { counted } from "../../library/rules/wording/format-number.ts";
import type { Edit } from "../evaluate/checked-plan.ts";
import { PieceTable } from "../evaluate/fixes/piece-table.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { replaceWhole, whyNotWritten } from "../output/atomic-write.ts";
import type { Command } from "./command.ts";
import { findPlans, type PlanGroup } from "./find-plans.ts";
import type { ExitCode, Host } from "./host.ts";
import { joinedFiles, passedFiles } from "./passed-files.ts";
import { type Reported, reportPlan } from "./reported-plan.ts";
import { exitCode, showingProgress } from "./results.ts";
import { printable } from "./terminal.ts";
import { textReport } from "./text-report.ts";
import { wholeNumber } from "./usage.ts";

/** `loomwright fix`: writes every repair to the files that was proved by checking the repaired text, then checks again. */
export const fix: Command = {
  name: "fix",
  usage: [{ words: "[files or folders]", does: "apply every proven repair, then check again" }],
  takes: ["max-warnings", "dry-run", "offers"],
  run: (names, given, outside) =>
    fixPlans(
      {
        names,
        maxWarnings: wholeNumber("max-warnings", given["max-warnings"] ?? "0"),
        dryRun: given["dry-run"] ?? false,
        offers: given.offers ?? false,
      },
      outside,
    ),
};

interface FixOptions {
  readonly names: readonly string[];
  readonly maxWarnings: number;
  readonly dryRun: boolean;
  readonly offers: boolean;
}

/** Enough for every repair of a large plan; on a save far fewer are tried. */
const mostRuns = 1_000;

async function fixPlans(
  { names, maxWarnings, dryRun, offers }: FixOptions,
  outside: Host,
): Promise<ExitCode> {
  const groups = findPlans(names, outside);
  let allWritten = true;
  try {
    for (const group of groups) {
      for (const root of group.roots) {
        if (!(await fixPlan(group, root, { dryRun, offers }, outside))) allWritten = false;
      }
    }
    const plans = await checkGroups(groups, outside);
    const passedBy = joinedFiles(groups.map((group) => passedFiles(group.passedBy, outside.cwd)));
    outside.out(textReport({ plans, passedBy }, outside.terminal));
    return allWritten ? exitCode({ plans, passedBy }, maxWarnings) : 2;
  } finally {
    await Promise.all(groups.map(({ checker }) => checker.dispose()));
  }
}

/** Checks every root. */
async function checkGroups(groups: readonly PlanGroup[], outside: Host): Promise<Reported[]> {
  const progress = showingProgress(outside);
  const total = groups.reduce((sum, { roots }) => sum + roots.length, 0);
  const plans: Reported[] = [];
  for (const group of groups) {
    for (const root of group.roots) {
      progress.at(plans.length + 1, total);
      plans.push(await reportPlan(await group.checker.check(root), group, outside.cwd));
      group.checker.forget(root);
    }
  }
  progress.end();
  return plans;
}

/** False if a file could not be written; its reason has then been reported. */
async function fixPlan(
  { checker, workspace }: PlanGroup,
  root: Uri,
  { dryRun, offers }: Pick<FixOptions, "dryRun" | "offers">,
  outside: Host,
): Promise<boolean> {
  const plan = await checker.check(root);
  const all = plan.state === "checked" ? await checker.fixAll(plan, { offers, mostRuns }) : undefined;
  checker.forget(root);
  if (!all) return true;
  let allWritten = true;
  for (const [uri, edits] of groupByFile(all.edits)) {
    const file = printable(relative(outside.cwd, fileURLToPath(uri)));
    const refused = dryRun
      ? undefined
      : await replaceFile(fileURLToPath(uri), edits, workspace.read(uri)?.text);
    if (refused === undefined) {
      for (const edit of edits) outside.out(`${file}: ${shown(edit.expected)} → ${shown(edit.newText)}\n`);
    } else {
      outside.err(`loomwright: ${file} ${printable(refused)}; it was not changed.\n`);
      allWritten = false;
    }
  }
  const name = printable(relative(outside.cwd, fileURLToPath(root)));
  const gone = counted(all.findingsGone, "finding");
  if (allWritten) outside.out(`${name}: ${gone} ${dryRun ? "would be fixed" : "fixed"}\n`);
  if (!dryRun) checker.changedOnDisk([...new Set(all.edits.map(({ uri }) => uri))]);
  return allWritten;
}

function groupByFile(edits: readonly Edit[]): Map<Uri, Edit[]> {
  const files = new Map<Uri, Edit[]>();
  for (const edit of edits) files.set(edit.uri, [...(files.get(edit.uri) ?? []), edit]);
  return files;
}

function shown(text: string): string {
  return text.trim() === "" ? "(nothing)" : printable(text.trim().replaceAll(/\s+/g, " "));
}

function applied(text: string, edits: readonly Edit[]): string {
  const table = new PieceTable(text);
  table.apply(edits);
  return table.text;
}

/** Refuses, with the reason, if the file differs from the checked text: a newer text must not be lost. */
async function replaceFile(
  named: string,
  edits: readonly Edit[],
  checked: string | undefined,
): Promise<string | undefined> {
  try {
    // A link remains a link.
    const path = await realpath(named);
    const before = await readFile(path);
    const found = before.toString("utf8");
    const text = found.replace(byteOrderMark, "");
    if (text !== checked) return "changed while it was being fixed: run the command again";
    if (!before.equals(Buffer.from(found))) return "holds characters that are not UTF-8 and would be lost";
    await replaceWhole(path, found.slice(0, found.length - text.length) + applied(text, edits));
    return undefined;
  } catch (error) {
    return whyNotWritten(error);
  }
}

/** The checked text begins after it; it stays in the file. */
const byteOrderMark = /^\uFEFF/;
