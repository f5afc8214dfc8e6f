import type { Judgement } from "../../judge.ts";
import type { Cause, Severity } from "../../rules/finding.ts";
import type { DrawingOutcome, View } from "../diagram/drawing.ts";
import type { Table } from "../table.ts";
import type { Block } from "./report-content.ts";
import type { SourceList } from "./sources.ts";

/**
 * `bench`: the drawing, the wire schedule, the fuse map and the checks before first power, for the builder's hands. `inspector`:
 * everything.
 */
export const reportEditions = ["inspector", "bench"] as const;
export type ReportEdition = (typeof reportEditions)[number];

/** The input of a report. Everything in it belongs to one text of one plan. */
export interface ReportInput {
  readonly edition: ReportEdition;
  /** "Loomwright 0.1.0" */
  readonly madeBy: string;
  /** The plan's root as people name it: "bus.ts". */
  readonly file: string;
  /** The state of the plan, if the caller wants it shown: "4f2a91c", "as of 1 May". */
  readonly revision?: string;
  readonly judgement: Judgement;
  /** In the order of the judgement; those about one shared value merged into one. */
  readonly findings: readonly ReportFinding[];
  /** For paper. */
  readonly drawings: readonly { readonly view: View; readonly outcome: DrawingOutcome }[];
  /** Lists for the bench: wires, cuts, parts, fuses, checks before first power. */
  readonly schedules: readonly Table[];
  /** Sentences that must be read before the schedules: a kept wire number that cannot be read. */
  readonly notices: readonly string[];
}

/** A finding with its words and its place. */
export interface ReportFinding {
  readonly rule: string;
  readonly severity: Severity;
  /** Names of all circuits and parts it is about. */
  readonly subjects: readonly string[];
  readonly message: string;
  /** "bus.ts:14"; "" if it is written nowhere. */
  readonly place: string;
  readonly accepted?: string;
  readonly followsFrom?: Cause;
}

/** A finding with its number in the report: "F3", or "A1" for an accepted one. */
export interface NumberedFinding extends ReportFinding {
  readonly number: string;
}

/** The data that the chapters share. */
export interface ReportContext extends ReportInput {
  readonly numbered: readonly NumberedFinding[];
  /** Grows while the chapters are written, in reading order; its own chapter comes after all that cite. */
  readonly sources: SourceList;
}

/** One chapter, still without its number. */
export interface Chapter {
  readonly id: string;
  readonly title: string;
  /** Landscape if its tables are wide. */
  readonly orientation: "portrait" | "landscape";
  /** Needs no page of its own after one of the same orientation. */
  readonly follows?: boolean;
  readonly blocks: readonly Block[];
  readonly sections?: readonly Section[];
}

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}
