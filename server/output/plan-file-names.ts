import { posix } from "node:path";
import type { Uri, Workspace } from "../evaluate/workspace.ts";

/**
 * The names of files that are made of plans in one folder: no two plans share one. A plan in another folder than the one where the
 * command runs has its folders in the name, "boat-plan", whichever plans are named beside it.
 */
export class PlanFileNames {
  /** By name, in lower case: some file systems take both for one. */
  private readonly plans = new Map<string, string>();

  /**
   * @param file of the plan, relative to where the command runs, with forward slashes.
   * @param plan distinguishes plans that have the same path, each in another folder.
   */
  nameFor(file: string, ending: string, plan = file): string {
    const path = file.replace(/^(?:(?:\.{1,2}\/)+|[A-Za-z]:\/|\/+)/, "").replaceAll("/", "-");
    const stem = path.replace(/\.[cm]?[jt]sx?$/i, "");
    for (const one of candidates(stem, path)) {
      const name = `${one}${ending}`;
      const key = name.toLowerCase();
      if ((this.plans.get(key) ?? plan) !== plan) continue;
      this.plans.set(key, plan);
      return name;
    }
    throw new Error("There is no end to the candidates.");
  }
}

/** "plan"; then "plan.mts", of a plan beside "plan.ts"; then "plan-2". */
function* candidates(stem: string, path: string): Generator<string> {
  yield stem;
  yield path;
  for (let number = 2; ; number++) yield `${stem}-${number}`;
}

/**
 * The names of files that are made of one plan of a workspace: the same as those of the command line in the workspace's folder, and
 * whichever plan's files were written first.
 *
 * @param into URI of the folder of the files; the names of a plan outside of the workspace start there.
 */
export function fileNamesOf(
  root: Uri,
  workspace: Pick<Workspace, "folders" | "planFiles">,
  into: Uri,
): (ending: string) => string {
  const names = new PlanFileNames();
  const others = workspace.planFiles();
  const plans = [...new Set([...others, root])].sort();
  return (ending) => {
    for (const plan of plans) {
      const name = names.nameFor(pathWithin(workspace.folders(), plan, into), ending, plan);
      if (plan === root) return name;
    }
    throw new Error("The plan is among the plans.");
  };
}

/** "boat/plan.ts"; in one of several workspace folders with its name before it. */
function pathWithin(folders: readonly Uri[], plan: Uri, into: Uri): string {
  const path = (uri: Uri) => decodeURIComponent(new URL(uri).pathname).replace(/\/$/, "");
  const folder = folders.find((one) => plan.startsWith(`${one.replace(/\/$/, "")}/`));
  if (folder === undefined) return posix.relative(path(into), path(plan));
  const within = folders.length > 1 ? posix.dirname(path(folder)) : path(folder);
  return posix.relative(within, path(plan));
}
