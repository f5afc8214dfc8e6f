import type { Judgement } from "../../library/judge.ts";
import type { PropertyPath } from "../../library/model/plain-values.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import type { Finding, ProposedFix } from "../../library/rules/finding.ts";
import type { LastEdit, Snapshot, Uri, Version } from "./workspace.ts";

/**
 * The outcome of checking one plan: the root file and all it imports. Each front end of the product (editor, command line)
 * formats this and nothing else.
 */
export type CheckOutcome = CheckedPlan | IncompletePlan;

/**
 * The text is complete: it was run and judged. A plan that could not run is checked too, with a finding that gives the reason.
 */
export interface CheckedPlan {
  readonly state: "checked";
  readonly root: Uri;
  /** Every file that was read, with its version. A finding is never shown against another version. */
  readonly snapshot: Snapshot;
  /** The records of the run, as they were judged: for documents that ask for the effect of a change. */
  readonly records: readonly PlanRecord[];
  readonly judgement: Judgement;
  /** Findings with their places, in the order of the judgement. Those about one shared value are merged into one. */
  readonly findings: readonly PlacedFinding[];
  /** The range where a value, or the whole argument (`[]`), of a record is written. Undefined when it is not written anywhere. */
  placeOf(record: number, path: PropertyPath): SourceRange | undefined;
  /** The call that made the record: `circuit(...)` from its first to its last character. */
  callOf(record: number): SourceRange;
  /** The innermost property and record under a position, for hovers and completions. */
  at(uri: Uri, offset: number): ValueAtPosition | undefined;
  /** The variables that a text at this place can use for records, by record: `house` of `const house = battery(…)`. */
  namesAt(uri: Uri, offset: number): ReadonlyMap<number, string>;
  /**
   * The name that a file could import for a record of another file; undefined if that one does not export it. The edits of a fix that
   * uses the name write the import.
   */
  nameToImport(uri: Uri, record: number): string | undefined;
  /** Whether a number of a record can be changed where it is written, or why not. */
  movableAt(record: number, path: PropertyPath): Movable;
  /** Text edits of a proposed fix, or undefined when the value cannot be edited where it is written. Not yet proved. */
  editsOf(fix: ProposedFix): PlacedFix | undefined;
}

/**
 * A half-typed file: syntax errors in it or in an import, or, in an editor, a name or a call that is still being typed. The plan
 * was not judged; TypeScript's own squiggle shows the place.
 */
export interface IncompletePlan {
  readonly state: "incomplete";
  readonly root: Uri;
  readonly snapshot: Snapshot;
  /** The half-typed file. */
  readonly broken: Uri;
  /** TypeScript's first syntax error in it, for front ends without TypeScript's own squiggle (the command line). */
  readonly unfinished: { readonly place: SourceRange; readonly text: string };
  /** If it is whole to TypeScript's parser: half typed only until this is no longer the last edit. */
  readonly until?: LastEdit;
}

/** A source range, in UTF-16 offsets, of the file version in the plan's snapshot. */
export interface SourceRange {
  readonly uri: Uri;
  readonly start: number;
  readonly end: number;
}

export interface PlacedFinding {
  readonly finding: Finding;
  /** Names of all circuits it is about, when one value in the source sets several. */
  readonly subjects: readonly string[];
  readonly message: string;
  /** The message where the compiler's own report of the same mistake is beside it: only the part that the report lacks. */
  readonly besideCompiler?: string;
  readonly place: SourceRange;
  readonly related: readonly { readonly place: SourceRange; readonly text: string }[];
}

export interface ValueAtPosition {
  readonly record: number;
  /** `[]`: on the call or the argument, but on none of its values. */
  readonly path: PropertyPath;
  /** The value's own range; the call's when path is `[]`. */
  readonly place: SourceRange;
  /** Other records that the same source value sets. */
  readonly alsoSets: readonly number[];
}

/** Whether a number of a record can be changed where it is written, while everything else stays as it is. */
export type Movable =
  /** A literal of its own; `sets` counts the records that it sets. */
  | { readonly state: "written"; readonly sets: number }
  /** The property is not there; it would be inserted. */
  | { readonly state: "absent" }
  | { readonly state: "fixed"; readonly why: FixedBy; readonly name?: string };

type FixedBy =
  | "computed"
  | "reassigned"
  | "in a factory"
  | "in a loop"
  | "from a spread"
  | "a shared constant";

export interface PlacedFix {
  readonly title: string;
  /** "suggestion" also if a repair would change other circuits. */
  readonly kind: "repair" | "suggestion";
  readonly edits: readonly Edit[];
  /** Records, other than the finding's own, that the edits also change. */
  readonly alsoChanges: readonly number[];
}

/** Applied only if the file still has this version, and this text in this range. */
export interface Edit extends SourceRange {
  readonly version: Version;
  readonly expected: string;
  readonly newText: string;
}
