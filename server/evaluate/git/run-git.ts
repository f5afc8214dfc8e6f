import { spawn, spawnSync } from "node:child_process";
import { accessSync, constants, statSync } from "node:fs";
import { delimiter, isAbsolute, join } from "node:path";

/**
 * Runs git on a repository that may be a stranger's, without writing to it and without running any program that it configures.
 * Calls only commands that read objects, with lists of arguments and no shell.
 *
 * Not isomorphic-git, which reads neither repositories with SHA-256 nor partial clones.
 */
export async function runGit(
  folder: string,
  words: readonly string[],
  question: GitCommand = {},
): Promise<GitAnswer> {
  const program = installedGit();
  if (!program) throw new GitError("git, which reads older states of a plan, was not found on this computer");
  return new Promise((resolve, reject) => {
    const child = spawn(program, [...hardeningFlags, ...words], {
      ...{ cwd: folder, env: sanitisedEnvironment(), windowsHide: true, stdio: "pipe", shell: false },
      ...(question.signal ? { signal: question.signal } : {}),
      // A configuration may include a file that never ends.
      ...{ timeout: 60_000, killSignal: "SIGKILL" as const },
    });
    const kept: Buffer[] = [];
    let size = 0;
    let complaint = "";
    const take = question.take ?? ((chunk: Buffer) => void kept.push(chunk));
    child.stdout.on("data", (chunk: Buffer) => {
      size += chunk.length;
      if (!question.take && size > mostOutputBytes) child.kill("SIGKILL");
      else take(chunk);
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      if (complaint.length < 10_000) complaint += text;
    });
    child.on("error", (error) => reject(new GitError(`git could not be run: ${error.message}`)));
    child.on("close", (code) => resolve({ code, output: Buffer.concat(kept), complaint: complaint.trim() }));
    // It may have exited before it read everything; its message then explains more than a broken pipe.
    child.stdin.on("error", () => undefined);
    child.stdin.end(question.input ?? "");
  });
}

/**
 * The same, synchronously: for a walk through folders, whose answer everything else depends on. Undefined if git is missing,
 * refuses, or exceeds the limit.
 */
export function runGitSync(
  folder: string,
  words: readonly string[],
  input: Buffer,
  limitMs: number,
): Buffer | undefined {
  const program = installedGit();
  if (!program) return undefined;
  const { status, stdout } = spawnSync(program, [...hardeningFlags, ...words], {
    ...{ cwd: folder, env: sanitisedEnvironment(), windowsHide: true, shell: false, input },
    ...{ timeout: limitMs, killSignal: "SIGKILL" as const, maxBuffer: mostOutputBytes },
  });
  return status === 0 ? stdout : undefined;
}

export interface GitCommand {
  readonly input?: string;
  /** Receives each piece of the output, instead of keeping all of it. */
  readonly take?: (chunk: Buffer) => void;
  readonly signal?: AbortSignal;
}

export interface GitAnswer {
  /** Null: it was killed from outside. */
  readonly code: number | null;
  readonly output: Buffer;
  /** Its output on standard error, in English. */
  readonly complaint: string;
}

/** The reason why a git query failed, in words for people, without a full stop. */
export class GitError extends Error {}

const mostOutputBytes = 256 * 1024 * 1024;

/** These override a repository's own configuration. */
const hardeningFlags = [
  "--no-pager",
  ...["core.fsmonitor=false", "core.hooksPath=/dev/null", "protocol.allow=never"].flatMap((setting) => [
    "-c",
    setting,
  ]),
];

/**
 * The user's own environment, since they trust their own configuration; without variables that would select another repository,
 * as inside a hook. Nothing is fetched by any protocol, even if a repository allows it; no lock is taken and no prompt shown.
 */
function sanitisedEnvironment(): NodeJS.ProcessEnv {
  const env = { ...process.env };
  for (const name of leadingElsewhere) delete env[name];
  return {
    ...env,
    ...{ LC_ALL: "C", LANGUAGE: "", GIT_OPTIONAL_LOCKS: "0", GIT_NO_LAZY_FETCH: "1" },
    ...{ GIT_ALLOW_PROTOCOL: "none", GIT_TERMINAL_PROMPT: "0", GIT_ASKPASS: "", SSH_ASKPASS: "" },
  };
}

const leadingElsewhere = [
  "GIT_DIR",
  "GIT_WORK_TREE",
  "GIT_INDEX_FILE",
  "GIT_COMMON_DIR",
  "GIT_PREFIX",
  "GIT_NAMESPACE",
];

/** By its whole path: the folder may contain a program called git, and some systems would run that one first. */
function installedGit(): string | undefined {
  const names = process.platform === "win32" ? ["git.exe"] : ["git"];
  const folders = (process.env.PATH ?? process.env.Path ?? "")
    .split(delimiter)
    .filter((folder) => isAbsolute(folder));
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isProgram);
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
