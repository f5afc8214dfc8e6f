import type { PassedBy, Unread } from "./files/passed-by.ts";

/**
 * The files a plan may see, given to the evaluator from outside. Files are named by URI everywhere in the server, so that
 * unsaved and remote documents are ordinary. The command line passes the disk, the language server the disk below the open
 * editors, a test an object.
 */
export interface Workspace {
  /** The newest text of a file, unsaved editor text first; undefined when there is none. */
  read(uri: Uri): SourceText | undefined;
  /** Folders a plan may import from: the workspace folders. A plan outside all of them may import from its own folder. */
  folders(): readonly Uri[];
  /** Where a file really is once symbolic links are followed; the uri itself when it is not on disk. */
  realUri(uri: Uri): Uri;
  /** Every TypeScript or JavaScript file on disk or open that contains the library's name, without those that are passed by. */
  planFiles(): readonly Uri[];
  /** The same in small steps, between which others can be served; absent where {@link planFiles} takes no time. */
  planFilesInSteps?(): Generator<void, readonly Uri[]>;
  /** The files that {@link planFiles} left out the last time. Missing: no file is ever left out. */
  leftOut?(): LeftOut;
  /** Why {@link read} gave no text although there is something of that name. */
  unread?(uri: Uri): Unread | undefined;
  /** Files whose text may change without a word from the disk; absent when there are none. */
  openFiles?(): readonly Uri[];
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
