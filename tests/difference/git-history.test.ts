import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { jsonDifferenceSchema } from "../../server/command/difference-json.ts";
import { sampled } from "../setup/sampled.ts";
import {
  type Answer,
  boat,
  runGit,
  type ScriptedRepository,
  scriptedRepository,
  sizes,
} from "./scripted-repository.ts";

type Difference = ReturnType<typeof jsonDifferenceSchema.parse>;

function read({ out }: Answer): Difference {
  return jsonDifferenceSchema.parse(JSON.parse(out));
}

/** The full description of one plan's changes, a line each, in order. */
function lines(difference: Difference): string[] {
  return difference.plans.flatMap((plan) => {
    const head = `${plan.movedFrom === undefined ? "" : `${plan.movedFrom} → `}${plan.file}: ${plan.state}`;
    if (plan.state !== "compared") return [head];
    return [
      head,
      ...plan.added.map(({ kind, name }) => `+ ${kind} ${name}`),
      ...plan.removed.map(({ kind, name }) => `- ${kind} ${name}`),
      ...plan.changed.flatMap(({ kind, name, renamedFrom, properties }) => [
        ...(renamedFrom === undefined ? [] : [`${kind} ${renamedFrom} is now ${name}`]),
        ...properties.map(
          ({ property, before, after }) => `${kind} ${name}: ${property} ${before} → ${after}`,
        ),
      ]),
      ...plan.findings.came.map(({ rule, subject }) => `came: ${rule} (${subject})`),
      ...plan.findings.went.map(({ rule, subject }) => `went: ${rule} (${subject})`),
    ];
  });
}

describe("a history of one plan", () => {
  let repository: ScriptedRepository;

  beforeAll(() => {
    const made = scriptedRepository();
    repository = made;
    made.write("package.json", "{}");
    made.write("boat.ts", boat);
    made.write("sizes.ts", sizes);
    made.commit("first");
    made.edit(
      "boat.ts",
      'circuit({ name: "bilge',
      'circuit({ name: "horn", load: 4, oneWayFt: 9, gauge: 14, protect: 5 });\ncircuit({ name: "bilge',
    );
    made.commit("horn-added");
    made.edit("sizes.ts", "14", "10");
    made.commit("thicker");
    made.edit("boat.ts", '"cabin lights"', '"saloon lights"');
    made.commit("renamed");
    made.edit("boat.ts", 'circuit({ name: "horn", load: 4, oneWayFt: 9, gauge: 14, protect: 5 });\n', "");
    made.edit(
      "boat.ts",
      'circuit({ name: "bilge pump", load: 6, oneWayFt: 10, gauge: 12, protect: 10 });',
      `function pump(name: string, oneWayFt: number) {
  return circuit({ name, load: 6, oneWayFt, gauge: 12, protect: 10 });
}
// Turned around, and made by a function.
circuit({ name: "horn", load: 4, oneWayFt: 9, gauge: 14, protect: 5 });
const saloon = pump("bilge pump", 10);`,
    );
    made.edit("boat.ts", "const cabin = ", "export const lights = ");
    made.commit("moved-to-a-factory");
    made.edit("boat.ts", 'circuit({ name: "horn", load: 4, oneWayFt: 9, gauge: 14, protect: 5 });\n', "");
    made.commit("horn-removed");
    made.edit("boat.ts", "load: 6, oneWayFt,", "load: 16, oneWayFt,");
    made.commit("too-much");
    made.edit("boat.ts", "return circuit({", "return circuit({{");
    made.commit("half-typed");
    made.edit("boat.ts", "return circuit({{ name, load: 16,", "return circuit({ name, load: six,");
    made.commit("throws");
    made.edit("boat.ts", "load: six,", "load: 6,");
    made.commit("right-again");
    mkdirSync(join(made.folder, "plans"));
    made.git("mv", "boat.ts", "plans/tender.ts");
    made.git("mv", "sizes.ts", "plans/sizes.ts");
    made.commit("moved");
  });
  afterAll(() => repository.remove());

  const revisions: readonly (readonly [string, string, readonly string[]])[] = [
    ["first", "first", ["boat.ts: compared"]],
    ["first", "horn-added", ["boat.ts: compared", "+ circuit horn"]],
    ["horn-added", "thicker", ["boat.ts: compared", "circuit cabin lights: size 14 AWG → 10 AWG"]],
    ["thicker", "renamed", ["boat.ts: compared", "circuit cabin lights is now saloon lights"]],
    ["renamed", "moved-to-a-factory", ["boat.ts: compared"]],
    ["moved-to-a-factory", "horn-removed", ["boat.ts: compared", "- circuit horn"]],
    ["right-again", "moved", ["boat.ts → plans/tender.ts: compared"]],
    ["moved", "right-again", ["plans/tender.ts → boat.ts: compared"]],
    [
      "first",
      "moved",
      [
        "boat.ts → plans/tender.ts: compared",
        "circuit cabin lights is now saloon lights",
        "circuit saloon lights: size 14 AWG → 10 AWG",
      ],
    ],
  ];

  test.each(sampled("revisions to compare", revisions))("from %s to %s", async (before, after, expected) => {
    const answer = await repository.loomwright("diff", before, after, "--format", "json");
    expect(answer.err).toBe("");
    expect(lines(read(answer))).toEqual(expected);
    expect(answer.code).toBe(0);
  });

  test("a load that is too much for its fuse: 1, and the text names what came", async () => {
    const { code, out } = await repository.loomwright("diff", "horn-removed", "too-much");
    expect(code).toBe(1);
    expect(out).toMatch(/circuit bilge pump +load +6 A +16 A/);
    expect(out).toMatch(/new +error +bilge pump · protection\/below-load/);
    expect(out).toContain("There are new findings.");
    const back = await repository.loomwright("diff", "too-much", "horn-removed");
    expect(back.code).toBe(0);
    expect(back.out).toMatch(/gone +error +bilge pump · protection\/below-load/);
  });

  test("a state that cannot be evaluated is said, and the other side is shown", async () => {
    const half = await repository.loomwright("diff", "half-typed", "right-again");
    expect(half.code).toBe(0);
    expect(half.out).toMatch(
      /As of half-typed \([0-9a-f]{7}\) this plan could not be evaluated: boat\.ts, line 7, is not complete TypeScript/,
    );
    expect(half.out).toMatch(/As of right-again \([0-9a-f]{7}\): 2 circuits; no findings\./);
    const threw = await repository.loomwright("diff", "throws", "right-again");
    expect(threw.out).toMatch(/could not be evaluated: boat\.ts, line 7: .*six/);
    // The state of the present build is unknown.
    expect((await repository.loomwright("diff", "right-again", "throws")).code).toBe(2);
    expect((await repository.loomwright("diff", "right-again", "half-typed", "--format", "json")).code).toBe(
      2,
    );
  });

  test("a plan that was as faulty before, and was not touched, stands in nobody's way", async () => {
    const { code, out } = await repository.loomwright("diff", "throws", "throws");
    expect(code).toBe(0);
    expect(out).toContain("boat.ts: could not be evaluated, as before: its text has not changed");
  });

  test("one revision against the working tree, in which nothing is committed", async () => {
    const file = join(repository.folder, "plans/tender.ts");
    const text = readFileSync(file, "utf8");
    try {
      expect(lines(read(await repository.loomwright("diff", "HEAD", "--format", "json")))).toEqual([
        "plans/tender.ts: compared",
      ]);
      writeFileSync(file, text.replace("oneWayFt: 12", "oneWayFt: 13"));
      const changed = read(await repository.loomwright("diff", "HEAD", "--format", "json"));
      expect(changed.after).toBe("the working tree");
      expect(lines(changed)).toContain("circuit saloon lights: length 12 ft → 13 ft");
      // Other line endings are no difference.
      writeFileSync(file, text.replaceAll("\n", "\r\n"));
      expect((await repository.loomwright("diff", "HEAD")).out).toContain("no change in the build");
    } finally {
      writeFileSync(file, text);
    }
  });

  test("below a folder, a revision is the same folder's", async () => {
    const below = await repository.loomwrightIn("plans", "diff", "HEAD", "--format", "json");
    expect(lines(read(below))).toEqual(["tender.ts: compared"]);
    const named = await repository.loomwright("diff", "right-again", "moved", "./plans", "--format", "json");
    expect(lines(read(named))).toEqual(["tender.ts: added"]);
  });

  test("a bare clone, a worktree and a shallow clone", async () => {
    const { folder } = repository;
    runGit(folder, ["clone", "--quiet", "--bare", ".", "bare.git"]);
    runGit(folder, ["worktree", "add", "--quiet", "--detach", "beside", "renamed"]);
    runGit(folder, ["clone", "--quiet", "--depth=1", `file://${folder}`, "shallow"]);
    try {
      const bare = await repository.loomwrightIn(
        "bare.git",
        "diff",
        "first",
        "horn-added",
        "--format",
        "json",
      );
      expect(lines(read(bare))).toEqual(["boat.ts: compared", "+ circuit horn"]);
      const lonely = await repository.loomwrightIn("bare.git", "diff", "first");
      expect(lonely).toMatchObject({ code: 2, out: "" });
      expect(lonely.err).toContain("there is no working tree here to compare with: give a second revision");
      const beside = await repository.loomwrightIn("beside", "diff", "thicker", "--format", "json");
      expect(lines(read(beside))).toEqual(["boat.ts: compared", "circuit cabin lights is now saloon lights"]);
      const shallow = await repository.loomwrightIn("shallow", "diff", "HEAD~1");
      expect(shallow).toMatchObject({ code: 2, out: "" });
      expect(shallow.err).toContain("its history was cut off when it was cloned");
    } finally {
      runGit(folder, ["worktree", "remove", "--force", "beside"]);
      for (const name of ["bare.git", "shallow"]) rmSync(join(folder, name), { recursive: true });
    }
  });

  const refused: readonly (readonly [readonly string[], string])[] = [
    [["nowhere"], "'nowhere' is not a folder, and there is no revision 'nowhere' in this repository"],
    [["./nowhere"], "there is no folder './nowhere'"],
    [["first..renamed"], "'first..renamed' names a range; give its two ends as two arguments"],
    [["package.json"], "'package.json' is a file; give its folder"],
    [["./plans"], "'./plans' is a folder; give the other state"],
    [[], "give a revision to compare with"],
    [["first", "renamed", "moved"], "'diff' compares two states"],
    [["HEAD", "--format", "csv"], "--format is text, markdown or json, not 'csv'"],
  ];

  test.each(sampled("revisions to compare", refused))(
    "diff %j is answered with a sentence",
    async (words, sentence) => {
      const { code, out, err } = await repository.loomwright("diff", ...words);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err).toContain(sentence);
      expect(err).not.toMatch(/\n +at /);
    },
  );

  test("a revision that begins with a dash reaches git as a revision or not at all", async () => {
    const { code, err } = await repository.loomwright("diff", "--", "--output=x");
    expect(code).toBe(2);
    expect(err).toContain("'--output=x' is not the name of a revision");
  });

  test("a word that is a branch and a folder is the branch, and that is said", async () => {
    repository.git("branch", "plans", "renamed");
    try {
      const { err, out } = await repository.loomwright("diff", "plans", "thicker", "--format", "json");
      expect(err).toContain(
        "'plans' is a revision and a folder: the revision is taken; ./plans is the folder.",
      );
      expect(lines(JSON.parse(out))).toEqual([
        "boat.ts: compared",
        "circuit saloon lights is now cabin lights",
      ]);
    } finally {
      repository.git("branch", "--quiet", "--delete", "--force", "plans");
    }
  });
});

describe("other folders", () => {
  const made: ScriptedRepository[] = [];
  const repository = (options?: { readonly init: boolean }) => {
    const one = scriptedRepository(options);
    made.push(one);
    return one;
  };
  afterEach(() => {
    for (const one of made.splice(0)) one.remove();
  });

  test("two folders, without any repository", async () => {
    const one = repository({ init: false });
    for (const folder of ["old", "new"]) {
      one.write(`${folder}/boat.ts`, boat);
      one.write(`${folder}/sizes.ts`, sizes);
    }
    one.edit("new/boat.ts", "load: 3", "load: 4");
    const answer = await one.loomwright("diff", "old", "new", "--format", "json");
    expect(answer.err).toBe("");
    expect(lines(read(answer))).toContain("circuit cabin lights: load 3 A → 4 A");
    expect(read(answer)).toMatchObject({ before: "old", after: "new" });
    const lost = await one.loomwright("diff", "HEAD");
    expect(lost.code).toBe(2);
    expect(lost.err).toContain("is not in a git repository");
  });

  test("a repository without a commit", async () => {
    const one = repository();
    one.write("boat.ts", boat);
    const { code, err } = await one.loomwright("diff", "HEAD");
    expect(code).toBe(2);
    expect(err).toContain("this repository has no commit yet");
  });

  test("two plans in one folder; one more; one that is gone", async () => {
    const one = repository();
    one.write("boat.ts", boat);
    one.write("sizes.ts", sizes);
    const hut =
      'import { circuit } from "loomwright";\ncircuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n';
    one.write("hut.ts", hut);
    one.commit("both");
    rmSync(join(one.folder, "hut.ts"));
    one.write("shed.ts", hut.replace('"lamp"', '"saw"').replace("load: 2", "load: 9"));
    const answer = await one.loomwright("diff", "both", "--format", "json");
    expect(lines(read(answer))).toEqual(["boat.ts: compared", "shed.ts: added", "hut.ts: removed"]);
    // A lamp's fuse at 9 A: a new plan with an error is worse than none.
    expect(answer.code).toBe(1);
    const text = await one.loomwright("diff", "both");
    expect(text.out).toMatch(/shed\.ts: a plan that is not in both \([0-9a-f]{7}\): 1 circuit; 1 error/);
    expect(text.out).toMatch(/hut\.ts: a plan that is no longer in the working tree: 1 circuit; 1 hint/);
  });

  test("a folder without a plan", async () => {
    const one = repository();
    one.write("notes.ts", "export {};\n");
    one.commit("notes");
    const { code, out, err } = await one.loomwright("diff", "notes");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/no plan found, neither in notes \([0-9a-f]{7}\) nor in the working tree/);
  });

  test("a submodule, and a repository that merely lies in the folder, are said and not entered", async () => {
    const inner = repository();
    inner.write("boat.ts", boat);
    inner.write("sizes.ts", sizes);
    inner.commit("inner");
    const one = repository();
    one.write("hut.ts", boat.replace("./sizes.ts", "./thin.ts"));
    one.write("thin.ts", sizes);
    one.git("-c", "protocol.file.allow=always", "submodule", "--quiet", "add", inner.folder, "shared");
    one.commit("outer");
    one.write("lent/hut.ts", boat);
    one.git("init", "--quiet", "lent");
    const { out, code } = await one.loomwright("diff", "outer");
    expect(out).toContain("shared is a repository of its own: plans in it are not compared.");
    expect(out).toContain("lent is a repository of its own: plans in it are not compared.");
    expect(out).toContain("hut.ts: no change in the build");
    expect(out).not.toContain("shared/boat.ts");
    expect(code).toBe(0);
  });

  test("files that are only imported, also from folders that a walk passes by", async () => {
    const one = repository();
    one.write("boat.ts", boat.replace("./sizes.ts", "./build/sizes.ts"));
    one.write("build/sizes.ts", 'export { thin } from "../more/thin";\n');
    one.write("more/thin.ts", sizes);
    one.commit("deep");
    one.edit("more/thin.ts", "14", "12");
    const answer = await one.loomwright("diff", "deep", "--format", "json");
    expect(lines(read(answer))).toEqual(["boat.ts: compared", "circuit cabin lights: size 14 AWG → 12 AWG"]);
  });

  test("no git on this computer", async () => {
    const one = repository();
    for (const folder of ["a", "b"]) {
      one.write(`${folder}/boat.ts`, boat);
      one.write(`${folder}/sizes.ts`, sizes);
    }
    const { PATH } = process.env;
    try {
      process.env.PATH = one.folder;
      const { code, err } = await one.loomwright("diff", "HEAD");
      expect(code).toBe(2);
      expect(err).toContain("git, which reads older states of a plan, was not found on this computer");
      // Two folders need no git.
      expect((await one.loomwright("diff", "a", "b")).code).toBe(0);
    } finally {
      process.env.PATH = PATH;
    }
  });
});
