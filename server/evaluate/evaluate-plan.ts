import type { World } from "../../library/analysis/energy/energy-of-plan.ts";
import { judge } from "../../library/judge.ts";
import type { PlanProblem, PlanRecord } from "../../library/model/record.ts";
import { callBeingTyped, nameBeingTyped } from "./being-typed.ts";
import type { CheckOutcome, IncompletePlan, SourceRange } from "./checked-plan.ts";
import { fileName } from "./files/file-name.ts";
import { independentRow } from "./instrument/independent-rows.ts";
import { sitesInFile } from "./instrument/instrument.ts";
import { inputWith, type WrittenInput } from "./instrument/plain-input.ts";
import { isWithoutSideEffects } from "./instrument/side-effects.ts";
import { callsPassedBy } from "./provenance/calls-not-reached.ts";
import type { TracedRun } from "./provenance/contexts.ts";
import { errorPlace, unreadablePlace } from "./provenance/error-place.ts";
import { fallbackNames } from "./provenance/fallback-names.ts";
import { LocatedPlan } from "./provenance/located-plan.ts";
import { Provenance } from "./provenance/provenance.ts";
import { placeOfCallee } from "./provenance/source-map.ts";
import type { FindRow } from "./sandbox/changed-row.ts";
import type { Limits, RawRecord, RunOutcome, Stopped } from "./sandbox/contract.ts";
import type { MemoisedSandbox } from "./sandbox/memoised-sandbox.ts";
import type { FileCache } from "./text/file-cache.ts";
import { type LoadedPlan, type LoadProblem, loadPlan } from "./text/load-plan.ts";
import { PlanFile } from "./text/parse.ts";
import type { LastEdit, Snapshot, Uri, Workspace } from "./workspace.ts";

export interface Evaluator {
  readonly workspace: Workspace;
  readonly cache: Pick<FileCache, "get">;
  readonly sandbox: Pick<MemoisedSandbox, "run">;
  readonly limits: Limits;
  /** By root: the last version of its plan; the next one reuses its unchanged parts. */
  readonly last: Map<Uri, LocatedPlan>;
  workGoesOn(root: Uri): void;
  /** The table of the world, read when a plan has a period. */
  world(): World;
}

/** Reads, runs and judges one plan. */
export async function evaluatePlan(root: Uri, evaluator: Evaluator): Promise<CheckOutcome | LocatedPlan> {
  const { workspace, cache, sandbox, limits, last } = evaluator;
  const plan = loadPlan(root, workspace, cache);
  const { snapshot, broken } = plan;
  const edit = workspace.lastEdit?.();
  if (broken?.syntaxError) {
    const { start, end, text } = broken.syntaxError;
    const place = { uri: broken.uri, start, end };
    return { state: "incomplete", root, snapshot, broken: broken.uri, unfinished: { place, text } };
  }
  const rootFile = plan.files.get(root);
  if (!rootFile) return withoutRoot(plan, workspace.unread?.(root)?.why);
  const runs = plan.problems.length === 0;
  const inputAt = writtenInputs(plan);
  const outcome = runs
    ? withInputs(await sandbox.run({ root, modules: modulesOf(plan), limits }, findRowOf(plan)), inputAt)
    : nothingRun;
  evaluator.workGoesOn(root);
  const name = edit && nameBeingTyped(edit, plan, outcome.end);
  if (name) return beingTyped(name, edit, root, snapshot);
  const traced = tracedRunOf(plan, rootFile, outcome);
  const provenance = new Provenance(traced);
  const { problems, places } = failureOf(plan, { outcome, provenance, limits, rootFile });
  const records = planRecords(outcome.records, provenance);
  const before = last.get(root);
  const judgement = judge(records, problems, before?.judgement, evaluator.world);
  const located = new LocatedPlan({ traced, snapshot, records, judgement, problemPlaces: places, before });
  const call = edit && callBeingTyped(edit, located, before);
  if (call) return beingTyped(call, edit, root, snapshot);
  last.set(root, located);
  return located;
}

function beingTyped(place: SourceRange, edit: LastEdit, root: Uri, snapshot: Snapshot): IncompletePlan {
  const unfinished = { place, text: "it is still being typed" };
  return { state: "incomplete", root, snapshot, broken: place.uri, unfinished, until: edit };
}

/** The outcome of a plan that is not run because of an earlier problem. */
const nothingRun: RunOutcome = {
  records: [],
  calls: [],
  allocations: [],
  end: { why: "failed", message: "it was not run" },
};

interface Run {
  readonly outcome: RunOutcome;
  readonly provenance: Provenance;
  readonly limits: Limits;
  readonly rootFile: PlanFile;
}

/** Each reason why the judgement does not cover the whole plan, with its place. */
function failureOf(plan: LoadedPlan, { outcome, provenance, limits, rootFile }: Run): Failure {
  const { end } = outcome;
  if (plan.problems.length > 0) return failureWith(plan.problems);
  if (end === "whole") return failureWith(callsPassedBy([...plan.files.values()], outcome));
  return {
    problems: [stoppedProblem(end, limits)],
    places: [stoppedPlace(end, plan, provenance) ?? startOf(rootFile)],
  };
}

function failureWith(problems: readonly LoadProblem[]): Failure {
  return { problems: problems.map(problemOf), places: problems.map(({ place }) => place) };
}

interface Failure {
  readonly problems: readonly PlanProblem[];
  readonly places: readonly SourceRange[];
}

/** The plan's own file does not exist (any more), or has no readable text. */
function withoutRoot(plan: LoadedPlan, why: string | undefined): LocatedPlan {
  const file = new PlanFile({ uri: plan.root, version: "absent", text: "" }, 0);
  const place = { uri: plan.root, start: 0, end: 0 };
  const name = fileName(plan.root);
  const problem =
    why === undefined
      ? ({ reason: "import-not-found", detail: name } as const)
      : ({ reason: "import-unread", detail: `"${name}" ${why}` } as const);
  const judgement = judge([], [{ rule: "plan/cannot-run", ...problem }]);
  const traced = tracedRunOf(plan, file, nothingRun);
  return new LocatedPlan({
    traced,
    snapshot: plan.snapshot,
    records: [],
    judgement,
    problemPlaces: [place],
  });
}

function modulesOf({ files, imports }: LoadedPlan) {
  return [...files.values()].map((file) => ({
    uri: file.uri,
    js: file.instrumented?.js.text ?? "",
    imports: Object.fromEntries(imports.get(file.uri) ?? []),
  }));
}

/**
 * The input that the text itself gives to the DSL function at a call site. Taken before the run: an edit meanwhile invalidates
 * the trees.
 */
function writtenInputs({ files }: LoadedPlan): (site: number) => WrittenInput | undefined {
  const sites = new Map([...files.values()].map(({ number, instrumented }) => [number, instrumented?.sites]));
  return (site) => sites.get(Math.floor(site / sitesInFile))?.[site % sitesInFile]?.input;
}

/** Undefined if running the plan has side effects: its rows may then depend on each other. */
function findRowOf({ files }: LoadedPlan): FindRow | undefined {
  if (![...files.values()].every(({ tree }) => isWithoutSideEffects(tree.source))) return undefined;
  return (uri, range) => {
    const { tree, number } = files.get(uri) ?? {};
    return tree?.instrumented && independentRow(tree.source, tree.instrumented, number!, range);
  };
}

/** A plan can call the instrumentation function itself, with anything as the site; such records are dropped. */
function withInputs(outcome: RunOutcome, inputAt: (site: number) => WrittenInput | undefined): RunOutcome {
  if (!outcome.records.some(({ written }) => written)) return outcome;
  const records = outcome.records.flatMap((record) => {
    if (record.written === undefined) return [record];
    const read = inputAt(record.written.site);
    const input = read && inputWith(read, record.written.given);
    return input === undefined ? [] : [{ ...record, input }];
  });
  return { ...outcome, records };
}

function tracedRunOf(plan: LoadedPlan, root: PlanFile, outcome: RunOutcome): TracedRun {
  const { files, imports } = plan;
  return {
    outcome,
    root,
    files: files.size > 0 ? [...files.values()] : [root],
    imported: (importer, text) => {
      const to = imports.get(importer.uri)?.get(text);
      return to === undefined || to === "loomwright" ? undefined : files.get(to);
    },
  };
}

/** Looks for names only if some record needs one. */
function planRecords(records: readonly RawRecord[], provenance: Provenance): readonly PlanRecord[] {
  let names: ReadonlyMap<number, string> | undefined;
  const unnamed = () => records.flatMap(({ input }, index) => (hasName(input) ? [] : [index]));
  return records.map(({ word, input }, index) => ({
    word,
    input,
    get fallbackName() {
      names ??= fallbackNames(unnamed(), provenance);
      return names.get(index) ?? "circuit";
    },
  }));
}

function hasName(input: unknown): boolean {
  const name = (input as { readonly name?: unknown } | null | undefined)?.name;
  return typeof name === "string" && name.trim() !== "";
}

function problemOf({ reason, detail }: LoadProblem): PlanProblem {
  return { rule: "plan/cannot-run", reason, detail };
}

function stoppedProblem(stopped: Stopped, limits: Limits): PlanProblem {
  switch (stopped.why) {
    case "time":
      return { rule: "plan/too-slow", limit: "time", allowed: limits.timeMs };
    case "memory":
      return { rule: "plan/too-slow", limit: "memory", allowed: limits.memoryBytes };
    case "records":
      return { rule: "plan/too-slow", limit: "records", allowed: limits.records };
    case "error":
      return {
        rule: "plan/cannot-run",
        reason: stopped.began ? "error-thrown" : "text-not-run",
        detail: stopped.message,
      };
    case "failed":
      return { rule: "plan/cannot-run", reason: "evaluator-failed", detail: stopped.message };
  }
}

function stoppedPlace(stopped: Stopped, plan: LoadedPlan, provenance: Provenance): SourceRange | undefined {
  if (stopped.why === "failed") return undefined;
  const file = stopped.at && plan.files.get(stopped.at.uri);
  const message = stopped.why === "error" ? stopped.message : "";
  // A file that cannot be read is refused before any call in it.
  const unread = message.startsWith("SyntaxError: ") && stopped.call === -1;
  const at =
    stopped.at &&
    file &&
    (unread ? unreadablePlace(stopped.at, file) : errorPlace(stopped.at, message, file));
  if (at) return at;
  const call = stopped.call === undefined ? undefined : provenance.callAt(stopped.call);
  return call && placeOfCallee(call);
}

function startOf(file: PlanFile): SourceRange {
  const [statement] = file.tree.source.statements;
  if (!statement) return { uri: file.uri, start: 0, end: 0 };
  const start = statement.getStart(file.tree.source);
  const lineEnd = file.text.slice(start, statement.end).search(/\r?\n/);
  return { uri: file.uri, start, end: lineEnd < 0 ? statement.end : start + lineEnd };
}
