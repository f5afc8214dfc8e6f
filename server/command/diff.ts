import { existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { becameWorse, type ComparedPlan } from "../../library/documents/difference/compared-plan.ts";
import {
  type Comparison,
  differenceMarkdown,
} from "../../library/documents/difference/difference-markdown.ts";
import { type Revision, repositoryAt, revisionAt } from "../evaluate/git/git-revision.ts";
import { GitError } from "../evaluate/git/run-git.ts";
import type { Command } from "./command.ts";
import { compareFolders } from "./compare-folders.ts";
import { differenceJson } from "./difference-json.ts";
import { differenceText } from "./difference-text.ts";
import { type FolderState, stateAtRevision, stateOnDisk } from "./folder-state.ts";
import type { ExitCode, Host } from "./host.ts";
import { oneOfWords, UsageError } from "./usage.ts";

const formats = ["text", "markdown", "json"] as const;

/** `loomwright diff`: the changes between two states of the plans of a folder, and their effects elsewhere. */
export const diff: Command = {
  name: "diff",
  usage: [
    {
      words: "<revision> [folder]",
      does: "changes in the plans below this folder since a git revision, and their effects elsewhere",
    },
    { words: "<revision> <revision> [folder]", does: "the same between two revisions" },
    { words: "<folder> <folder>", does: "the same between two folders" },
  ],
  formats,
  takes: ["format", "all"],
  run: async (names, given, outside) => {
    const asked = { format: oneOfWords("format", given.format, formats), all: given.all ?? false };
    try {
      return await compare(names, asked, outside);
    } catch (error) {
      if (!(error instanceof GitError)) throw error;
      outside.err(`loomwright: ${error.message}.\n`);
      return 2;
    }
  },
};

async function compare(
  names: readonly string[],
  { format, all }: { readonly format: (typeof formats)[number]; readonly all: boolean },
  outside: Host,
): Promise<ExitCode> {
  const states: FolderState[] = [];
  try {
    for (const open of await statesOf(await meantBy(names, outside), outside)) states.push(await open());
    const [before, after] = states as [FolderState, FolderState];
    const { progress } = outside.terminal;
    const { plans, notes, lostSight } = await compareFolders(before, after, (plan, of) => {
      if (progress && of > 2) outside.err(`\r\u001b[Kworking out ${plan} of ${of}`);
    });
    if (progress) outside.err("\r\u001b[K");
    if (plans.length === 0 && notes.length === 0)
      throw new UsageError(
        `no plan found, neither in ${before.label} nor in ${after.label}: no TypeScript or JavaScript file there imports "loomwright".`,
      );
    const comparison: Comparison = { before: before.label, after: after.label, plans, notes };
    outside.out(
      format === "json"
        ? differenceJson(comparison)
        : format === "markdown"
          ? differenceMarkdown(comparison, { all })
          : differenceText(comparison, { all }, outside.terminal),
    );
    return lostSight || plans.length === 0 ? 2 : exitCode(plans);
  } finally {
    await Promise.all(states.map(({ checker }) => checker.dispose()));
  }
}

/** 2: the present build could not be evaluated, and that is new. 1: something became worse. */
function exitCode(plans: readonly ComparedPlan[]): ExitCode {
  const isLost = (plan: ComparedPlan) =>
    (plan.state === "not-evaluated" && !plan.unchanged && plan.after?.state === "not-evaluated") ||
    (plan.state === "added" && plan.side.state === "not-evaluated");
  if (plans.some(isLost)) return 2;
  return plans.some(becameWorse) ? 1 : 0;
}

/** The meaning of a word on the command line. */
type Meant =
  | { readonly is: "folder"; readonly path: string; readonly typed: string }
  | { readonly is: "revision"; readonly revision: Revision };

/**
 * A word written as a path is a path. Any other is the revision of that name or, if there is none, the folder. If a branch and a
 * folder share the name, a message states which was taken.
 */
async function meantBy(names: readonly string[], outside: Host): Promise<Meant[]> {
  const meant: Meant[] = [];
  for (const typed of names) meant.push(await meantByOne(typed, names, outside));
  return meant;
}

async function meantByOne(typed: string, all: readonly string[], outside: Host): Promise<Meant> {
  const path = resolve(outside.cwd, typed);
  const folder = isFolder(path) ? ({ is: "folder", path, typed } as const) : undefined;
  if (isWrittenAsPath(typed)) {
    if (folder) return folder;
    throw new UsageError(
      existsSync(path) ? `'${typed}' is a file; give its folder.` : `there is no folder '${typed}'.`,
    );
  }
  try {
    const revision = await revisionAt(repositoryFolder(all, outside.cwd), typed);
    if (folder)
      outside.err(
        `'${typed}' is a revision and a folder: the revision is taken; ./${typed} is the folder.\n`,
      );
    return { is: "revision", revision };
  } catch (error) {
    if (!(error instanceof GitError)) throw error;
    if (folder) return folder;
    if (existsSync(path)) throw new UsageError(`'${typed}' is a file; give its folder.`);
    throw new GitError(`'${typed}' is not a folder, and ${error.message}`);
  }
}

/** Revisions are looked up in the repository of the compared folder. */
function repositoryFolder(names: readonly string[], cwd: string): string {
  const path = resolve(cwd, names.at(-1) ?? ".");
  return names.length > 1 && isFolder(path) ? path : cwd;
}

function isWrittenAsPath(word: string): boolean {
  return /^(?:\.{1,2}$|\.{1,2}[\\/]|[\\/]|[A-Za-z]:[\\/])|[\\/]$/.test(word);
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

type Opening = () => Promise<FolderState>;

/** The two states to compare, the older one first. */
async function statesOf(meant: readonly Meant[], { cwd }: Host): Promise<readonly [Opening, Opening]> {
  const onDisk =
    (path: string, label: string): Opening =>
    async () =>
      stateOnDisk(path, label);
  const at = (folder: string, { revision }: Extract<Meant, { is: "revision" }>): Opening => {
    return () => stateAtRevision(folder, revision);
  };
  const [first, second, third, ...more] = meant;
  if (
    more.length > 0 ||
    (third && (third.is !== "folder" || second?.is !== "revision" || first?.is !== "revision"))
  )
    throw new UsageError(
      "'diff' compares two states: give one or two revisions and a folder, or two folders.",
    );
  if (first?.is === "revision") {
    if (second?.is === "revision") {
      const folder = third?.is === "folder" ? third.path : cwd;
      return [at(folder, first), at(folder, second)];
    }
    const folder = second?.path ?? cwd;
    const { hasWorkTree } = await repositoryAt(folder);
    if (!hasWorkTree)
      throw new GitError("there is no working tree here to compare with: give a second revision");
    return [at(folder, first), onDisk(folder, "the working tree")];
  }
  if (first && second)
    return [
      onDisk(first.path, first.typed),
      second.is === "folder" ? onDisk(second.path, second.typed) : at(first.path, second),
    ];
  throw new UsageError(
    first
      ? `'${first.typed}' is a folder; give the other state: a revision before it, or a second folder.`
      : "give a revision to compare with, such as HEAD, or two folders.",
  );
}
