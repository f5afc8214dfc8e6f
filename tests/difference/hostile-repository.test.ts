import { createHash } from "node:crypto";
import {
  chmodSync,
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { delimiter, join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { jsonDifferenceSchema } from "../../server/command/difference-json.ts";
import { sampled } from "../setup/sampled.ts";
import { boat, type ScriptedRepository, scriptedRepository, sizes } from "./scripted-repository.ts";

/*
 * A repository is a stranger's: its configuration, names and objects try to make git run, write or read files that do not belong
 * to the plan.
 */

const made: ScriptedRepository[] = [];
afterEach(() => {
  for (const one of made.splice(0)) one.remove();
});

function repository(): ScriptedRepository {
  const one = scriptedRepository();
  made.push(one);
  one.write("boat.ts", boat);
  one.write("sizes.ts", sizes);
  one.commit("first");
  one.edit("boat.ts", "load: 3", "load: 4");
  return one;
}

/** Every file of the folder and of its repository, with its content: index, HEAD and configuration are among them. */
function everything(folder: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    const { mode } = lstatSync(path);
    found[path] = entry.isFile()
      ? `${mode} ${createHash("sha256").update(readFileSync(path)).digest("hex")}`
      : `${mode} ${entry.isSymbolicLink() ? readlinkSync(path) : ""}`;
  }
  return found;
}

/** A program that leaves a trace, and the trace. */
function trap(one: ScriptedRepository, file: string): { readonly program: string; readonly trace: string } {
  const trace = join(one.folder, `${file}.was-run`);
  one.write(file, `#!/bin/sh\ntouch '${trace}'\nexit 1\n`);
  chmodSync(join(one.folder, file), 0o755);
  return { program: join(one.folder, file), trace };
}

async function asksFor(one: ScriptedRepository, ...words: readonly string[]) {
  const before = everything(one.folder);
  const answer = await one.loomwright("diff", ...words);
  expect(everything(one.folder)).toEqual(before);
  return answer;
}

/** The change reported in every repository here that can be read at all. */
const change = "cabin lights";

test("the trap works: git itself would run it", () => {
  const one = repository();
  const { program, trace } = trap(one, "spring");
  one.git("config", "core.fsmonitor", program);
  one.git("status", "--short");
  expect(existsSync(trace)).toBe(true);
});

const traps: readonly (readonly [string, (one: ScriptedRepository, program: string) => void])[] = [
  ["a file system monitor", (one, program) => one.git("config", "core.fsmonitor", program)],
  [
    "aliases named as what is asked for",
    (one, program) => {
      for (const name of ["rev-parse", "ls-tree", "cat-file", "rev-list"])
        one.git("config", `alias.${name}`, `!${program}`);
    },
  ],
  [
    "pagers",
    (one, program) => {
      one.git("config", "core.pager", program);
      for (const name of ["ls-tree", "cat-file", "rev-list"]) one.git("config", `pager.${name}`, program);
    },
  ],
  [
    "differences and texts made by programs",
    (one, program) => {
      one.git("config", "diff.external", program);
      one.git("config", "diff.plan.textconv", program);
      one.git("config", "diff.plan.command", program);
      one.git("config", "filter.plan.smudge", program);
      one.git("config", "filter.plan.clean", program);
      one.git("config", "filter.plan.process", program);
      one.write(".git/info/attributes", "*.ts diff=plan filter=plan\n");
    },
  ],
  [
    "hooks",
    (one, program) => {
      for (const hook of ["post-checkout", "post-index-change", "reference-transaction", "pre-auto-gc"])
        one.write(`.git/hooks/${hook}`, readFileSync(program, "utf8"));
      for (const hook of readdirSync(join(one.folder, ".git/hooks")))
        chmodSync(join(one.folder, ".git/hooks", hook), 0o755);
      one.git("config", "core.hooksPath", join(one.folder, ".git/hooks"));
    },
  ],
  [
    "a configuration that is included",
    (one, program) => {
      one.write(
        ".git/more",
        `[core]\n\tfsmonitor = ${program}\n\teditor = ${program}\n\taskPass = ${program}\n\tsshCommand = ${program}\n`,
      );
      one.git("config", "include.path", "more");
    },
  ],
];

test.each(sampled("traps in a repository", traps))(
  "%s: nothing runs, nothing is written, and the difference is told",
  async (_, setUp) => {
    const one = repository();
    const { program, trace } = trap(one, "spring");
    setUp(one, program);
    rmSync(trace, { force: true });
    const { code, out, err } = await asksFor(one, "first");
    expect(err).toBe("");
    expect(out).toContain(change);
    expect(code).toBe(0);
    expect(existsSync(trace)).toBe(false);
  },
);

test("objects that are missing are not fetched, by whatever the repository calls a remote", async () => {
  const one = repository();
  const { program, trace } = trap(one, "spring");
  const blob = one.git("rev-parse", "first:boat.ts").trim();
  rmSync(join(one.folder, ".git/objects", blob.slice(0, 2), blob.slice(2)));
  one.git("config", "core.repositoryFormatVersion", "1");
  one.git("config", "extensions.partialClone", "origin");
  one.git("config", "remote.origin.promisor", "true");
  one.git("config", "remote.origin.url", `ext::${program}`);
  one.git("config", "protocol.ext.allow", "always");
  one.git("config", "protocol.allow", "always");
  const { code, out, err } = await asksFor(one, "first");
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(/git cannot (?:list|read) the files of first|are not in this clone/);
  expect(existsSync(trace)).toBe(false);
});

test("a program called git in the folder is not taken for git", async () => {
  const one = repository();
  const { trace } = trap(one, "git");
  const { PATH } = process.env;
  const here = process.cwd();
  try {
    process.chdir(one.folder);
    process.env.PATH = ["", ".", PATH].join(delimiter);
    expect((await asksFor(one, "first")).out).toContain(change);
  } finally {
    process.chdir(here);
    process.env.PATH = PATH;
  }
  expect(existsSync(trace)).toBe(false);
});

test("a branch that looks like an option is a name that is refused", async () => {
  const one = repository();
  one.git("update-ref", "refs/heads/--output=x", "first");
  const { code, out, err } = await asksFor(one, "--", "--output=x");
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toContain("'--output=x' is not the name of a revision");
  // By its full name it is a normal revision.
  expect((await asksFor(one, "refs/heads/--output=x")).out).toContain(change);
});

test("links in a revision are neither followed nor taken for plans", async () => {
  const one = repository();
  one.write("secret.txt", 'import { circuit } from "loomwright";\ncircuit({ name: "secret" });\n');
  rmSync(join(one.folder, "sizes.ts"));
  symlinkSync(join(one.folder, "secret.txt"), join(one.folder, "leak.ts"));
  symlinkSync("secret.txt", join(one.folder, "sizes.ts"));
  one.commit("linked");
  rmSync(join(one.folder, "sizes.ts"));
  rmSync(join(one.folder, "leak.ts"));
  one.write("sizes.ts", sizes);
  const { out } = await asksFor(one, "linked");
  expect(out).toContain("Symbolic links in linked (");
  expect(out).toMatch(/As of linked \([0-9a-f]+\) this plan could not be evaluated: boat\.ts, line 2/);
  expect(out).not.toContain("secret");
  expect(out).not.toContain("leak.ts");
});

test("a file larger than anybody writes is no plan", async () => {
  const one = repository();
  const huge =
    'import { circuit } from "loomwright";\ncircuit({ name: "huge", load: 1, oneWayFt: 5, gauge: 14, protect: 5 });\n';
  one.write("huge.ts", `${huge}//${" ".repeat(4 * 1024 * 1024)}`);
  one.write("large.ts", `${huge.replace('"huge"', '"large"')}//${" ".repeat(3 * 1024 * 1024)}`);
  one.commit("huge");
  const { plans } = jsonDifferenceSchema.parse(
    JSON.parse((await asksFor(one, "huge", "--format", "json")).out),
  );
  expect(plans.map(({ file }) => file)).toEqual(["boat.ts", "large.ts"]);
});

test("names in a tree that lead out of the folder lead nowhere", async () => {
  const one = repository();
  const blob = one.git("rev-parse", "first:boat.ts").trim();
  const entry = (mode: string, name: string, object: string) =>
    Buffer.concat([Buffer.from(`${mode} ${name}\0`, "latin1"), Buffer.from(object, "hex")]);
  const write = (bytes: Buffer) => {
    writeFileSync(join(one.folder, "tree"), bytes);
    return one.git("hash-object", "-t", "tree", "-w", "--literally", "tree").trim();
  };
  const inner = write(entry("100644", "outside.ts", blob));
  const tree = write(Buffer.concat([entry("40000", "..", inner), entry("100644", "plan.ts", blob)]));
  rmSync(join(one.folder, "tree"));
  const commit = one.git("commit-tree", "-m", "leading out", tree).trim();
  one.git("update-ref", "refs/heads/out", commit);
  const { plans } = jsonDifferenceSchema.parse(
    JSON.parse((await asksFor(one, "out", "--format", "json")).out),
  );
  expect(plans.some(({ file }) => file.includes("outside"))).toBe(false);
});

test("names of a plan cannot draw on the screen, nor write anything but text into a pull request", async () => {
  const one = repository();
  const evil = "\\u001b[2J | `x` <img src=x onerror=1> @team #12 [a](http://b.example) ::error::\\nnew line";
  one.edit("boat.ts", '"cabin lights"', `"${evil}"`);
  const text = await asksFor(one, "first");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  expect(text.out).not.toMatch(/\u001b/);
  expect(text.out).not.toMatch(/^ *::error/m);
  const { out } = await asksFor(one, "first", "--format", "markdown");
  expect(out).not.toMatch(/<img/);
  expect(out).not.toMatch(/@team|#12|http:\/\/|(?<!\\)`|(?<!\\)\[/);
  // Each row has as many cells as its head.
  const cells = (line: string) => line.replace(/\\\|/g, "").split("|").length;
  const rows = out.split("\n").filter((line) => line.startsWith("|"));
  expect(rows.length).toBeGreaterThan(3);
  for (const [index, row] of rows.entries()) {
    const head = rows
      .slice(0, index + 1)
      .findLastIndex((line, at) => /^\| ---/.test(rows[at + 1] ?? "") && line !== "");
    expect(cells(row)).toBe(cells(rows[head]!));
  }
});
