import type { CheckedPlan, CheckOutcome, PlacedFinding, PlacedFix } from "./checked-plan.ts";
import type { Limits } from "./sandbox.ts";
import type { Uri, Workspace } from "./workspace.ts";

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
  /** Forgets what is known of files that changed on disk. Open editors are noticed by their version. */
  changedOnDisk(files: readonly Uri[]): void;
  /**
   * The fixes of a finding, each proved: applied to a copy of the text and checked again, kept only if the finding is gone
   * and nothing new has come. Best first.
   */
  provenFixes(plan: CheckedPlan, finding: PlacedFinding): Promise<readonly PlacedFix[]>;
  /** All repairs of a plan, applied one after another and proved together; for "fix all". Edits of one file never overlap. */
  fixAll(plan: CheckedPlan): Promise<PlacedFix | undefined>;
  dispose(): Promise<void>;
}

export declare function createChecker(
  workspace: Workspace,
  options?: { readonly limits?: Partial<Limits> },
): Checker;
