import { isUtf8 } from "node:buffer";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { fileName, uriOfBytes } from "../files/file-name.ts";
import {
  deepestFolder,
  type FoundPlans,
  isEntered,
  isScript,
  isWireNumbers,
  plansAmong,
  tooDeep,
  wrongName,
} from "../files/plan-files.ts";
import {
  largestPlanBytes,
  largestSearchedBytes,
  namesLibrary,
  textOf,
  tooLarge,
  whyNoText,
} from "../text/plan-text.ts";
import type { PassedBy, SourceText, Unread, Uri, Workspace } from "../workspace.ts";
import type { Revision } from "./git-revision.ts";
import { GitError, runGit } from "./run-git.ts";

/**
 * The files of a folder as of a revision, read from git's objects: neither the working tree nor the index is read. They have
 * the same URIs as the files on disk, to give them the same names in reports, and are chosen by the same rules.
 */
export interface GitWorkspace extends Workspace {
  /**
   * Runs a query that reads this workspace. Files that the answer turns out to need are read, and the query is repeated until
   * no file is missing.
   */
  settled<Answer>(ask: () => Answer | Promise<Answer>): Promise<Answer>;
  /** True if the revision has a file of that name, as text or not. */
  has(uri: Uri): boolean;
  /** Folders that belong to repositories of their own, by URI. They are not entered. */
  readonly submodules: readonly Uri[];
  /** A requested path is a symbolic link in the revision. Links are never followed. */
  readonly metLink: boolean;
}

export interface GitWorkspaceOptions {
  /** A folder inside the repository; only files below it exist here. */
  readonly folder: string;
  readonly revision: Revision;
  /** Folders that plans may import from; by default the folder itself. */
  readonly folders?: readonly Uri[];
  /** "plans": every file that contains the library's name. "asked for": only requested files, for one known plan. */
  readonly load: "plans" | "asked for";
  readonly signal?: AbortSignal;
}

/** Throws a {@link GitError} if the objects cannot be read. */
export async function gitWorkspace(options: GitWorkspaceOptions): Promise<GitWorkspace> {
  const { folder, revision, load } = options;
  const folders = options.folders ?? [pathToFileURL(folder).href];
  const listed = await listFiles(options);
  const texts = new Map<Uri, SourceText>();
  const unread = new Map<Uri, Unread>();
  /** Files that name the library, as text or not. */
  const naming: Uri[] = [];
  const wanted = new Set<Uri>();
  /** Already read once; prevents endless requests. */
  const tried = new Set<Uri>();
  let metLink = false;

  /** Keeps only wanted files; others may never be requested. */
  async function read(uris: readonly Uri[], isWanted: (blob: Buffer) => boolean): Promise<void> {
    const byObject = new Map<string, Uri[]>();
    for (const uri of uris) {
      const { object } = listed.files.get(uri)!;
      byObject.set(object, [...(byObject.get(object) ?? []), uri]);
    }
    const found = new Set<string>();
    await readBlobs(options, [...byObject.keys()], (object, blob) => {
      found.add(object);
      if (!isWanted(blob)) return;
      const why = blob.length > largestPlanBytes ? tooLarge : whyNoText(blob);
      for (const uri of byObject.get(object) ?? []) {
        naming.push(uri);
        if (why) unread.set(uri, why);
        else texts.set(uri, { uri, version: object, text: textOf(blob) });
      }
    });
    const missing = [...byObject.keys()].filter((object) => !found.has(object));
    if (missing.length > 0)
      throw new GitError(
        `${missing.length} of the files of ${revision.named} are not in this clone, which holds only a part of the repository, and none is fetched here`,
      );
  }

  let plans: FoundPlans = { planFiles: [], passedBy: [], wireNumbers: listed.wireNumbers };
  if (load === "plans") {
    const onTheWay = [...listed.files].filter(([, file]) => file.onTheWay);
    const isSearched = ({ size }: ListedFile) => !(size > largestSearchedBytes);
    await read(
      onTheWay.flatMap(([uri, file]) => (isSearched(file) ? [uri] : [])),
      namesLibrary,
    );
    const unsearched = onTheWay.flatMap(([uri, file]): PassedBy[] =>
      isSearched(file) ? [] : [{ uri, ...tooLarge }],
    );
    const reasonOf = (uri: Uri) => listed.files.get(uri)?.otherwise ?? unread.get(uri);
    const passedBy = naming.flatMap((uri): PassedBy[] => {
      const reason = reasonOf(uri);
      return reason ? [{ uri, ...reason }] : [];
    });
    plans = plansAmong(
      {
        scripts: naming.filter((uri) => reasonOf(uri) === undefined).sort(),
        passedBy: [...passedBy, ...unsearched, ...(await linksToPlans())],
        wireNumbers: listed.wireNumbers,
      },
      () => false,
      (uri) => texts.get(uri)?.text,
    );
  }

  /** Links to plans, and to folders with plans. Files outside the revision are not its plans. */
  async function linksToPlans(): Promise<readonly PassedBy[]> {
    const objects = new Map<string, string>();
    const links = [...listed.links].filter(([, { onTheWay }]) => onTheWay);
    await readBlobs(
      options,
      links.map(([, { object }]) => object),
      (object, blob) => void objects.set(object, blob.toString("utf8")),
    );
    const isPlan = new Set(naming);
    return links.flatMap(([uri, { object }]): PassedBy[] => {
      const target = targetOf(uri, objects.get(object) ?? "");
      const isLinked = listed.files.has(target)
        ? isPlan.has(target)
        : naming.some((plan) => plan.startsWith(`${target}/`));
      return isLinked ? [{ uri, reason: "linked", why: "is a link: links are not followed" }] : [];
    });
  }

  return {
    read(uri) {
      const text = texts.get(uri);
      if (text) return text;
      if (listed.links.has(uri)) metLink = true;
      const file = listed.files.get(uri);
      if (file && !(file.size > largestPlanBytes) && !tried.has(uri) && !unread.has(uri)) wanted.add(uri);
      return undefined;
    },
    unread(uri) {
      const isLarge = (listed.files.get(uri)?.size ?? 0) > largestPlanBytes;
      return unread.get(uri) ?? (isLarge ? tooLarge : undefined);
    },
    folders: () => folders,
    // A link is no file here: every file is where its path says.
    realUri: (uri) => uri,
    planFiles: () => plans.planFiles,
    leftOut: () => plans,
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
  readonly links: ReadonlyMap<Uri, Pick<ListedFile, "object" | "onTheWay">>;
  readonly wireNumbers: readonly Uri[];
  readonly submodules: readonly Uri[];
}

interface ListedFile {
  readonly object: string;
  /** NaN for an object that is not in the clone. */
  readonly size: number;
  /** A walk through the folders meets it; others are read only if a plan imports them. */
  readonly onTheWay: boolean;
  /** The reason why it is no plan even if it names the library. */
  readonly otherwise: Unread | undefined;
}

/** All readable files: scripts, and files that the builder's tools keep beside a plan. */
async function listFiles({ folder, revision, signal }: GitWorkspaceOptions): Promise<Listed> {
  const { code, output, complaint } = await runGit(
    folder,
    ["ls-tree", "-r", "-z", "-l", revision.commit],
    signal ? { signal } : {},
  );
  if (code !== 0)
    throw new GitError(
      `git cannot list the files of ${revision.named}: ${complaint.split("\n")[0] || "it was stopped"}`,
    );
  const files = new Map<Uri, ListedFile>();
  const links = new Map<Uri, Pick<ListedFile, "object" | "onTheWay">>();
  const wireNumbers: Uri[] = [];
  const submodules: Uri[] = [];
  for (const entry of output.toString("latin1").split("\0")) {
    // "100644 blob 8baef1b4abc478178b004d62031cf7fe6db6f903     612\tsrc/plan.ts"
    const [, mode, object, size, bytes] = /^(\d{6}) \w+ ([0-9a-f]{40,64}) +(\S+)\t(.+)$/s.exec(entry) ?? [];
    if (mode === undefined || object === undefined || bytes === undefined) continue;
    const name = Buffer.from(bytes, "latin1");
    const path = name.toString("utf8");
    if (!isPlain(path)) continue;
    const uri = isUtf8(name)
      ? pathToFileURL(join(folder, ...path.split("/"))).href
      : uriOfBytes(Buffer.concat([Buffer.from(`${folder}/`), name]));
    const parents = path.split("/").slice(0, -1);
    const isWalked = parents.every(isEntered);
    if (mode === "160000") submodules.push(uri);
    else if (mode === "120000") links.set(uri, { object, onTheWay: isWalked && isEntered(fileName(uri)) });
    else if (isWireNumbers(path) && isWalked) wireNumbers.push(uri);
    if (!mode.startsWith("100") || !isWorthReading(path)) continue;
    const otherwise = isUtf8(name) ? (parents.length > deepestFolder ? tooDeep : undefined) : wrongName;
    files.set(uri, { object, size: Number(size), onTheWay: isScript(path) && isWalked, otherwise });
  }
  return { files, links, wireNumbers, submodules };
}

/** The target of a link, within the revision. */
function targetOf(link: Uri, target: string): Uri {
  try {
    return new URL(target.split("/").map(encodeURIComponent).join("/"), link).href.replace(/\/$/, "");
  } catch {
    return "";
  }
}

/** A hand-made tree may contain names that lead out of the folder. */
function isPlain(path: string): boolean {
  const names = path.split("/").map((name) => name.toLowerCase());
  const leadsOut = process.platform === "win32" && /[\\:\uFFFD]/.test(path);
  return !leadsOut && !names.some((name) => ["", ".", "..", ".git"].includes(name));
}

function isWorthReading(path: string): boolean {
  return isScript(path) || isWireNumbers(path);
}

/** Objects by their names, each delivered whole, as stored: no conversion. */
async function readBlobs(
  { folder, revision, signal }: GitWorkspaceOptions,
  objects: readonly string[],
  found: (object: string, blob: Buffer) => void,
): Promise<void> {
  if (objects.length === 0) return;
  let chunks: Buffer[] = [];
  let length = 0;
  let head: { readonly object: string; readonly isBlob: boolean; readonly size: number } | undefined;
  /** "<object> blob <size>\n<content>\n", or "<object> missing\n". */
  const take = (chunk: Buffer) => {
    chunks.push(chunk);
    length += chunk.length;
    // Joined once for each object, however large.
    if (head && length <= head.size) return;
    let rest: Buffer = Buffer.concat(chunks);
    for (;;) {
      if (!head) {
        const lineEnd = rest.indexOf(0x0a);
        if (lineEnd < 0) break;
        const [object = "", kind, size] = rest.toString("latin1", 0, lineEnd).split(" ");
        rest = rest.subarray(lineEnd + 1);
        if (size !== undefined) head = { object, isBlob: kind === "blob", size: Number(size) };
      } else {
        if (rest.length <= head.size) break;
        if (head.isBlob) found(head.object, rest.subarray(0, head.size));
        rest = rest.subarray(head.size + 1);
        head = undefined;
      }
    }
    chunks = [rest];
    length = rest.length;
  };
  const input = objects.map((object) => `${object}\n`).join("");
  const { code, complaint } = await runGit(folder, ["cat-file", "--batch"], {
    ...{ input, take },
    ...(signal ? { signal } : {}),
  });
  if (code !== 0)
    throw new GitError(
      `git cannot read the files of ${revision.named}: ${complaint.split("\n")[0] || "it was stopped"}`,
    );
}
