import { type FileImports, isPlansOwn } from "./file-imports.ts";
import { resolveImport } from "./imports.ts";
import type { SourceText, Uri, Version, Workspace } from "./workspace.ts";

/** Which files import which, asked of their newest versions each time; only plan files and what they import are opened. */
export class PlanRoots {
  readonly #workspace: Workspace;
  readonly #importsOf: (source: SourceText) => FileImports;
  readonly #edges = new Map<Uri, Edges>();
  readonly #asked = new Map<Uri, Edges>();
  #planFiles: readonly Uri[] | undefined;
  #folders: readonly Uri[] = [];

  constructor(workspace: Workspace, importsOf: (source: SourceText) => FileImports) {
    this.#workspace = workspace;
    this.#importsOf = importsOf;
  }

  roots(): readonly Uri[] {
    this.#beginQuestion();
    this.#planFiles = this.#workspace.planFiles();
    return this.#rootsAmong(this.#planFiles);
  }

  rootsOf(file: Uri): readonly Uri[] {
    this.#beginQuestion();
    this.#planFiles ??= this.#workspace.planFiles();
    const known = new Set(this.#planFiles);
    // A file that was not a plan a moment ago, or was not there, may be one now; without the name it is not even parsed.
    const others = [file, ...(this.#workspace.openFiles?.() ?? [])].filter(
      (uri) => !known.has(uri) && this.#workspace.read(uri)?.text.includes("loomwright"),
    );
    const planFiles = others.length > 0 ? [...this.#planFiles, ...others] : this.#planFiles;
    return this.#rootsAmong(planFiles).filter((root) => this.#reachable(root).has(file));
  }

  /** What a plan may import depends on the folders of the workspace. */
  #beginQuestion(): void {
    this.#asked.clear();
    const folders = this.#workspace.folders();
    if (folders.join("\n") === this.#folders.join("\n")) return;
    this.#folders = folders;
    this.#planFiles = undefined;
    this.#edges.clear();
  }

  forget(files: readonly Uri[]): void {
    this.#planFiles = undefined;
    for (const file of files) this.#edges.delete(file);
  }

  /** Of files that import each other in a circle and that nothing else imports, the first is the root. */
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
    // A half-typed file still belongs where it belonged.
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
    // Without a whole version yet: the text says at least whether it wants the library.
    if (asked?.broken) library = /from\s*["']loomwright["']/.test(source?.text ?? "");
    const edges = { version: source?.version, library, files, found };
    this.#edges.set(uri, edges);
    return edges;
  }
}

interface Edges {
  readonly version: Version | undefined;
  readonly library: boolean;
  readonly files: ReadonlySet<Uri>;
  /** Whether the files that were looked for existed. */
  readonly found: ReadonlyMap<Uri, boolean>;
}
