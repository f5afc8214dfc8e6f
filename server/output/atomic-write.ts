import { randomBytes } from "node:crypto";
import * as nodeFiles from "node:fs/promises";
import { dirname, join } from "node:path";
import { whyNotOurs } from "./recognise-own-files.ts";
import { sealed } from "./seal.ts";

/**
 * Writes a file whole: beside it first, then renamed over it; no reader ever finds half a file. A link stays a link, a file keeps
 * its mode, no folder is made. An existing file is overwritten only if it is ours and unchanged since we wrote it, or with
 * `force`: hence the digest in each file.
 *
 * A disk failure is a result, not an error. Rejects only with the reason of `signal`. Neither a rejection nor a failure leaves
 * anything behind.
 */
export async function writeWhole(
  path: string,
  content: Uint8Array | string,
  { force, isOurs, signal, disk = nodeFiles }: WriteOptions,
): Promise<Written> {
  signal?.throwIfAborted();
  try {
    const target = await found(path, disk);
    if (target.why !== undefined) return { written: false, path, why: target.why };
    if (target.there && !force) {
      const before = await disk.readFile(target.path);
      const notOurs = isOurs
        ? isOurs(before)
          ? undefined
          : "was not made by Loomwright"
        : whyNotOurs(path, before, content);
      if (notOurs !== undefined)
        return { written: false, path, why: `${notOurs}; only --force overwrites it`, notOurs };
    }
    await replaceWhole(target.path, isOurs ? content : sealed(path, content), { signal, disk });
    return { written: true, path };
  } catch (error) {
    signal?.throwIfAborted();
    return { written: false, path, why: whyNotWritten(error) };
  }
}

export interface WriteOptions {
  /** Also overwrites a file that is not ours. A folder, or anything else that is no ordinary file, is never overwritten. */
  readonly force: boolean;
  /** Whether the existing bytes are ours to replace. If left out: see {@link whyNotOurs}; the file is then sealed. */
  readonly isOurs?: (before: Uint8Array) => boolean;
  readonly signal?: AbortSignal | undefined;
  /** The disk; a test can pass a failing one. */
  readonly disk?: Disk;
}

/** The outcome of writing one file. */
export type Written =
  | { readonly written: true; readonly path: string }
  /** The disk is unchanged. `why` is a clause: "is a folder". */
  | {
      readonly written: false;
      readonly path: string;
      readonly why: string;
      /** The reason, also a clause, why only `force` would overwrite it. */
      readonly notOurs?: string;
    };

export type Disk = Pick<
  typeof nodeFiles,
  "chmod" | "lstat" | "mkdir" | "open" | "readFile" | "realpath" | "rename" | "rm" | "stat" | "writeFile"
>;

/**
 * Replaces or makes the file of a path that is not a link. Rejects with the error of the disk or of `signal`, and then leaves the
 * file unchanged.
 *
 * Not a package: those that replace a file whole give the disk's error as it is, and half of this module puts it into words.
 */
export async function replaceWhole(
  path: string,
  content: Uint8Array | string,
  { signal, disk = nodeFiles, newMode = 0o666, flush = true }: ReplaceOptions = {},
): Promise<void> {
  const mode = await modeOf(path, disk);
  // In the same folder, to keep the rename on one disk; this short name fits wherever the file's own name fits.
  const beside = join(dirname(path), `.${randomBytes(6).toString("hex")}.tmp`);
  try {
    await disk.writeFile(beside, content, { flag: "wx", mode: newMode, flush });
    if (mode !== undefined) await disk.chmod(beside, mode);
    signal?.throwIfAborted();
    await disk.rename(beside, path);
  } catch (error) {
    await disk.rm(beside, { force: true });
    throw error;
  }
}

export interface ReplaceOptions extends Pick<WriteOptions, "signal" | "disk"> {
  /** The mode of a file that does not exist yet, before the umask; 0o666 if left out. A file that exists keeps its own. */
  readonly newMode?: number;
  /** If false, a power cut may leave an empty file under the name: for files whose content is checked when they are read. */
  readonly flush?: boolean;
}

/** Makes the folder that the user named, if it does not exist yet; its parent must exist. */
export async function makeNamedFolder(path: string, disk: Disk = nodeFiles): Promise<Written> {
  try {
    await disk.mkdir(path);
    return { written: true, path };
  } catch (error) {
    const there = await disk.stat(path).catch(() => undefined);
    if (there?.isDirectory()) return { written: true, path };
    return { written: false, path, why: there ? "is not a folder" : whyNotWritten(error) };
  }
}

/** The disk's error, as a clause: "is in a folder that does not exist". */
export function whyNotWritten(error: unknown): string {
  const { code = "" } = error as NodeJS.ErrnoException;
  return reasons[code] ?? `could not be written: ${code || (error instanceof Error ? error.message : error)}`;
}

const notAllowed = "could not be written: permission denied";

const reasons: Readonly<Record<string, string>> = {
  EACCES: notAllowed,
  EPERM: notAllowed,
  EROFS: "is on a disk that can only be read",
  ENOENT: "is in a folder that does not exist",
  ENOTDIR: "is below a file, not a folder",
  EISDIR: "is a folder",
  ENOSPC: "could not be written: the disk is full",
  EDQUOT: "could not be written: the disk quota is used up",
  EFBIG: "is too large for this disk",
  ENAMETOOLONG: "has a name that is too long",
  ELOOP: "is a link that leads back to itself",
  EBUSY: "is in use by another program",
};

type Found =
  | { readonly path: string; readonly there: boolean; readonly why?: undefined }
  | { readonly why: string };

/** The target of a path: through links, to a file that may be replaced or to a free name. */
async function found(named: string, disk: Disk): Promise<Found> {
  const itself = await disk.lstat(named).catch(unlessMissing);
  if (!itself) return { path: named, there: false };
  const path = itself.isSymbolicLink() ? await disk.realpath(named).catch(unlessMissing) : named;
  if (path === undefined) return { why: "is a link to a missing file" };
  const kind = await disk.stat(path);
  if (kind.isDirectory()) return { why: "is a folder" };
  if (!kind.isFile()) return { why: "is not an ordinary file" };
  return { path, there: true };
}

/**
 * The mode of a writable file, for the file that replaces it. A rename alone would check permission for the folder only, not for
 * the file.
 */
async function modeOf(path: string, disk: Disk): Promise<number | undefined> {
  const there = await disk.stat(path).catch(unlessMissing);
  if (!there) return undefined;
  await (await disk.open(path, "r+")).close();
  return there.mode & 0o7777;
}

function unlessMissing(error: NodeJS.ErrnoException): undefined {
  if (error.code !== "ENOENT") throw error;
}
