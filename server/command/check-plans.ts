import { dirname, relative, resolve, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Sandbox } from "../evaluate/sandbox.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import { CheckCache } from "./check-cache.ts";
import type { CheckedPlans } from "./check-result.ts";
import { CheckedFolder, loadTools, type Tools } from "./checked-folder.ts";
import type { KeptResults } from "./host.ts";
import { createLineIndex, type LineIndex } from "./line-index.ts";
import { type NamedPlans, namedPlans } from "./named-plans.ts";
import { joinedFiles, passedFiles } from "./passed-files.ts";
import type { ReportedPlan } from "./report-schema.ts";
import type { Reported } from "./reported-plan.ts";
import { type AskedShard, shardOf, shareOf } from "./shard.ts";

/**
 * Checks the plans that the names refer to, or a share of them, in their order. Results of an earlier run for exactly the same
 * texts are reused; then neither the parser nor the sandbox is even loaded. The answer is the same either way.
 */
export async function checkPlans(asked: AskedPlans): Promise<CheckedPlans> {
  const { cwd, shard } = asked;
  const groups = await groupsOf(asked);
  try {
    const all = groups.flatMap(({ finder, roots }) => roots.map((root) => ({ folder: finder, root })));
    const mine = shard ? shareOf(all, shard) : all;
    const plans: Reported[] = [];
    for (const { folder, root } of mine) {
      asked.progress(plans.length + 1, mine.length);
      plans.push(seenFrom(cwd, { plan: await folder.check(root), root, workspace: folder.workspace }));
    }
    const passedBy = joinedFiles(groups.map((group) => passedFiles(group.passedBy, cwd)));
    if (!shard) return { plans, passedBy };
    const files = all.map(({ root }) => named(cwd, fileURLToPath(root)));
    return { plans, passedBy, shard: shardOf(shard, files) };
  } finally {
    await Promise.all(groups.map(({ finder }) => finder.close()));
  }
}

export interface AskedPlans {
  /** Files and folders, as typed; if empty, the current folder. */
  readonly names: readonly string[];
  /** The folder where the command runs; files are named relative to it. */
  readonly cwd: string;
  readonly shard?: AskedShard | undefined;
  /** If left out, earlier runs are not used and results are not kept. */
  readonly kept?: KeptResults | undefined;
  /** Runs the plans; if left out, each project folder gets one. */
  readonly sandbox?: Sandbox | undefined;
  /** Computes everything anew, and keeps it. */
  readonly fresh: boolean;
  progress(place: number, of: number): void;
}

/** Tries without the parser; loads it if a text is met whose imports no earlier run has read. */
async function groupsOf(asked: AskedPlans): Promise<readonly NamedPlans<CheckedFolder>[]> {
  const { kept, fresh } = asked;
  const known = kept && !fresh ? groupsWith(undefined, asked) : undefined;
  return known ?? groupsWith(await loadTools(), asked) ?? [];
}

/** Undefined if an answer needs the parser. */
function groupsWith(
  tools: Tools | undefined,
  { names, cwd, kept, fresh, sandbox }: AskedPlans,
): readonly NamedPlans<CheckedFolder>[] | undefined {
  const folders: CheckedFolder[] = [];
  try {
    const groups = namedPlans(names, cwd, (workspace, folder) => {
      const checked = new CheckedFolder(workspace, CheckCache.in(kept, folder, fresh), tools, sandbox);
      folders.push(checked);
      return checked;
    });
    return folders.some(({ missed }) => missed) ? undefined : groups;
  } catch (error) {
    // A text that is still unread may be the very plan that was not found.
    if (folders.some(({ missed }) => missed)) return undefined;
    throw error;
  }
}

/** Renames the files of a plan: they are relative to its own folder, and become relative to the folder where the command runs. */
function seenFrom(
  cwd: string,
  {
    plan,
    root,
    workspace,
  }: { readonly plan: ReportedPlan; readonly root: Uri; readonly workspace: Workspace },
): Reported {
  const folder = dirname(fileURLToPath(root));
  const names = new Map<string, string>();
  const nameOf = (file: string) => {
    const name = names.get(file) ?? named(cwd, resolve(folder, file));
    names.set(file, name);
    return name;
  };
  rename(plan, nameOf);
  const indexes = new Map<string, LineIndex>();
  const lineText = (file: string, line: number) => {
    let index = indexes.get(file);
    if (!index) {
      index = createLineIndex(workspace.read(pathToFileURL(resolve(cwd, file)).href)?.text ?? "");
      indexes.set(file, index);
    }
    return index.lineText(line);
  };
  return { ...plan, lineText };
}

/** With forward slashes on every system, to keep reports comparable. */
function named(cwd: string, path: string): string {
  return relative(cwd, path).split(sep).join("/");
}

/** Replaces the value of each property `file`, at any depth. */
function rename(value: unknown, nameOf: (file: string) => string): void {
  if (typeof value !== "object" || value === null) return;
  if (Array.isArray(value)) {
    for (const one of value) rename(one, nameOf);
    return;
  }
  const properties = value as Record<string, unknown>;
  for (const key in properties) {
    if (key === "file") properties[key] = nameOf(String(properties[key]));
    else rename(properties[key], nameOf);
  }
}
