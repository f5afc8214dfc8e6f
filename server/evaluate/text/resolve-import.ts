import { fileURLToPath, pathToFileURL } from "node:url";
import type { CannotRunReason } from "../../../library/model/record.ts";
import type { Uri, Version, Workspace } from "../workspace.ts";

/**
 * Resolves the text of an import: to the library, or a file of the workspace. `tried` are the files that take precedence but do
 * not exist: the result changes when one of them appears. Never throws, for any text.
 */
export function resolveImport(text: string, importer: Uri, root: Uri, workspace: Workspace): Resolved {
  const tried = new Map<Uri, Version | undefined>();
  if (text === "loomwright") return { to: "loomwright", tried };
  if (!/^\.{1,2}(?:\/|$)/.test(text)) return { problem: "import-not-allowed", tried };
  const wanted = relativeUri(text, importer);
  if (wanted === undefined) return { problem: "import-not-found", tried };
  if (!isWithin(wanted, foldersFor(root, workspace))) return { problem: "import-outside", tried };
  if (/\.(?:json|css|wasm|node|html|md|txt|ya?ml)$/i.test(wanted)) {
    return { problem: "import-not-allowed", tried };
  }
  for (const uri of candidates(wanted)) {
    const source = workspace.read(uri);
    if (!source) {
      tried.set(uri, undefined);
      const why = workspace.unread?.(uri)?.why;
      // Do not skip it for the next candidate, which is not the intended file.
      if (why !== undefined) return { problem: "import-unread", why, tried };
      continue;
    }
    return reallyWithin(uri, root, workspace) ? { to: uri, tried } : { problem: "import-outside", tried };
  }
  return { problem: "import-not-found", tried };
}

export type Resolved = { readonly tried: ReadonlyMap<Uri, Version | undefined> } & (
  | { readonly to: Uri | "loomwright" }
  | { readonly problem: CannotRunReason; readonly why?: string }
);

function relativeUri(text: string, importer: Uri): Uri | undefined {
  try {
    const { href, protocol, search, hash } = new URL(text, importer);
    if (search || hash) return undefined;
    // The one spelling of a file's URI, which the workspace uses too.
    return protocol === "file:" ? pathToFileURL(fileURLToPath(href)).href : href;
  } catch {
    // An untitled document has no folder for a relative path to start from.
    return undefined;
  }
}

/** The workspace's folders; the plan's own folder if it is in none of them. */
function foldersFor(root: Uri, workspace: Workspace): readonly Uri[] {
  const folders = workspace.folders();
  return isWithin(root, folders) ? folders : [root.slice(0, root.lastIndexOf("/"))];
}

function isWithin(uri: Uri, folders: readonly Uri[]): boolean {
  return folders.some((folder) => uri.startsWith(folder.endsWith("/") ? folder : `${folder}/`));
}

/** A link inside a folder may lead out of it. */
function reallyWithin(uri: Uri, root: Uri, workspace: Workspace): boolean {
  const folders = foldersFor(root, workspace);
  return isWithin(workspace.realUri(uri), [
    ...folders,
    ...folders.map((folder) => workspace.realUri(folder)),
  ]);
}

/** In TypeScript's order: `.js` in an import means the `.ts` it will have been made from. */
function candidates(wanted: Uri): readonly Uri[] {
  const written = /\.([cm]?)(ts|js)(x?)$/i.exec(wanted);
  if (written) {
    if (written[2]?.toLowerCase() === "ts") return [wanted];
    const stem = wanted.slice(0, -written[0].length);
    return [
      `${stem}.${written[1]}ts${written[3]}`,
      ...(written[3] || written[1] ? [] : [`${stem}.tsx`]),
      wanted,
    ];
  }
  const folder = wanted.endsWith("/") ? wanted : `${wanted}/`;
  const endings = [".ts", ".tsx", ".js", ".mts", ".mjs"];
  const files = wanted.endsWith("/") ? [] : endings.map((ending) => wanted + ending);
  return [...files, ...endings.slice(0, 3).map((ending) => `${folder}index${ending}`)];
}
