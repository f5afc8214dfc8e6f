import { wireNumbersFile } from "../../../library/documents/schedules/wire-numbers-file.ts";
import { type FileImports, isPlansOwn } from "../text/file-imports.ts";
import { resolveImport } from "../text/resolve-import.ts";
import type { PassedBy, SourceText, Uri, Version, Workspace } from "../workspace.ts";
import { fileName } from "./file-name.ts";
import { inOrder } from "./passed-by.ts";

/**
 * The import relations between files, read from their newest versions each time; only plan files and their imports are opened.
 */
export class PlanRoots {
  readonly #workspace: Workspace;
  readonly #importsOf: (source: SourceText) => FileImports;
  readonly #edges = new Map<Uri, Edges>();
  readonly #asked = new Map<Uri, Edges>();
  #planFiles: readonly Uri[] = [];
  #upToDate = false;
  #folders: readonly Uri[] = [];
  /** Counts the calls of {@link forget}. */
  #changes = 0;

  constructor(workspace: Workspace, importsOf: (source: SourceText) => FileImports) {
    this.#workspace = workspace;
    this.#importsOf = importsOf;
  }

  roots(): readonly Uri[] {
    this.#noticeFolders();
    this.#asked.clear();
    this.#planFiles = this.#workspace.planFiles();
    this.#upToDate = true;
    return this.#rootsAmong(this.#planFiles);
  }

  rootsOf(file: Uri): readonly Uri[] {
    if (!this.upToDate) this.#planFiles = this.#workspace.planFiles();
    this.#upToDate = true;
    return this.membership([file, ...(this.#workspace.openFiles?.() ?? [])]).rootsOf(file);
  }

  /** True if {@link membership} needs to read no more files for a complete answer. */
  get upToDate(): boolean {
    this.#noticeFolders();
    return this.#upToDate;
  }

  /** If the workspace has other folders, plans may import other files. */
  #noticeFolders(): void {
    const folders = this.#workspace.folders();
    if (folders.join("\n") === this.#folders.join("\n")) return;
    this.#folders = folders;
    this.#edges.clear();
    this.forget([]);
  }

  /**
   * Reads the files that are not known yet, one in each step, with time for others in between. Texts that contain one of the
   * words in `first` are read before all others.
   */
  *read(first: readonly string[]): Generator<void, void> {
    this.#noticeFolders();
    const changed = this.#changes;
    const planFiles = this.#workspace.planFilesInSteps
      ? yield* this.#workspace.planFilesInSteps()
      : this.#workspace.planFiles();
    const later: Uri[] = [];
    for (const uri of planFiles) {
      const text = this.#workspace.read(uri)?.text ?? "";
      if (!first.some((word) => text.includes(word))) later.push(uri);
      else this.#newestEdges(uri);
      yield;
    }
    for (const uri of later) {
      this.#newestEdges(uri);
      yield;
    }
    if (changed !== this.#changes) return;
    this.#planFiles = planFiles;
    this.#upToDate = true;
  }

  /**
   * The plans that these files belong to, and the other files of these plans. Until everything is read, the previously known
   * imports remain valid for files other than these.
   */
  membership(files: readonly Uri[]): Membership {
    this.#noticeFolders();
    this.#asked.clear();
    if (!this.#upToDate) {
      for (const [uri, edges] of this.#edges) if (!files.includes(uri)) this.#asked.set(uri, edges);
    }
    // A file that was not a plan, or did not exist, may be one now; without the library's name it is not even parsed.
    const planFiles = new Set(this.#planFiles);
    const isNewPlan = (file: Uri) =>
      !planFiles.has(file) && this.#workspace.read(file)?.text.includes("loomwright");
    this.#planFiles = [...this.#planFiles, ...new Set(files.filter(isNewPlan))];
    const known = this.#upToDate ? this.#planFiles : [...this.#planFiles, ...this.#edges.keys()];
    const roots = this.#rootsAmong(known);
    const filesOf = new Map(roots.map((root) => [root, this.#reachable(root)]));
    return {
      roots,
      filesOf: (root) => filesOf.get(root) ?? this.#reachable(root),
      rootsOf: (file) => roots.filter((root) => filesOf.get(root)!.has(file)),
    };
  }

  /**
   * Files that look like plans, or belong to one, and are in no plan of the workspace. Walks the folders again, except directly
   * after {@link roots}.
   */
  passedBy(): readonly PassedBy[] {
    if (!this.upToDate) this.roots();
    const { roots, filesOf } = this.membership([]);
    const judged = new Set(roots.flatMap((root) => [...filesOf(root)]));
    const { passedBy, wireNumbers } = this.#workspace.leftOut?.() ?? { passedBy: [], wireNumbers: [] };
    const calling = this.#planFiles.filter((uri) => !judged.has(uri) && this.#callsForLibrary(uri));
    const known = new Set([...roots, ...passedBy.map(({ uri }) => uri)].map(wireNumbersFile));
    return inOrder([
      // A file that a plan imports was judged with it.
      ...passedBy.filter(({ uri }) => !judged.has(uri)),
      ...calling.map((uri): PassedBy => ({ uri, reason: "require", why: callsInWords })),
      ...wireNumbers.filter((uri) => !known.has(uri)).map(withoutPlan),
    ]);
  }

  /** The reason why a file that the user named is not judged; undefined: it is no plan at all. */
  whyNot(file: Uri): PassedBy | undefined {
    const unread = this.#workspace.unread?.(file);
    if (unread) return { uri: file, ...unread };
    return this.#callsForLibrary(file) ? { uri: file, reason: "require", why: callsInWords } : undefined;
  }

  #callsForLibrary(uri: Uri): boolean {
    const source = this.#workspace.read(uri);
    return source !== undefined && this.#importsOf(source).callsForLibrary;
  }

  forget(files: readonly Uri[]): void {
    this.#upToDate = false;
    this.#changes++;
    for (const file of files) {
      const edges = this.#edges.get(file);
      if (edges) this.#edges.set(file, { ...edges, version: unread });
    }
  }

  /** If files import each other in a circle and no other file imports them, the first is the root. */
  #rootsAmong(planFiles: readonly Uri[]): readonly Uri[] {
    const plans = [...new Set(planFiles)].filter((uri) => this.#edgesOf(uri).library).sort();
    const imported = new Set<Uri>();
    for (const plan of plans) {
      for (const uri of this.#reachable(plan)) if (uri !== plan) imported.add(uri);
    }
    const roots = plans.filter((plan) => !imported.has(plan));
    const covered = new Set(roots.flatMap((root) => [...this.#reachable(root)]));
    for (const plan of plans) {
      if (covered.has(plan)) continue;
      roots.push(plan);
      for (const uri of this.#reachable(plan)) covered.add(uri);
    }
    return roots.sort();
  }

  /** The file itself and all it imports, directly or not. */
  #reachable(from: Uri): ReadonlySet<Uri> {
    const reached = new Set<Uri>([from]);
    for (const uri of reached) for (const next of this.#edgesOf(uri).files) reached.add(next);
    return reached;
  }

  /** The same file is looked at once a question. */
  #edgesOf(uri: Uri): Edges {
    let edges = this.#asked.get(uri);
    if (!edges) {
      edges = this.#newestEdges(uri);
      this.#asked.set(uri, edges);
    }
    return edges;
  }

  #newestEdges(uri: Uri): Edges {
    const source = this.#workspace.read(uri);
    const known = this.#edges.get(uri);
    const stillTrue =
      known &&
      known.version === source?.version &&
      [...known.found].every(([file, there]) => (this.#workspace.read(file) !== undefined) === there);
    if (stillTrue) return known;
    const files = new Set<Uri>();
    const found = new Map<Uri, boolean>();
    let library = known?.library ?? false;
    const asked = source && this.#importsOf(source);
    // A half-typed file keeps its last known imports.
    if (asked?.broken && known) return { ...known, version: source?.version };
    if (!asked?.broken) library = false;
    for (const line of asked?.lines ?? []) {
      if (!isPlansOwn(line)) continue;
      const resolved = resolveImport(line.specifier, uri, uri, this.#workspace);
      for (const tried of resolved.tried.keys()) found.set(tried, false);
      if (!("to" in resolved)) continue;
      if (resolved.to === "loomwright") library = true;
      else {
        files.add(resolved.to);
        found.set(resolved.to, true);
      }
    }
    // Without a complete version yet, a search of the text at least shows whether it uses the library.
    if (asked?.broken) library = /["'`]loomwright\b/.test(source?.text ?? "");
    const edges = { version: source?.version, library, files, found };
    // A complete reading of the same version will yield more.
    if (!asked?.outOfTime) this.#edges.set(uri, edges);
    return edges;
  }
}

/** The plans that files belong to, at one moment. */
export interface Membership {
  readonly roots: readonly Uri[];
  /** Roots of the plans that a file belongs to. */
  rootsOf(file: Uri): readonly Uri[];
  /** The root itself and all it imports, directly or not. */
  filesOf(root: Uri): ReadonlySet<Uri>;
}

/** A version that no text has: the file must be read again. */
const unread = "unread";

const callsInWords =
  'loads the library with require() or import(), which is not run: write import … from "loomwright"';

function withoutPlan(uri: Uri): PassedBy {
  const stem = fileName(uri).replace(/\.wire-numbers\.txt$/, "");
  return {
    ...{ uri, reason: "numbers-without-plan" },
    why: `keeps the wire numbers of ${stem}.ts, but that plan does not exist: give it the name of its plan`,
  };
}

interface Edges {
  readonly version: Version | undefined;
  readonly library: boolean;
  readonly files: ReadonlySet<Uri>;
  /** Whether each file that imports looked for existed. */
  readonly found: ReadonlyMap<Uri, boolean>;
}
