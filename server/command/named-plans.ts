import { existsSync, statSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { diskWorkspace } from "../evaluate/disk-workspace.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import { UsageError } from "./usage.ts";

/** Plans of one project folder, and what they were found with. */
export interface NamedPlans<Finder> {
  readonly workspace: Workspace;
  readonly finder: Finder;
  /** Sorted. */
  readonly roots: readonly Uri[];
}

interface PlanFinder {
  /** Every plan of the workspace. */
  roots(): readonly Uri[];
  /** The plans that a file belongs to. */
  rootsOf(file: Uri): readonly Uri[];
}

/**
 * Turns files and folders, as typed, into plans. A folder stands for every plan below it. A file stands for the plans it
 * belongs to: itself, or those that import it. Names are looked up in their own project (the nearest folder upwards with a
 * package.json or a git repository), because that is what its imports may reach; so the result does not depend on where the
 * command is run.
 */
export function namedPlans<Finder extends PlanFinder>(
  names: readonly string[],
  cwd: string,
  finderIn: (workspace: Workspace, folder: string) => Finder,
): NamedPlans<Finder>[] {
  const groups = new Map<string, { finder: Finder; workspace: Workspace; roots: Set<Uri> }>();
  for (const name of names.length > 0 ? names : ["."]) {
    const path = resolve(cwd, name);
    if (!existsSync(path)) throw new UsageError(`there is no file or folder '${name}'.`);
    const isFolder = statSync(path).isDirectory();
    const folder = isFolder ? path : projectFolder(dirname(path));
    let group = groups.get(folder);
    if (!group) {
      const workspace = diskWorkspace([pathToFileURL(folder).href]);
      group = { workspace, finder: finderIn(workspace, folder), roots: new Set() };
      groups.set(folder, group);
    }
    const uri = pathToFileURL(path).href;
    const roots = isFolder ? group.finder.roots() : group.finder.rootsOf(uri);
    if (roots.length === 0) {
      throw new UsageError(
        isFolder
          ? `no plan found below '${name}': no TypeScript or JavaScript file there imports "loomwright".`
          : `'${name}' is not a plan: neither it nor a file that uses it imports "loomwright".`,
      );
    }
    for (const root of roots) group.roots.add(root);
  }
  return [...groups.values()].map(({ finder, workspace, roots }) => ({
    workspace,
    finder,
    roots: [...roots].sort(),
  }));
}

/** The nearest folder upwards that holds a project, else the folder itself. */
function projectFolder(folder: string): string {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, "package.json")) || existsSync(join(at, ".git"))) return at;
    if (dirname(at) === at) return folder;
  }
}
