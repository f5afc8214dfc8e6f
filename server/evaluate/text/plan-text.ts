import { isUtf8 } from "node:buffer";
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from "node:fs";
import type { Unread } from "../workspace.ts";

/** A plan's text, or the reason why it has none although the name exists. */
export type PlanText =
  | { readonly text: string; readonly bytes: Buffer; readonly stamp: string }
  /** With the bytes, if only their encoding is unknown. */
  | { readonly unread: Unread; readonly bytes?: Buffer; readonly stamp?: string };

/** A larger file is not read as a plan: it is someone's generated code. */
export const largestPlanBytes = 4 * 1024 * 1024;

/** A larger file is not even searched for the library's name. */
export const largestSearchedBytes = 64 * 1024 * 1024;

export const tooLarge: Unread = { reason: "too-large", why: "is larger than 4 MiB" };

/** Reads a file as a plan. Undefined: the file does not exist, or is a folder. Never waits for a pipe, a socket or a device. */
export function readPlanText(path: string | Buffer): PlanText | undefined {
  return withFile(path, (file, found): PlanText => {
    const stamp = stampOf(found);
    if (found.size > largestPlanBytes) return { unread: tooLarge, stamp };
    const buffer = Buffer.alloc(found.size);
    const bytes = buffer.subarray(0, fill(buffer, file));
    const unread = whyNoText(bytes);
    return unread ? { unread, bytes, stamp } : { text: textOf(bytes), bytes, stamp };
  });
}

/** Changes whenever the file does. */
export function stampOf({ mtimeMs, size }: Pick<Stats, "mtimeMs" | "size">): string {
  return `${mtimeMs}-${size}`;
}

/** UTF-8 without its byte order mark. */
export function textOf(bytes: Buffer): string {
  return bytes.toString("utf8").replace(/^\uFEFF/, "");
}

/** The reason why bytes are not text: if not UTF-8, they would be judged with other characters than were written. */
export function whyNoText(bytes: Buffer): Unread | undefined {
  const isWide = /^(?:\xFF\xFE|\xFE\xFF)/.test(bytes.toString("latin1", 0, 2)) || wideNames.some(isIn(bytes));
  if (isWide) return { reason: "text-not-utf8", why: "is UTF-16 text: save it as UTF-8" };
  if (isUtf8(bytes)) return undefined;
  return { reason: "text-not-utf8", why: "is not UTF-8 text: save it as UTF-8" };
}

/** True if a file contains the library's name, in any encoding. */
export function namesLibrary(bytes: Buffer): boolean {
  return bytes.includes(libraryName) || wideNames.some(isIn(bytes));
}

const libraryName = "loomwright";
const wideNames = [
  Buffer.from(libraryName, "utf16le"),
  Buffer.from(libraryName, "utf16le").swap16(),
] as const;

function isIn(bytes: Buffer) {
  return (name: Buffer) => bytes.includes(name);
}

/** The same for a file that is too large to be read at once; true if it is too large to be searched. */
export function largeFileNamesLibrary(path: string | Buffer): boolean {
  const found = withFile(path, (file, { size }) => {
    if (size > largestSearchedBytes) return true;
    const window = Buffer.alloc(1024 * 1024);
    // The name may span two windows.
    const overlap = 2 * libraryName.length;
    let kept = 0;
    for (;;) {
      const length = fill(window.subarray(kept), file);
      const filled = window.subarray(0, kept + length);
      if (namesLibrary(filled)) return true;
      if (length === 0) return false;
      kept = Math.min(overlap, filled.length);
      filled.copy(window, 0, filled.length - kept);
    }
  });
  return found !== false;
}

/** The disk's reason as a clause; undefined if there is no such file. */
export function whyUnread(error: unknown): Unread | undefined {
  const { code = "" } = error as NodeJS.ErrnoException;
  if (["ENOENT", "ENOTDIR", "EISDIR"].includes(code)) return undefined;
  return {
    reason: "unreadable",
    why: `cannot be read: ${reasons[code] ?? (code || "the disk gave no reason")}`,
  };
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: "permission denied",
  EPERM: "permission denied",
  ELOOP: "it is a link that leads back to itself",
  ENAMETOOLONG: "its path is too long",
  EMFILE: "too many files are open",
  EIO: "the disk failed",
};

const noOrdinaryFile: Unread = { reason: "unreadable", why: "cannot be read: it is not an ordinary file" };

function withFile<Answer>(
  path: string | Buffer,
  ask: (file: number, found: Stats) => Answer,
): Answer | { readonly unread: Unread } | undefined {
  let file: number | undefined;
  try {
    const kind = statSync(path, { throwIfNoEntry: false });
    if (!kind || kind.isDirectory()) return undefined;
    if (!kind.isFile()) return { unread: noOrdinaryFile };
    // Without waiting, in case a pipe has replaced it: opening one would wait for a writer.
    file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const found = fstatSync(file);
    return found.isFile() ? ask(file, found) : { unread: noOrdinaryFile };
  } catch (error) {
    const unread = whyUnread(error);
    return unread && { unread };
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** Reads as many bytes as exist, up to the buffer's length. */
function fill(buffer: Buffer, file: number): number {
  let filled = 0;
  while (filled < buffer.length) {
    const length = readSync(file, buffer, filled, buffer.length - filled, null);
    if (length === 0) break;
    filled += length;
  }
  return filled;
}
