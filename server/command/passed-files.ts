import { relative, sep } from "node:path";
import { pathInWords } from "../evaluate/files/file-name.ts";
import { mayHideHazard, type PassedByReason } from "../evaluate/files/passed-by.ts";
import type { PassedBy } from "../evaluate/workspace.ts";
import type { Host } from "./host.ts";
import { printable } from "./terminal.ts";

/** A file that was passed by, as every format shows it. */
export interface PassedFile {
  /** Relative to where the command runs, with forward slashes. */
  readonly file: string;
  readonly reason: PassedByReason;
  /** A clause whose subject is the file. */
  readonly why: string;
}

export function passedFiles(passedBy: readonly PassedBy[], cwd: string): PassedFile[] {
  return passedBy.map(({ uri, reason, why }) => ({
    ...{ file: relative(cwd, pathInWords(uri)).split(sep).join("/") || ".", reason, why },
  }));
}

/** Merges several groups or shares: each file once, ordered by name. */
export function joinedFiles(groups: readonly (readonly PassedFile[])[]): readonly PassedFile[] {
  const byFile = new Map(groups.flat().map((passed) => [passed.file, passed]));
  return [...byFile.values()].sort((a, b) => (a.file < b.file ? -1 : 1));
}

/**
 * The files in lines for people, those that may hide a hazard first. If many share a reason, only the first are named, but all
 * are counted.
 */
export function passedInLines(
  files: readonly PassedFile[],
): { readonly title: string; readonly lines: readonly string[] }[] {
  const kinds = [
    { title: "not judged", of: files.filter(mayHideHazard) },
    { title: "passed by", of: files.filter((file) => !mayHideHazard(file)) },
  ];
  return kinds
    .filter(({ of }) => of.length > 0)
    .map(({ title, of }) => ({
      title: `${of.length} ${of.length === 1 ? "file" : "files"} ${title}`,
      lines: [...new Set(of.map(({ reason }) => reason))].flatMap((reason) => {
        const alike = of.filter((file) => file.reason === reason);
        const named = alike.slice(0, mostNamed).map(({ file, why }) => printable(`${file} ${why}`));
        const more = alike.length - named.length;
        return more > 0 ? [...named, `and ${more} more for the same reason (${reason})`] : named;
      }),
    }));
}

const mostNamed = 10;

/** Reports them on standard error, for commands that make something from the plans. */
export function sayPassedBy(files: readonly PassedFile[], { err }: Pick<Host, "err">): void {
  for (const { title, lines } of passedInLines(files))
    err(`loomwright: ${title}:\n${lines.map((line) => `  ${line}\n`).join("")}`);
}
