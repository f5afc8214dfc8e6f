import { spawnSync } from "node:child_process";
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { parseDocument } from "yaml";
import { expectBuilt } from "../package/built.tester.ts";
import { sampled } from "../setup/sampled.ts";

const example = fileURLToPath(new URL("../../examples/shared-builds", import.meta.url));
const command = fileURLToPath(new URL("../../server/dist/command.cjs", import.meta.url));

const workflows = [".github/workflows/check-plans.yml", ".github/workflows/check-many-plans.yml"];
const written = [...workflows, ".pre-commit-config.yaml"];

/** One folder for all tests: the plans are the same in most, and their kept results serve the next test. */
const folder = mkdtempSync(join(tmpdir(), "loomwright-shared-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

beforeEach(() => {
  for (const made of ["repository", "bin"]) rmSync(join(folder, made), { recursive: true, force: true });
  cpSync(example, join(folder, "repository"), { recursive: true });
  // `npm ci` would have made this from the repository's own package.json: `npx loomwright` is the built command.
  mkdirSync(join(folder, "bin"));
  writeFileSync(
    join(folder, "bin/npx"),
    `#!/bin/sh\n[ "$1" = --no-install ] && shift\n[ "$1" = loomwright ] || exit 99\nshift\nexec "${process.execPath}" "${command}" "$@"\n`,
  );
  chmodSync(join(folder, "bin/npx"), 0o755);
});
describe.each(written)("%s", (file) => {
  test("is YAML without a complaint", () => {
    const document = parseDocument(readFileSync(join(example, file), "utf8"), {
      strict: true,
      uniqueKeys: true,
    });
    expect([...document.errors, ...document.warnings]).toEqual([]);
  });

  test("calls nothing but what it says, and every command of ours in it is run below", () => {
    const text = readFileSync(join(example, file), "utf8");
    const calls = text.match(/loomwright (?:check|merge)/g) ?? [];
    const run = file.startsWith(".github")
      ? Object.values(workflow(file).jobs).flatMap(({ steps }) => steps.flatMap((step) => step.run ?? []))
      : [hook().entry];
    expect(calls.length).toBeGreaterThan(0);
    expect(run.filter((line) => line.includes("loomwright"))).toHaveLength(calls.length);
  });
});

describe.each(workflows)("%s", (file) => {
  test("has jobs in an order that can be kept, with few permissions", () => {
    const { on, jobs, permissions } = workflow(file);
    expect(Object.keys(on)).toEqual(["push", "pull_request"]);
    const names = Object.keys(jobs);
    for (const [place, { needs, steps, permissions: its }] of Object.values(jobs).entries()) {
      if (needs) expect(names.slice(0, place)).toContain(needs);
      expect((its ?? permissions)?.contents).toBe("read");
      for (const { uses, run } of steps) {
        expect([uses, run].filter(Boolean)).toHaveLength(1);
        if (uses) expect(uses).toMatch(/^(?:actions|github)\/[\w/-]+@v\d+$/);
      }
    }
  });
});

describe("the workflow of one machine", () => {
  test("passes where nothing is wrong, and sends a log", () => {
    const { codes } = runJob(workflow(workflows[0]!).jobs.check!);
    expect(codes).toEqual([0, 0]);
    expect(JSON.parse(read("loomwright.sarif"))).toMatchObject({ version: "2.1.0" });
  });

  test("fails where something is, and sends a log all the same", () => {
    thinnerWire();
    const { codes } = runJob(workflow(workflows[0]!).jobs.check!);
    expect(codes).toEqual([1, 1]);
    expect(JSON.parse(read("loomwright.sarif")).runs[0].results.length).toBeGreaterThan(0);
  });
});

describe("the workflow of several machines", () => {
  const changes: readonly (readonly [string, () => void, number])[] = [
    ["passes where nothing is wrong", () => {}, 0],
    ["fails where something is", () => thinnerWire(), 1],
    [
      "fails where a plan cannot be read",
      () => write("gatehouse/plan.ts", 'import { circuit } from "loomwright";\ncircuit({'),
      2,
    ],
  ];

  test.each(sampled("workflows of shared builds", changes))(
    "%s, and says what one machine says",
    (_, change, code) => {
      change();
      const { codes, last } = runMany();
      expect(codes.at(-1)).toBe(code);
      expect(last).toBe(shell("npx loomwright check --format annotations").stdout);
    },
  );

  test("fails where a share is missing", () => {
    const { codes } = runMany((shard) => shard !== 2);
    expect(codes.at(-1)).toBe(2);
  });

  /** Runs each share separately, with its upload, and the last job with all uploads that arrived. */
  function runMany(arrives: (shard: number) => boolean = () => true) {
    const { share, join: joining } = workflow(workflows[1]!).jobs;
    const shards = share!.strategy!.matrix.shard;
    const codes = shards.flatMap((shard) => runJob(share!, { "matrix.shard": String(shard) }).codes);
    const [sent] = share!.steps.flatMap(({ uses, with: given }) =>
      uses?.includes("/upload-artifact@") ? [given!] : [],
    );
    const [fetched] = joining!.steps.flatMap(({ uses, with: given }) =>
      uses?.includes("/download-artifact@") ? [given!] : [],
    );
    expect(fetched).toMatchObject({ pattern: "shard-*", "merge-multiple": true });
    for (const shard of shards.filter(arrives)) {
      const filled = (text: unknown) => String(text).replaceAll("${{ matrix.shard }}", String(shard));
      expect(filled(sent!.name)).toBe(`shard-${shard}`);
      write(`${fetched!.path}/${filled(sent!.path)}`, read(filled(sent!.path)));
    }
    const last = runJob(joining!);
    return { codes: [...codes, ...last.codes], last: last.out };
  }
});

describe("before each commit", () => {
  const hooks: readonly (readonly [string, () => ReturnType<typeof shell>])[] = [
    ["the hook manager's recipe", () => shell(hook().entry)],
    ["git's own hook", () => shell("hooks/pre-commit")],
  ];

  test.each(sampled("workflows of shared builds", hooks))("%s lets nothing wrong pass", (_, commit) => {
    expect(commit().status).toBe(0);
    thinnerWire();
    const { status, stdout } = commit();
    expect(stdout).toContain("tool charger");
    expect(status).toBe(1);
  });

  test("the recipe looks at every file that a plan may be written in, and at all plans", () => {
    const files = new RegExp(hook().files);
    expect(["a/plan.ts", "a.mts", "b.js", "c.tsx"].every((file) => files.test(file))).toBe(true);
    expect(files.test("README.md")).toBe(false);
    expect(hook().pass_filenames).toBe(false);
  });
});

/** Too thin for its length. */
function thinnerWire(): void {
  write("tool-trailer/plan.ts", read("tool-trailer/plan.ts").replace("gauge: 10", "gauge: 18"));
}

/** The commands of a job in sequence, each in the shell that the service uses. */
function runJob({ steps }: Job, values: Readonly<Record<string, string>> = {}) {
  const ran = steps.flatMap(({ run }) => {
    if (run === undefined || run === "npm ci") return [];
    const filled = run.replaceAll(/\$\{\{ ([\w.]+) \}\}/g, (_, name: string) => {
      expect(Object.keys(values)).toContain(name);
      return values[name]!;
    });
    return [shell(filled)];
  });
  expect(ran.map(({ stderr }) => stderr).filter((said) => said !== "" && !said.includes("missing"))).toEqual(
    [],
  );
  return { codes: ran.map(({ status }) => status), out: ran.at(-1)?.stdout ?? "" };
}

function shell(line: string) {
  expectBuilt();
  return spawnSync("bash", ["-e", "-o", "pipefail", "-c", line], {
    cwd: join(folder, "repository"),
    encoding: "utf8",
    env: {
      ...process.env,
      PATH: `${join(folder, "bin")}${delimiter}${process.env.PATH}`,
      LOOMWRIGHT_CACHE: join(folder, "kept"),
    },
  });
}

function workflow(file: string): Workflow {
  return parseDocument(readFileSync(join(example, file), "utf8")).toJS() as Workflow;
}

function hook(): Hook {
  const { repos } = parseDocument(readFileSync(join(example, written[2]!), "utf8")).toJS() as {
    repos: { repo: string; hooks: Hook[] }[];
  };
  expect(repos.map(({ repo }) => repo)).toEqual(["local"]);
  return repos[0]!.hooks[0]!;
}

function write(file: string, text: string): void {
  mkdirSync(join(folder, "repository", file, ".."), { recursive: true });
  writeFileSync(join(folder, "repository", file), text);
}

function read(file: string): string {
  return readFileSync(join(folder, "repository", file), "utf8");
}

interface Workflow {
  readonly on: object;
  readonly permissions?: { readonly contents: string };
  readonly jobs: Readonly<Record<string, Job>>;
}

interface Job {
  readonly needs?: string;
  readonly permissions?: { readonly contents: string };
  readonly strategy?: { readonly matrix: { readonly shard: readonly number[] } };
  readonly steps: readonly {
    readonly uses?: string;
    readonly run?: string;
    readonly with?: Readonly<Record<string, unknown>>;
  }[];
}

interface Hook {
  readonly entry: string;
  readonly files: string;
  readonly pass_filenames: boolean;
}
