import { type Checker, createChecker } from "../evaluate/checker.ts";
import type { PassedBy, Uri, Workspace } from "../evaluate/workspace.ts";
import type { Host } from "./host.ts";
import { namedPlans } from "./named-plans.ts";

/** Plans of one project folder, and the checker and files to check them with. */
export interface PlanGroup {
  readonly workspace: Workspace;
  readonly checker: Checker;
  readonly roots: readonly Uri[];
  readonly passedBy: readonly PassedBy[];
}

/** {@link namedPlans}, each with a checker that reads everything anew. */
export function findPlans(
  names: readonly string[],
  { cwd, sandbox }: Pick<Host, "cwd" | "sandbox">,
): PlanGroup[] {
  const finderIn = (workspace: Workspace) => createChecker(workspace, sandbox ? { sandbox } : {});
  return namedPlans(names, cwd, finderIn).map(({ finder, ...group }) => ({
    ...group,
    checker: finder,
  }));
}
