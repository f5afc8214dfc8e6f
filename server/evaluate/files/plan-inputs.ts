import type { FileImports } from "../text/file-imports.ts";
import { resolveImport } from "../text/resolve-import.ts";
import type { SourceText, Uri, Workspace } from "../workspace.ts";

/**
 * All inputs that determine the outcome of checking a plan, besides Loomwright itself: the text of its root and of every file
 * that it imports, directly or not, and the current target of each import. A new file that an import looks for first, or a
 * deleted one, changes the target. Runs nothing, and parses nothing if the imports of a text are already known.
 *
 * Must follow the same path as `load-plan.ts`; a test compares the two.
 */
export function planInputs(
  root: Uri,
  workspace: Workspace,
  importsOf: (source: SourceText) => FileImports,
): readonly PlanInput[] {
  const inputs = new Map<Uri, PlanInput>();
  const waiting: Uri[] = [root];
  for (let uri = waiting.shift(); uri !== undefined; uri = waiting.shift()) {
    if (inputs.has(uri)) continue;
    const source = workspace.read(uri);
    const leadsTo = new Map<string, string>();
    inputs.set(uri, { uri, text: source?.text, leadsTo });
    for (const { specifier, typesOnly } of source ? importsOf(source).lines : []) {
      if (typesOnly || leadsTo.has(specifier)) continue;
      const resolved = resolveImport(specifier, uri, root, workspace);
      if ("problem" in resolved)
        leadsTo.set(specifier, ["not:", resolved.problem, resolved.why].filter(Boolean).join(" "));
      else {
        leadsTo.set(specifier, resolved.to);
        if (resolved.to !== "loomwright") waiting.push(resolved.to);
      }
    }
  }
  return [...inputs.values()];
}

interface PlanInput {
  readonly uri: Uri;
  /** Undefined: the file does not exist. */
  readonly text: string | undefined;
  /** By the text of an import: the file, "loomwright", or the reason why it has no target. */
  readonly leadsTo: ReadonlyMap<string, string>;
}
