import { createHash } from "node:crypto";
import { existsSync, realpathSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import * as z from "zod";
import { planInputs } from "../evaluate/files/plan-inputs.ts";
import type { FileImports } from "../evaluate/text/file-imports.ts";
import type { SourceText, Uri, Workspace } from "../evaluate/workspace.ts";
import type { KeptResults } from "./host.ts";
import { planSchema, type ReportedPlan } from "./report-schema.ts";
import { type ResultCache, resultCache } from "./result-cache.ts";

/**
 * Results of earlier runs of `check` in one project folder. A result is kept under a digest of everything it follows from, so it
 * is never stale. The cache is in the user's own cache folder and never in the checked folder, because a stranger's repository
 * must not be able to bring results along.
 */
export class CheckCache {
  readonly #entries: ResultCache;
  readonly #tool: string;
  readonly #importsKey: string;
  readonly #fresh: boolean;
  /** The imports of a text, by its digest. */
  readonly #imports: ReadonlyMap<string, FileImports>;
  /** For the texts that this run has asked for. */
  readonly #asked = new Map<string, FileImports>();
  readonly #digests = new WeakMap<SourceText, string>();

  /** `fresh`: results of earlier runs are not read; those of this run are kept. */
  static in(kept: KeptResults | undefined, folder: string, fresh: boolean): CheckCache | undefined {
    if (!kept || isInside(kept.folder, folder)) return undefined;
    const tool = kept.tool();
    return tool === undefined ? undefined : new CheckCache(kept.folder, { tool, folder, fresh });
  }

  private constructor(cacheFolder: string, of: { tool: string; folder: string; fresh: boolean }) {
    this.#entries = resultCache(join(cacheFolder, "check"));
    this.#tool = of.tool;
    this.#fresh = of.fresh;
    this.#importsKey = digest("imports", of.tool, of.folder);
    this.#imports = of.fresh ? new Map() : this.#readImports();
  }

  /** The imports of a text, if an earlier run has read it. */
  importsOf(source: SourceText): FileImports | undefined {
    const key = this.#digestOf(source);
    const known = this.#asked.get(key) ?? this.#imports.get(key);
    if (known) this.#asked.set(key, known);
    return known;
  }

  keepImports(source: SourceText, imports: FileImports): void {
    if (!imports.outOfTime) this.#asked.set(this.#digestOf(source), imports);
  }

  /**
   * The digest of everything that the result of a plan follows from. It includes the plan's own address: a plan can see that in
   * the stack of an error.
   */
  keyOf(root: Uri, workspace: Workspace, importsOf: (source: SourceText) => FileImports): string {
    const inputs = planInputs(root, workspace, importsOf);
    return digest(
      ...["result", this.#tool, root],
      ...inputs.map(({ uri, text, leadsTo }) =>
        JSON.stringify([uri, text === undefined ? null : digest(text), ...leadsTo]),
      ),
    );
  }

  read(key: string): ReportedPlan | undefined {
    return this.#fresh ? undefined : parsed(this.#entries.read(key), planSchema);
  }

  async write(key: string, plan: ReportedPlan): Promise<void> {
    await this.#entries.write(key, JSON.stringify(plan));
  }

  async close(): Promise<void> {
    const all = [...this.#asked];
    const isKnown = all.length === this.#imports.size && all.every(([key]) => this.#imports.has(key));
    if (!isKnown) await this.#entries.write(this.#importsKey, JSON.stringify(all));
    this.#entries.close();
  }

  #readImports(): ReadonlyMap<string, FileImports> {
    return new Map(parsed(this.#entries.read(this.#importsKey), importsSchema) ?? []);
  }

  /** The extension of the file name is included: parsing depends on it. */
  #digestOf(source: SourceText): string {
    let known = this.#digests.get(source);
    if (known === undefined) {
      known = digest(/\.[^./]*$/.exec(source.uri)?.[0] ?? "", source.text);
      this.#digests.set(source, known);
    }
    return known;
  }
}

const importsSchema = z.array(
  z.tuple([
    z.string(),
    z.strictObject({
      broken: z.boolean(),
      outOfTime: z.literal(false),
      callsForLibrary: z.boolean(),
      lines: z.array(
        z.strictObject({ specifier: z.string(), typesOnly: z.boolean(), typesDeclared: z.boolean() }),
      ),
    }),
  ]),
);

/** Undefined if the text does not match the schema. */
function parsed<Value>(text: string | undefined, schema: z.ZodType<Value>): Value | undefined {
  if (text === undefined) return undefined;
  try {
    return schema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

/** Digests the texts as a list: different lists never look alike. */
function digest(...texts: readonly string[]): string {
  return createHash("sha256").update(JSON.stringify(texts)).digest("hex");
}

/** Whether a folder is inside another one, or inside the git repository around that. */
function isInside(inner: string, folder: string): boolean {
  return [folder, repositoryAround(folder)].some((outer) => {
    const way = relative(realOf(outer), realOf(inner));
    return way === "" || !(way === ".." || way.startsWith(`..${sep}`) || /^[a-z]:/i.test(way));
  });
}

function repositoryAround(folder: string): string {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, ".git"))) return at;
    if (dirname(at) === at) return folder;
  }
}

/** The real path, resolved as far as it exists. */
function realOf(path: string): string {
  try {
    return realpathSync.native(path);
  } catch {
    return dirname(path) === path ? path : join(realOf(dirname(path)), relative(dirname(path), path));
  }
}
