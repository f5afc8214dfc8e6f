import type { PlaceTable } from "../../library/analysis/energy/places.ts";
import type { ProposedFix } from "../../library/rules/finding.ts";
import type { CheckedPlan, CheckOutcome, PlacedFinding, PlacedFix } from "./checked-plan.ts";
import { evaluatePlan } from "./evaluate-plan.ts";
import { type Membership, PlanRoots } from "./files/plan-roots.ts";
import {
  type AllRepairs,
  type FixAllOptions,
  provenChange,
  provenFixAll,
  provenFixes,
} from "./fixes/prove-fixes.ts";
import { LocatedPlan } from "./provenance/located-plan.ts";
import { defaultLimits, type Limits } from "./sandbox/contract.ts";
import { memoisedSandbox } from "./sandbox/memoised-sandbox.ts";
import { createSandbox, type Sandbox } from "./sandbox.ts";
import { FileCache } from "./text/file-cache.ts";
import type { FileImports } from "./text/file-imports.ts";
import { fileImports } from "./text/read-imports.ts";
import type { PassedBy, SourceText, Uri, Workspace } from "./workspace.ts";
import { worldOnDemand } from "./world.ts";

/**
 * The single entry point for each front end: files to checked plans. Created once; keeps parsed files and a worker between
 * calls.
 */
export interface Checker {
  /** Checks the plan with this root file. Runs for one root never overlap; the caller drops results it no longer wants. */
  check(root: Uri): Promise<CheckOutcome>;
  /**
   * As {@link check}, with replacement texts for some files, as if they had been typed; caches nothing. For trying a value:
   * completions while a value is still empty, and fixes before they are offered. Snapshot versions of those files are "trial".
   */
  checkAs(root: Uri, texts: ReadonlyMap<Uri, string>): Promise<CheckOutcome>;
  /** Roots among the workspace's plan files: those that import the library and that no other such file imports. */
  roots(): readonly Uri[];
  /** Roots of the plans that a file belongs to: itself, or those that import it, directly or not. Empty: not part of any plan. */
  rootsOf(file: Uri): readonly Uri[];
  /** The plans that these files belong to; see {@link PlanRoots.membership}. */
  membership(files: readonly Uri[]): Membership;
  /** True if {@link membership} knows every file; if not, {@link readPlanFiles} reads them. */
  knowsPlanFiles(): boolean;
  /** Reads the plan files of the workspace in small steps, those that contain one of these words first. */
  readPlanFiles(first: readonly string[]): Generator<void, void>;
  /** Files that look like plans, or belong to one, and are in none of {@link roots}, each with the reason. */
  passedBy(): readonly PassedBy[];
  /** The reason why a file that the user named is not judged; undefined: it is no plan at all. */
  whyNot(file: Uri): PassedBy | undefined;
  /** Files that took long to read: their imports get a shorter time limit. */
  expectSlow(files: readonly Uri[]): void;
  /** The imports of a file's text. */
  importsOf(source: SourceText): FileImports;
  /** Drops cached data of files that changed on disk. Changes in open editors are noticed by their version. */
  changedOnDisk(files: readonly Uri[]): void;
  /**
   * Releases the cached data of a plan that would speed up its next check: it was closed, or only its result was wanted. Files
   * that other checked plans use are kept. The next check of the plan starts afresh.
   */
  forget(root: Uri): void;
  /**
   * The fixes of a finding, each proved: applied to a copy of the text and checked again, kept only if the finding is gone and
   * no new error or warning appeared. Best first.
   */
  provenFixes(plan: CheckedPlan, finding: PlacedFinding): Promise<readonly PlacedFix[]>;
  /** A change without a finding, proved in the same way; undefined if it adds a finding or changes anything else. */
  provenChange(plan: CheckedPlan, proposed: ProposedFix): Promise<PlacedFix | undefined>;
  /**
   * All repairs of a plan, applied one after another and proved together; for "fix all". Edits of one file never overlap. The title
   * states the number of findings that are then gone.
   */
  fixAll(plan: CheckedPlan, options?: FixAllOptions): Promise<AllRepairs | undefined>;
  /** The places of the world. Their table is read for the first plan with a period, or for the first that asks. */
  places(): PlaceTable;
  dispose(): Promise<void>;
}

export interface CheckerOptions {
  readonly limits?: Partial<Limits>;
  readonly sandbox?: Sandbox;
  /**
   * Called when work on a plan resumes after its run, since another plan may have been in between; and when a file is glanced
   * at.
   */
  readonly workGoesOn?: (root: Uri) => void;
}

export function createChecker(workspace: Workspace, options: CheckerOptions = {}): Checker {
  const cache = new FileCache();
  const trials = new FileCache(cache);
  const sandbox = memoisedSandbox(options.sandbox ?? createSandbox());
  const limits = { ...defaultLimits, ...options.limits };
  const workGoesOn = options.workGoesOn ?? (() => undefined);
  const last = new Map<Uri, LocatedPlan>();
  const importsOf = (source: SourceText) => fileImports(cache.get(source));
  const planRoots = new PlanRoots(workspace, (source) => {
    workGoesOn(source.uri);
    return fileImports(cache.glance(source));
  });
  const running = new Map<Uri, Promise<unknown>>();
  /** By root: the files of each plan that was checked and not forgotten since. */
  const checked = new Map<Uri, readonly Uri[]>();

  /** Runs one after another for each root. */
  function inTurn<Result>(root: Uri, run: () => Promise<Result>): Promise<Result> {
    const turn = (running.get(root) ?? Promise.resolve()).then(run);
    const settled = turn.catch(() => undefined);
    running.set(root, settled);
    void settled.then(() => {
      if (running.get(root) === settled) running.delete(root);
    });
    return turn;
  }

  const evaluator = { workspace, cache, sandbox, limits, last, workGoesOn, world: worldOnDemand() };

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
    last.delete(root);
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
      // After any check in progress, which would cache everything again.
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
    async fixAll(plan, options) {
      if (!(plan instanceof LocatedPlan)) return undefined;
      return provenFixAll(plan, (texts) => checkAs(plan.root, texts), options);
    },
    places: () => evaluator.world().places,
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
