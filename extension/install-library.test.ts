import { execFile } from "node:child_process";
import { access, constants, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { gunzipSync } from "node:zlib";
import { afterEach, beforeEach, expect, test } from "vitest";
import { installLibrary } from "./install-library.ts";

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "loomwright-install-"));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const manifest = {
  name: "loomwright",
  version: "1.2.3",
  bin: { loomwright: "dist/command.cjs" },
  files: ["dist", "empty.txt"],
};

/** Sizes around the blocks of the archive, and a text that is not plain ASCII. */
const contents: Record<string, string> = {
  "package.json": JSON.stringify(manifest),
  "dist/command.cjs": "#!/usr/bin/env node\nconsole.log('checked');\n",
  "dist/one-block.txt": "x".repeat(512),
  "dist/one-more.txt": "x".repeat(513),
  "dist/deep/er/ohm.txt": "0.5 Ω in 15 ft\n",
  "empty.txt": "",
};

test("unpacks what npm packed, file for file, with the command in its place", async () => {
  const source = join(folder, "source");
  for (const [path, content] of Object.entries(contents)) {
    await mkdir(dirname(join(source, path)), { recursive: true });
    await writeFile(join(source, path), content);
  }
  await promisify(execFile)("npm", ["pack", "--pack-destination", folder, "--silent"], {
    cwd: source,
    shell: process.platform === "win32",
  });

  const build = join(folder, "build");
  const archive = gunzipSync(await readFile(join(folder, "loomwright-1.2.3.tgz")));
  expect(await installLibrary(archive, build)).toEqual({ version: "1.2.3" });

  const library = join(build, "node_modules", "loomwright");
  for (const [path, content] of Object.entries(contents)) {
    expect(await readFile(join(library, path), "utf8"), path).toBe(content);
  }
  const files = (await readdir(library, { recursive: true, withFileTypes: true })).filter((entry) =>
    entry.isFile(),
  );
  expect(files).toHaveLength(Object.keys(contents).length);
  const command = process.platform === "win32" ? "loomwright.cmd" : "loomwright";
  await access(join(build, "node_modules", ".bin", command), constants.X_OK);
});

test.each([
  { what: "a name that climbs out of the folder", name: "package/../../../outside.txt", type: "0" },
  { what: "a link", name: "package/link", type: "2" },
  { what: "a name too long for the header, which would come out wrong", name: "package/x", type: "x" },
])("refuses $what", async ({ name, type }) => {
  const header = Buffer.alloc(512);
  header.write(name, 0);
  header.write("00000000000\0", 124);
  header.write(type, 156);
  const archive = Buffer.concat([header, Buffer.alloc(1024)]);
  await expect(installLibrary(archive, join(folder, "build"))).rejects.toThrow("the library's tarball");
  expect(await readdir(folder)).toEqual([]);
});
