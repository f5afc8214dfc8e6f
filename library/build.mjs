// Fills library/dist with the files of the package other than its manifest: the words of a plan for ES modules and CommonJS, their
// types, the server's bundles, and the page of every rule. Run after server/build.mjs: `node library/build.mjs`, or import
// `buildLibrary`.

import { execFile } from "node:child_process";
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { build } from "esbuild";
import { commandFiles, serverFiles } from "../server/build.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const entry = join(here, "plan/index.ts");
const dist = join(here, "dist");
const serverDist = join(here, "../server/dist");

const tsc = join(here, "../node_modules/@typescript/native/bin/tsc");

const typeOptions = [
  ...["--ignoreConfig", "--strict", "--declaration", "--emitDeclarationOnly", "--allowImportingTsExtensions"],
  // The words run in the sandbox too, which has the language and nothing else.
  ...["--target", "es2022", "--lib", "es2022", "--module", "esnext", "--moduleResolution", "bundler"],
  ...["--rootDir", dirname(entry)],
];

/** The files for one module system, in a folder of their own: its `package.json` tells Node and TypeScript which one it is. */
const moduleSystems = [
  { folder: "esm", format: "esm", type: "module" },
  { folder: "cjs", format: "cjs", type: "commonjs" },
];

/** Everything in library/dist, made from nothing. Throws an error that says what is missing. */
export async function buildLibrary() {
  const bundles = await serverBundles();
  await rm(dist, { recursive: true, force: true });
  await buildWords(dist);
  for (const name of bundles) await cp(join(serverDist, name), join(dist, name), { recursive: true });
}

/** The words of a plan alone, with their types, into any folder. */
export async function buildWords(folder) {
  const types = await typesOfPlan();
  await Promise.all(moduleSystems.map((system) => writeModule(join(folder, system.folder), system, types)));
}

async function serverBundles() {
  const needed = [...commandFiles, ...serverFiles];
  const there = await readdir(serverDist).catch(() => []);
  const missing = needed.filter((name) => !there.includes(name));
  if (missing.length > 0)
    throw new Error(`server/dist has no ${missing.join(", ")}: run \`node server/build.mjs\` first`);
  return there;
}

async function writeModule(target, { format, type }, types) {
  await build({
    entryPoints: [entry],
    outfile: join(target, "index.js"),
    bundle: true,
    format,
    platform: "neutral",
    target: "es2022",
    logLevel: "error",
  });
  await writeFile(join(target, "package.json"), `${JSON.stringify({ type })}\n`);
  for (const { name, text } of types) await writeFile(join(target, name), text);
}

/**
 * The declarations of library/plan, one file each, so that the editor's hovers and "go to definition" show the manual. Written by
 * TypeScript 7, in an eighth of the time of version 6.
 */
async function typesOfPlan() {
  const folder = await mkdtemp(join(tmpdir(), "loomwright-types-"));
  try {
    await promisify(execFile)(process.execPath, [tsc, entry, ...typeOptions, "--outDir", folder]);
    const names = (await readdir(folder)).sort();
    return await Promise.all(
      names.map(async (name) => {
        const text = await readFile(join(folder, name), "utf8");
        // A declaration beside JavaScript is named by that JavaScript; the sources import each other as `.ts`.
        return { name, text: text.replaceAll(/(from "\.\/[\w-]+)\.ts"/g, '$1.js"') };
      }),
    );
  } catch (error) {
    // The compiler prints its complaints as output.
    throw new Error(error.stdout || error.message);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await buildLibrary().catch((error) => {
    console.error(`library/build.mjs: ${error.message}`);
    process.exitCode = 1;
  });
}
