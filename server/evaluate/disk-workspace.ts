import { readdirSync, readFileSync, realpathSync, statSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { SourceText, Uri, Workspace } from "./workspace.ts";

/**
 * Files on disk. Every question looks at the disk again, but a text is only read when size or time of the file have changed.
 * Files of other schemes than `file:` do not exist here. Never throws: what cannot be read is not there.
 */
export function diskWorkspace(folders: readonly Uri[]): Workspace {
  /** Held weakly: the texts of a folder of many large plans are only in memory while somebody works with them. */
  const texts = new Map<Uri, WeakRef<SourceText>>();
  /** By path: whether the library's name occurs in the file; of the files there were when it was last looked through. */
  let named = new Map<string, Named>();

  return {
    read(uri) {
      const path = pathOf(uri);
      const stamp = path && stampOf(path);
      if (!path || !stamp) {
        texts.delete(uri);
        return undefined;
      }
      const known = texts.get(uri)?.deref();
      if (known?.version === stamp) return known;
      try {
        const source = { uri, version: stamp, text: readFileSync(path, "utf8").replace(/^\uFEFF/, "") };
        texts.set(uri, new WeakRef(source));
        return source;
      } catch {
        texts.delete(uri);
        return undefined;
      }
    },
    folders: () => folders,
    realUri(uri) {
      const path = pathOf(uri);
      try {
        return path ? pathToFileURL(realpathSync.native(path)).href : uri;
      } catch {
        return uri;
      }
    },
    planFiles() {
      const found = new Map<string, Named>();
      for (const folder of folders) {
        const path = pathOf(folder);
        if (path) walk(path, found, 0);
      }
      named = found;
      return [...found].flatMap(([path, { here }]) => (here ? [pathToFileURL(path).href] : []));
    },
  };

  function walk(folder: string, found: Map<string, Named>, depth: number): void {
    if (depth > deepestFolder) return;
    for (const entry of entriesOf(folder)) {
      const path = `${folder.replace(/[\\/]$/, "")}/${entry.name}`;
      // A link is neither file nor folder here, so that none is followed.
      if (entry.isDirectory()) {
        if (!passedBy.test(entry.name)) walk(path, found, depth + 1);
      } else if (entry.isFile() && isScript(entry.name)) {
        const stamp = stampOf(path);
        if (!stamp) continue;
        const known = named.get(path);
        found.set(path, known?.stamp === stamp ? known : { stamp, here: readNamesLibrary(path) });
      }
    }
  }
}

interface Named {
  readonly stamp: string;
  readonly here: boolean;
}

/** No larger file is taken for a plan: somebody's generated code. */
export const largestPlanBytes = 4 * 1024 * 1024;

export const deepestFolder = 40;

/** Folders of other people's code, of what was made from code, and hidden ones. */
export const passedBy = /^(?:node_modules|bower_components|dist|out|build|coverage|vendor|\..*)$/;

export function isScript(name: string): boolean {
  return /\.[cm]?[jt]sx?$/i.test(name) && !/\.d\.[cm]?ts$/i.test(name);
}

function readNamesLibrary(path: string): boolean {
  try {
    return readFileSync(path).includes("loomwright");
  } catch {
    // Not readable, so not a plan.
    return false;
  }
}

function entriesOf(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch {
    return [];
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

/** Undefined unless it is a file of a size that people write. */
function stampOf(path: string): string | undefined {
  try {
    const found = statSync(path, { throwIfNoEntry: false });
    return found?.isFile() && found.size <= largestPlanBytes ? `${found.mtimeMs}-${found.size}` : undefined;
  } catch {
    return undefined;
  }
}
