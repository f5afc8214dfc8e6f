import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { trackedFiles } from "./tracked-files.ts";

const house = fileURLToPath(new URL("../..", import.meta.url));
const manifest = JSON.parse(readFileSync(join(house, "package.json"), "utf8")) as {
  version: string;
  scripts: Record<string, string>;
};

const tracked = trackedFiles();

test("the top level holds what a newcomer expects and nothing else", () => {
  const visible = new Set(tracked.map((file) => file.split("/")[0]!).filter((name) => !name.startsWith(".")));
  expect([...visible].sort()).toEqual(
    [
      "README.md",
      "DEVELOPERS.md",
      "LICENSE",
      "package.json",
      "package-lock.json",
      "tsconfig.json",
      "extension",
      "server",
      "library",
      "examples",
      "tests",
    ].sort(),
  );
});

test("the gate runs the README's test command and nothing else", () => {
  const commands = readFileSync(join(house, ".ci/run"), "utf8")
    .split("\n")
    .filter((line) => line.trim() !== "" && !line.startsWith("#") && !/^(set|cd) /.test(line));
  expect(commands).toEqual(["npm test"]);
  expect(readFileSync(join(house, "README.md"), "utf8")).toContain("npm test");
});

test("there is something to look at: no test below passes because a list came out empty", () => {
  expect(pages().length).toBeGreaterThan(20);
  expect(tracked.filter((file) => file.endsWith(".test.ts")).length).toBeGreaterThan(50);
  expect(Object.keys(manifest.scripts).length).toBeGreaterThan(5);
});

test("every file that the contributors' page names is there", () => {
  const page = readFileSync(join(house, "DEVELOPERS.md"), "utf8");
  const folders = /^(?:library|server|extension|tests|examples)\//;
  const named = [...page.matchAll(/`(?:node |python3 )?([\w./-]+)[^`]*`/g)]
    .map((match) => match[1]!)
    .filter((name) => folders.test(name) || /^[\w-]+\.(?:ts|json|py|mjs)$/.test(name));
  expect(named.length).toBeGreaterThan(20);
  const there = (name: string) =>
    folders.test(name)
      ? existsSync(join(house, name))
      : tracked.some((file) => file.endsWith(`/${name}`) || file === name);
  expect(named.filter((name) => !there(name))).toEqual([]);
});

test("every npm script that a page names exists", () => {
  // The template and the walkthrough refer to a builder's own folder, which has its own scripts.
  const ours = pages().filter(({ file }) => !/^(?:library\/templates|extension\/walkthrough)\//.test(file));
  const missing = ours.flatMap(({ file, text }) =>
    [...text.matchAll(/`npm (?:run )?([a-z][\w:-]*)[^`]*`|^ *npm (?:run )?([a-z][\w:-]*)/gm)]
      .map((match) => match[1] ?? match[2]!)
      .filter(
        (script) => !["install", "ci", "pack", "init", "i"].includes(script) && !(script in manifest.scripts),
      )
      .map((script) => `${file}: npm run ${script}`),
  );
  expect(missing).toEqual([]);
});

test("every script file that package.json calls is there", () => {
  const missing = Object.values(manifest.scripts)
    .flatMap((script) => [...script.matchAll(/node ([\w./-]+\.mjs)/g)].map((match) => match[1]!))
    .filter((file) => !existsSync(join(house, file)));
  expect(missing).toEqual([]);
});

test("links between pages lead somewhere", () => {
  const broken = pages().flatMap(({ file, text }) =>
    [...text.matchAll(/\]\(([^)\s]+)\)/g)]
      .map((match) => match[1]!.split("#")[0]!)
      .filter((link) => link !== "" && !/^[a-z]+:/.test(link))
      .filter((link) => !existsSync(join(house, dirname(file), decodeURI(link))))
      .map((link) => `${file}: ${link}`),
  );
  expect(broken).toEqual([]);
});

test("package, server and extension carry one version", () => {
  const versions = ["library", "server", "extension"].map(
    (room) =>
      (JSON.parse(readFileSync(join(house, room, "package.json"), "utf8")) as { version: string }).version,
  );
  expect(versions).toEqual([manifest.version, manifest.version, manifest.version]);
});

test("no test is skipped, focused or left for later", () => {
  // In fragments: this file must not find itself.
  const marks = new RegExp(
    `\\b(?:test|it|describe)\\.(?:${["skip", "only", "todo", "fails", "skipIf", "runIf"].join("|")})\\b`,
  );
  const found = tracked
    .filter((file) => /\.(?:test|story)\.ts$/.test(file))
    .filter((file) => marks.test(readFileSync(join(house, file), "utf8")));
  expect(found).toEqual([]);
});

test("dependencies are pinned, and each is explained to contributors", () => {
  const developers = readFileSync(join(house, "DEVELOPERS.md"), "utf8");
  const problems = ["", "library", "server", "extension"].flatMap((room) => {
    const { dependencies = {}, devDependencies = {} } = JSON.parse(
      readFileSync(join(house, room, "package.json"), "utf8"),
    ) as Record<string, Record<string, string> | undefined>;
    return Object.entries({ ...dependencies, ...devDependencies }).flatMap(([name, version]) => [
      ...(/^(npm:.+@)?\d+\.\d+\.\d+/.test(version) ? [] : [`${room}: ${name} is not pinned: ${version}`]),
      ...(developers.includes(`\`${name}\``)
        ? []
        : [`${room}: DEVELOPERS.md does not say why ${name} is here`]),
    ]);
  });
  expect(problems).toEqual([]);
});

test("each example folder says what it shows", () => {
  const without = readdirSync(join(house, "examples"), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !existsSync(join(house, "examples", entry.name, "README.md")))
    .map((entry) => entry.name);
  expect(without).toEqual([]);
});

function pages(): { file: string; text: string }[] {
  return tracked
    .filter((file) => file.endsWith(".md"))
    .map((file) => ({ file, text: readFileSync(join(house, file), "utf8") }));
}
