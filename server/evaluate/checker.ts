import type { Judgement } from "../../library/judge.ts";
import type { ProposedFix } from "../../library/rules/finding.ts";
import type { CheckedPlan, CheckOutcome, PlacedFinding, PlacedFix } from "./checked-plan.ts";
import { evaluatePlan } from "./evaluate-plan.ts";
import type { PassedBy } from "./files/passed-by.ts";
import { type Membership, PlanRoots } from "./files/plan-roots.ts";
import { provenChange, provenFixAll, provenFixes } from "./fixes/prove-fixes.ts";
import { LocatedPlan } from "./provenance/located-plan.ts";
import { memoisedSandbox } from "./sandbox/memoised-sandbox.ts";
import { createSandbox, defaultLimits, type Limits, type Sandbox } from "./sandbox.ts";
import { FileCache } from "./text/file-cache.ts";
import type { FileImports } from "./text/file-imports.ts";
import { fileImports } from "./text/read-imports.ts";
import type { SourceText, Uri, Workspace } from "./workspace.ts";

/** The one way in for every face: files to checked plans. Made once; keeps parsed files and a worker between calls. */
export interface Checker {
  /** Checks the plan whose root is this file. Runs for one root never overlap; the caller drops results it no longer wants. */
  check(root: Uri): Promise<CheckOutcome>;
  /**
   * As {@link check}, with other text for some files, as if it had been typed; nothing is kept of it. For trying out a value:
   * completions while a value is still empty, and fixes before they are offered. Snapshot versions of those files are "trial".
   */
  checkAs(root: Uri, texts: ReadonlyMap<Uri, string>): Promise<CheckOutcome>;
  /** Roots among the workspace's plan files: those that import the library and that no other such file imports. */
  roots(): readonly Uri[];
  /** Roots whose plan a file belongs to: itself, or those that import it, directly or not. Empty: not part of any plan. */
  rootsOf(file: Uri): readonly Uri[];
  /** Which plans these files belong to; see {@link PlanRoots.membership}. */
  membership(files: readonly Uri[]): Membership;
  /** Whether {@link membership} knows every file; if not, {@link readPlanFiles} reads them. */
  knowsPlanFiles(): boolean;
  /** Reads the plan files of the workspace in small steps; first those that contain one of these words. */
  readPlanFiles(first: readonly string[]): Generator<void, void>;
  /** Files that look like plans, or belong to one, and are in none of {@link roots}, each with the reason. */
  passedBy(): readonly PassedBy[];
  /** Why a file that somebody named is not judged; undefined: it is no plan at all. */
  whyNot(file: Uri): PassedBy | undefined;
  /** Files that took long to read: only a short look is taken at their imports. */
  expectSlow(files: readonly Uri[]): void;
  /** What the text of a file asks of others. */
  importsOf(source: SourceText): FileImports;
  /** Forgets what is known of files that changed on disk. Open editors are noticed by their version. */
  changedOnDisk(files: readonly Uri[]): void;
  /**
   * Lets go of everything that is kept of a plan to check it faster the next time: it was closed, or its result is all that was
   * wanted. Files that other checked plans use are kept. The next check of it works everything out again.
   */
  forget(root: Uri): void;
  /**
   * The fixes of a finding, each proved: applied to a copy of the text and checked again, kept only if the finding is gone
   * and nothing new has come (after a suggestion: nothing but what is only worth knowing). Best first.
   */
  provenFixes(plan: CheckedPlan, finding: PlacedFinding): Promise<readonly PlacedFix[]>;
  /** A change that no finding asks for, proved in the same way; undefined where it brings something new or changes anything else. */
  provenChange(plan: CheckedPlan, proposed: ProposedFix): Promise<PlacedFix | undefined>;
  /** All repairs of a plan, applied one after another and proved together; for "fix all". Edits of one file never overlap. */
  fixAll(plan: CheckedPlan): Promise<PlacedFix | undefined>;
  dispose(): Promise<void>;
}

export interface CheckerOptions {
  readonly limits?: Partial<Limits>;
  readonly sandbox?: Sandbox;
  /** Called when work on a plan goes on after it has run, and another one may have been worked on; and when a file is glanced at. */
  readonly workGoesOn?: (root: Uri) => void;
}

export function createChecker(workspace: Workspace, options: CheckerOptions = {}): Checker {
  const cache = new FileCache();
  const trials = new FileCache(cache);
  const sandbox = memoisedSandbox(options.sandbox ?? createSandbox());
  const limits = { ...defaultLimits, ...options.limits };
  const workGoesOn = options.workGoesOn ?? (() => undefined);
  const judgements = new Map<Uri, Judgement>();
  const importsOf = (source: SourceText) => fileImports(cache.get(source));
  const planRoots = new PlanRoots(workspace, (source) => {
    workGoesOn(source.uri);
    return fileImports(cache.glance(source));
  });
  const running = new Map<Uri, Promise<unknown>>();
  /** By root: the files of each plan that was checked and not forgotten since. */
  const checked = new Map<Uri, readonly Uri[]>();

  /** One after another for each root. */
  function inTurn<Result>(root: Uri, run: () => Promise<Result>): Promise<Result> {
    const turn = (running.get(root) ?? Promise.resolve()).then(run);
    const settled = turn.catch(() => undefined);
    running.set(root, settled);
    void settled.then(() => {
      if (running.get(root) === settled) running.delete(root);
    });
    return turn;
  }

  const evaluator = { workspace, cache, sandbox, limits, judgements, workGoesOn };

  const check = (root: Uri) =>
    inTurn(root, async () => {
      const outcome = await evaluatePlan(root, evaluator);
      checked.set(root, [...outcome.snapshot.keys()]);
      return outcome;
    });

  const checkAs = (root: Uri, texts: ReadonlyMap<Uri, string>) =>
    inTurn(root, async () => {
      const typed = withTexts(workspace, texts);
      const parsed = { get: (source: SourceText) => (texts.has(source.uri) ? trials : cache).get(source) };
      try {
        return await evaluatePlan(root, { ...evaluator, workspace: typed, cache: parsed });
      } finally {
        if (!checked.has(root)) forgetNow(root);
      }
    });

  const forgetNow = (root: Uri) => {
    checked.delete(root);
    judgements.delete(root);
    sandbox.forget(root);
    const needed = new Set([...checked.values()].flat());
    cache.keepOnly(needed);
    trials.keepOnly(needed);
  };

  return {
    check,
    checkAs,
    roots: () => planRoots.roots(),
    rootsOf: (file) => planRoots.rootsOf(file),
    membership: (files) => planRoots.membership(files),
    knowsPlanFiles: () => planRoots.upToDate,
    readPlanFiles: (first) => planRoots.read(first),
    expectSlow: (files) => cache.expectSlow(files),
    passedBy: () => planRoots.passedBy(),
    whyNot: (file) => planRoots.whyNot(file),
    importsOf,
    changedOnDisk(files) {
      planRoots.forget(files);
      for (const file of files) {
        cache.forget(file);
        trials.forget(file);
      }
    },
    forget(root) {
      // After a check that is under way: it would keep everything again.
      void inTurn(root, async () => forgetNow(root));
    },
    async provenFixes(plan, finding) {
      if (!(plan instanceof LocatedPlan)) return [];
      return provenFixes(plan, finding, (texts) => checkAs(plan.root, texts));
    },
    async provenChange(plan, proposed) {
      if (!(plan instanceof LocatedPlan)) return undefined;
      return provenChange(plan, proposed, (texts) => checkAs(plan.root, texts));
    },
    async fixAll(plan) {
      if (!(plan instanceof LocatedPlan)) return undefined;
      return provenFixAll(plan, (texts) => checkAs(plan.root, texts));
    },
    dispose: () => sandbox.dispose(),
  };
}

function withTexts(workspace: Workspace, texts: ReadonlyMap<Uri, string>): Workspace {
  return {
    read(uri) {
      const text = texts.get(uri);
      return text === undefined ? workspace.read(uri) : { uri, version: "trial", text };
    },
    folders: () => workspace.folders(),
    realUri: (uri) => workspace.realUri(uri),
    planFiles: () => workspace.planFiles(),
    leftOut: () => workspace.leftOut?.() ?? { passedBy: [], wireNumbers: [] },
    unread: (uri) => (texts.has(uri) ? undefined : workspace.unread?.(uri)),
  };
}
