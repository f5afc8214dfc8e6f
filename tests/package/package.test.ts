import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gunzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { installLibrary } from "../../extension/install-library.ts";
import { libraryArchive, libraryRecipe, libraryTarball, sha256Of } from "../../extension/library-tarball.ts";
import { words } from "../../library/model/record.ts";
import { expectBuilt } from "./built.tester.ts";

/*
 * The published package is the one that is checked: the library is packed, judged by the tool that knows how module systems find
 * types, installed without a network into an empty folder, and used there as a builder would.
 */

const house = fileURLToPath(new URL("../..", import.meta.url));
const library = join(house, "library");
const built = join(library, "dist");
const scratch = mkdtempSync(join(tmpdir(), "loomwright-package-"));
const home = join(scratch, "home");
const installed = join(home, "node_modules/loomwright");
let tarball = "";

beforeAll(() => {
  expectBuilt();
  run("npm", ["pack", "--silent", "--ignore-scripts", "--pack-destination", scratch], library);
  tarball = join(scratch, readdirSync(scratch).find((name) => name.endsWith(".tgz")) ?? "no tarball");
  write("package.json", JSON.stringify({ name: "a-build", private: true, type: "module" }));
  run("npm", ["install", "--offline", "--ignore-scripts", "--no-audit", "--no-fund", tarball], home);
}, 120_000);

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe("the package", () => {
  it("is built from the sources as they are now", async () => {
    const fresh = join(scratch, "fresh");
    const { buildWords } = await import(pathToFileURL(join(library, "build.mjs")).href);
    await buildWords(fresh);
    for (const file of filesIn(fresh))
      expect(readFileSync(join(built, file), "utf8"), file).toBe(readFileSync(join(fresh, file), "utf8"));
    const bundles = filesIn(join(house, "server/dist"));
    for (const file of bundles)
      expect(
        readFileSync(join(built, file)).equals(readFileSync(join(house, "server/dist", file))),
        file,
      ).toBe(true);
  });

  it("holds the words, the programs, the page of every rule and the licence, and no sources", () => {
    const files = filesIn(installed);
    const pages = filesIn(join(library, "rules")).filter(
      (file) => file.endsWith(".md") && file !== "README.md",
    );
    expect(pages.length).toBeGreaterThan(10);
    expect(files).toEqual(
      expect.arrayContaining([
        "LICENSE",
        "README.md",
        "bin/loomwright.cjs",
        "bin/loomwright-language-server.cjs",
        "dist/command.cjs",
        "dist/language-server.cjs",
        "dist/plan-worker.cjs",
        "dist/layout-worker.cjs",
        "dist/paper.cjs",
        "dist/resvg.wasm",
        "dist/DejaVuSans.ttf",
        "dist/DejaVuSans-Bold.ttf",
        "dist/world.json",
        "dist/typescript.cjs",
        "dist/quickjs.wasm",
        ...pages.map((page) => `dist/rules/${page}`),
      ]),
    );
    expect(files.filter((file) => !/^(LICENSE|README\.md|package\.json|(bin|dist)\/.*)$/.test(file))).toEqual(
      [],
    );
    expect(files.filter((file) => /(?<!\.d)\.ts$|\.test\./.test(file))).toEqual([]);
  });

  it("needs no other package, and runs nothing when it is installed", () => {
    const manifest = JSON.parse(readFileSync(join(installed, "package.json"), "utf8"));
    expect(manifest.dependencies ?? {}).toEqual({});
    expect(manifest.peerDependencies ?? {}).toEqual({});
    expect(manifest.scripts ?? {}).toEqual({});
    expect(readdirSync(join(home, "node_modules")).filter((name) => !name.startsWith("."))).toEqual([
      "loomwright",
    ]);
  });

  it("carries the project's licence and version", () => {
    const manifest = (folder: string) => JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    expect(readFileSync(join(installed, "LICENSE"), "utf8")).toBe(
      readFileSync(join(house, "LICENSE"), "utf8"),
    );
    expect(manifest(installed).version).toBe(manifest(house).version);
  });

  it("is found, with its types, by every way of resolving modules", () => {
    const tool = join(house, "node_modules/@arethetypeswrong/cli/dist/index.js");
    const { stdout } = run(process.execPath, [tool, tarball, "--format", "json"], house);
    const { analysis, problems } = JSON.parse(stdout);
    expect(problems ?? {}).toEqual({});
    expect(analysis.problems).toEqual([]);
    const { resolutions } = analysis.entrypoints["."];
    for (const way of ["node10", "node16-cjs", "node16-esm", "bundler"])
      expect(resolutions[way]?.resolution?.isTypeScript, way).toBe(true);
  });
});

describe("in a folder of its own", () => {
  const plan = `circuit({ name: "Heater", load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50 } })`;
  const report = `console.log(JSON.stringify([made, Object.isFrozen(made), Object.isFrozen(made.protect), Object.getPrototypeOf(made) === Object.prototype]));`;
  const expected = [
    { name: "Heater", load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50 }, kind: "circuit", id: 1 },
    true,
    true,
    true,
  ];

  it.each([
    [
      "an ES module",
      "plan.mjs",
      `import { build, circuit } from "loomwright";\nbuild({});\nconst made = ${plan};\n${report}`,
    ],
    [
      "CommonJS",
      "plan.cjs",
      `const { build, circuit } = require("loomwright");\nbuild({});\nconst made = ${plan};\n${report}`,
    ],
  ])("%s gets plain frozen data", (_, file, text) => {
    write(file, text);
    expect(JSON.parse(run(process.execPath, [file], home).stdout)).toEqual(expected);
  });

  it.each([
    ["an ES module", "network.mjs", 'import * as words from "loomwright";'],
    ["CommonJS", "network.cjs", 'const words = require("loomwright");'],
  ])("%s gets every word, and parts with their terminals", (_, file, head) => {
    const text = `${head}
const { battery, busBar, cable, part } = words;
const house = battery({ chemistry: "AGM", capacityAh: 100 });
const relay = part({ terminals: ["in", "out"] });
const lead = cable({ from: house.positive, to: relay.in, lengthM: 1, gauge: 4 });
console.log(JSON.stringify([Object.keys(words).filter((name) => name !== "default").sort(), lead, lead.from === house.positive]));`;
    write(file, text);
    const [names, lead, same] = JSON.parse(run(process.execPath, [file], home).stdout);
    expect(names.filter((name: string) => name !== "module.exports")).toEqual([...words].sort());
    expect(lead).toEqual({
      from: { kind: "terminal", part: 0, of: "battery", terminal: "positive" },
      to: { kind: "terminal", part: 1, of: "part", terminal: "in" },
      lengthM: 1,
      gauge: 4,
      kind: "cable",
      id: 2,
    });
    expect(same).toBe(true);
  });

  it.each([
    ["bundler", { module: "esnext", moduleResolution: "bundler" }, "ts"],
    ["node16, an ES module", { module: "node16", moduleResolution: "node16" }, "mts"],
    ["node16, CommonJS", { module: "node16", moduleResolution: "node16" }, "cts"],
    ["nodenext, an ES module", { module: "nodenext", moduleResolution: "nodenext" }, "mts"],
  ])(
    "types are found: %s",
    (_, options, extension) => {
      const text = `import { battery, cable, circuit, fusePanel } from "loomwright";
export const made = ${plan};
const house = battery({ chemistry: "AGM", capacityAh: 100 });
const panel = fusePanel({ positions: 6 });
export const lead = cable({ from: house.positive, to: panel.feed, lengthM: 1, gauge: 2 });
`;
      const files = [`in-order.${extension}`, `refused.${extension}`] as const;
      write(files[0], text);
      // The types really work: a size that is not made is refused.
      write(files[1], text.replace("gauge: 4", "gauge: 5").replace("panel.feed", "panel.negative"));
      const compilerOptions = {
        ...options,
        strict: true,
        noEmit: true,
        types: [],
        target: "es2022",
        lib: ["es2022"],
      };
      write("tsconfig.json", JSON.stringify({ compilerOptions, files }));
      const tsc = join(house, "node_modules/@typescript/native/bin/tsc");
      const { stdout } = spawnSync(process.execPath, [tsc, "-p", "."], { cwd: home, encoding: "utf8" });
      const errors = stdout.split("\n").filter((line) => line.includes("error TS"));
      expect(errors).toEqual([
        expect.stringMatching(/^refused\..*Type '5' is not assignable to type '.*AwgSize/),
        expect.stringMatching(/^refused\..*Type 'NegativeTerminal' is not assignable/),
      ]);
    },
    60_000,
  );

  it("checks a plan with the command that npm installed", () => {
    const command = join(home, "node_modules/.bin/loomwright");
    expect(run(command, ["--version"], home).stdout).toContain(
      JSON.parse(readFileSync(join(installed, "package.json"), "utf8")).version,
    );
    write(
      "good.ts",
      `import { circuit } from "loomwright";\n${plan.replace("gauge: 4", "gauge: 4, insulationC: 75")};\n`,
    );
    run(command, ["check", "good.ts"], home);
    write("bad.ts", `import { circuit } from "loomwright";\n${plan.replace("gauge: 4", "gauge: 18")};\n`);
    const bad = spawnSync(command, ["check", "bad.ts"], { cwd: home, encoding: "utf8" });
    expect([bad.status, bad.stderr]).toEqual([1, ""]);
    expect(bad.stdout).toContain("conductor/ampacity");
    expect(run(command, ["explain", "conductor/ampacity"], home).stdout).toContain("33 CFR 183");
  });

  it("starts the language server that npm installed", async () => {
    const server = spawn(join(home, "node_modules/.bin/loomwright-language-server"), ["--stdio"], {
      cwd: home,
    });
    try {
      const body = JSON.stringify({
        jsonrpc: "2.0",
        id: 1,
        method: "initialize",
        params: { processId: null, rootUri: null, capabilities: {} },
      });
      server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
      const answer = await new Promise<string>((resolve, reject) => {
        let text = "";
        server.stdout.on("data", (chunk) => {
          text += chunk;
          if (text.includes('"capabilities"')) resolve(text);
        });
        server.on("exit", (code) => reject(new Error(`the server ended with ${code} before it answered`)));
      });
      expect(answer).toContain("hoverProvider");
    } finally {
      server.kill();
    }
  });
});

describe("the library that a new build gets from the extension", () => {
  const extensionDist = join(house, "extension/dist");

  it("is the published package to the byte, and what npm then installs from it is what was there already", async () => {
    const archive = await libraryArchive(extensionDist);
    expect(archive.equals(gunzipSync(readFileSync(tarball)))).toBe(true);

    const build = join(scratch, "new-build");
    const { version } = await installLibrary(archive, build);
    const beside = `loomwright-${version}.tgz`;
    writeFileSync(join(build, beside), await libraryTarball(archive));
    const dependencies = { loomwright: `file:${beside}` };
    writeFileSync(
      join(build, "package.json"),
      JSON.stringify({ name: "my-build", private: true, dependencies }),
    );
    const unpacked = join(build, "node_modules/loomwright");
    const contents = () =>
      Object.fromEntries(
        filesIn(unpacked).map((file) => [file, sha256Of(readFileSync(join(unpacked, file)))]),
      );
    const before = contents();
    run("npm", ["install", "--offline", "--ignore-scripts", "--no-audit", "--no-fund"], build);
    expect(contents()).toEqual(before);
    const lock = JSON.parse(readFileSync(join(build, "package-lock.json"), "utf8"));
    const integrity = createHash("sha512")
      .update(await libraryTarball(archive))
      .digest("base64");
    expect(lock.packages["node_modules/loomwright"].integrity).toBe(`sha512-${integrity}`);
  }, 60_000);

  it("has nothing in the extension twice", () => {
    const recipe = JSON.parse(readFileSync(join(extensionDist, libraryRecipe), "utf8"));
    const carried = new Set(filesIn(extensionDist));
    const twice = filesIn(join(installed, "dist")).filter(
      (file) => carried.has(file) && !(`package/dist/${file}` in recipe.beside),
    );
    // The extension's own notices also name the protocol client.
    expect(twice).toEqual(["THIRD-PARTY-NOTICES.txt"]);
  });
});

it.each(["loomwright", "loomwright-language-server"])(
  "%s says plainly when it has not been built",
  (name) => {
    const bin = join(scratch, "unbuilt/bin");
    cpSync(join(library, "bin"), bin, { recursive: true });
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(bin, `${name}.cjs`)], {
      encoding: "utf8",
    });
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(new RegExp(`^${name}: this copy has not been built yet .* Run: npm run build\n$`));
  },
);

function write(file: string, text: string): void {
  mkdirSync(home, { recursive: true });
  writeFileSync(join(home, file), text);
}

/** Runs to its end; any failure fails the test with all output. */
function run(command: string, words: readonly string[], cwd: string): { readonly stdout: string } {
  const { status, stdout, stderr, error } = spawnSync(command, words, { cwd, encoding: "utf8" });
  if (error || status !== 0)
    throw new Error(`${command} ${words.join(" ")} ended with ${status}\n${error ?? ""}${stdout}${stderr}`);
  return { stdout };
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .sort();
}
