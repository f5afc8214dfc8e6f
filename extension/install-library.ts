import { chmod, mkdir, readFile, symlink, writeFile } from "node:fs/promises";
import { dirname, join, relative } from "node:path";
import { blockBytes, inBlocks, tarHeader } from "./library-tarball.ts";

/**
 * Unpacks the library's archive to where `npm install` would put it, with its command: a new build type-checks and can be checked
 * before npm has ever run. A later `npm install` replaces it with the same.
 *
 * @param archive the package as `npm pack` makes it, not compressed (tar)
 * @param folder the build's folder
 */
export async function installLibrary(archive: Buffer, folder: string): Promise<{ readonly version: string }> {
  const library = join(folder, "node_modules", "loomwright");
  for (const { path, content } of filesOf(archive)) {
    // npm puts everything below "package/".
    const file = join(library, path.replace(/^package\//, ""));
    if (relative(library, file).startsWith("..")) throw new Error(`the library's tarball names ${path}`);
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, content);
  }
  const manifest = JSON.parse(await readFile(join(library, "package.json"), "utf8"));
  await installCommands(folder, manifest.bin ?? {});
  return { version: manifest.version };
}

/** As npm does: a link where links are usual, a small script on Windows. */
async function installCommands(folder: string, commands: Readonly<Record<string, string>>): Promise<void> {
  const bin = join(folder, "node_modules", ".bin");
  await mkdir(bin, { recursive: true });
  for (const [name, program] of Object.entries(commands)) {
    const target = join("..", "loomwright", program);
    if (process.platform === "win32") {
      await writeFile(join(bin, `${name}.cmd`), `@node "%~dp0\\${target}" %*\r\n`);
    } else {
      await chmod(join(bin, target), 0o755);
      await symlink(target, join(bin, name));
    }
  }
}

interface TarFile {
  readonly path: string;
  readonly content: Buffer;
}

/**
 * The plain files of an archive. npm writes names longer than a header holds as extended headers (type "x"); our package has
 * none, and one would be an error.
 */
function* filesOf(archive: Buffer): Generator<TarFile> {
  let at = 0;
  for (let header = tarHeader(archive, at); header; header = tarHeader(archive, at)) {
    const { path, type, sizeBytes } = header;
    const content = at + blockBytes;
    if (type === "0" || type === "") yield { path, content: archive.subarray(content, content + sizeBytes) };
    else if (type !== "5" && type !== "g")
      throw new Error(`the library's tarball has an entry of type ${type}`);
    at = content + inBlocks(sizeBytes);
  }
}
