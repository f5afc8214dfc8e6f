// Bundles the extension into extension/dist, with all its contents: the server, the pages of the rules, and the library packed
// for new builds. Run after server/build.mjs and library/build.mjs: `node extension/build.mjs`.

import { execFile } from "node:child_process";
import { createHash } from "node:crypto";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { brotliCompressSync, brotliDecompressSync, constants, gunzipSync } from "node:zlib";
import { build } from "esbuild";
import { serverFiles } from "../server/build.mjs";
import { writeNotices } from "../server/notices.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const house = join(here, "..");
const dist = join(here, "dist");

await rm(dist, { recursive: true, force: true });
await mkdir(dist, { recursive: true });
await Promise.all([
  bundleClient(),
  bundlePages(),
  copyServer(),
  writeNotices(join(dist, "THIRD-PARTY-NOTICES.txt"), { "vscode-languageclient": here }),
]);
await packLibrary();

/**
 * The language client, most of the code, is a separate file: the extension is loaded with the first TypeScript file of any
 * project, and the client only when there is a plan.
 */
async function bundleClient() {
  const options = {
    outdir: dist,
    outExtension: { ".js": ".cjs" },
    bundle: true,
    minify: true,
    platform: "node",
    target: "node20",
    format: "cjs",
    external: ["vscode"],
    // The editor provides its module `vscode` to `require` calls, not to Node's own imports.
    supported: { "dynamic-import": false },
    logLevel: "error",
  };
  const languageClient = "vscode-languageclient/node";
  const languageClientBeside = {
    name: "language-client-beside",
    setup({ onResolve }) {
      onResolve({ filter: new RegExp(`^${languageClient}$`) }, () => ({
        path: "./language-client.cjs",
        external: true,
      }));
    },
  };
  await Promise.all([
    build({
      ...options,
      entryPoints: { extension: join(here, "extension.ts") },
      plugins: [languageClientBeside],
    }),
    build({
      ...options,
      entryPoints: { "language-client": createRequire(import.meta.url).resolve(languageClient) },
    }),
  ]);
}

/** The script and the style sheet of each page: two files, because a page may not run inline code. */
async function bundlePages() {
  await build({
    outdir: dist,
    entryPoints: ["diagram", "energy", "board"].flatMap((page) =>
      ["ts", "css"].map((kind) => ({ in: join(here, `${page}/page/page.${kind}`), out: `${page}-page` })),
    ),
    bundle: true,
    minify: true,
    platform: "browser",
    target: "chrome120",
    format: "iife",
    logLevel: "error",
  });
}

/**
 * Only a new build needs the command line, and it travels with the rest of the library. The program that draws PNG is compressed: a
 * quarter less than a .vsix makes of it, and it is rarely started.
 */
async function copyServer() {
  for (const file of serverFiles) {
    const from = join(house, "server", "dist", file);
    if (file === "resvg.wasm") await writeFile(join(dist, `${file}.br`), await compressedOnce(from));
    else await cp(from, join(dist, file), { recursive: true });
  }
}

/** A file of a package, which no edit changes: its compressed form, the longest step of a build, is kept beside the packages. */
async function compressedOnce(file) {
  const content = await readFile(file);
  const kept = join(
    house,
    "node_modules/.cache/loomwright",
    `${createHash("sha256").update(content).digest("hex")}.br`,
  );
  try {
    const before = await readFile(kept);
    if (brotliDecompressSync(before).equals(content)) return before;
  } catch {
    // Not kept yet, or damaged.
  }
  const made = compressed(content);
  await mkdir(dirname(kept), { recursive: true });
  await writeFile(kept, made);
  return made;
}

function compressed(content) {
  return brotliCompressSync(content, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
      [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS,
      [constants.BROTLI_PARAM_SIZE_HINT]: content.length,
    },
  });
}

/**
 * The published package itself: a new build gets the same as from `npm install loomwright`. Files already in dist are left out,
 * to avoid having them in the extension twice.
 */
async function packLibrary() {
  const { cutLibrary, libraryRecipe, libraryRest } = await packing();
  const { rest, recipe } = await cutLibrary(gunzipSync(await npmPacked()), dist);
  await writeFile(join(dist, libraryRest), compressed(rest));
  await writeFile(join(dist, libraryRecipe), `${JSON.stringify(recipe)}\n`);
}

async function npmPacked() {
  const folder = await mkdtemp(join(tmpdir(), "loomwright-pack-"));
  try {
    await promisify(execFile)(
      "npm",
      ["pack", "--workspace", "library", "--pack-destination", folder, "--ignore-scripts", "--silent"],
      { cwd: house, shell: process.platform === "win32" },
    );
    const [tarball] = await readdir(folder);
    return await readFile(join(folder, tarball));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The module that splits the package, beside the one that joins it again: both are TypeScript. */
async function packing() {
  const {
    outputFiles: [{ text }],
  } = await build({
    stdin: {
      contents: 'export * from "./pack-library.ts"; export * from "./library-tarball.ts";',
      resolveDir: here,
    },
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    logLevel: "error",
  });
  return import(`data:text/javascript,${encodeURIComponent(text)}`);
}
