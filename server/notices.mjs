import { readdir, readFile, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const house = join(here, "..");
const licences = join(here, "licences");

/**
 * The bundles contain other people's work, with licences that must be passed on. Writes the licences of everything in the
 * server's bundles, and of `more`: package names and the folders to resolve them from. Throws if a package has no copyright
 * line or no licence.
 *
 * `licences/` has the texts that packages lack, and two lists. Each entry of a list gives its source in `from`: read from the
 * named file, or recalled, which is to be replaced by the first reading.
 */
export async function writeNotices(file, more = {}) {
  const notices = [];
  for (const found of await packagesInBundles(more)) {
    notices.push(await noticeOf(found), ...(await noticesWithin(found)));
  }
  notices.push(await noticeOfWorld());
  await writeFile(file, notices.join(`\n${"-".repeat(80)}\n\n`));
}

/** The table of the world is data, and no package: library/standards/world.ts cites its sources in full. */
async function noticeOfWorld() {
  return notice("The table of the world, world.json", [
    "Places: GeoNames (https://www.geonames.org), under the Creative Commons Attribution 4.0 licence",
    "(https://creativecommons.org/licenses/by/4.0/); reduced to name, country and position of places of 15,000 inhabitants and more.",
    "Sun and air temperature: NASA GISS and NCEP, in the normal year of the Common Ocean-ice Reference Experiments (NCAR, TN-460), in the",
    "copy of MITgcm (https://github.com/MITgcm/MITgcm), which is under the MIT licence; put on another grid.",
    "Copyright of MITgcm: its authors; its copyright line was not read.",
    "",
    await standardText("MIT"),
  ]);
}

/** The notice of one package: its own texts, or its entry in the list of copyright lines. */
async function noticeOf({ name, version, folder }) {
  const manifest = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const own = await Promise.all(
    (await licenceFiles(folder)).map((file) => readFile(join(folder, file), "utf8")),
  );
  const known = (await readList("copyright-lines.json"))[name];
  const standard = await Promise.all([known?.licence ?? []].flat().map(standardText));
  if (!known && !own.some((text) => copyrightLine.test(text)))
    throw new Error(
      `${name} has no copyright line: read its sources, and add it to server/licences/copyright-lines.json`,
    );
  if (own.length + standard.length === 0)
    throw new Error(`${name} has no licence text: name it in server/licences/copyright-lines.json`);
  return notice(`${name} ${version}`, [
    `Licence: ${manifest.license ?? "as below"}`,
    `Source of this version: ${sourceOf(manifest)}`,
    ...(sourceStatements[name]?.(manifest) ?? []),
    "",
    ...(known?.copyright ?? []),
    ...[...own, ...standard].map((text) => `\n${text.trim()}`),
  ]);
}

/** With a sign, a year or a name: the headings and clauses of a licence mention copyright too. */
const copyrightLine =
  /^\W*(?:[\w-]+ ){0,3}[Cc]opyright\s+(?:\([cC]\) ?(?!\[)|©|\d{4}|[A-Z][a-z]+ [A-Z][a-z])/m;

/** Licences that demand more than their text: how to get the source of code that is only included in another form. */
const sourceStatements = {
  elkjs: ({ version }) => [
    "elkjs is taken under the Eclipse Public License 2.0, and is unchanged. Its source code is available, under that licence, as",
    `release ${version} of https://github.com/kieler/elkjs; that of the Eclipse Layout Kernel, from which it is compiled, from`,
    "https://github.com/eclipse-elk/elk.",
  ],
  "@resvg/resvg-wasm": ({ version }) => [
    "resvg-wasm is taken under the Mozilla Public License 2.0, and is unchanged. Its source code is available, under that licence,",
    `as release ${version} of https://github.com/yisibl/resvg-js; that of resvg and usvg from https://github.com/linebender/resvg.`,
  ],
};

/** Other people's work within a package. */
async function noticesWithin({ name, folder }) {
  const files = Object.entries(withinPackages[name] ?? {}).map(async ([part, file]) =>
    notice(`${part}, as ${name} carries it`, [(await readFile(join(folder, file), "utf8")).trim()]),
  );
  const listed = (await readList("inside-packages.json"))[name] ?? [];
  const byLicence = [...grouped(listed)].map(async ([licence, parts]) =>
    notice(`Inside ${name}, under the licence below (${licence})`, [
      ...parts.flatMap((part) => [part.name, ...part.copyright.map((line) => `  ${line}`)]),
      ...(licence === "public domain" ? [] : [`\n${(await standardText(licence)).trim()}`]),
    ]),
  );
  return Promise.all([...files, ...byLicence]);
}

/** The files with the notices of third-party work inside a package. */
const withinPackages = {
  pdfmake: { "svg-to-pdfkit": "src/3rd-party/svg-to-pdfkit/LICENSE" },
  typescript: { "What TypeScript took from others": "ThirdPartyNoticeText.txt" },
  ...Object.fromEntries(
    [
      "vscode-jsonrpc",
      "vscode-languageserver",
      "vscode-languageserver-protocol",
      "vscode-languageserver-types",
    ].map((name) => [name, { "What it took from others": "thirdpartynotices.txt" }]),
  ),
};

/** By licence: its text is written once for all packages under it. */
function grouped(parts) {
  const groups = new Map();
  for (const part of parts) groups.set(part.licence, [...(groups.get(part.licence) ?? []), part]);
  return groups;
}

function notice(heading, lines) {
  return `${heading}\n\n${lines.join("\n").trim()}\n`;
}

async function licenceFiles(folder) {
  return (await readdir(folder)).filter((entry) => /^(?:licen[cs]e|notice|copying)/i.test(entry));
}

function sourceOf({ name, version, repository, homepage }) {
  const { url = repository ?? homepage } = Object(repository);
  return `the npm package ${name}@${version}${url ? `, of ${url}` : ""}`;
}

async function standardText(licence) {
  const read = (name) => readFile(join(licences, `${name}.txt`), "utf8");
  return licence === "LLVM" ? `${await read("Apache-2.0")}\n${await read("LLVM-exception")}` : read(licence);
}

async function readList(name) {
  return JSON.parse(await readFile(join(licences, name), "utf8"));
}

/** The dependencies of the bundled folders, directly or not. */
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
  // The library's drawings are laid out with it, in the server's worker.
  await add("elkjs", join(house, "library"));
  for (const [name, from] of Object.entries(more)) await add(name, from);
  return [...found.values()].sort((a, b) => a.name.localeCompare(b.name));
}

/** The folder that Node would resolve a package to. */
async function folderOf(name, from) {
  for (let folder = from; ; folder = dirname(folder)) {
    const candidate = join(folder, "node_modules", name);
    const there = await readdir(candidate).catch(() => undefined);
    if (there?.includes("package.json")) return candidate;
    if (folder === dirname(folder)) throw new Error(`${name} is not installed`);
  }
}
