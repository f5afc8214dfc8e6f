import { isUtf8 } from "node:buffer";
import { type Dirent, existsSync, readdirSync, realpathSync, type Stats, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { ignoredBelow } from "../git/git-ignored.ts";
import {
  largeFileNamesLibrary,
  namesLibrary,
  readPlanText,
  stampOf,
  tooLarge,
  whyUnread,
} from "../text/plan-text.ts";
import type { PassedBy, SourceText, Unread, Uri, Workspace } from "../workspace.ts";
import { uriOfBytes } from "./file-name.ts";
import {
  deepestFolder,
  type FoundPlans,
  isEntered,
  isScript,
  isWireNumbers,
  plansAmong,
  tooDeep,
  wrongName,
} from "./plan-files.ts";

/**
 * Files on disk. Each call looks at the disk again, but reads a text only if the size or time of the file has changed. Only
 * files of the scheme `file:` exist here. Never throws: a file that cannot be read has no text, and a reason. Each walk asks
 * git once for the ignored files, and waits for at most `gitLimitMs`.
 */
export function diskWorkspace(folders: readonly Uri[], { gitLimitMs = 800 } = {}): Workspace {
  /** Held weakly: the texts of a folder of many large plans are only in memory while they are in use. */
  const texts = new Map<Uri, WeakRef<SourceText>>();
  /** By path; of the files that existed at the last walk of the folders. */
  let looked = new Map<string, Looked>();
  let found: FoundPlans | undefined;

  function* survey(): Generator<void, FoundPlans> {
    const walk = new Walk(looked);
    for (const folder of folders) {
      const path = pathOf(folder);
      if (path) yield* walk.through(path.replace(/[\\/]$/, ""));
    }
    looked = walk.looked;
    const ignored = walk.ignored(gitLimitMs);
    const text = (uri: Uri) => read(uri)?.text;
    found = plansAmong(walk, (uri) => ignored.has(uri), text);
    return found;
  }

  const read = (uri: Uri): SourceText | undefined => {
    const path = pathOf(uri);
    const stat = path === undefined ? undefined : statOf(path);
    const known = texts.get(uri)?.deref();
    if (known && stat?.isFile() && known.version === stampOf(stat)) return known;
    texts.delete(uri);
    const newest = path !== undefined && stat ? readPlanText(path) : undefined;
    if (!newest || "unread" in newest) return undefined;
    const source = { uri, version: newest.stamp, text: newest.text };
    texts.set(uri, new WeakRef(source));
    return source;
  };

  return {
    read,
    folders: () => folders,
    realUri(uri) {
      const path = pathOf(uri);
      try {
        return path ? pathToFileURL(realpathSync.native(path)).href : uri;
      } catch {
        return uri;
      }
    },
    planFiles: () => atOnce(survey()).planFiles,
    *planFilesInSteps() {
      return (yield* survey()).planFiles;
    },
    leftOut: () => found ?? atOnce(survey()),
    unread(uri) {
      const path = pathOf(uri);
      const read = path === undefined ? undefined : readPlanText(path);
      return read && "unread" in read ? read.unread : undefined;
    },
  };
}

function atOnce<Result>(steps: Generator<void, Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

interface Looked {
  /** Undefined if the answer may change although the file does not. */
  readonly stamp: string | undefined;
  /** True if the library's name occurs in it, or may occur. */
  readonly named: boolean;
  readonly unread: Unread | undefined;
}

/** One walk through folders: the scripts that name the library, and the files and folders that it cannot or may not read. */
class Walk {
  readonly looked = new Map<string, Looked>();
  readonly scripts: Uri[] = [];
  readonly passedBy: PassedBy[] = [];
  readonly wireNumbers: Uri[] = [];
  readonly #before: ReadonlyMap<string, Looked>;
  readonly #came = new Set<string>();
  /** Paths that git must be asked about, by the folder of their repository. */
  readonly #asked = new Map<string, { readonly path: Buffer; readonly uri: Uri }[]>();

  constructor(before: ReadonlyMap<string, Looked>) {
    this.#before = before;
  }

  /** One step for each file and folder. */
  *through(folder: string): Generator<void, void> {
    yield* this.#enter(folder, { top: folder, isRepository: isInRepository(folder), depth: 0 });
  }

  /** All paths of the walk that git ignores. */
  ignored(limitMs: number): ReadonlySet<Uri> {
    const ignored = new Set<Uri>();
    for (const [folder, asked] of [...this.#asked].slice(0, mostRepositories)) {
      const paths = ignoredBelow(
        folder || "/",
        asked.map(({ path }) => path),
        limitMs,
      );
      if (paths.size === 0) continue;
      for (const { path, uri } of asked) if (paths.has(path.toString("latin1"))) ignored.add(uri);
    }
    return ignored;
  }

  *#enter(folder: string, around: Around): Generator<void, void> {
    if (this.#came.has(folder)) return;
    this.#came.add(folder);
    let entries: Dirent[];
    try {
      entries = readdirSync(folder || "/", { withFileTypes: true });
    } catch (error) {
      const unread = whyUnread(error);
      if (unread) this.#passBy(folder, around, unread);
      return;
    }
    entries.sort((a, b) => (a.name < b.name ? -1 : 1));
    const here =
      around.depth > 0 && entries.some(({ name }) => name === ".git")
        ? { ...around, top: folder, isRepository: true }
        : around;
    for (const entry of entries) {
      const path = `${folder}/${entry.name}`;
      // The replacement character of bytes that are not UTF-8.
      if (entry.name.includes("\uFFFD") && !existsSync(path)) continue;
      if (entry.isDirectory()) yield* this.#folder(path, entry.name, here);
      else if (entry.isSymbolicLink()) this.#link(path, entry.name, here);
      else if (isScript(entry.name)) this.#script(path, here);
      else if (isWireNumbers(entry.name)) this.wireNumbers.push(pathToFileURL(path).href);
      yield;
    }
    if (entries.some(({ name }) => name.includes("\uFFFD"))) this.#wronglyNamed(folder, here);
  }

  *#folder(path: string, name: string, around: Around): Generator<void, void> {
    if (!isEntered(name)) return;
    if (around.depth < deepestFolder) yield* this.#enter(path, { ...around, depth: around.depth + 1 });
    else if (mayHoldPlan(Buffer.from(path))) this.#passBy(path, around, tooDeep);
  }

  #link(path: string, name: string, around: Around): void {
    const target = statOf(path);
    if (target?.isDirectory()) {
      if (isEntered(name) && mayHoldPlan(Buffer.from(path)))
        this.#passBy(path, around, linked("to a folder"));
    } else if (isScript(name) && (!target || lookedAt(path)?.named)) {
      this.#passBy(path, around, linked(target ? "to another file" : "that leads nowhere"));
    }
  }

  #script(path: string, around: Around): void {
    const stat = statOf(path);
    const known = this.#before.get(path);
    const looked = stat && known?.stamp === stampOf(stat) ? known : lookedAt(path);
    if (!looked) return;
    if (looked.stamp !== undefined) this.looked.set(path, looked);
    if (looked.unread) this.#passBy(path, around, looked.unread);
    else if (looked.named) this.scripts.push(this.#ask(path, around));
  }

  #wronglyNamed(folder: string, around: Around): void {
    for (const entry of bufferEntries(Buffer.from(folder)) ?? []) {
      if (isUtf8(entry.name)) continue;
      const name = entry.name.toString("latin1");
      const path = Buffer.concat([Buffer.from(`${folder}/`), entry.name]);
      const mayBePlan = entry.isDirectory()
        ? isEntered(name) && mayHoldPlan(path)
        : isScript(name) && lookedAt(path)?.named;
      if (mayBePlan) this.#passBy(path, around, wrongName);
    }
  }

  #passBy(path: string | Buffer, around: Around, { reason, why }: Unread): void {
    this.passedBy.push({ uri: this.#ask(path, around), reason, why });
  }

  #ask(path: string | Buffer, { top, isRepository }: Around): Uri {
    const bytes = Buffer.from(path);
    const uri = typeof path === "string" ? pathToFileURL(path).href : uriOfBytes(path);
    const below = bytes.subarray(Buffer.byteLength(top) + 1);
    if (isRepository && below.length > 0) {
      const asked = this.#asked.get(top) ?? [];
      asked.push({ path: below, uri });
      this.#asked.set(top, asked);
    }
    return uri;
  }
}

/** The position of a walk. */
interface Around {
  /** The folder that git is run in: the start of the walk, or the last repository that it entered. */
  readonly top: string;
  readonly isRepository: boolean;
  readonly depth: number;
}

/** Repositories within repositories; beyond this number, every file counts as not ignored. */
const mostRepositories = 50;

function linked(where: string): Unread {
  return { reason: "linked", why: `is a link ${where}: links are not followed` };
}

function isInRepository(folder: string): boolean {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, ".git"))) return true;
    if (dirname(at) === at) return false;
  }
}

/** Undefined: it has been deleted, or is a folder. */
function lookedAt(path: string | Buffer): Looked | undefined {
  const read = readPlanText(path);
  if (!read) return undefined;
  const { stamp, bytes } = read;
  if (!("unread" in read)) return { stamp, named: namesLibrary(read.bytes), unread: undefined };
  const { unread } = read;
  const named = bytes ? namesLibrary(bytes) : unread !== tooLarge || largeFileNamesLibrary(path);
  return { stamp, named, unread: named ? unread : undefined };
}

/**
 * True if a folder that is not entered contains a plan, or too many files to find out. Links in it are not followed, so the
 * search ends.
 */
function mayHoldPlan(folder: Buffer): boolean {
  let left = mostPeekedInto;
  const waiting = [folder];
  for (const at of waiting) {
    const entries = bufferEntries(at);
    if (!entries) return true;
    for (const entry of entries) {
      if (left-- === 0) return true;
      const name = entry.name.toString("latin1");
      const path = Buffer.concat([at, Buffer.from("/"), entry.name]);
      if (entry.isDirectory()) {
        if (isEntered(name)) waiting.push(path);
      } else if (entry.isFile() && isScript(name) && lookedAt(path)?.named) return true;
    }
  }
  return false;
}

const mostPeekedInto = 2_000;

/** Undefined: the folder cannot be read. */
function bufferEntries(folder: Buffer) {
  try {
    return readdirSync(folder, { withFileTypes: true, encoding: "buffer" });
  } catch (error) {
    return whyUnread(error) ? undefined : [];
  }
}

function pathOf(uri: Uri): string | undefined {
  if (!uri.startsWith("file:")) return undefined;
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

function statOf(path: string): Stats | undefined {
  try {
    return statSync(path, { throwIfNoEntry: false });
  } catch {
    return undefined;
  }
}
