/**
 * What the language server and its own clients say to each other beyond the protocol. Plain types and names only, so that the
 * extension can import this file without pulling anything else in. Any other client may ignore all of it.
 */

/** Notification, server to client: how one plan, or the server itself, is doing. */
export const statusMethod = "loomwright/status";

/** Request: checks every plan of the workspace, shows the findings, and answers with {@link WorkspaceCheck}. No parameters. */
export const checkWorkspaceMethod = "loomwright/checkWorkspace";

/** Request with {@link WorkingParams}: how the numbers at a position were worked out. Answers {@link Working} or null. */
export const workingMethod = "loomwright/working";

type PlanState =
  /** Everything the editor shows was computed from the texts as they are. */
  | "idle"
  | "checking"
  /** A file is half typed; what is shown is as of the last complete text. */
  | "held"
  /** The plan could not be checked; `message` says why. */
  | "failed"
  /** No plan any more: it no longer imports the library, or another plan imports it, or it was closed. */
  | "gone";

export interface StatusParams {
  /** Root file of the plan; absent when the message is about the server itself. */
  readonly uri?: string;
  /** The editor's version of the root that the state is about; absent when the root is not open in the editor. */
  readonly version?: number;
  /** The editor's versions of all open files of the plan, by URI as the editor writes it. */
  readonly versions?: Readonly<Record<string, number>>;
  readonly state: PlanState;
  /** One line for people. */
  readonly message: string;
  /** Of the newest complete check; absent while there was none. */
  readonly counts?: Counts;
}

/** What a plan amounts to. Accepted findings count only as accepted. */
export interface Counts {
  readonly circuits: number;
  /** Of the plan's network; 0 where it has none, or none that could be read. */
  readonly parts: number;
  readonly cables: number;
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
  readonly hints: number;
  readonly accepted: number;
}

export interface WorkspaceCheck {
  readonly plans: readonly PlanCheck[];
}

export interface PlanCheck {
  /** Root file of the plan. */
  readonly uri: string;
  readonly state: "idle" | "held" | "failed";
  readonly message: string;
  /** Absent where the plan is half typed or could not be checked. */
  readonly counts?: Counts;
}

export interface WorkingParams {
  readonly textDocument: { readonly uri: string };
  /** Zero-based line, zero-based character in UTF-16 units. */
  readonly position: { readonly line: number; readonly character: number };
}

export interface Working {
  /** Name of the circuit, cable, part or scenario. */
  readonly circuit: string;
  /** The whole reckoning, with formulas, actual numbers and sources. */
  readonly markdown: string;
}
