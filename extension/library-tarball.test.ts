import { execFile } from "node:child_process";
import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { brotliCompressSync, gunzipSync } from "node:zlib";
import { afterAll, beforeAll, expect, test } from "vitest";
import { libraryArchive, libraryRecipe, libraryRest, libraryTarball } from "./library-tarball.ts";
import { cutLibrary } from "./pack-library.ts";

let folder: string;
let archive: Buffer;
const dist = () => join(folder, "dist");

/** Sizes around the blocks of an archive; and files that the extension carries too, under the same name, another, or changed. */
const packed: Record<string, string> = {
  "package.json": JSON.stringify({ name: "loomwright", version: "1.2.3", files: ["dist", "empty.txt"] }),
  "dist/engine.cjs": "e".repeat(1_300),
  "dist/one-block.wasm": "w".repeat(512),
  "dist/rules/page.md": "# Ω\n",
  "dist/command.cjs": "c".repeat(513),
  "dist/notices.txt": "of the library",
  "empty.txt": "",
};
const carried: Record<string, string> = {
  "engine.cjs": packed["dist/engine.cjs"]!,
  "one-block.wasm": packed["dist/one-block.wasm"]!,
  "pages/of-a-rule.md": packed["dist/rules/page.md"]!,
  "notices.txt": "of the extension",
  "empty.txt": "",
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "loomwright-tarball-"));
  const source = join(folder, "source");
  await write(source, packed);
  await promisify(execFile)("npm", ["pack", "--pack-destination", folder, "--silent"], {
    cwd: source,
    shell: process.platform === "win32",
  });
  archive = gunzipSync(await readFile(join(folder, "loomwright-1.2.3.tgz")));
  await write(dist(), carried);
  const { rest, recipe } = await cutLibrary(archive, dist());
  expect(recipe.beside).toEqual({
    "package/dist/engine.cjs": "engine.cjs",
    "package/dist/one-block.wasm": "one-block.wasm",
    "package/dist/rules/page.md": "pages/of-a-rule.md",
  });
  expect(archive.length - rest.length).toBe(1_536 + 512 + 512);
  await writeFile(join(dist(), libraryRest), brotliCompressSync(rest));
  await writeFile(join(dist(), libraryRecipe), JSON.stringify(recipe));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("the archive is put together again as npm packed it, to the byte", async () => {
  expect((await libraryArchive(dist())).equals(archive)).toBe(true);
});

test("its tarball is the same each time, and names neither a time nor a system", async () => {
  const [one, other] = [await libraryTarball(archive), await libraryTarball(archive)];
  expect(one.equals(other)).toBe(true);
  expect(one.subarray(0, 10).toString("hex")).toBe("1f8b08000000000002ff");
  expect(gunzipSync(one).equals(archive)).toBe(true);
});

test.each([
  ["changed, of the same length", "E".repeat(1_300)],
  ["longer", "e".repeat(1_301)],
  ["empty", ""],
])("a bundle that is %s is not passed on as the library's", async (_, text) => {
  await writeFile(join(dist(), "engine.cjs"), text);
  try {
    await expect(libraryArchive(dist())).rejects.toThrow("not as it was packed: install the extension again");
  } finally {
    await write(dist(), carried);
  }
});

async function write(below: string, files: Readonly<Record<string, string>>): Promise<void> {
  for (const [path, text] of Object.entries(files)) {
    await mkdir(dirname(join(below, path)), { recursive: true });
    await writeFile(join(below, path), text);
  }
}
