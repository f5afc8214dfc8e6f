import type { PassedByReason } from "./files/passed-by.ts";

/**
 * The files a plan may read, given to the evaluator from outside. The server names all files by URI, to treat unsaved and
 * remote documents like any other. The command line passes the disk, the language server the disk below the open editors, a
 * test an object.
 */
export interface Workspace {
  /** The newest text of a file, unsaved editor text first; undefined when it has none. */
  read(uri: Uri): SourceText | undefined;
  /** Folders a plan may import from: the workspace folders. A plan outside all of them may import from its own folder. */
  folders(): readonly Uri[];
  /** The real URI of a file, with symbolic links resolved; the uri itself when it is not on disk. */
  realUri(uri: Uri): Uri;
  /** Every TypeScript or JavaScript file on disk or open that contains the library's name, without those that are passed by. */
  planFiles(): readonly Uri[];
  /** The same in small steps, with other work in between; absent if {@link planFiles} takes no time. */
  planFilesInSteps?(): Generator<void, readonly Uri[]>;
  /** The files that the last {@link planFiles} left out. Missing: no file is ever left out. */
  leftOut?(): LeftOut;
  /** The reason why {@link read} gave no text although the name exists. */
  unread?(uri: Uri): Unread | undefined;
  /** Files with text that may change without notice from the disk; absent if there are none. */
  openFiles?(): readonly Uri[];
  /** The edit that somebody may still be in the middle of; undefined, or absent, if every text counts as written. */
  lastEdit?(): LastEdit | undefined;
}

/** The range of the newest text of a file that was edited last. Another edit is another object. */
export interface LastEdit {
  readonly uri: Uri;
  readonly start: number;
  readonly end: number;
}

interface LeftOut {
  readonly passedBy: readonly PassedBy[];
  /** Files of wire numbers, whether or not their plan is there. */
  readonly wireNumbers: readonly Uri[];
}

export type Uri = string;

export interface SourceText {
  readonly uri: Uri;
  /** Changes whenever the text does: the editor's version, or a stamp of the file on disk. */
  readonly version: Version;
  readonly text: string;
}

export type Version = number | string;

/** The versions of every file that went into a result; `undefined` for an import that did not exist. */
export type Snapshot = ReadonlyMap<Uri, Version | undefined>;

/** A file that looks like a plan, or belongs to one, and was not judged. Each front end lists these, with the reason. */
export interface PassedBy {
  readonly uri: Uri;
  readonly reason: PassedByReason;
  /** A clause whose subject is the file: "is ignored by git". */
  readonly why: string;
}

/** The reason why a file cannot be read as a plan. */
export type Unread = Pick<PassedBy, "reason" | "why">;
