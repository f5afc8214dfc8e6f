import type { CannotRunReason } from "../../../library/model/record.ts";
import * as words from "../../../library/plan/index.ts";
import type { SourceRange } from "../checked-plan.ts";
import { exportOf, passedOn } from "../provenance/declarations.ts";
import type { Snapshot, Uri, Version, Workspace } from "../workspace.ts";
import type { FileCache } from "./file-cache.ts";
import type { PlanFile } from "./parse.ts";
import { resolveImport } from "./resolve-import.ts";

/**
 * Reads a plan's root and all it imports, directly or not; circles are allowed. Never stops early: files that are missing or
 * cannot be run are listed with their place.
 */
export function loadPlan(root: Uri, workspace: Workspace, cache: Pick<FileCache, "get">): LoadedPlan {
  const snapshot = new Map<Uri, Version | undefined>();
  const files = new Map<Uri, PlanFile>();
  const imports = new Map<Uri, Map<string, Uri | "loomwright">>();
  const problems: LoadProblem[] = [];
  const waiting: Uri[] = [root];
  for (let uri = waiting.shift(); uri !== undefined; uri = waiting.shift()) {
    if (files.has(uri)) continue;
    const source = workspace.read(uri);
    snapshot.set(uri, source?.version);
    if (!source) continue;
    const file = cache.get(source);
    files.set(uri, file);
    const leadsTo = new Map<string, Uri | "loomwright">();
    imports.set(uri, leadsTo);
    if (file.refusal) {
      const { reason, detail, start, end } = file.refusal;
      problems.push({ reason, detail, place: { uri, start, end } });
    }
    if (!file.instrumented) continue;
    for (const { start, end, reason, what } of file.instrumented.refused) {
      problems.push({ reason, detail: what, place: { uri, start, end } });
    }
    for (const { specifier, start, end, typesOnly } of file.instrumented.imports) {
      if (typesOnly || leadsTo.has(specifier)) continue;
      const resolved = resolveImport(specifier, uri, root, workspace);
      for (const [tried, version] of resolved.tried) if (!snapshot.has(tried)) snapshot.set(tried, version);
      if ("problem" in resolved) {
        const { problem: reason, why } = resolved;
        const detail = why === undefined ? specifier : `"${specifier}" ${why}`;
        problems.push({ reason, detail, place: { uri, start, end } });
      } else {
        leadsTo.set(specifier, resolved.to);
        if (resolved.to !== "loomwright") waiting.push(resolved.to);
      }
    }
  }
  const plan = {
    root,
    snapshot,
    files,
    imports,
    broken: [...files.values()].find((file) => file.syntaxError),
  };
  return { problems: plan.broken ? [] : [...problems, ...missingNames(plan)], ...plan };
}

export interface LoadedPlan extends Omit<LoadedFiles, "problems"> {
  readonly problems: readonly LoadProblem[];
}

interface LoadedFiles {
  readonly root: Uri;
  /** Also contains files that imports looked for and that do not exist. */
  readonly snapshot: Snapshot;
  /** Lacks the root only if that does not exist. */
  readonly files: ReadonlyMap<Uri, PlanFile>;
  /** By file: the text of each import to its target file. */
  readonly imports: ReadonlyMap<Uri, ReadonlyMap<string, Uri | "loomwright">>;
  readonly broken: PlanFile | undefined;
}

export interface LoadProblem {
  readonly reason: CannotRunReason;
  readonly detail: string;
  readonly place: SourceRange;
}

/** Names that are imported, used as values, and not exported: JavaScript would not even begin to run such a plan. */
function missingNames(plan: LoadedFiles): LoadProblem[] {
  return [...plan.files.values()].flatMap((file) =>
    (file.instrumented?.imports ?? []).flatMap(({ specifier, names, typesOnly }) => {
      const to = typesOnly ? undefined : plan.imports.get(file.uri)?.get(specifier);
      if (to === undefined) return [];
      return names
        .filter(({ name }) => !exports(to, name, plan, new Set()))
        .map(
          ({ name, start, end }): LoadProblem => ({
            reason: "import-name-missing",
            detail: `"${name}"`,
            place: { uri: file.uri, start, end },
          }),
        );
    }),
  );
}

function exports(uri: Uri | "loomwright", name: string, plan: LoadedFiles, asked: Set<Uri>): boolean {
  if (uri === "loomwright") return Object.hasOwn(words, name);
  const file = plan.files.get(uri);
  // A file that could not be read has a problem of its own.
  if (!file || asked.has(uri)) return !file;
  asked.add(uri);
  if (file.refusal || exportOf(file, name)) return true;
  return (
    name !== "default" &&
    passedOn(file).some((text) => {
      const to = plan.imports.get(uri)?.get(text);
      return to === undefined || exports(to, name, plan, asked);
    })
  );
}
