import { cpSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { sampled } from "../../tests/setup/sampled.ts";
import { CommandTester, samplePlans } from "./command.tester.ts";
import type { KeptResults } from "./host.ts";
import { resultCache } from "./result-cache.ts";

const examples = fileURLToPath(new URL("../../examples", import.meta.url));
const formats = ["text", "json", "sarif", "annotations"];

let project: CommandTester;
let kept: KeptResults;
beforeEach(() => {
  project = new CommandTester();
  kept = keptBy("one tool");
});
afterEach(() => project.dispose());

function keptBy(tool: string | undefined): KeptResults {
  return { folder: join(project.around, "kept"), tool: () => tool };
}

/** Runs `check`, and reports whether a result came from an earlier run: kept results get another circuit's name beforehand. */
async function check(words: readonly string[] = [], options: { cwd?: string; kept?: KeptResults } = {}) {
  const forged = await forge();
  const ran = await project.run(["check", ...words], { kept, ...options });
  const isKept = ran.out.includes("FORGED");
  if (isKept && !forged) throw new Error("nothing was forged");
  return { ...ran, isKept };
}

async function forge(): Promise<boolean> {
  const folder = join(kept.folder, "check");
  let forged = false;
  const cache = resultCache(folder);
  for (const key of names(folder)) {
    const text = cache.read(key);
    if (!text?.includes('"lamp"')) continue;
    await cache.write(key, text.replaceAll('"lamp"', '"FORGED"'));
    forged = true;
  }
  return forged;
}

function names(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

const droopy = samplePlans.droopy;

describe("an unchanged plan", () => {
  test("is taken from the run before", async () => {
    project.write("plan.ts", droopy);
    expect(await check()).toMatchObject({ code: 1, err: "", isKept: false });
    expect(await check()).toMatchObject({ code: 1, err: "", isKept: true });
  });

  test("says the same bytes in every format, of every example", async () => {
    for (const example of sampled("examples with kept results", readdirSync(examples).sort()))
      cpSync(join(examples, example), join(project.folder, example), {
        recursive: true,
        filter: (path) => !path.endsWith("endless.ts"),
      });
    await project.run(["check"], { kept });
    for (const format of sampled("formats of kept results", formats)) {
      const words = ["check", "--format", format];
      expect(await project.run(words, { kept })).toEqual(await project.run(words));
    }
  }, 120_000);

  test.each([
    ["the folder of the plan", "boat", []],
    ["the folder above", "", ["boat/plan.ts"]],
    ["a folder beside it", "hut", ["../boat/plan.ts"]],
  ])("is seen from %s with the names that it has from there", async (_, cwd, words) => {
    project.write("hut/.keep", "");
    project.write("boat/package.json", "{}");
    project.write("boat/plan.ts", `import "./lights.ts";\n${droopy}`);
    project.write("boat/lights.ts", samplePlans.thin);
    for (const format of formats) {
      const asked = ["check", ...words, "--format", format];
      await project.run(["check", "boat/plan.ts"], { kept });
      const again = await project.run(asked, { kept, cwd });
      expect(again).toEqual(await project.run(asked, { cwd }));
    }
    expect(await check(words, { cwd })).toMatchObject({ isKept: true });
  });

  test("is not judged anew because another one changed", async () => {
    project.write("a.ts", droopy);
    project.write("b.ts", samplePlans.clean.replace("lamp", "other"));
    await check();
    project.write("b.ts", samplePlans.thin);
    const { out, isKept } = await check();
    expect(isKept).toBe(true);
    expect(out).toContain("winch");
  });
});

describe("is checked anew", () => {
  const plan = `import "./lights";\n${droopy}`;
  const change: Readonly<Record<string, () => void>> = {
    "the plan itself": () => project.write("plan.ts", `${plan}// A line more.\n`),
    "a file that it imports": () => project.write("lights.ts", `${samplePlans.thin}// A line more.\n`),
    "a file that its import imports": () => project.write("sizes.ts", "export const size = 12;\n"),
    "a file that is gone": () => project.remove("sizes.ts"),
    "a file by which one that was there comes second": () => {
      project.remove("lights.ts");
      project.write("lights.tsx", samplePlans.clean);
    },
    "where it lies": () => {
      renameSync(project.folder, `${project.folder}-moved`);
      mkdirSync(project.folder);
      cpSync(`${project.folder}-moved`, join(project.folder, "deeper"), { recursive: true });
    },
    "Loomwright itself": () => {
      kept = keptBy("another tool");
    },
  };

  test.each(Object.keys(change))("what changed is %s", async (what) => {
    project.write("plan.ts", plan);
    project.write(
      "lights.ts",
      `import { size } from "./sizes.ts";\n${samplePlans.thin.replace("gauge: 12", "gauge: size")}`,
    );
    project.write("sizes.ts", "export const size = 10;\n");
    await check();
    expect((await check()).isKept).toBe(true);
    change[what]!();
    const { out, isKept } = await check();
    expect(isKept).toBe(false);
    expect(out).toBe((await project.run(["check"])).out);
  });

  test("a file appears where an import looks first", async () => {
    project.write("plan.ts", plan);
    project.write("lights/index.ts", samplePlans.clean.replace("lamp", "other"));
    await check();
    expect((await check()).isKept).toBe(true);
    project.write("lights.ts", samplePlans.thin);
    const { out, isKept } = await check();
    expect(isKept).toBe(false);
    expect(out).toContain("winch");
  });

  test("a file becomes part of another plan", async () => {
    project.write("plan.ts", droopy);
    await check();
    project.write("whole.ts", `import "./plan.ts";\n${samplePlans.clean}`);
    const { out } = await check();
    expect(out).toContain("whole.ts: 2 circuits");
    expect(out).toBe((await project.run(["check"])).out);
  });

  test("--fresh, which keeps what it finds", async () => {
    project.write("plan.ts", droopy);
    await check();
    expect((await check(["--fresh"])).isKept).toBe(false);
    expect((await project.run(["check"], { kept })).out).not.toContain("FORGED");
  });
});

describe("is not kept", () => {
  test("what a limit of time or records stopped", async () => {
    const making = 'import { circuit } from "loomwright";\n';
    project.write(
      "a.ts",
      `${making}circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\nfor (;;) {}\n`,
    );
    await check();
    expect((await check()).isKept).toBe(false);
  });

  test("what could not be read in time, in the plan or in a file that it imports", async () => {
    const slow = `${droopy}\n${"async(".repeat(80)}1${")".repeat(80)};\n`;
    project.write("plan.ts", slow);
    expect(await check()).toMatchObject({ code: 2 });
    expect(names(join(kept.folder, "check"))).toEqual([]);
    project.write("plan.ts", `import "./lamps.ts";\n${droopy}`);
    project.write("lamps.ts", slow);
    expect((await check()).code).toBe(2);
    const { out } = await check();
    expect(out).toContain("lamps.ts:");
    expect(out).toContain("could not be read within");
    expect(out).not.toContain("FORGED");
  });

  test("anything, in a folder inside of what is checked: a repository must not bring results along", async () => {
    project.write("plan.ts", droopy);
    kept = { folder: join(project.folder, ".kept"), tool: () => "one tool" };
    expect((await check()).code).toBe(1);
    expect(readdirSync(project.folder).sort()).toEqual(["package.json", "plan.ts"]);
  });

  test("anything, in the git repository around what is checked", async () => {
    project.write("boat/plan.ts", droopy);
    mkdirSync(join(project.folder, ".git"));
    kept = { folder: join(project.folder, "kept"), tool: () => "one tool" };
    await check([], { cwd: "boat" });
    expect(readdirSync(project.folder).sort()).toEqual([".git", "boat", "package.json"]);
  });

  test("anything, where it cannot be told what made a result, or where nothing can be written", async () => {
    project.write("plan.ts", droopy);
    kept = keptBy(undefined);
    expect(await check()).toMatchObject({ code: 1, err: "" });
    writeFileSync(join(project.around, "file"), "");
    kept = { folder: join(project.around, "file/kept"), tool: () => "one tool" };
    expect(await check()).toMatchObject({ code: 1, err: "" });
    expect(readdirSync(project.around).sort()).toEqual(["file", "project"]);
  });
});

describe("an entry that is not in order", () => {
  beforeEach(async () => {
    project.write("a.ts", droopy);
    project.write("b.ts", samplePlans.thin);
    await check();
  });

  const spoil: Readonly<Record<string, (text: string) => string>> = {
    "cut off": (text) => text.slice(0, -9),
    empty: () => "",
    "no JSON": () => "{",
    "of another shape": () => '{"file":"a.ts"}',
    "a list": () => "[]",
    "nested a million deep": () => "[".repeat(1_000_000),
    "with a number for a text": (text) => text.replace('"evaluated":true', '"evaluated":1'),
  };

  test.each(Object.keys(spoil))(
    "%s, under a checksum of its own: everything is worked out anew",
    async (how) => {
      const { out } = await project.run(["check"]);
      const cache = resultCache(join(kept.folder, "check"));
      for (const key of names(join(kept.folder, "check")))
        await cache.write(key, spoil[how]!(cache.read(key)!));
      expect(await project.run(["check"], { kept })).toMatchObject({ out, err: "" });
      // It is kept again.
      expect((await check()).isKept).toBe(true);
    },
  );

  test("put under each other's names", async () => {
    const { out } = await project.run(["check"]);
    const folder = join(kept.folder, "check");
    const all = names(folder).map((key) => readFileSync(join(folder, key)));
    for (const [place, key] of names(folder).entries())
      writeFileSync(join(folder, key), all[(place + 1) % all.length]!);
    expect(await project.run(["check"], { kept })).toMatchObject({ out, err: "" });
  });
});

test("several runs at once say the same, and leave no half a file behind", async () => {
  for (let place = 0; place < 6; place++)
    project.write(`build ${place}/plan.ts`, place % 2 ? droopy : samplePlans.network);
  const { out } = await project.run(["check"]);
  const runs = await Promise.all(Array.from({ length: 4 }, () => project.run(["check"], { kept })));
  expect(runs.map((ran) => ran.out)).toEqual(runs.map(() => out));
  expect(names(join(kept.folder, "check")).filter((name) => !/^[0-9a-f]{64}$/.test(name))).toEqual([]);
  expect((await check()).isKept).toBe(true);
});

test("whatever is edited, moved and deleted: with what was kept and without, the same is said", async () => {
  const texts = [
    ...[
      droopy,
      samplePlans.thin,
      samplePlans.clean,
      samplePlans.network,
      samplePlans.half,
      samplePlans.accepted,
    ],
    `import "./b";\n${samplePlans.clean}`,
    `import "./c.js";\n${droopy}`,
    `import { size } from "./d/index";\n${samplePlans.thin.replace("gauge: 12", "gauge: size")}`,
    "export const size = 10;\n",
    'export { size } from "../e.ts";\n',
    `${samplePlans.clean}throw new Error(new Error("here").stack);\n`,
    `import type { Nothing } from "./b.ts";\n${droopy}`,
  ];
  const files = ["a.ts", "b.ts", "b/index.ts", "c.js", "c.ts", "d/index.ts", "e.ts"];
  const edit = fc.record({
    file: fc.constantFrom(...files),
    text: fc.option(fc.constantFrom(...texts), { freq: 4 }),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 6 }), async (edits) => {
      for (const file of files)
        if (names(dirname(join(project.folder, file))).includes(file.split("/").at(-1)!))
          project.remove(file);
      for (const { file, text } of edits) {
        if (text !== null) project.write(file, text);
        else if (names(dirname(join(project.folder, file))).includes(file.split("/").at(-1)!))
          project.remove(file);
        const words = ["check", "--format", "json"];
        expect(await project.run(words, { kept })).toEqual(await project.run(words));
      }
    }),
    { numRuns: 12, seed: 20_250_301 },
  );
}, 120_000);
