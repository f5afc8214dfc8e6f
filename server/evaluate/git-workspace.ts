import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { deepestFolder, isScript, largestPlanBytes, passedBy } from "./disk-workspace.ts";
import { askGit, GitTrouble } from "./git.ts";
import type { Revision } from "./git-revision.ts";
import type { SourceText, Uri, Workspace } from "./workspace.ts";

/**
 * The files of a folder as of a revision, read from git's objects: neither the working tree nor the index is looked at. They go by
 * the same URIs as the files on disk, so that reports of both name them alike, and are chosen by the same rules.
 */
export interface GitWorkspace extends Workspace {
  /**
   * Asks a question of whoever works with this workspace. What turns out to be needed for the answer and was not read yet is read,
   * and the question is asked again, until nothing more is missing.
   */
  settled<Answer>(ask: () => Answer | Promise<Answer>): Promise<Answer>;
  /** Whether the revision has a file of that name, as text or not. */
  has(uri: Uri): boolean;
  /** Folders that belong to repositories of their own, by URI. They are not entered. */
  readonly submodules: readonly Uri[];
  /** Something that was asked for is a symbolic link in the revision. None is followed. */
  readonly metLink: boolean;
}

export interface GitWorkspaceOptions {
  /** A folder inside of the repository; only what lies below it is there. */
  readonly folder: string;
  readonly revision: Revision;
  /** Which folders plans may import from; the folder itself unless said otherwise. */
  readonly folders?: readonly Uri[];
  /** "plans": every file in which the library's name occurs. "asked for": only what is asked for, for one plan that is known. */
  readonly load: "plans" | "asked for";
  readonly signal?: AbortSignal;
}

/** Throws a {@link GitTrouble} where the objects cannot be read. */
export async function gitWorkspace(options: GitWorkspaceOptions): Promise<GitWorkspace> {
  const { folder, revision, load } = options;
  const folders = options.folders ?? [pathToFileURL(folder).href];
  const listed = await listFiles(options);
  const texts = new Map<Uri, SourceText>();
  const wanted = new Set<Uri>();
  /** Read once already, so that none is asked for forever. */
  const tried = new Set<Uri>();
  let metLink = false;

  /** Nothing is kept of a file that only might be asked for. */
  async function read(uris: readonly Uri[], keep: (blob: Buffer) => boolean): Promise<void> {
    const byObject = new Map<string, Uri[]>();
    for (const uri of uris) {
      const { object } = listed.files.get(uri)!;
      byObject.set(object, [...(byObject.get(object) ?? []), uri]);
    }
    const found = new Set<string>();
    await readBlobs(options, [...byObject.keys()], (object, blob) => {
      found.add(object);
      if (!keep(blob)) return;
      const text = blob.toString("utf8").replace(/^\uFEFF/, "");
      for (const uri of byObject.get(object) ?? []) texts.set(uri, { uri, version: object, text });
    });
    const missing = [...byObject.keys()].filter((object) => !found.has(object));
    if (missing.length > 0)
      throw new GitTrouble(
        `${missing.length} of the files of ${revision.named} are not in this clone, which holds only a part of the repository, and nothing is fetched here`,
      );
  }

  if (load === "plans") {
    const scripts = [...listed.files].flatMap(([uri, { onTheWay }]) => (onTheWay ? [uri] : []));
    await read(scripts, (blob) => blob.includes("loomwright"));
  }

  return {
    read(uri) {
      const text = texts.get(uri);
      if (text) return text;
      if (listed.links.has(uri)) metLink = true;
      if (listed.files.has(uri) && !tried.has(uri)) wanted.add(uri);
      return undefined;
    },
    folders: () => folders,
    // A link is no file here, so that every file is where its name says.
    realUri: (uri) => uri,
    planFiles: () =>
      [...texts.values()].flatMap(({ uri, text }) =>
        listed.files.get(uri)?.onTheWay && text.includes("loomwright") ? [uri] : [],
      ),
    has: (uri) => listed.files.has(uri),
    submodules: listed.submodules,
    get metLink() {
      return metLink;
    },
    async settled(ask) {
      for (;;) {
        const answer = await ask();
        if (wanted.size === 0) return answer;
        const asked = [...wanted];
        wanted.clear();
        for (const uri of asked) tried.add(uri);
        await read(asked, () => true);
      }
    },
  };
}

interface Listed {
  readonly files: ReadonlyMap<Uri, ListedFile>;
  readonly links: ReadonlySet<Uri>;
  readonly submodules: readonly Uri[];
}

interface ListedFile {
  readonly object: string;
  /** A walk through the folders comes by here; others are read only if a plan imports them. */
  readonly onTheWay: boolean;
}

/** Everything that could be read: scripts, and what the builder's tools keep beside a plan. */
async function listFiles({ folder, revision, signal }: GitWorkspaceOptions): Promise<Listed> {
  const { code, output, complaint } = await askGit(
    folder,
    ["ls-tree", "-r", "-z", "-l", revision.commit],
    signal ? { signal } : {},
  );
  if (code !== 0)
    throw new GitTrouble(
      `git cannot list the files of ${revision.named}: ${complaint.split("\n")[0] || "it was stopped"}`,
    );
  const files = new Map<Uri, ListedFile>();
  const links = new Set<Uri>();
  const submodules: Uri[] = [];
  for (const entry of output.toString("utf8").split("\0")) {
    // "100644 blob 8baef1b4abc478178b004d62031cf7fe6db6f903     612\tsrc/plan.ts"
    const [, mode, object, size, path] = /^(\d{6}) \w+ ([0-9a-f]{40,64}) +(\S+)\t(.+)$/s.exec(entry) ?? [];
    if (mode === undefined || object === undefined || path === undefined || !isPlain(path)) continue;
    const uri = pathToFileURL(join(folder, ...path.split("/"))).href;
    if (mode === "160000") submodules.push(uri);
    else if (mode === "120000") links.add(uri);
    // Of an object that is not in the clone, no size is told. Whoever reads it says that it is missing.
    else if (isWorthReading(path) && !(Number(size) > largestPlanBytes)) {
      const parents = path.split("/").slice(0, -1);
      const onTheWay =
        isScript(path) && parents.length <= deepestFolder && !parents.some((name) => passedBy.test(name));
      files.set(uri, { object, onTheWay });
    }
  }
  return { files, links, submodules };
}

/** A tree that was made by hand may hold names that lead out of the folder. */
function isPlain(path: string): boolean {
  const odd = process.platform === "win32" ? /[\\:\uFFFD]/ : /\uFFFD/;
  return (
    !odd.test(path) && path.split("/").every((name) => !["", ".", "..", ".git"].includes(name.toLowerCase()))
  );
}

function isWorthReading(path: string): boolean {
  return isScript(path) || path.endsWith(".wire-numbers.txt");
}

/** Objects by their names, each handed over whole, as they are stored: nothing is converted on the way. */
async function readBlobs(
  { folder, revision, signal }: GitWorkspaceOptions,
  objects: readonly string[],
  found: (object: string, blob: Buffer) => void,
): Promise<void> {
  if (objects.length === 0) return;
  let rest: Buffer = Buffer.alloc(0);
  let head: { readonly object: string; readonly isBlob: boolean; readonly size: number } | undefined;
  /** "<object> blob <size>\n<content>\n", or "<object> missing\n". */
  const take = (chunk: Buffer) => {
    rest = rest.length === 0 ? chunk : Buffer.concat([rest, chunk]);
    for (;;) {
      if (!head) {
        const lineEnd = rest.indexOf(0x0a);
        if (lineEnd < 0) return;
        const [object = "", kind, size] = rest.toString("latin1", 0, lineEnd).split(" ");
        rest = rest.subarray(lineEnd + 1);
        if (size !== undefined) head = { object, isBlob: kind === "blob", size: Number(size) };
      } else {
        if (rest.length <= head.size) return;
        if (head.isBlob) found(head.object, rest.subarray(0, head.size));
        rest = rest.subarray(head.size + 1);
        head = undefined;
      }
    }
  };
  const input = objects.map((object) => `${object}\n`).join("");
  const { code, complaint } = await askGit(folder, ["cat-file", "--batch"], {
    ...{ input, take },
    ...(signal ? { signal } : {}),
  });
  if (code !== 0)
    throw new GitTrouble(
      `git cannot read the files of ${revision.named}: ${complaint.split("\n")[0] || "it was stopped"}`,
    );
}
