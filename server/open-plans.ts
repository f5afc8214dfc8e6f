import { setImmediate as nextTurn } from "node:timers/promises";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { EditorWorkspace } from "./editor-workspace.ts";
import type { Duty } from "./engine-messages.ts";
import type { CheckedPlan, CheckOutcome, IncompletePlan } from "./evaluate/checked-plan.ts";
import type { Checker } from "./evaluate/checker.ts";
import { fileName } from "./evaluate/files/file-name.ts";
import { startTimeLimit } from "./evaluate/sandbox/time-limit.ts";
import type { PassedBy, Uri } from "./evaluate/workspace.ts";
import { type PlanInView, viewPlan } from "./language/plan-in-view.ts";
import { assignPlans } from "./plan-assignment.ts";
import { createPublishGate, type FailedPlan } from "./publish-gate.ts";

/**
 * The plans that this engine answers for, each with its newest complete result. Knows the plans that a file belongs to, wakes
 * them when a text changes, and returns only results that the gate let through.
 */
export interface OpenPlans {
  /** A file was opened, edited, closed, or changed on disk: checks every affected plan. */
  touched(files: readonly Uri[]): void;
  /** Waits until the plans of a file are at rest, then returns them. Empty: the file belongs to no plan of this engine's. */
  settledOf(file: Uri): Promise<readonly ShownPlan[]>;
  /** The same for plans of either engine: for documents, which are made in the background. */
  borrowed(file: Uri): Promise<readonly ShownPlan[]>;
  /** Roots of this engine's plans that a file belongs to, at rest or not. */
  rootsOf(file: Uri): Promise<readonly Uri[]>;
  /** The known plans of a file at this moment, without waiting. */
  knownOf(file: Uri): readonly ShownPlan[];
  /**
   * Keeps every plan of the workspace checked from now on, open or not, and returns all of this engine's once they are at rest.
   */
  checkWorkspace(): Promise<readonly ShownPlan[]>;
  /** Files of the workspace that look like plans and are not judged, each with the reason. */
  passedBy(): readonly PassedBy[];
  /** Checks everything again with another checker: its limits were changed. */
  use(checker: Checker): void;
  /** The engine's duty has changed. */
  assigned(): void;
  /** No plan is being checked, and none waits. */
  atRest(): boolean;
}

/** The current state of one plan. */
export interface ShownPlan {
  readonly root: Uri;
  /** Grows with every outcome let through, to distinguish two answers. */
  readonly serial: number;
  /** The last outcome that the gate let through; undefined during the first check. */
  readonly outcome: CheckedPlan | IncompletePlan | FailedPlan | undefined;
  /** The newest complete result against the current texts; undefined if there is none yet. */
  readonly view: PlanInView | undefined;
}

/** The one of a file's plans to use if only one can be shown: its own, if it is the root of one. */
export function planMeantBy(file: Uri, plans: readonly ShownPlan[]): ShownPlan | undefined {
  return plans.find(({ root }) => root === file) ?? plans[0];
}

/** The reason why a plan without a complete result cannot be shown. `none`: "There is no drawing yet". */
export function whyNothing(outcome: ShownPlan["outcome"], none: string): string {
  if (outcome?.state === "failed") return `The plan could not be checked: ${outcome.reason}`;
  const broken = outcome?.state === "incomplete" ? fileName(outcome.broken) : "the plan";
  return `${none}: ${broken} is half typed.`;
}

/**
 * The plan, if all its texts are complete and it ran to its end; otherwise the reason why no document is made of it. `document` is
 * its name: "report".
 */
export function wholePlan(shown: ShownPlan | undefined, document: string): CheckedPlan | string {
  if (!shown) return 'This file belongs to no plan: neither it nor a file that uses it imports "loomwright".';
  const { outcome, view } = shown;
  if (outcome?.state === "failed") return `The plan could not be checked: ${outcome.reason}`;
  if (outcome?.state === "incomplete")
    return `${fileName(outcome.broken)} is half typed, so there is no ${document} yet.`;
  if (!view?.current) return "The text changed meanwhile; ask again.";
  const [problem] = view.plan.judgement.problems;
  if (!problem) return view.plan;
  const found = view.plan.findings.find(({ finding }) => finding.rule === problem.rule);
  return `The plan did not run to its end, so there is no ${document}: ${found?.message ?? problem.rule}`;
}

export interface OpenPlansWiring {
  readonly workspace: EditorWorkspace;
  /** The plans that this engine answers for; read again at each change. */
  duty(): Duty;
  /** The first serial number: an engine that takes over must not repeat those of its predecessor. */
  readonly firstSerial: number;
  log(text: string): void;
  /** Work on a plan begins. Throws, with the reason, if it must not be tried. */
  workOn(root: Uri, files: ReadonlySet<Uri>): void;
  /** The first check of a plan begins. */
  started(root: Uri): void;
  /** The gate let an outcome through. */
  arrived(plan: ShownPlan): void;
  /** A plan is no longer this engine's: its findings and states are removed. */
  gone(root: Uri): void;
  /** Open files that another engine answers for. */
  elsewhere(files: readonly Uri[]): void;
  /** Every plan is checked. */
  rested(): void;
}

export function createOpenPlans(
  firstChecker: Checker,
  { workspace, duty, firstSerial, log, workOn, started, arrived, gone, elsewhere, rested }: OpenPlansWiring,
): OpenPlans {
  let checker = firstChecker;
  let wholeWorkspace = false;
  let serials = firstSerial;
  const plans = new Map<Uri, Kept>();
  /** Files with plans that a caller waits for, of either engine. */
  const borrowings = new Map<Uri, number>();
  const ownTurn = oneInEachTurn();
  /** While plan files are read. */
  let reading: Reading | undefined;

  const gate = createPublishGate({
    async check(root) {
      await ownTurn();
      workOn(root, keptOf(root).files);
      return checker.check(root);
    },
    isUrgent: (root) => [...(plans.get(root)?.files ?? [])].some((file) => workspace.isOpen(file)),
    isCurrent: (outcome) => isCurrent(workspace, outcome),
    log,
    started(root) {
      const kept = plans.get(root);
      if (kept?.ours && !kept.outcome) started(root);
    },
    letThrough(root, outcome) {
      const kept = plans.get(root);
      if (!kept) return;
      serials++;
      kept.serial = serials;
      kept.outcome = outcome;
      if (outcome.state !== "incomplete") kept.complete = undefined;
      if (outcome.state === "checked") kept.complete = { plan: outcome, texts: textsOf(workspace, outcome) };
      kept.files = filesOf(root, kept);
      if (kept.ours) arrived(shown(root, kept));
    },
    rested,
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
      ours: false,
    };
    plans.set(root, kept);
    return kept;
  };

  /** Takes up the plans that are now this engine's, and releases those that no longer are. */
  const concern = (touched: readonly Uri[]): void => {
    const open = workspace.openFiles();
    // A file that was closed has the text of the disk again, which may be a plan although the text in the editor was none.
    const membership = checker.membership([...open, ...borrowings.keys(), ...touched]);
    const assigned = assignPlans({ duty: duty(), membership, open, wholeWorkspace });
    const lent = [...borrowings.keys()].flatMap((file) => membership.rootsOf(file));
    for (const root of new Set([...assigned.roots, ...lent])) {
      const kept = keptOf(root);
      for (const file of open) if (membership.filesOf(root).has(file)) kept.files.add(file);
      // Borrowed before, and on duty now: its result is to be shown.
      const becomesOurs = !kept.ours && assigned.roots.has(root);
      if (kept.ours && !assigned.roots.has(root)) gone(root);
      kept.ours = assigned.roots.has(root);
      if (becomesOurs && kept.outcome) arrived(shown(root, kept));
    }
    for (const [root, kept] of plans) {
      if (assigned.roots.has(root) || lent.includes(root)) continue;
      plans.delete(root);
      gate.forget(root);
      checker.forget(root);
      if (kept.ours) gone(root);
    }
    elsewhere(assigned.elsewhere);
  };

  const wake = (files: readonly Uri[]): void => {
    for (const [root, kept] of plans) {
      // Also if not touched: a missing file may have appeared.
      if (files.some((file) => kept.files.has(file)) || !isCurrentOutcome(workspace, kept)) gate.wake(root);
    }
  };

  const takeUpNow = (files: readonly Uri[]): void => {
    concern(files);
    wake(files);
    if (atRest()) rested();
  };

  /** Takes up the existing plans; if plan files are not known yet, the known plans go first. */
  const takeUp = (files: readonly Uri[]): void => {
    if (reading ? reading.isKnownEnough : checker.knowsPlanFiles()) {
      takeUpNow(files);
      return;
    }
    wake(files);
    if (reading) return;
    const names = workspace.openFiles().map((file) => fileName(file).replace(/\.\w+$/, ""));
    const steps = checker.readPlanFiles(names);
    if (goneThrough(steps)) takeUpNow(files);
    else reading = readOn(steps);
  };

  /** Reads plan files a slice at a time, and lets requests be answered in between. */
  const readOn = (steps: Generator<void, void>): Reading => {
    // Plans that are not open can wait; answers about open files cannot.
    const waitsTooLong = duty().role === "foreground" ? startTimeLimit(longestWaitMs) : () => false;
    let knownEnough = () => {};
    const current: Reading = {
      isKnownEnough: false,
      known: new Promise((resolve) => {
        knownEnough = resolve;
      }),
      done: Promise.resolve(),
    };
    const useWhatIsKnown = () => {
      current.isKnownEnough = true;
      takeUpNow([]);
      knownEnough();
    };
    const inSlices = async () => {
      do {
        if (!current.isKnownEnough && waitsTooLong()) useWhatIsKnown();
        await nextTurn();
      } while (!goneThrough(steps));
    };
    const end = () => {
      reading = undefined;
      useWhatIsKnown();
    };
    current.done = inSlices().then(
      () => {
        end();
        // Files changed while they were read.
        if (!checker.knowsPlanFiles()) takeUp([]);
      },
      (error) => {
        log(`The plan files could not be listed: ${error instanceof Error ? error.stack : error}`);
        end();
      },
    );
    return current;
  };

  /** While files are read, further plans may be found. */
  const atRest = (): boolean => !reading && gate.atRest();

  /** In the order of their roots: the order of discovery must not decide which one is shown. */
  const plansOf = (file: Uri): [Uri, Kept][] =>
    [...plans].filter(([, kept]) => kept.files.has(file)).sort(([one], [other]) => (one < other ? -1 : 1));

  /** Only once every file is known is it certain that a file belongs to no plan. */
  const known = async (file: Uri): Promise<void> => {
    await reading?.known;
    while (reading && plansOf(file).length === 0) await reading.done;
  };

  const settledOf = async (file: Uri): Promise<readonly ShownPlan[]> => {
    await known(file);
    // The plans of a file may change while they settle: an import was just typed.
    for (let roots = plansOf(file); ; ) {
      await Promise.all(roots.map(([root]) => gate.settled(root)));
      const after = plansOf(file);
      if (after.every(([root]) => roots.some(([before]) => before === root))) {
        return after.map(([root, kept]) => shown(root, kept));
      }
      roots = after;
    }
  };

  return {
    touched: takeUp,
    settledOf,
    async rootsOf(file) {
      await known(file);
      return plansOf(file).map(([root]) => root);
    },
    async borrowed(file) {
      borrowings.set(file, (borrowings.get(file) ?? 0) + 1);
      try {
        takeUp([]);
        return await settledOf(file);
      } finally {
        const left = (borrowings.get(file) ?? 1) - 1;
        if (left > 0) borrowings.set(file, left);
        else borrowings.delete(file);
        takeUp([]);
      }
    },
    knownOf: (file) => plansOf(file).map(([root, kept]) => shown(root, kept)),
    async checkWorkspace() {
      wholeWorkspace = true;
      takeUp([]);
      while (reading) await reading.done;
      const ours = [...plans].filter(([, kept]) => kept.ours);
      await Promise.all(ours.map(([root]) => gate.settled(root)));
      return ours.map(([root, kept]) => shown(root, kept));
    },
    passedBy: () => checker.passedBy(),
    use(other) {
      checker = other;
      for (const root of plans.keys()) {
        // Checks still running use the old checker's limits, and are cut short when it is disposed of.
        gate.forget(root);
        gate.wake(root);
      }
      takeUp([]);
    },
    assigned: () => takeUp([]),
    atRest,
  };
}

/** Plans of open files wait at most this long for a folder full of others. */
const longestWaitMs = 700;

const sliceMs = 15;

interface Reading {
  /** True once time is up or everything is read: use the plans known by now. */
  isKnownEnough: boolean;
  /** Resolves when time is up, or when everything is read. */
  readonly known: Promise<void>;
  done: Promise<void>;
}

interface Kept {
  serial: number;
  outcome: ShownPlan["outcome"];
  /** Stays while the text is incomplete, to show a result "as of the last complete text". */
  complete: { readonly plan: CheckedPlan; readonly texts: ReadonlyMap<Uri, TextDocument> } | undefined;
  /** The files of its last check, and open ones that were found to belong to it since. */
  files: Set<Uri>;
  /** It is this engine's to show; others are only borrowed. */
  ours: boolean;
}

/** While a text is incomplete, the files of the last complete one still belong to the plan. */
function filesOf(root: Uri, { outcome, complete }: Kept): Set<Uri> {
  const now = outcome && outcome.state !== "failed" ? outcome.snapshot.keys() : [];
  return new Set([root, ...now, ...(complete?.plan.snapshot.keys() ?? [])]);
}

function isCurrent(workspace: EditorWorkspace, outcome: CheckOutcome): boolean {
  if (outcome.state === "incomplete" && outcome.until && outcome.until !== workspace.lastEdit()) return false;
  return [...outcome.snapshot].every(([uri, version]) => workspace.read(uri)?.version === version);
}

function isCurrentOutcome(workspace: EditorWorkspace, { outcome }: Kept): boolean {
  return outcome !== undefined && outcome.state !== "failed" && isCurrent(workspace, outcome);
}

/**
 * Lets a caller through at once, and each further one of the same turn of the event loop in a turn of its own: many checks that
 * begin together leave room for a request between any two of them.
 */
function oneInEachTurn(): () => Promise<void> {
  let last: Promise<void> | undefined;
  return async () => {
    const before = last;
    const turn = (before ?? Promise.resolve()).then(() => nextTurn());
    last = turn;
    void turn.then(() => {
      if (last === turn) last = undefined;
    });
    await before;
  };
}

/** Runs steps for the length of a slice; true when none is left. */
function goneThrough(steps: Generator<void, void>): boolean {
  const endMs = performance.now() + sliceMs;
  while (performance.now() < endMs) if (steps.next().done) return true;
  return false;
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
