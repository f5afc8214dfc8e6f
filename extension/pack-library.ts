import { readdir } from "node:fs/promises";
import { join, relative } from "node:path";
import {
  blockBytes,
  carriedContent,
  inBlocks,
  type LibraryRecipe,
  sha256Of,
  tarHeader,
} from "./library-tarball.ts";

/**
 * Takes out of the library's packed archive (tar) each file that the extension also carries in its `dist`, byte for byte. The
 * build runs this; `libraryArchive` puts them back on the machine of the person who asks for a new build.
 */
export async function cutLibrary(
  archive: Buffer,
  dist: string,
): Promise<{ readonly rest: Buffer; readonly recipe: LibraryRecipe }> {
  const carried = await carriedFiles(dist);
  const pieces: Buffer[] = [];
  const beside: Record<string, string> = {};
  let at = 0;
  for (let header = tarHeader(archive, at); header; header = tarHeader(archive, at)) {
    const { path, sizeBytes } = header;
    const start = at + blockBytes;
    const file = carried.get(sha256Of(archive.subarray(start, start + sizeBytes)));
    if (file === undefined || sizeBytes === 0) pieces.push(archive.subarray(at, start + inBlocks(sizeBytes)));
    else {
      beside[path] = file;
      pieces.push(archive.subarray(at, start));
    }
    at = start + inBlocks(sizeBytes);
  }
  pieces.push(archive.subarray(at));
  return { rest: Buffer.concat(pieces), recipe: { beside, sha256: sha256Of(archive) } };
}

/** The path below `dist`, by the hash of the content, decompressed. */
async function carriedFiles(dist: string): Promise<Map<string, string>> {
  const carried = new Map<string, string>();
  for (const entry of await readdir(dist, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    carried.set(sha256Of(await carriedContent(path)), relative(dist, path).replaceAll("\\", "/"));
  }
  return carried;
}
