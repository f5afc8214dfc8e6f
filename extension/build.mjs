// Bundles the extension into extension/dist, with everything it carries: the server, the pages of the rules, and the library
// packed for new builds. Run after server/build.mjs and library/build.mjs; `node extension/build.mjs`.

import { execFile } from "node:child_process";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const house = join(here, "..");
const dist = join(here, "dist");

/** What the server consists of when it runs; the command line is not needed here. */
const serverFiles = ["language-server.cjs", "plan-worker.cjs", "typescript.cjs", "quickjs.wasm", "rules"];

await rm(dist, { recursive: true, force: true });
await mkdir(dist, { recursive: true });
await Promise.all([bundleClient(), copyServer(), packLibrary(), writeNotices()]);

/**
 * The language client, most of the code, is a file of its own: the extension is loaded with the first TypeScript file of any
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
    // The editor hands out its module `vscode` to what is required, not to what Node imports by itself.
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

async function copyServer() {
  for (const file of serverFiles) {
    await cp(join(house, "server", "dist", file), join(dist, file), { recursive: true });
  }
}

/** The very package that is published, so that a new build gets what `npm install loomwright` would. */
async function packLibrary() {
  const folder = await mkdtemp(join(tmpdir(), "loomwright-pack-"));
  try {
    await promisify(execFile)(
      "npm",
      ["pack", "--workspace", "library", "--pack-destination", folder, "--ignore-scripts", "--silent"],
      { cwd: house, shell: process.platform === "win32" },
    );
    const [tarball] = await readdir(folder);
    await cp(join(folder, tarball), join(dist, "loomwright.tgz"));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The bundles contain other people's work; their licences ask to be passed on with it. */
async function writeNotices() {
  const notices = [];
  for (const { name, version, folder } of await packagesInBundles()) {
    const file = (await readdir(folder)).find((entry) => /^licen[cs]e/i.test(entry));
    const manifest = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
    const text = file ? await readFile(join(folder, file), "utf8") : `Licence: ${manifest.license}`;
    notices.push(`${name} ${version}\n\n${text.trim()}\n`);
  }
  await writeFile(join(dist, "THIRD-PARTY-NOTICES.txt"), notices.join(`\n${"-".repeat(80)}\n\n`));
}

/** The dependencies of the rooms that are bundled, and theirs in turn. */
async function packagesInBundles() {
  const found = new Map();
  const add = async (name, from) => {
    const folder = await folderOf(name, from);
    if (found.has(folder)) return;
    const manifest = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
    found.set(folder, { name, version: manifest.version, folder });
    for (const dependency of Object.keys(manifest.dependencies ?? {})) await add(dependency, folder);
  };
  const server = JSON.parse(await readFile(join(house, "server", "package.json"), "utf8"));
  for (const name of Object.keys(server.dependencies)) await add(name, join(house, "server"));
  await add("zod", join(house, "library"));
  await add("typescript", house);
  await add("vscode-languageclient", here);
  return [...found.values()].sort((a, b) => a.name.localeCompare(b.name));
}

/** Where Node would find a package from a folder. */
async function folderOf(name, from) {
  for (let folder = from; ; folder = dirname(folder)) {
    const candidate = join(folder, "node_modules", name);
    const there = await readdir(candidate).catch(() => undefined);
    if (there?.includes("package.json")) return candidate;
    if (folder === dirname(folder)) throw new Error(`${name} is not installed`);
  }
}
