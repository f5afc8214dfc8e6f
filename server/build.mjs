// Bundles the server into server/dist: the language server, the command line, the worker that runs plans, and TypeScript. Run
// as `node server/build.mjs`, or import `buildServer` / `buildWorker` (as the tests' global setup does).

import { copyFile, cp, mkdir, readdir, rename, rm } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { bundledText } from "./evaluate/sandbox/bundled-text-plugin.mjs";
import { writeNotices } from "./notices.mjs";

const require = createRequire(import.meta.url);
const here = dirname(fileURLToPath(import.meta.url));
const rulesFolder = join(here, "../library/rules");
const templatesFolder = join(here, "../library/templates");
const dist = join(here, "dist");

/** The language server in server/dist: the front thread, its engine, and all files that they load from beside it when needed. */
export const serverFiles = [
  "language-server.cjs",
  "engine.cjs",
  "plan-worker.cjs",
  "layout-worker.cjs",
  "typescript.cjs",
  "quickjs.wasm",
  "world.json",
  "rules",
  "templates",
  "paper.cjs",
  "resvg.wasm",
  "DejaVuSans.ttf",
  "DejaVuSans-Bold.ttf",
];

/** The further file of the command line. */
export const commandFiles = ["command.cjs"];

/** Everything in server/dist. */
export async function buildServer() {
  await rm(dist, { recursive: true, force: true });
  await Promise.all([
    buildWorker(),
    buildTypeScript(),
    buildEntries(),
    buildPaper(),
    copyRulePages(),
    copyTemplates(),
    mkdir(dist, { recursive: true }).then(() => writeNotices(join(dist, "THIRD-PARTY-NOTICES.txt"))),
  ]);
}

/**
 * The workers, and the files read from beside the bundles. Tests of sources need no more, because Node cannot run TypeScript in
 * a worker.
 */
export async function buildWorker() {
  await mkdir(dist, { recursive: true });
  const quickjs = dirname(require.resolve("@jitl/quickjs-ng-wasmfile-release-sync"));
  const typeface = dirname(require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf"));
  await Promise.all([
    copyFile(join(quickjs, "emscripten-module.wasm"), join(dist, "quickjs.wasm")),
    copyFile(require.resolve("@resvg/resvg-wasm/index_bg.wasm"), join(dist, "resvg.wasm")),
    copyFile(join(here, "../library/standards/world.json"), join(dist, "world.json")),
    ...["DejaVuSans.ttf", "DejaVuSans-Bold.ttf"].map((file) =>
      copyFile(join(typeface, file), join(dist, file)),
    ),
    bundle({
      "plan-worker": join(here, "evaluate/plan-worker.ts"),
      "layout-worker": join(here, "output/layout-worker.ts"),
    }),
  ]);
}

/** PDF and PNG output, in a file of its own: only a request for one has to wait for it. */
async function buildPaper() {
  await bundle({ paper: join(here, "output/paper.ts") });
}

async function buildEntries() {
  await bundle({
    "language-server": join(here, "front/language-server.ts"),
    engine: join(here, "engine.ts"),
    command: join(here, "command/main.ts"),
  });
}

/**
 * TypeScript in a file of its own: a server answers its first handshake before the 3 MB are evaluated, and both entries share
 * the file.
 */
async function buildTypeScript() {
  await build({
    entryPoints: { typescript: require.resolve("typescript") },
    outdir: dist,
    outExtension: { ".js": ".cjs" },
    bundle: true,
    minify: true,
    platform: "node",
    target: "node20",
    format: "cjs",
    // Optional inside TypeScript: only loaded when it traces or when a debugger is attached.
    external: ["perf_hooks", "inspector", "source-map-support"],
    legalComments: "eof",
    logLevel: "error",
  });
}

async function bundle(entryPoints) {
  await build({
    entryPoints,
    outdir: dist,
    outExtension: { ".js": ".cjs" },
    bundle: true,
    minifySyntax: true,
    minifyWhitespace: true,
    platform: "node",
    target: "node20",
    format: "cjs",
    // `import.meta.url` is empty in CommonJS; the bundle's own URL replaces it.
    define: { "import.meta.url": "bundleUrl" },
    banner: { js: 'const bundleUrl = require("node:url").pathToFileURL(__filename).href;' },
    plugins: [typescriptBeside, paperBeside, bundledText],
    legalComments: "linked",
    logLevel: "error",
  });
}

const typescriptBeside = {
  name: "typescript-beside",
  setup(build) {
    build.onResolve({ filter: /^typescript$/ }, () => ({ path: "./typescript.cjs", external: true }));
  },
};

const paperBeside = {
  name: "paper-beside",
  setup(build) {
    build.onResolve({ filter: /\/paper\.ts$/ }, ({ kind }) =>
      kind === "entry-point" ? undefined : { path: "./paper.cjs", external: true },
    );
  },
};

/** The page of each rule ships with the bundle: a finding links to the page of the version that found it. */
async function copyRulePages() {
  for (const entry of await readdir(rulesFolder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith(".md") || entry.name === "README.md") continue;
    const source = join(entry.parentPath, entry.name);
    const target = join(dist, "rules", relative(rulesFolder, source));
    await mkdir(dirname(target), { recursive: true });
    await cp(source, target);
  }
}

/** As plain texts: a package holds no sources, and no tool should take a template for one. */
async function copyTemplates() {
  await cp(templatesFolder, join(dist, "templates"), { recursive: true });
  for (const file of await readdir(join(dist, "templates"))) {
    if (!file.endsWith(".ts")) continue;
    const path = join(dist, "templates", file);
    await rename(path, path.replace(/ts$/, "txt"));
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildServer();
