import type { Uri } from "./evaluate/workspace.ts";

/**
 * The messages between the front thread, which speaks the protocol, and an engine, beyond the editor's own protocol. All are
 * notifications; none of them ever reaches the editor.
 */

/** The data an engine's thread gets at its start. */
export interface EngineStart {
  /** Counts the engines of a server: an answer of one is never mistaken for another's. */
  readonly number: number;
}

/** Front to engine, with {@link Duty}: the plans that the engine answers for. */
export const dutyMethod = "loomwright/engine/duty";

/** Front to engine, without parameters. The engine answers as soon as its thread is free; at most one ping is outstanding. */
export const pingMethod = "loomwright/engine/ping";

/** Engine to front, without parameters: the answer to a ping. */
export const pongMethod = "loomwright/engine/pong";

/** Engine to front, without parameters: everything it needs is loaded. */
export const readyMethod = "loomwright/engine/ready";

/** Engine to front, with {@link WorkingOn}: sent before the work begins, because it must arrive even if the work never ends. */
export const workingOnMethod = "loomwright/engine/workingOn";

/** Engine to front, with {@link Elsewhere}: open files that the other engine answers for. */
export const elsewhereMethod = "loomwright/engine/elsewhere";

/** Background engine to front, with {@link Quick}: a plan that was slow has become quick. */
export const quickMethod = "loomwright/engine/quick";

/** Engine to front, without parameters: no plan is being checked. */
export const atRestMethod = "loomwright/engine/atRest";

export interface Duty {
  /** The foreground engine has the plans of open files; the background engine has slow plans and those that are not open. */
  readonly role: "foreground" | "background";
  /** Roots of plans that blocked an engine. Plans that share a file with one of them are the background engine's too. */
  readonly slow: readonly Uri[];
  /** Plans that even the background engine could not finish. */
  readonly givenUp: readonly GivenUp[];
}

/** A plan that blocked the background engine. It is not tried again before one of its texts changes. */
export interface GivenUp {
  readonly root: Uri;
  readonly texts: readonly TextDigest[];
  /** A clause: "it took more than 30 s". */
  readonly why: string;
}

/** One text as it was when work on it began. */
export interface TextDigest {
  readonly uri: Uri;
  /** SHA-256; undefined for a file that does not exist. */
  readonly sha256: string | undefined;
}

export interface WorkingOn {
  readonly root: Uri;
  /** The open files of the plan, by the editor's URIs. */
  readonly openUris: readonly string[];
  /** From the background engine alone: the known texts of the plan. */
  readonly texts: readonly TextDigest[];
}

export interface Elsewhere {
  /** By the editor's URIs. */
  readonly uris: readonly string[];
}

export interface Quick {
  readonly root: Uri;
}
