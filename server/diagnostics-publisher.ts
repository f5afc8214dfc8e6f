import { type Diagnostic, DiagnosticSeverity } from "vscode-languageserver";
import type { EditorWorkspace } from "./editor-workspace.ts";
import type { Uri } from "./evaluate/workspace.ts";
import { diagnostics, source } from "./language/diagnostics.ts";
import { plainWords } from "./language/plain-words.ts";
import type { OpenPlans, ShownPlan } from "./open-plans.ts";
import type { FailedPlan } from "./publish-gate.ts";

/**
 * Delivers findings to the editor: pushed, or pulled by editors that ask. An editor that pulls never gets a push for a file it
 * has open. Files that are not open are never pulled, and are always pushed.
 */
export interface DiagnosticsPublisher {
  /** The gate let an outcome through. */
  arrived(plan: ShownPlan): void;
  gone(root: Uri): void;
  /** A file was opened or closed: its findings may now need to be pushed instead of pulled, or the reverse. */
  openedOrClosed(file: Uri): void;
  /** Answers a pull for an open file; `previous` is the id of the last answer, which the editor still has. */
  pull(file: Uri, previous: string | undefined): Promise<PullAnswer>;
}

type PullAnswer =
  | { readonly kind: "full"; readonly id: string; readonly items: Diagnostic[] }
  /** The editor's last answer is still valid: no change, or the text is half typed. */
  | { readonly kind: "unchanged"; readonly id: string }
  /** Half typed since it was opened: there is no result to show yet. */
  | { readonly kind: "nothing-yet" }
  /** The text changed while the answer was being made. */
  | { readonly kind: "outdated" };

export interface PublisherWiring {
  readonly workspace: EditorWorkspace;
  readonly plans: Pick<OpenPlans, "knownOf" | "settledOf">;
  /** The editor pulls the findings of open files. */
  readonly editorPulls: boolean;
  push(uri: string, version: number | undefined, items: Diagnostic[]): void;
  /** Asks an editor that pulls to do so again. */
  askToPull(): void;
}

export function createDiagnosticsPublisher(wiring: PublisherWiring): DiagnosticsPublisher {
  const { workspace, plans, editorPulls } = wiring;
  const filesOf = new Map<Uri, ReadonlySet<Uri>>();
  /** The items pushed for each file, as text, to avoid sending duplicates. */
  const pushed = new Map<Uri, string>();
  /** The last answer to an editor that pulls; without items if the text was half typed and the answer was postponed. */
  const pulled = new Map<Uri, { readonly version: number | null; readonly items?: readonly Diagnostic[] }>();

  const update = (file: Uri): void => {
    const { uri, version } = workspace.client(file);
    if (editorPulls && workspace.isOpen(file)) {
      clearPushed(file);
      const last = pulled.get(file);
      // The editor pulls again anyway for a file that was edited since the last pull.
      if (last?.version !== version) return;
      // The answer was postponed because another file was half typed, or it is now out of date.
      const items = last.items && findingsIn(file, plans.knownOf(file));
      if (!items || JSON.stringify(last.items) !== JSON.stringify(items)) wiring.askToPull();
      return;
    }
    const items = findingsIn(file, plans.knownOf(file));
    const text = JSON.stringify([version, items]);
    if (pushed.get(file) === text || (items.length === 0 && !pushed.has(file) && version === null)) return;
    pushed.set(file, text);
    wiring.push(uri, version ?? undefined, items);
  };

  const clearPushed = (file: Uri): void => {
    if (!pushed.delete(file)) return;
    wiring.push(workspace.client(file).uri, undefined, []);
  };

  return {
    arrived(plan) {
      // Incomplete: the editor moves the old squiggles along with the text, better than the server could.
      if (plan.outcome?.state === "incomplete") return;
      const before = filesOf.get(plan.root) ?? new Set();
      const now = new Set<Uri>([plan.root]);
      if (plan.outcome?.state === "checked") for (const file of plan.outcome.snapshot.keys()) now.add(file);
      filesOf.set(plan.root, now);
      for (const file of new Set([...before, ...now])) update(file);
    },
    gone(root) {
      const files = filesOf.get(root) ?? [];
      filesOf.delete(root);
      for (const file of files) {
        if (plans.knownOf(file).length > 0) update(file);
        else clearPushed(file);
      }
    },
    openedOrClosed(file) {
      pulled.delete(file);
      if (pushed.has(file) || !workspace.isOpen(file)) update(file);
    },
    async pull(file, previous) {
      const { version } = workspace.client(file);
      const settled = await plans.settledOf(file);
      if (workspace.client(file).version !== version) return { kind: "outdated" };
      const remember = (items?: readonly Diagnostic[]) => {
        if (workspace.isOpen(file)) pulled.set(file, { version, ...(items ? { items } : {}) });
      };
      const id = settled.map(({ root, serial }) => `${serial} ${root}`).join("\n");
      const allIncomplete =
        settled.length > 0 && settled.every(({ outcome }) => outcome?.state === "incomplete");
      if (allIncomplete) {
        remember();
        return previous === undefined ? { kind: "nothing-yet" } : { kind: "unchanged", id: previous };
      }
      const items = findingsIn(file, settled);
      remember(items);
      return previous === id ? { kind: "unchanged", id } : { kind: "full", id, items };
    },
  };
}

/** The findings of all plans of a file. Identical findings of two plans are reported once. */
function findingsIn(file: Uri, plans: readonly ShownPlan[]): Diagnostic[] {
  const items = plans.flatMap((plan) =>
    plan.outcome?.state === "failed" ? failure(plan.outcome, file) : ofView(plan, file),
  );
  if (plans.length < 2) return items;
  return [...new Map(items.map((item) => [JSON.stringify(item), item])).values()];
}

function ofView({ view }: ShownPlan, file: Uri): Diagnostic[] {
  return view ? diagnostics(view, file) : [];
}

/** At the top of the root: silence would read as "nothing found". */
function failure({ root, reason }: FailedPlan, file: Uri): Diagnostic[] {
  if (file !== root) return [];
  const top = { line: 0, character: 0 };
  return [
    {
      range: { start: top, end: top },
      severity: DiagnosticSeverity.Error,
      source,
      message: plainWords(`This plan could not be checked: ${reason}. None of it was judged.`),
    },
  ];
}
