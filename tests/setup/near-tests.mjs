import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path/posix";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

/**
 * The test files near some files: those among them, those that import one of them, those of the same room that import one through
 * one file between, and those that name one that is not imported, such as tests that read a page, a table or a snapshot. Nearly
 * every test imports every rule, through the engine; the near ones take seconds and find most mistakes.
 *
 * @param {readonly string[]} files paths from the house, with `/`
 * @returns {{ tests: readonly string[], runTheBuild: boolean }} paths of test files, sorted; and whether one of them needs a
 * `dist`
 */
export function nearTests(files) {
  const sources = sourceTexts();
  const imports = new Map([...sources].map(([file, text]) => [file, importsIn(file, text)]));
  const importersOf = (file) =>
    [...imports].filter(([, names]) => names.includes(file)).map(([name]) => name);
  // The tests of a rule also check its page.
  const changed = files.map((file) =>
    /^library\/rules\/.+\.md$/.test(file) ? file.replace(/md$/, "ts") : file,
  );
  const near = new Set(changed);
  for (const file of changed)
    for (const between of importersOf(file)) {
      near.add(between);
      for (const test of importersOf(between)) if (roomOf(test) === roomOf(file)) near.add(test);
    }
  const named = files.filter((file) => !manyAreCalled.test(file) && importersOf(file).length === 0);
  for (const [test, text] of sources)
    if (isTest(test) && named.some((file) => text.includes(`${file.split("/").at(-1)}"`))) near.add(test);
  const tests = [...near].filter((file) => isTest(file) && sources.has(file)).sort();
  const runTheBuild = tests.some((test) =>
    withHelpers(test, imports).some((file) => /\bdist\b/.test(sources.get(file))),
  );
  return { tests, runTheBuild };
}

/** A test file, and all its imports from `tests`, direct or indirect. */
function withHelpers(test, imports) {
  const found = new Set([test]);
  for (const file of found)
    for (const name of imports.get(file)) if (name.startsWith("tests/") && imports.has(name)) found.add(name);
  return [...found];
}

/** Names that tests also give to files of their own. */
const manyAreCalled = /(^|\/)(package|tsconfig)\.json$/;

function isTest(file) {
  return file.endsWith(".test.ts");
}

/** `library/rules` for everything below it. */
function roomOf(file) {
  return file.split("/").slice(0, -1).slice(0, 2).join("/");
}

/** The text of each source file, by its path from the house. */
function sourceTexts() {
  const names = ["library", "server", "extension", "tests"].flatMap((room) => filesIn(room));
  return new Map(names.map((name) => [name, readFileSync(join(house, name), "utf8")]));
}

function filesIn(folder) {
  return readdirSync(join(house, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return ["node_modules", "dist"].includes(entry.name) ? [] : filesIn(path);
    return /\.m?ts$|\.mjs$/.test(entry.name) ? [path] : [];
  });
}

/** The files that a file imports. A type-only import does not count: the compiler checks it. */
function importsIn(file, text) {
  const named = text.matchAll(/^(?:import|export) (?!type )[^;"]*"([^"]+)"|\bimport\("([^"]+)"\)/gm);
  return [...named].flatMap(([, fixed, asked]) => {
    const name = fixed ?? asked;
    if (name === "loomwright") return ["library/plan/index.ts"];
    return name.startsWith(".") ? [join(dirname(file), name)] : [];
  });
}
