import { createHash } from "node:crypto";
import { lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { replaceWhole } from "../output/atomic-write.ts";

/**
 * Texts of earlier runs, each under a key that is a digest of everything it follows from. Each is a file, in a folder that is
 * this user's alone. Several runs may use it at once. It never fails: an unreadable or damaged entry is treated as missing, and
 * an entry that cannot be written is not kept.
 *
 * Not a package: those for caches do not check that folder and entries are this user's own, and undamaged.
 */
export function resultCache(folder: string, bound: Bound = usualBound): ResultCache {
  const mayRead = isOwn(folder);
  let mayWrite = true;
  let wrote = false;
  return {
    read(key) {
      if (!mayRead) return undefined;
      try {
        const file = readFileSync(join(folder, key), "utf8");
        const text = file.slice(checksumLength + 1);
        return file === entryOf(key, text) ? text : undefined;
      } catch {
        return undefined;
      }
    },
    async write(key, text) {
      if (!mayWrite || text.length > bound.entryBytes) return;
      try {
        if (!wrote) mkdirSync(folder, { recursive: true, mode: 0o700 });
        if (!wrote && !isOwn(folder)) throw new Error("not ours");
        // Whole at once, because another run may be reading it. The checksum finds an entry that a power cut emptied.
        await replaceWhole(join(folder, key), entryOf(key, text), { newMode: 0o600, flush: false });
        wrote = true;
      } catch {
        mayWrite = false;
      }
    },
    close() {
      if (wrote) dropOldest(folder, bound);
      wrote = false;
    },
  };
}

export interface ResultCache {
  read(key: string): string | undefined;
  write(key: string, text: string): Promise<void>;
  /** Removes the oldest entries if there are too many. */
  close(): void;
}

interface Bound {
  readonly entries: number;
  readonly allBytes: number;
  /** A longer text is not kept. */
  readonly entryBytes: number;
}

const usualBound: Bound = { entries: 10_000, allBytes: 256 * 1024 * 1024, entryBytes: 8 * 1024 * 1024 };

const checksumLength = 64;

/** The checksum detects a damaged entry, and one that was put under another's name; the folder makes it ours. */
function entryOf(key: string, text: string): string {
  return `${createHash("sha256").update(`${key}\n${text}`).digest("hex")}\n${text}`;
}

/** A folder of this user, writable by no one else. Windows keeps users' folders separate by itself. */
function isOwn(folder: string): boolean {
  try {
    const found = lstatSync(folder);
    const { getuid } = process;
    return found.isDirectory() && (!getuid || (found.uid === getuid() && (found.mode & 0o022) === 0));
  } catch {
    return false;
  }
}

/** Goes down to three quarters of the bound, to avoid doing this at every run. */
function dropOldest(folder: string, { entries, allBytes }: Bound): void {
  try {
    const found = readdirSync(folder).flatMap((name) => {
      const stat = statSync(join(folder, name), { throwIfNoEntry: false });
      return stat?.isFile() ? [{ name, size: stat.size, at: stat.mtimeMs }] : [];
    });
    let bytes = found.reduce((sum, { size }) => sum + size, 0);
    if (found.length <= entries && bytes <= allBytes) return;
    let left = found.length;
    for (const { name, size } of found.sort((a, b) => a.at - b.at)) {
      if (left <= 0.75 * entries && bytes <= 0.75 * allBytes) return;
      rmSync(join(folder, name), { force: true });
      left--;
      bytes -= size;
    }
  } catch {
    // Another run may be doing the same.
  }
}
