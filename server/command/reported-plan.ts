import { relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { oneWayM } from "../../library/analysis/copper-area.ts";
import { designCurrentA } from "../../library/analysis/design-current.ts";
import {
  dropsOf,
  dropsWithoutVerdict,
  type NamedDrop,
  worstDrop,
} from "../../library/documents/worst-drop.ts";
import type { PlanModel } from "../../library/model/plan-model.ts";
import { askedAnswer, mayHaveFixes } from "../../library/rules/asked-answer.ts";
import type { At } from "../../library/rules/finding.ts";
import { type JudgedRun, withKnownCurrent } from "../../library/rules/rule.ts";
import type {
  CheckedPlan,
  CheckOutcome,
  IncompletePlan,
  PlacedFinding,
  PlacedFix,
  SourceRange,
} from "../evaluate/checked-plan.ts";
import type { Checker } from "../evaluate/checker.ts";
import { findingsWithFixesTried } from "../evaluate/fixes/proofs-in-time.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import { createLineIndex, type LineIndex } from "./line-index.ts";
import type { Lines, NotJudged, ReportedCircuit, ReportedFinding, ReportedPlan } from "./report-schema.ts";
import { reportNetwork, reportSize } from "./reported-network.ts";
import { reportPlacement } from "./reported-placement.ts";

/** A plan with its texts, for code frames. */
export interface Reported extends ReportedPlan {
  /** The text of a line. */
  lineText(file: string, line: number): string | undefined;
}

/** The workspace and the checker of a plan. */
export interface CheckedWith {
  readonly workspace: Workspace;
  readonly checker: Pick<Checker, "provenFixes">;
}

/** Everything the command line reports about one plan. Files are named relative to a folder. */
export async function reportPlan(
  outcome: CheckOutcome,
  group: CheckedWith,
  folder: string,
): Promise<Reported> {
  const places = placesIn(group.workspace, folder);
  if (outcome.state === "incomplete") return incompleteReport(outcome, places);
  const circuits = withKnownCurrent(outcome.judgement.circuits).filter(
    ({ circuit }) => circuit.word === "circuit",
  );
  const findings: ReportedFinding[] = [];
  let mayBeTried = findingsWithFixesTried(outcome);
  for (const placed of outcome.findings) {
    const fixes = !hasFixes(placed)
      ? []
      : mayBeTried-- > 0
        ? await group.checker.provenFixes(outcome, placed)
        : undefined;
    findings.push(reportFinding(placed, fixes, places));
  }
  return {
    file: places.fileOf(outcome.root),
    evaluated: outcome.judgement.problems.length === 0,
    notJudged: notJudged(outcome),
    circuits: circuits.map((judged) => reportCircuit(outcome, judged, places)),
    circuitsNotJudged: circuitsBeside(
      outcome.judgement.model,
      new Set(circuits.map(({ circuit }) => circuit.record)),
    ),
    worstDrop: reportDrop(worstDrop(dropsOf(outcome.judgement))),
    dropsNotJudged: dropsWithoutVerdict(outcome.judgement),
    placement: outcome.judgement.placement ? reportPlacement(outcome.judgement.placement) : null,
    network: outcome.judgement.network
      ? reportNetwork(outcome, outcome.judgement.network, places.linesOf)
      : outcome.judgement.model.networkUnread
        ? { judged: false }
        : null,
    findings,
    lineText: places.lineText,
  };
}

/** Uses the first of its problems: there it stopped. */
function notJudged({ judgement, findings }: CheckedPlan): NotJudged | null {
  const [problem] = judgement.problems;
  if (!problem) return null;
  const message = findings.find(({ finding }) => finding.rule === problem.rule)?.message ?? problem.rule;
  if (problem.rule === "plan/too-slow") return { reason: `${problem.limit}-limit`, message };
  if (problem.reason === "error-thrown") return { reason: "error-thrown", message };
  return { reason: problem.reason === "evaluator-failed" ? "checker-failed" : "cannot-run", message };
}

function incompleteReport({ root, unfinished }: IncompletePlan, places: Places): Reported {
  const finding: ReportedFinding = {
    rule: "plan/cannot-run",
    severity: "error",
    subject: "the plan",
    message: `This text is not complete TypeScript yet, so it was not checked: ${unfinished.text}`,
    ...places.linesOf(unfinished.place),
    related: [],
    fixes: [],
  };
  return {
    file: places.fileOf(root),
    evaluated: false,
    notJudged: { reason: "half-typed", message: finding.message },
    circuits: [],
    circuitsNotJudged: [],
    worstDrop: null,
    dropsNotJudged: 0,
    placement: null,
    network: null,
    findings: [finding],
    lineText: places.lineText,
  };
}

/** The names of the circuits of a plan that are not among these, in the order of the plan. */
function circuitsBeside({ circuits, unjudged }: PlanModel, judged: ReadonlySet<number>): string[] {
  return [...circuits, ...unjudged]
    .filter(({ record }) => !judged.has(record))
    .toSorted((one, other) => one.record - other.record)
    .map(({ name }) => name);
}

function hasFixes({ finding }: PlacedFinding): boolean {
  return mayHaveFixes(finding) && finding.accepted === undefined;
}

/** `proven`: the fixes that were tried and hold; undefined: there may be some, and none was tried. */
function reportFinding(
  placed: PlacedFinding,
  proven: readonly PlacedFix[] | undefined,
  places: Places,
): ReportedFinding {
  const { finding } = placed;
  const { advice } = proven ? askedAnswer(finding) : {};
  return {
    rule: finding.rule,
    severity: finding.severity,
    subject: finding.subject,
    ...propertyOf(finding.at),
    message: placed.message,
    ...places.linesOf(placed.place),
    ...(finding.accepted === undefined ? {} : { accepted: finding.accepted }),
    ...(finding.followsFrom && { followsFrom: finding.followsFrom }),
    related: placed.related.map(({ place, text }) => ({ ...places.linesOf(place), text })),
    ...(proven ? {} : { fixesTried: false as const }),
    ...(advice === undefined ? {} : { advice }),
    fixes: (proven ?? []).map(({ title, kind, edits }) => ({
      title,
      kind,
      edits: edits.map((edit) => ({ ...places.linesOf(edit), newText: edit.newText })),
    })),
  };
}

function propertyOf(at: At): { readonly property?: string } {
  return "path" in at && at.path.length > 0 ? { property: at.path.join(".") } : {};
}

/** Copies only the properties that belong in a report. */
function reportDrop(drop: NamedDrop | undefined): ReportedPlan["worstDrop"] {
  if (!drop) return null;
  const { name, fromBank, dropPercent, dropLimitPercent, atLeast } = drop;
  return { name, fromBank, dropPercent, dropLimitPercent, atLeast };
}

function reportCircuit(plan: CheckedPlan, { circuit, result }: JudgedRun, places: Places): ReportedCircuit {
  const { conductor, protection } = circuit;
  const { ampacity, drop, protection: range } = result;
  const { file, line } = places.linesOf(plan.callOf(circuit.record));
  return {
    name: circuit.name,
    file,
    line,
    loadA: circuit.loadA,
    designA: designCurrentA(circuit),
    systemV: circuit.systemV,
    duplex: circuit.duplex ?? null,
    lengthOneWayM: oneWayM(circuit) ?? null,
    conductor: reportSize(conductor),
    ampacityA: ampacity.judged ? ampacity.ampacityA : null,
    dropV: drop.judged ? drop.dropV : null,
    dropPercent: drop.judged ? drop.dropPercent : null,
    dropLimitPercent: drop.dropLimitPercent,
    conductorC: drop.conductorC,
    protection: protection && { ratingA: protection.ratingA, minA: range.minA, maxA: range.maxA ?? null },
  };
}

interface Places {
  fileOf(uri: Uri): string;
  linesOf(place: SourceRange): Lines;
  lineText(file: string, line: number): string | undefined;
}

/** Files are named with forward slashes on every system, to keep reports comparable. */
function placesIn(workspace: Workspace, folder: string): Places {
  const indexes = new Map<string, LineIndex>();
  const fileOf = (uri: Uri) => relative(folder, fileURLToPath(uri)).split(sep).join("/");
  const indexOf = (uri: Uri) => {
    const file = fileOf(uri);
    let index = indexes.get(file);
    if (!index) {
      index = createLineIndex(workspace.read(uri)?.text ?? "");
      indexes.set(file, index);
    }
    return index;
  };
  return {
    fileOf,
    linesOf({ uri, start, end }) {
      const index = indexOf(uri);
      const from = index.positionAt(start);
      const to = index.positionAt(end);
      return {
        file: fileOf(uri),
        line: from.line,
        column: from.column,
        endLine: to.line,
        endColumn: to.column,
      };
    },
    lineText: (file, line) => indexes.get(file)?.lineText(line),
  };
}
