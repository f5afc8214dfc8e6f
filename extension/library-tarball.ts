import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { brotliDecompress, gzip } from "node:zlib";

/*
 * The library's package travels in the extension without the files that are in `dist` anyway, three quarters of it. Here it is
 * put together again, byte for byte as npm packed it for publishing: its own headers are kept, in their order, and only contents
 * are left out. `pack-library.ts` takes them out.
 */

/**
 * The package without the contents of `beside`, compressed with Brotli: each header of the archive, followed by any remaining
 * content.
 */
export const libraryRest = "library-rest.tar.br";
/** A {@link LibraryRecipe} as JSON. */
export const libraryRecipe = "library-rest.json";

/** The instructions for rebuilding the package. */
export interface LibraryRecipe {
  /** Paths in the archive of the files that are taken from `dist`, and their paths there. */
  readonly beside: Readonly<Record<string, string>>;
  /** Of the whole archive, as npm packed it. */
  readonly sha256: string;
}

/**
 * The archive (tar) of the library as it is published. Throws if the result differs in one byte.
 *
 * @param dist the extension's own folder of bundles
 */
export async function libraryArchive(dist: string): Promise<Buffer> {
  const { beside, sha256 }: LibraryRecipe = JSON.parse(await readFile(join(dist, libraryRecipe), "utf8"));
  const rest = await promisify(brotliDecompress)(await readFile(join(dist, libraryRest)));
  const pieces: Buffer[] = [];
  let at = 0;
  const takeBlocks = (bytes: number) => {
    pieces.push(rest.subarray(at, at + bytes));
    at += bytes;
  };
  for (let header = tarHeader(rest, at); header; header = tarHeader(rest, at)) {
    takeBlocks(blockBytes);
    const file = beside[header.path];
    if (file === undefined) takeBlocks(inBlocks(header.sizeBytes));
    else {
      const content = await carriedContent(join(dist, file));
      pieces.push(content, Buffer.alloc(inBlocks(content.length) - content.length));
    }
  }
  pieces.push(rest.subarray(at));
  const archive = Buffer.concat(pieces);
  if (sha256Of(archive) !== sha256)
    throw new Error("the library in this extension is not as it was packed: install the extension again");
  return archive;
}

/** The content of a file in `dist`; of one that travels compressed (`.br`), that of the library's own file. */
export async function carriedContent(path: string): Promise<Buffer> {
  const content = await readFile(path);
  return path.endsWith(".br") ? promisify(brotliDecompress)(content) : content;
}

/** The archive compressed as npm does it: independent of the time and of the machine's system. */
export async function libraryTarball(archive: Buffer): Promise<Buffer> {
  const tarball = await promisify(gzip)(archive, { level: 9 });
  // Node names the system here (RFC 1952, "OS"); 255 is "unknown".
  tarball[9] = 255;
  return tarball;
}

export const blockBytes = 512;

/** The space that a content takes in an archive: whole blocks. */
export function inBlocks(sizeBytes: number): number {
  return Math.ceil(sizeBytes / blockBytes) * blockBytes;
}

export interface TarHeader {
  readonly path: string;
  /** "0" for a plain file. */
  readonly type: string;
  readonly sizeBytes: number;
}

/** The header of an entry (POSIX ustar) at an offset of an archive; undefined at the blocks of zeros that end it. */
export function tarHeader(archive: Buffer, at: number): TarHeader | undefined {
  if (at + blockBytes > archive.length || archive[at] === 0) return undefined;
  const text = (start: number, length: number) =>
    archive.toString("utf8", at + start, at + start + length).replace(/\0[\s\S]*$/, "");
  const [name, prefix] = [text(0, 100), text(345, 155)];
  return {
    path: prefix === "" ? name : `${prefix}/${name}`,
    type: text(156, 1),
    sizeBytes: Number.parseInt(text(124, 12), 8),
  };
}

export function sha256Of(bytes: Buffer): string {
  return createHash("sha256").update(bytes).digest("hex");
}
