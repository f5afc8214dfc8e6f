import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { CommandTester, samplePlans } from "./command.tester.ts";
import { jsonReportSchema } from "./report-schema.ts";

let project: CommandTester;
beforeEach(() => {
  project = new CommandTester();
});
afterEach(() => project.dispose());

const { clean, thin } = samplePlans;
const path = (name: string) => join(project.folder, name);
const git = (...words: readonly string[]) =>
  execFileSync("git", words, { cwd: project.folder, stdio: "pipe" });
const bytes = (name: string, content: Uint8Array) => writeFileSync(path(name), content);

const pipeAt = (name: string) => execFileSync("sh", ["-c", 'mkfifo "$0"', path(name)]);

/** The plans that a whole check judged, and the files that it passed by. */
async function checked(...words: readonly string[]) {
  const { code, out } = await project.run(["check", ...words, "--format", "json"]);
  const { plans, passedBy, summary } = jsonReportSchema.parse(JSON.parse(out));
  return {
    code,
    plans: plans.map(({ file }) => file),
    passedBy: Object.fromEntries(passedBy.map(({ file, reason }) => [file, reason])),
    summary,
  };
}

describe("folders", () => {
  test.each(["build", "out", "dist", "vendor", "coverage", "bower_components", "lib", "target"])(
    "a builder's %s/ is judged like any other",
    async (folder) => {
      project.write(`${folder}/plan.ts`, thin);
      project.write(`${folder}/deeper/plan.js`, thin);
      expect(await checked()).toMatchObject({
        code: 1,
        plans: [`${folder}/deeper/plan.js`, `${folder}/plan.ts`],
        passedBy: {},
      });
    },
  );
  test("only packages, git's own folder and hidden ones are passed by without a word", async () => {
    project.write("plan.ts", clean);
    for (const folder of ["node_modules/a", ".git/a", ".cache"]) project.write(`${folder}/plan.ts`, thin);
    project.write("a/node_modules/plan.ts", thin);
    expect(await checked()).toMatchObject({ code: 0, plans: ["plan.ts"], passedBy: {} });
  });
  test("a hidden file is judged", async () => {
    project.write(".plan.ts", thin);
    expect(await checked()).toMatchObject({ code: 1, plans: [".plan.ts"] });
  });
  test("one called like a file is entered", async () => {
    project.write("plan.ts/inner.ts", thin);
    expect(await checked()).toMatchObject({ code: 1, plans: ["plan.ts/inner.ts"], passedBy: {} });
  });
  test("one that is too deep counts if a plan is in it", async () => {
    project.write("plan.ts", clean);
    project.write(`${"a/".repeat(60)}plan.ts`, thin);
    mkdirSync(path("b/".repeat(60)), { recursive: true });
    const { code, passedBy } = await checked();
    expect(code).toBe(2);
    expect(passedBy).toEqual({ [`${"a/".repeat(40)}a`]: "too-deep" });
  });
});

describe("compiled copies", () => {
  const copy = clean.replace("build({", "/* compiled */ build({");
  test.each([
    ["plan.ts", "build/plan.js"],
    ["plan.ts", "plan.js"],
    ["src/plan.ts", "dist/plan.js"],
    ["src/boat/plan.ts", "out/boat/plan.js"],
    ["src/boat/plan.ts", "out/src/boat/plan.js"],
    ["plan.mts", "build/plan.mjs"],
    ["a/src/plan.ts", "a/lib/plan.js"],
  ])("of %s: %s", async (source, compiled) => {
    project.write(source, clean);
    project.write(compiled, copy);
    expect(await checked()).toMatchObject({
      code: 0,
      plans: [source],
      passedBy: { [compiled]: "compiled-copy" },
    });
  });
  test.each([
    ["another name", "plan.ts", "build/other.js"],
    ["another folder", "a/plan.ts", "b/plan.js"],
    ["another kind of module", "plan.mts", "build/plan.js"],
    ["TypeScript itself", "plan.ts", "build/plan.ts"],
  ])("are not told by %s alone: %s and %s", async (_, source, other) => {
    project.write(source, clean);
    project.write(other, copy);
    expect((await checked()).plans).toEqual([source, other].sort());
  });
  test("a script with a figure of its own is a plan of its own, unless it says that it was compiled", async () => {
    project.write("plan.ts", clean);
    project.write("build/plan.js", thin);
    expect(await checked()).toMatchObject({ code: 1, plans: ["build/plan.js", "plan.ts"] });
    project.write("build/plan.js", `${thin}//# sourceMappingURL=plan.js.map\n`);
    expect(await checked()).toMatchObject({ code: 0, passedBy: { "build/plan.js": "compiled-copy" } });
  });
  test("one that is named is judged", async () => {
    project.write("plan.ts", clean);
    project.write("build/plan.js", copy);
    expect(await checked("build/plan.js")).toMatchObject({ plans: ["build/plan.js"], passedBy: {} });
  });
});

describe("ignored by git", () => {
  beforeEach(() => {
    git("init", "--quiet");
    project.write(".gitignore", "build/\n*.draft.ts\n");
    project.write("plan.ts", clean);
  });
  test("is listed, and changes no exit code", async () => {
    project.write("build/plan.ts", thin);
    project.write("a [b] *?.draft.ts", thin);
    project.write(":c.draft.ts", thin);
    const ignored = { "build/plan.ts": "ignored-by-git", "a [b] *?.draft.ts": "ignored-by-git" };
    expect(await checked()).toMatchObject({
      code: 0,
      plans: ["plan.ts"],
      passedBy: { ...ignored, ":c.draft.ts": "ignored-by-git" },
    });
  });
  test("is not so if git tracks it, or if the folder itself was named", async () => {
    project.write("build/plan.ts", thin);
    expect(await checked("build")).toMatchObject({ code: 1, plans: ["build/plan.ts"] });
    git("add", "--force", "build/plan.ts");
    expect(await checked()).toMatchObject({ code: 1, plans: ["build/plan.ts", "plan.ts"], passedBy: {} });
  });
  test("a repository within this one has rules of its own", async () => {
    project.write("inner/one.draft.ts", thin);
    execFileSync("git", ["init", "--quiet"], { cwd: path("inner") });
    expect((await checked()).plans).toEqual(["inner/one.draft.ts", "plan.ts"]);
  });
  test("what a plan imports was judged with it", async () => {
    project.write("lamps.draft.ts", thin);
    project.write("plan.ts", `${clean}import "./lamps.draft.ts";\n`);
    expect(await checked()).toMatchObject({ code: 1, plans: ["plan.ts"], passedBy: {} });
  });
  test("as soon as it is not, it is judged, whatever is kept of earlier runs", async () => {
    project.write("one.draft.ts", thin);
    const kept = { folder: join(project.around, "kept"), tool: () => "tool" };
    expect((await project.run(["check"], { kept })).code).toBe(0);
    expect((await project.run(["check"], { kept })).code).toBe(0);
    project.write(".gitignore", "");
    expect((await project.run(["check"], { kept })).code).toBe(1);
  });
  test.each(["number", "report"])(
    "%s of a folder writes beside no such file, and beside no copy",
    async (command) => {
      project.write("a/b.draft.ts", samplePlans.network);
      project.write("dist/plan.js", clean);
      const { out, err } = await project.run([command, "."]);
      expect(err).toContain("a/b.draft.ts is ignored by git");
      expect(err).toContain("dist/plan.js is a compiled copy of plan.ts");
      expect(out).not.toMatch(/draft|dist/);
      expect(
        execFileSync("find", [".", "-name", "*.wire-numbers.txt", "-o", "-name", "*.html"], {
          cwd: project.folder,
        }).toString(),
      ).not.toMatch(/draft|dist/);
    },
  );
});

describe("files that cannot be read as a plan are listed, and the answer is 2", () => {
  beforeEach(() => project.write("plan.ts", clean));
  const wide = Buffer.from(thin, "utf16le");
  const cases: Readonly<Record<string, readonly [reason: string, make: () => unknown]>> = {
    "more than 4 MiB": ["too-large", () => project.write("odd.ts", thin + " ".repeat(4 * 1024 * 1024))],
    "bytes that are no UTF-8": [
      "text-not-utf8",
      () => bytes("odd.ts", Buffer.from(`${thin}// \xe9\n`, "latin1")),
    ],
    "UTF-16": ["text-not-utf8", () => bytes("odd.ts", Buffer.concat([Buffer.from([0xff, 0xfe]), wide]))],
    "UTF-16, big endian": [
      "text-not-utf8",
      () => bytes("odd.ts", Buffer.concat([Buffer.from([0xfe, 0xff]), Buffer.from(wide).swap16()])),
    ],
    "UTF-16 without a mark": ["text-not-utf8", () => bytes("odd.ts", wide)],
    "a pipe": ["unreadable", () => pipeAt("odd.ts")],
    "a call of require": [
      "require",
      () => project.write("odd.ts", 'const { circuit } = require("loomwright");'),
    ],
    "a call of import": ["require", () => project.write("odd.ts", 'const l = await import("loomwright");')],
  };
  test.each(Object.entries(cases))("%s", async (_, [reason, make]) => {
    make();
    const all = await checked();
    expect(all).toMatchObject({ code: 2, plans: ["plan.ts"], passedBy: { "odd.ts": reason } });
    expect(all.summary).toMatchObject({ plans: 1, notJudged: 1, passedBy: 1 });
    // A named file is not reported as "no plan".
    expect(await checked("odd.ts")).toMatchObject({ code: 2, plans: [], passedBy: { "odd.ts": reason } });
    const { code, err } = await project.run(["number"]);
    expect([code, err]).toEqual([2, expect.stringContaining("odd.ts")]);
    for (const format of ["text", "sarif", "annotations"])
      expect((await project.run(["check", "--format", format])).out).toContain("odd.ts");
  });
  test.each(Object.entries(cases).filter(([, [reason]]) => reason !== "require"))(
    "%s: the finding of a plan that imports it is at the import",
    async (_, [, make]) => {
      make();
      // A later candidate must not take its place.
      project.write("odd.js", clean);
      project.write("plan.ts", `import "loomwright";\nimport "./odd";\n`);
      const { code, out } = await project.run(["check", "plan.ts"]);
      expect(code).toBe(2);
      expect(out).toMatch(/"\.\/odd" (?:is|cannot be read)/);
      expect(out).toContain("plan.ts:2:8");
    },
  );
  test("a socket", async () => {
    const server = createServer();
    await new Promise<void>((done) => server.listen(path("odd.ts"), done));
    try {
      expect(await checked()).toMatchObject({ code: 2, passedBy: { "odd.ts": "unreadable" } });
    } finally {
      server.close();
    }
  });
  test("a name that is not UTF-8, and a folder of such a name", async () => {
    const odd = Buffer.concat([Buffer.from(`${project.folder}/od`), Buffer.from([0xe9])]);
    writeFileSync(Buffer.concat([odd, Buffer.from(".ts")]), thin);
    mkdirSync(odd);
    writeFileSync(Buffer.concat([odd, Buffer.from("/plan.ts")]), thin);
    expect(await checked()).toMatchObject({
      code: 2,
      plans: ["plan.ts"],
      passedBy: { "od%E9": "name-not-utf8", "od%E9.ts": "name-not-utf8" },
    });
  });
  test("neither a large file nor a pipe that has nothing to do with plans", async () => {
    project.write("data.js", " ".repeat(5 * 1024 * 1024));
    project.write("comment.cjs", '// require("loomwright")\n');
    pipeAt("data.fifo");
    expect(await checked()).toMatchObject({ code: 0, passedBy: {} });
  });
});

describe("links are not followed", () => {
  test("to a plan, to a folder with one, to nothing, and to itself", async () => {
    project.write("plan.ts", clean);
    mkdirSync(join(project.around, "other"));
    writeFileSync(join(project.around, "other/plan.ts"), thin);
    symlinkSync("plan.ts", path("link.ts"));
    symlinkSync("../other", path("folder"));
    symlinkSync("gone.ts", path("nothing.ts"));
    symlinkSync("self.ts", path("self.ts"));
    symlinkSync("package.json", path("data.ts"));
    mkdirSync(join(project.around, "pictures"));
    symlinkSync("../pictures", path("pictures"));
    expect(await checked()).toMatchObject({
      code: 0,
      plans: ["plan.ts"],
      passedBy: { "link.ts": "linked", folder: "linked", "nothing.ts": "linked", "self.ts": "linked" },
    });
  });
});

describe("wire numbers whose plan is gone", () => {
  beforeEach(async () => {
    project.write("bus.ts", samplePlans.network);
    await project.run(["number", "bus.ts"]);
    project.remove("bus.ts");
    project.write("shed.ts", samplePlans.network);
  });
  test.each(["check", "number", "report", "schedule"])("%s names them", async (command) => {
    for (const name of [".", "shed.ts"]) {
      const { out, err } = await project.run([command, name, ...(command === "number" ? ["--dry-run"] : [])]);
      expect(out + err).toContain("bus.wire-numbers.txt keeps the wire numbers of bus.ts");
    }
  });
  test("with its plan there, nothing is said", async () => {
    project.write("bus.ts", samplePlans.network);
    expect(await checked()).toMatchObject({ passedBy: {} });
  });
});

test("where nothing was judged at all, the answer is 2", async () => {
  project.write("plan.ts", clean);
  project.remove("plan.ts");
  symlinkSync("gone.ts", path("link.ts"));
  const { code, out } = await project.run(["check"]);
  expect(code).toBe(2);
  expect(out).toContain("No plan was checked.");
});
