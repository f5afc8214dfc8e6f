import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { run } from "../../server/command/run.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { sharedLayouts } from "../../server/output/shared-layouts.tester.ts";

/** A git repository in a temporary folder, whose history a test writes. No user's git configuration affects it. */
export interface ScriptedRepository {
  readonly folder: string;
  /** Runs git in the folder; returns its output. Throws with its error message. */
  git(...words: readonly string[]): string;
  write(file: string, text: string): void;
  /** Replaces the first occurrence of a text, which must exist. */
  edit(file: string, found: string, replacement: string): void;
  /** Commits the whole folder, and tags it. */
  commit(tag: string): void;
  /** Runs `loomwright` in process, in the folder or one below it. */
  loomwright(...words: readonly string[]): Promise<Answer>;
  loomwrightIn(below: string, ...words: readonly string[]): Promise<Answer>;
  remove(): void;
}

export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export function scriptedRepository({ init = true } = {}): ScriptedRepository {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "loomwright-difference-")));
  const git = (...words: readonly string[]) => runGit(folder, words);
  const write = (file: string, text: string) => {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  };
  const loomwrightIn = async (below: string, ...words: readonly string[]) => {
    let [out, err] = ["", ""];
    const code = await run(words, {
      cwd: join(folder, below),
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      terminal: { colour: false, progress: false },
      sandbox: sharedSandbox,
      layouts: sharedLayouts,
    });
    return { code, out, err };
  };
  if (init) git("init", "--quiet", "--initial-branch=main");
  return {
    ...{ folder, git, write, loomwrightIn },
    edit(file, found, replacement) {
      const text = readFileSync(join(folder, file), "utf8");
      if (!text.includes(found)) throw new Error(`${file} does not hold: ${found}`);
      write(file, text.replace(found, replacement));
    },
    commit(tag) {
      // One program to start, and not three: starting one takes longer than its work, from a process as large as that of a test.
      const script = 'git add --all && git commit --quiet --allow-empty --message "$0" && git tag "$0"';
      runProgram("sh", ["-c", script, tag], folder);
    },
    loomwright: (...words) => loomwrightIn("", ...words),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** With a fixed author and date: a history has the same commits on every machine. */
export function runGit(folder: string, words: readonly string[]): string {
  return runProgram("git", words, folder);
}

function runProgram(program: string, words: readonly string[], folder: string): string {
  try {
    return execFileSync(program, words, {
      cwd: folder,
      env: gitEnvironment(),
      encoding: "utf8",
      stdio: "pipe",
    });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT")
      throw new Error(
        "These tests need git, and there is none: node tests/setup/git.mjs installs it on Debian.",
      );
    throw error;
  }
}

function gitEnvironment(): NodeJS.ProcessEnv {
  const at = "2024-05-01T12:00:00Z";
  return {
    ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !name.startsWith("GIT_"))),
    ...{
      GIT_CONFIG_GLOBAL: "/dev/null",
      GIT_CONFIG_NOSYSTEM: "1",
      GIT_AUTHOR_DATE: at,
      GIT_COMMITTER_DATE: at,
    },
    ...{ GIT_AUTHOR_NAME: "Builder", GIT_AUTHOR_EMAIL: "builder@example.invalid" },
    ...{ GIT_COMMITTER_NAME: "Builder", GIT_COMMITTER_EMAIL: "builder@example.invalid" },
  };
}

/** A small boat: one file with its settings and circuits, one with its sizes. */
export const boat = `import { build, circuit } from "loomwright";
import { thin } from "./sizes.ts";

build({ name: "tender", insulationC: 105 });
const cabin = circuit({ name: "cabin lights", load: 3, oneWayFt: 12, gauge: thin, protect: 5 });
circuit({ name: "bilge pump", load: 6, oneWayFt: 10, gauge: 12, protect: 10 });
`;

export const sizes = `/** For all that draws little. */\nexport const thin = 14;\n`;
