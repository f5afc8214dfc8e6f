import { cpSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { version } from "../../library/package.json";
import { CommandTester, samplePlans } from "./command.tester.ts";
import { jsonReportSchema } from "./report-schema.ts";
import { askedShard, joinShares, shardOf, shareLength, shareOf } from "./shard.ts";

const examples = fileURLToPath(new URL("../../examples", import.meta.url));
const formats = ["text", "json", "sarif", "annotations"];

let project: CommandTester;
beforeEach(() => {
  project = new CommandTester();
});
afterEach(() => project.dispose());

describe("shares", () => {
  const all = Array.from({ length: 23 }, (_, place) => `${place}`);

  test.each([1, 2, 3, 7, 22, 23, 24, 40])(
    "of %i: each plan in one of them, evenly, and joined in order",
    (of) => {
      const shares = Array.from({ length: of }, (_, place) => shareOf(all, { index: place + 1, of }));
      expect([...joinShares(shares)]).toEqual(all);
      expect(shares.map(({ length }) => length)).toEqual(
        shares.map((_, place) => shareLength(shardOf({ index: place + 1, of }, all))),
      );
      const lengths = shares.map(({ length }) => length);
      expect(Math.max(...lengths) - Math.min(...lengths)).toBeLessThanOrEqual(1);
    },
  );

  test.each(["1/1", "1/4", "4/4", "9999/9999"])("%s is understood", (given) => {
    expect(askedShard(given)).toBeDefined();
  });

  test.each(["", "0/2", "3/2", "2", "1/0", "-1/2", "1/2/3", "a/b", "1 / 2", "1.5/2", "99999/99999"])(
    "%j is refused",
    async (given) => {
      project.write("plan.ts", samplePlans.clean);
      const { code, out, err } = await project.run(["check", `--shard=${given}`]);
      expect(err).toContain("--shard takes I/N");
      expect([code, out]).toEqual([2, ""]);
    },
  );
});

describe("shards of every example, merged: the same bytes as one check of all", () => {
  const all = new CommandTester();
  /** One check of all judges every plan; the shards take its results, which `check-cache.test.ts` holds to be the same. */
  const kept = { folder: join(all.around, "kept"), tool: () => "this test" };
  const direct = new Map<string, Awaited<ReturnType<CommandTester["run"]>>>();

  beforeAll(async () => {
    // The point at which an endless plan is stopped depends on the machine.
    cpSync(examples, all.folder, { recursive: true, filter: (path) => !path.endsWith("endless.ts") });
    for (const format of formats) direct.set(format, await all.run(["check", "--format", format], { kept }));
  }, 120_000);
  afterAll(() => all.dispose());

  test.each([1, 3, 50])("%i of them", async (of) => {
    const files = Array.from({ length: of }, (_, place) => `shard ${of - place}.json`);
    for (const [place, file] of files.entries()) {
      const words = ["check", "--format", "json", "--shard", `${of - place}/${of}`];
      const { out } = await all.run(words, { kept });
      expect(`${JSON.stringify(jsonReportSchema.parse(JSON.parse(out)), null, 2)}\n`).toBe(out);
      project.write(file, out);
    }
    for (const format of formats) {
      const merged = await project.run(["merge", ...files, "--format", format]);
      const { out, code } = direct.get(format)!;
      expect(merged.err).toBe("");
      expect(merged.out).toBe(format === "text" ? withoutFrames(out) : out);
      expect(merged.code).toBe(code);
    }
  });
});

describe("merge", () => {
  test("a share says of itself that it is one", async () => {
    project.write("a.ts", samplePlans.clean);
    project.write("b.ts", samplePlans.thin);
    const first = await project.run(["check", "--shard", "1/2"]);
    expect(first.out).toContain("Share 1 of 2: 1 of 2 plans. The rest was not checked here.");
    expect(first.code).toBe(0);
    expect((await project.run(["check", "--shard", "2/2"])).code).toBe(1);
  });

  test.each(formats)("a share without a plan is fine as %s", async (format) => {
    project.write("plan.ts", samplePlans.thin);
    const { code, out, err } = await project.run(["check", "--shard", "2/2", "--format", format]);
    expect([code, err]).toEqual([0, ""]);
    expect(out).not.toBe("");
  });

  test("one whole result can be written in another format", async () => {
    project.write("plan.ts", samplePlans.network);
    await written("whole.json", []);
    const merged = await project.run(["merge", "whole.json"]);
    const direct = await project.run(["check"]);
    expect(merged).toEqual({ ...direct, out: withoutFrames(direct.out) });
  });

  test.each([
    [samplePlans.clean, samplePlans.clean, [], 0],
    [samplePlans.clean, samplePlans.thin, [], 1],
    [samplePlans.thin, samplePlans.half, [], 2],
    [samplePlans.droopy, samplePlans.droopy, [], 1],
    // Warnings count over all shards, not for each shard.
    [samplePlans.droopy, samplePlans.droopy, ["--max-warnings", "1"], 1],
    [samplePlans.droopy, samplePlans.droopy, ["--max-warnings", "2"], 0],
  ])("exits as one check of all would: %#", async (first, second, words, code) => {
    project.write("a.ts", first);
    project.write("b.ts", second);
    await written("1.json", ["--shard", "1/2"]);
    await written("2.json", ["--shard", "2/2"]);
    expect((await project.run(["merge", "1.json", "2.json", ...words])).code).toBe(code);
    expect((await project.run(["check", ...words])).code).toBe(code);
  });

  describe("refuses", () => {
    const shards: string[] = [];
    beforeEach(async () => {
      for (const name of ["a", "b", "c"]) project.write(`${name}.ts`, samplePlans.clean);
      if (shards.length === 0)
        for (const index of [1, 2, 3]) shards.push(await jsonOf(["--shard", `${index}/3`]));
      for (const [place, text] of shards.entries()) project.write(`${place + 1}.json`, text);
    });

    test("nothing, where all is in order", async () => {
      expect(await project.run(["merge", "3.json", "1.json", "2.json"])).toMatchObject({ code: 0, err: "" });
    });

    test.each([
      ["no file", [], "give the files to merge"],
      ["a file that is not there", ["9.json"], "there is no file 9.json"],
      ["a folder", ["."], "could not be read"],
      ["a missing shard", ["1.json", "3.json"], "of 3 shards, 2 is missing"],
      ["missing shards", ["2.json"], "of 3 shards, 1, 3 are missing"],
      ["a shard twice", ["1.json", "2.json", "1.json", "3.json"], "1.json and 1.json are both shard 1 of 3"],
    ])("%s", async (_, files, said) => {
      await refused(files, said);
    });

    test("shards of another check", async () => {
      await written("half.json", ["--shard", "2/2"]);
      await refused(["1.json", "half.json", "3.json"], "one is of 2, the other of 3");
      project.write("d.ts", samplePlans.clean);
      await written("2.json", ["--shard", "2/3"]);
      await refused(["1.json", "2.json", "3.json"], "one knew of 4 plans, the other of 3");
      project.remove("a.ts");
      await written("2.json", ["--shard", "2/3"]);
      await refused(["1.json", "2.json", "3.json"], "they knew of different plans");
    });

    test("a whole result among shards", async () => {
      await written("whole.json", []);
      await refused(["whole.json", "1.json"], "whole.json is the result of a whole check");
      await refused(
        ["1.json", "2.json", "3.json", "whole.json"],
        "whole.json is the result of a whole check",
      );
    });

    test.each([
      ["cut off", (text: string) => text.slice(0, -20), "2.json is not JSON, or was cut off"],
      ["empty", () => "", "2.json is not JSON"],
      ["null", () => "null", "2.json is not output"],
      ["something else", () => '{"tool":{"name":"other","version":"1.0.0"}}', "2.json is not output"],
      [
        "of another schemaVersion",
        (text: string) => text.replace('"schemaVersion": 1,', '"schemaVersion": 2,'),
        "has schemaVersion 2, and only reports of schemaVersion 1 are merged",
      ],
      [
        "of an earlier version, which had none",
        (text: string) => text.replace('"schemaVersion": 1,', ""),
        "has no schemaVersion, and only reports of schemaVersion 1 are merged",
      ],
      [
        "of another version",
        (text: string) => text.replace(version, "0.0.9"),
        "was written by version 0.0.9, and this is",
      ],
      [
        "spoilt",
        (text: string) => text.replace('"evaluated": true', '"evaluated": "yes"'),
        "2.json is damaged: plans.0.evaluated",
      ],
      [
        "with a property too many",
        (text: string) => text.replace('"evaluated"', '"also": 1, "evaluated"'),
        "2.json is damaged",
      ],
      [
        "renamed",
        (text: string) => text.replaceAll('"b.ts"', '"x.ts"'),
        "do not hold the plans that they list",
      ],
      [
        "about a plan less",
        (text: string) => JSON.stringify({ ...JSON.parse(text), plans: [] }),
        "does not hold the plans of shard 2",
      ],
      [
        "out of range",
        (text: string) => text.replace('"index": 2', '"index": 4'),
        "does not hold the plans of shard 4",
      ],
    ])("a file that is %s", async (_, spoilt, said) => {
      project.write("2.json", spoilt(project.read("2.json")));
      await refused(["1.json", "2.json", "3.json"], said);
    });
  });

  async function written(file: string, words: readonly string[]): Promise<void> {
    project.write(file, await jsonOf(words));
  }

  async function jsonOf(words: readonly string[]): Promise<string> {
    return (await project.run(["check", "--format", "json", ...words])).out;
  }

  async function refused(files: readonly string[], said: string): Promise<void> {
    const { code, out, err } = await project.run(["merge", ...files]);
    expect(err).toContain(said);
    expect(err).not.toMatch(/^\s+at /m);
    expect([code, out]).toEqual([2, ""]);
  }
});

test("a name in a report that was tampered with reaches the terminal as visible characters", async () => {
  project.write("plan.ts", samplePlans.thin);
  const { out } = await project.run(["check", "--format", "json"]);
  project.write("whole.json", out.replaceAll("winch", "\\u001b[2J"));
  expect((await project.run(["merge", "whole.json"])).out).not.toContain("\u001b");
});

/** Merging has no access to the lines of plans. */
function withoutFrames(text: string): string {
  return text
    .split("\n")
    .filter((row) => !/^ {2} *\d* │/.test(row))
    .join("\n");
}
