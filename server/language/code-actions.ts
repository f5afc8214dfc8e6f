import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic,
  type Range,
  type SnippetTextEdit,
  type TextDocumentEdit,
  type TextEdit,
  type WorkspaceEdit,
} from "vscode-languageserver-types";
import { sizesAbove } from "../../library/analysis/made-sizes.ts";
import { thinnestNeeded } from "../../library/analysis/sizing.ts";
import type { Run } from "../../library/model/run.ts";
import { askedAnswer } from "../../library/rules/asked-answer.ts";
import type { Change } from "../../library/rules/finding.ts";
import { setSize, sizeInWords } from "../../library/rules/fixes/sized-fix.ts";
import { ruleById } from "../../library/rules/registry.ts";
import type { CheckedPlan, Edit, PlacedFinding, PlacedFix } from "../evaluate/checked-plan.ts";
import type { Checker } from "../evaluate/checker.ts";
import { findingsWithFixesTried } from "../evaluate/fixes/proofs-in-time.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { several } from "./counts.ts";
import { toDiagnostic } from "./diagnostics.ts";
import { fixAllKind } from "./messages.ts";
import { type EditorWords, editorWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

export interface ActionRequest {
  readonly uri: Uri;
  readonly range: Range;
  /** Kinds that were requested; undefined: all. */
  readonly only: readonly string[] | undefined;
  /** The editor asks by itself, as the cursor moves; slow actions that are never meant for the light bulb are left out. */
  readonly automatic: boolean;
  readonly editor: ClientAbilities;
}

export interface ClientAbilities {
  /** It takes edits with the version of the text they belong to, and refuses them for any other. */
  readonly versionedEdits: boolean;
  /** It lets a person type into a part of an edit. */
  readonly snippetEdits: boolean;
  /** It shows an action that cannot be taken, with the reason. */
  readonly disabledActions: boolean;
}

/**
 * The actions for the findings in a range of a file. Empty unless the plan was computed from the current texts: a right edit on
 * the wrong text deletes somebody's letter. Every fix was proved by checking the edited text before it is offered.
 */
export async function codeActions(
  view: PlanInView,
  checker: Pick<Checker, "provenFixes" | "fixAll" | "provenChange">,
  request: ActionRequest,
): Promise<CodeAction[]> {
  if (!view.current) return [];
  const actions: CodeAction[] = [];
  if (wanted(request, CodeActionKind.QuickFix)) {
    const findings = findingsAt(view, request);
    actions.push(...(await fixesOf(view, checker, findings, request)));
    actions.push(...findings.flatMap((placed) => acceptance(view, placed, request) ?? []));
  }
  if (wanted(request, CodeActionKind.RefactorRewrite)) {
    actions.push(...(await thinnerSizes(view, checker, request)));
  }
  if (asksForFixAll(request)) {
    // On a save the builder sees no preview: each change is of one circuit, cable or part.
    const [known, oneRecordEach] = request.automatic ? [allFixesOnSave, true] : [allFixes, false];
    const fix = await once(known, view.plan, () => checker.fixAll(view.plan, { oneRecordEach }));
    const edit = fix && workspaceEdit(view, fix.edits, request.editor);
    if (edit) actions.push({ title: editorWords(fix.title), kind: fixAllKind, edit });
  }
  return actions;
}

function wanted({ only }: ActionRequest, kind: string): boolean {
  return only === undefined || only.some((asked) => kind === asked || kind.startsWith(`${asked}.`));
}

/** Other tools' fix-all (`source.fixAll.eslint`) is not ours. */
function asksForFixAll(request: ActionRequest): boolean {
  return wanted(request, fixAllKind) && !(request.only === undefined && request.automatic);
}

function findingsAt(view: PlanInView, { uri, range }: ActionRequest): PlacedFinding[] {
  const start = view.offset(uri, range.start) ?? 0;
  const end = view.offset(uri, range.end) ?? start;
  return view.plan.findings
    .filter(
      ({ place, finding }) =>
        place.uri === uri && place.start <= end && start <= place.end && finding.accepted === undefined,
    )
    .slice(0, findingsWithFixesTried(view.plan));
}

/** Proving a fix runs the engine, and editors ask again at every move of the cursor: each answer is kept with its finding. */
const fixesKnown = new WeakMap<PlacedFinding, Promise<readonly PlacedFix[]>>();
const allFixes = new WeakMap<CheckedPlan, Promise<PlacedFix | undefined>>();
const allFixesOnSave = new WeakMap<CheckedPlan, Promise<PlacedFix | undefined>>();

function once<Key extends object, Value>(
  known: WeakMap<Key, Promise<Value>>,
  key: Key,
  make: () => Promise<Value>,
): Promise<Value> {
  let value = known.get(key);
  if (!value) {
    value = make();
    known.set(key, value);
    value.catch(() => known.delete(key));
  }
  return value;
}

/** One action for each different edit: findings about the same value often have the same fix. */
async function fixesOf(
  view: PlanInView,
  checker: Pick<Checker, "provenFixes">,
  findings: readonly PlacedFinding[],
  { editor }: ActionRequest,
): Promise<CodeAction[]> {
  const byEdit = new Map<string, CodeAction & { diagnostics: Diagnostic[] }>();
  for (const placed of findings) {
    const fixes = await once(fixesKnown, placed, () => checker.provenFixes(view.plan, placed));
    const best = fixes.find(({ kind }) => kind === "repair");
    const diagnostic = toDiagnostic(view, placed);
    const { advice } = fixes.length === 0 && editor.disabledActions ? askedAnswer(placed.finding) : {};
    if (advice !== undefined && diagnostic) byEdit.set(advice, withoutFix(advice, diagnostic));
    for (const fix of fixes) {
      const edit = workspaceEdit(view, fix.edits, editor);
      if (!edit || !diagnostic) continue;
      const key = JSON.stringify(edit);
      const same = byEdit.get(key);
      if (same) {
        same.diagnostics.push(diagnostic);
        if (fix === best) same.isPreferred = true;
        continue;
      }
      byEdit.set(key, {
        title: titleOf(view, fix),
        kind: CodeActionKind.QuickFix,
        diagnostics: [diagnostic],
        edit,
        ...(fix === best ? { isPreferred: true } : {}),
      });
    }
  }
  return [...byEdit.values()];
}

/** An action that cannot be taken: the reason is shown where a fix was looked for. */
function withoutFix(advice: string, diagnostic: Diagnostic) {
  return {
    title: editorWords("No single change that could be written here mends it"),
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    disabled: { reason: editorWords(advice) },
  };
}

function titleOf({ plan }: PlanInView, { title, alsoChanges }: PlacedFix): EditorWords {
  if (alsoChanges.length === 0) return editorWords(title);
  const others = several(alsoChanges.length, `other ${kindOfAll(plan, alsoChanges)}`);
  return editorWords(`${title} (also changes ${others})`);
}

/** "circuit" or "cable" if all of them are; "item" if they are of several kinds. */
function kindOfAll({ judgement: { model } }: CheckedPlan, records: readonly number[]): string {
  const kinds = new Map<number, string>(model.circuits.map(({ record }) => [record, "circuit"]));
  for (const { record } of model.unjudged) kinds.set(record, "circuit");
  for (const { record, kind } of model.network?.parts ?? [])
    if (!kinds.has(record)) kinds.set(record, kind === "load" ? "load" : "part");
  for (const { record, role } of model.network?.conductors ?? [])
    if (role === "cable") kinds.set(record, "cable");
  const [first, ...others] = new Set(records.map((record) => kinds.get(record)));
  return first !== undefined && others.length === 0 ? first : "item";
}

/**
 * Writes `accept` into the circuit, cable or part and leaves the reason to the builder: an accepted finding without one is a
 * finding again.
 */
function acceptance(
  view: PlanInView,
  placed: PlacedFinding,
  { editor }: ActionRequest,
): CodeAction | undefined {
  const { at, rule } = placed.finding;
  if (!("record" in at) || ruleById(rule)?.acceptable !== true) return undefined;
  const { record } = at;
  const accept = acceptOf(view.plan, record);
  if (!accept) return undefined;
  const change: Change =
    Object.keys(accept).length > 0
      ? { do: "set", record, path: ["accept", rule], value: "" }
      : { do: "set", record, path: ["accept"], value: { [rule]: "" } };
  const fix = view.plan.editsOf({
    title: `Accept, with a reason: ${ruleById(rule)?.title.toLowerCase() ?? rule}`,
    kind: "suggestion",
    changes: [change],
  });
  const edit = fix && workspaceEdit(view, fix.edits, editor, emptyReason);
  const diagnostic = toDiagnostic(view, placed);
  if (!edit || !diagnostic) return undefined;
  return { title: titleOf(view, fix), kind: CodeActionKind.QuickFix, diagnostics: [diagnostic], edit };
}

/** The accepted findings of a circuit, a cable or a part; undefined for a record that cannot accept any. */
function acceptOf({ judgement: { model } }: CheckedPlan, record: number): Run["accept"] | undefined {
  return (
    model.circuits.find((one) => one.record === record) ??
    model.network?.conductors.find((one) => one.record === record)?.run ??
    model.network?.parts.find((one) => one.record === record)
  )?.accept;
}

/** The cursor goes to the reason, in editors that can put it there. */
const emptyReason = { written: '""', typedIn: '"$0"' };

/**
 * For a conductor two or more sizes above need: thinner is never offered as a fix, only as a rewrite that a builder asks for, and
 * only if the thinner plan has no finding that this one does not have.
 */
async function thinnerSizes(
  view: PlanInView,
  checker: Pick<Checker, "provenChange">,
  { uri, range, editor }: ActionRequest,
): Promise<CodeAction[]> {
  const spot = view.plan.at(uri, view.offset(uri, range.start) ?? -1);
  const circuit =
    spot && view.plan.judgement.circuits.find((judged) => judged.circuit.record === spot.record)?.circuit;
  if (!circuit || circuit.partlyInvalid) return [];
  const needed = thinnestNeeded(circuit)?.conductor;
  if (!needed || sizesAbove(circuit.conductor, needed) < 2) return [];
  const fix = await checker.provenChange(view.plan, {
    title: `Use ${sizeInWords(needed)}, the thinnest size within every limit checked`,
    kind: "suggestion",
    changes: [setSize(circuit, needed)],
  });
  const edit = fix && workspaceEdit(view, fix.edits, editor);
  if (!edit) return [];
  return [{ title: titleOf(view, fix), kind: CodeActionKind.RefactorRewrite, edit }];
}

/** The edits in the protocol's form; undefined if any of them expects a different text. */
function workspaceEdit(
  view: PlanInView,
  edits: readonly Edit[],
  editor: ClientAbilities,
  leftToType?: { readonly written: string; readonly typedIn: string },
): WorkspaceEdit | undefined {
  const byFile = new Map<Uri, (TextEdit | SnippetTextEdit)[]>();
  for (const edit of edits) {
    const range = view.range(edit);
    if (!range || view.textAt(edit) !== edit.expected) return undefined;
    const inFile = byFile.get(edit.uri) ?? [];
    byFile.set(edit.uri, inFile);
    const snippet = editor.versionedEdits && editor.snippetEdits && leftToType !== undefined;
    inFile.push(
      snippet
        ? { range, snippet: { kind: "snippet", value: asSnippet(edit.newText, leftToType) } }
        : { range, newText: edit.newText },
    );
  }
  if (byFile.size === 0) return undefined;
  if (editor.versionedEdits) {
    const documentChanges = [...byFile].map(
      ([uri, inFile]): TextDocumentEdit => ({ textDocument: view.client(uri), edits: inFile }),
    );
    return { documentChanges };
  }
  return {
    changes: Object.fromEntries(
      [...byFile].map(([uri, inFile]) => [view.client(uri).uri, inFile as TextEdit[]]),
    ),
  };
}

function asSnippet(
  text: string,
  { written, typedIn }: { readonly written: string; readonly typedIn: string },
): string {
  const at = text.lastIndexOf(written);
  const plain = (part: string) => part.replace(/[\\$}]/g, "\\$&");
  return at < 0 ? plain(text) : plain(text.slice(0, at)) + typedIn + plain(text.slice(at + written.length));
}
