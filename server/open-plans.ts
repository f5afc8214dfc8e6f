import { TextDocument } from "vscode-languageserver-textdocument";
import type { EditorWorkspace } from "./editor-workspace.ts";
import type { CheckedPlan, HeldPlan } from "./evaluate/checked-plan.ts";
import type { Checker } from "./evaluate/checker.ts";
import type { PassedBy } from "./evaluate/passed-by.ts";
import type { Snapshot, Uri } from "./evaluate/workspace.ts";
import { type PlanInView, viewPlan } from "./language/plan-in-view.ts";
import { createPublishGate, type FailedPlan } from "./publish-gate.ts";

/**
 * The plans that the editor has open, each with its newest complete result. Knows which plans a file belongs to, wakes them when
 * a text changes, and hands out only what came through the gate.
 */
export interface OpenPlans {
  /** A file was opened, typed in, closed, or changed on disk: checks every plan that it touches. */
  touched(files: readonly Uri[]): void;
  /** Waits until the plans of a file are at rest, then gives them. Empty: the file belongs to no plan. */
  settledOf(file: Uri): Promise<readonly ShownPlan[]>;
  /** The plans of a file as they are known at this moment, without waiting. */
  knownOf(file: Uri): readonly ShownPlan[];
  /** Keeps every plan of the workspace checked from now on, open or not, and gives all of them at rest. */
  checkWorkspace(): Promise<readonly ShownPlan[]>;
  /** Files of the workspace that look like plans and are not judged, each with the reason. */
  passedBy(): readonly PassedBy[];
  /** Checks everything again with another checker: its limits were changed. */
  use(checker: Checker): void;
}

/** One plan as it stands. */
export interface ShownPlan {
  readonly root: Uri;
  /** Grows with every outcome let through, so that two answers can be told apart. */
  readonly serial: number;
  /** What came through the gate last; undefined while the first check runs. */
  readonly outcome: CheckedPlan | HeldPlan | FailedPlan | undefined;
  /** The newest complete result against the texts of now; undefined while there was none. */
  readonly view: PlanInView | undefined;
}

/** Of the plans that a file belongs to, the one that is meant where only one can be shown: its own, if it is the root of one. */
export function planMeantBy(file: Uri, plans: readonly ShownPlan[]): ShownPlan | undefined {
  return plans.find(({ root }) => root === file) ?? plans[0];
}

export interface OpenPlansWiring {
  readonly workspace: EditorWorkspace;
  log(text: string): void;
  started(root: Uri): void;
  /** An outcome came through the gate. */
  arrived(plan: ShownPlan): void;
  /** A plan is no longer anybody's concern: whatever was shown of it goes. */
  gone(root: Uri): void;
}

export function createOpenPlans(
  firstChecker: Checker,
  { workspace, log, started, arrived, gone }: OpenPlansWiring,
): OpenPlans {
  let checker = firstChecker;
  let wholeWorkspace = false;
  let serials = 0;
  const plans = new Map<Uri, Kept>();

  const gate = createPublishGate({
    check: (root) => checker.check(root),
    isCurrent: (snapshot) => isCurrent(workspace, snapshot),
    log,
    started,
    letThrough(root, outcome) {
      const kept = plans.get(root);
      if (!kept) return;
      serials++;
      kept.serial = serials;
      kept.outcome = outcome;
      if (outcome.state !== "held") kept.complete = undefined;
      if (outcome.state === "checked") kept.complete = { plan: outcome, texts: textsOf(workspace, outcome) };
      kept.files = filesOf(root, kept);
      arrived(shown(root, kept));
    },
  });

  const shown = (root: Uri, { serial, outcome, complete }: Kept): ShownPlan => ({
    root,
    serial,
    outcome,
    view:
      complete &&
      viewPlan({
        plan: complete.plan,
        checked: (uri) => complete.texts.get(uri),
        now: (uri) => workspace.document(uri),
        client: (uri) => workspace.client(uri),
      }),
  });

  const keptOf = (root: Uri): Kept => {
    const kept = plans.get(root) ?? {
      serial: 0,
      outcome: undefined,
      complete: undefined,
      files: new Set([root]),
    };
    plans.set(root, kept);
    return kept;
  };

  /** The plans that are somebody's concern now, new ones too. Those that no longer are go. */
  const concern = (): Set<Uri> => {
    const roots = new Set<Uri>();
    for (const file of workspace.openFiles()) {
      for (const root of checker.rootsOf(file)) {
        roots.add(root);
        keptOf(root).files.add(file);
      }
    }
    for (const root of wholeWorkspace ? checker.roots() : []) {
      roots.add(root);
      keptOf(root);
    }
    for (const root of plans.keys()) {
      if (roots.has(root)) continue;
      plans.delete(root);
      gate.forget(root);
      gone(root);
    }
    return roots;
  };

  const plansOf = (file: Uri): [Uri, Kept][] => [...plans].filter(([, kept]) => kept.files.has(file));

  return {
    touched(files) {
      for (const root of concern()) {
        const kept = keptOf(root);
        // Also without being touched: a file that was missing may have come.
        if (files.some((file) => kept.files.has(file)) || !isCurrentOutcome(workspace, kept)) gate.wake(root);
      }
    },
    async settledOf(file) {
      // Which plans a file belongs to may itself change while they settle: an import was just typed.
      for (let roots = plansOf(file); ; ) {
        await Promise.all(roots.map(([root]) => gate.settled(root)));
        const after = plansOf(file);
        if (after.every(([root]) => roots.some(([before]) => before === root))) {
          return after.map(([root, kept]) => shown(root, kept));
        }
        roots = after;
      }
    },
    knownOf: (file) => plansOf(file).map(([root, kept]) => shown(root, kept)),
    async checkWorkspace() {
      wholeWorkspace = true;
      for (const root of concern()) if (!isCurrentOutcome(workspace, keptOf(root))) gate.wake(root);
      await Promise.all([...plans.keys()].map((root) => gate.settled(root)));
      return [...plans].map(([root, kept]) => shown(root, kept));
    },
    passedBy: () => checker.passedBy(),
    use(other) {
      checker = other;
      for (const root of plans.keys()) {
        // What the checker of before is still at was asked with its limits, and is cut short when that one is disposed of.
        gate.forget(root);
        gate.wake(root);
      }
    },
  };
}

interface Kept {
  serial: number;
  outcome: ShownPlan["outcome"];
  /** Stays while the text is held, so that there is something to show "as of the last complete text". */
  complete: { readonly plan: CheckedPlan; readonly texts: ReadonlyMap<Uri, TextDocument> } | undefined;
  /** The files it was last made of, and open ones that were found to belong to it since. */
  files: Set<Uri>;
}

/** While a text is held, the files of the last complete one still belong to the plan. */
function filesOf(root: Uri, { outcome, complete }: Kept): Set<Uri> {
  const now = outcome && outcome.state !== "failed" ? outcome.snapshot.keys() : [];
  return new Set([root, ...now, ...(complete?.plan.snapshot.keys() ?? [])]);
}

function isCurrent(workspace: EditorWorkspace, snapshot: Snapshot): boolean {
  return [...snapshot].every(([uri, version]) => workspace.read(uri)?.version === version);
}

function isCurrentOutcome(workspace: EditorWorkspace, { outcome }: Kept): boolean {
  return outcome !== undefined && outcome.state !== "failed" && isCurrent(workspace, outcome.snapshot);
}

/** Copies, because an open document changes in place while the editor types. */
function textsOf(workspace: EditorWorkspace, { snapshot }: CheckedPlan): Map<Uri, TextDocument> {
  const texts = new Map<Uri, TextDocument>();
  for (const uri of snapshot.keys()) {
    const text = workspace.read(uri)?.text;
    if (text !== undefined) texts.set(uri, TextDocument.create(uri, "typescript", 0, text));
  }
  return texts;
}
