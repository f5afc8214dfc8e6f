import { existsSync, lstatSync, type Stats, statSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { diskWorkspace } from "../evaluate/files/disk-workspace.ts";
import { inOrder } from "../evaluate/files/passed-by.ts";
import { whyUnread } from "../evaluate/text/plan-text.ts";
import type { PassedBy, Uri, Workspace } from "../evaluate/workspace.ts";
import { UsageError } from "./usage.ts";

/** Plans of one project folder, and the workspace and finder that found them. */
export interface NamedPlans<Finder> {
  readonly workspace: Workspace;
  readonly finder: Finder;
  /** Sorted. */
  readonly roots: readonly Uri[];
  /** Files below the names that were not taken for plans. */
  readonly passedBy: readonly PassedBy[];
}

interface PlanFinder {
  /** Every plan of the workspace. */
  roots(): readonly Uri[];
  /** The plans that a file belongs to. */
  rootsOf(file: Uri): readonly Uri[];
  /** Files that look like plans and are not among {@link roots}. */
  passedBy(): readonly PassedBy[];
  /** Why a file is no plan although it looks like one. */
  whyNot(file: Uri): PassedBy | undefined;
}

/**
 * Turns files and folders, as typed, into plans. A folder means every plan below it. A file means the plans it belongs to:
 * itself, or those that import it. A file is looked up in its own project (the nearest folder upwards with a package.json or a
 * git repository), because its imports may reach that far; so the result does not depend on where the command is run.
 */
export function namedPlans<Finder extends PlanFinder>(
  names: readonly string[],
  cwd: string,
  finderIn: (workspace: Workspace, folder: string) => Finder,
): NamedPlans<Finder>[] {
  const groups = new Map<string, Group<Finder>>();
  for (const name of names.length > 0 ? names : ["."]) {
    const path = resolve(cwd, name);
    const isFolder = kindOf(path, name).isDirectory();
    const folder = isFolder ? path : projectFolder(dirname(path));
    let group = groups.get(folder);
    if (!group) {
      const workspace = diskWorkspace([pathToFileURL(folder).href], { gitLimitMs });
      group = { workspace, finder: finderIn(workspace, folder), roots: new Set(), passedBy: [] };
      groups.set(folder, group);
    }
    const uri = pathToFileURL(path).href;
    const roots = isFolder ? group.finder.roots() : group.finder.rootsOf(uri);
    const passedBy = isFolder ? group.finder.passedBy() : besideFile(uri, roots, group.finder);
    if (roots.length === 0 && passedBy.every(({ reason }) => reason === "numbers-without-plan")) {
      throw new UsageError(
        isFolder
          ? `no plan found below '${name}': no TypeScript or JavaScript file there imports "loomwright".`
          : `'${name}' is not a plan: neither it nor a file that uses it imports "loomwright".`,
      );
    }
    for (const root of roots) group.roots.add(root);
    group.passedBy.push(...passedBy);
  }
  return [...groups.values()].map(({ finder, workspace, roots, passedBy }) => ({
    ...{ workspace, finder, roots: [...roots].sort() },
    // A file that was also named is judged.
    passedBy: inOrder(passedBy.filter(({ uri }) => !roots.has(uri))),
  }));
}

interface Group<Finder> {
  readonly finder: Finder;
  readonly workspace: Workspace;
  readonly roots: Set<Uri>;
  readonly passedBy: PassedBy[];
}

/** A person who waits for a command waits for git too; only a repository that never answers is abandoned. */
export const gitLimitMs = 20_000;

/**
 * Why a named file is no plan; or wire numbers in its plan's folder that no plan reads, because the plan may have been renamed
 * without them.
 */
function besideFile(file: Uri, roots: readonly Uri[], finder: PlanFinder): readonly PassedBy[] {
  const why = roots.length === 0 ? finder.whyNot(file) : undefined;
  if (why) return [why];
  const folders = new Set(roots.map(folderOf));
  return finder
    .passedBy()
    .filter(({ uri, reason }) => reason === "numbers-without-plan" && folders.has(folderOf(uri)));
}

function folderOf(uri: Uri): string {
  return uri.slice(0, uri.lastIndexOf("/"));
}

/** Throws a {@link UsageError} with the reason reported by the disk. */
function kindOf(path: string, name: string): Stats {
  try {
    return statSync(path);
  } catch (error) {
    const why = whyUnread(error)?.why;
    if (why !== undefined) throw new UsageError(`'${name}' ${why}.`);
    if (lstatSync(path, { throwIfNoEntry: false }))
      throw new UsageError(`'${name}' is a link to a missing file.`);
    const isGarbled = name.includes("\uFFFD");
    throw new UsageError(
      `there is no file or folder '${name}'${isGarbled ? "; one whose name is not UTF-8 has to be renamed" : ""}.`,
    );
  }
}

/** The nearest folder upwards that holds a project; if there is none, the folder itself. */
function projectFolder(folder: string): string {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, "package.json")) || existsSync(join(at, ".git"))) return at;
    if (dirname(at) === at) return folder;
  }
}
