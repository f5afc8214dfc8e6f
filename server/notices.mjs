import { readdir, readFile, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const house = join(here, "..");

/**
 * The bundles contain other people's work; their licences ask to be passed on with it. Writes those of everything that is in
 * the server's bundles, and of `more`: package names and the folders from which they are found.
 */
export async function writeNotices(file, more = {}) {
  const notices = [];
  for (const { name, version, folder } of await packagesInBundles(more)) {
    const licence = (await readdir(folder)).find((entry) => /^licen[cs]e/i.test(entry));
    const manifest = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
    // Some licences ask that whoever gets the program is told where its source is.
    const { url = manifest.repository ?? manifest.homepage } = Object(manifest.repository);
    const text = licence
      ? await readFile(join(folder, licence), "utf8")
      : `Licence: ${manifest.license}\nSource: ${url}`;
    notices.push(`${name} ${version}\n\n${text.trim()}\n`);
    for (const [part, file] of Object.entries(withinPackages[name] ?? {})) {
      const ofPart = await readFile(join(folder, file), "utf8");
      notices.push(`${part}, as ${name} carries it\n\n${ofPart.trim()}\n`);
    }
  }
  await writeFile(file, notices.join(`\n${"-".repeat(80)}\n\n`));
}

/** Other people's work within other people's work, and the files with its licence. */
const withinPackages = {
  pdfmake: { "svg-to-pdfkit": "src/3rd-party/svg-to-pdfkit/LICENSE" },
};

/** The dependencies of the rooms that are bundled, and theirs in turn. */
async function packagesInBundles(more) {
  const found = new Map();
  const add = async (name, from) => {
    const folder = await folderOf(name, from);
    if (found.has(folder)) return;
    const manifest = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
    found.set(folder, { name, version: manifest.version, folder });
    for (const dependency of Object.keys(manifest.dependencies ?? {})) await add(dependency, folder);
  };
  const server = JSON.parse(await readFile(join(here, "package.json"), "utf8"));
  for (const name of Object.keys(server.dependencies)) await add(name, here);
  await add("typescript", house);
  // The drawings of the library are laid out with it, in the server's worker.
  await add("elkjs", join(house, "library"));
  for (const [name, from] of Object.entries(more)) await add(name, from);
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
