import { existsSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import {
  type ComparedPlan,
  evaluatedSide,
  type PlanSide,
} from "../../library/documents/difference/compared-plan.ts";
import { type PairedPlan, pairedPlan, pairPlans } from "../../library/documents/difference/pair-plans.ts";
import { planDifference } from "../../library/documents/difference/plan-difference.ts";
import type { CheckOutcome } from "../evaluate/checked-plan.ts";
import { mayHideHazard } from "../evaluate/files/passed-by.ts";
import { type Evaluated, evaluatedOrWhy } from "../evaluate/not-evaluated.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { type FolderState, pathIn } from "./folder-state.ts";
import { type PassedFile, passedFiles, passedInLines } from "./passed-files.ts";

export interface ComparedFolders {
  readonly plans: readonly ComparedPlan[];
  /** Files and folders that were not compared, in sentences. */
  readonly notes: readonly string[];
  /** In the newer state only, a file that may hide a hazard was not checked. */
  readonly lostSight: boolean;
}

/** Every plan of two states of a folder, each with its changes. Calls `onProgress` before each plan. */
export async function compareFolders(
  before: FolderState,
  after: FolderState,
  onProgress: (plan: number, of: number) => void,
): Promise<ComparedFolders> {
  const apart = new Set(
    [before, after].flatMap((state) => (state.git?.submodules ?? []).map((uri) => pathIn(state, uri))),
  );
  const rootsOf = async (state: FolderState) => {
    const roots = await state.settled(() => state.checker.roots());
    if (!state.git && (before.git || after.git)) for (const root of roots) addNested(state, root, apart);
    return roots.filter((root) => ![...apart].some((folder) => pathIn(state, root).startsWith(`${folder}/`)));
  };
  const roots = [await rootsOf(before), await rootsOf(after)] as const;
  const total = roots[0].length + roots[1].length;
  let looked = 0;
  const old = new Map<string, FoundPlan>();
  for (const root of roots[0]) {
    onProgress(++looked, total);
    const outcome = await before.settled(() => before.checker.check(root));
    old.set(
      pathIn(before, root),
      foundPlan(before, root, outcome, evaluatedOrWhy(outcome, before.workspace)),
    );
  }
  const now: FoundPlan[] = [];
  for (const root of roots[1]) {
    onProgress(++looked, total);
    const known = old.get(pathIn(after, root));
    if (known && (await sameTexts(known, before, after))) {
      now.push(known);
      continue;
    }
    const outcome = await after.settled(() => after.checker.check(root));
    now.push(foundPlan(after, root, outcome, evaluatedOrWhy(outcome, after.workspace)));
  }
  const { pairs, removed, added } = pairPlans([...old.values()], now);
  const passed = [before, after].map((state) => passedIn(state, apart)) as [PassedFile[], PassedFile[]];
  const links = [before, after].filter(({ git }) => git?.metLink).map(({ label }) => label);
  return {
    plans: [
      ...pairs.map((pair) => comparedPair(pair.before, pair.after)),
      ...added.map((plan) => standing("added", plan)),
      ...removed.map((plan) => standing("removed", plan)),
    ],
    notes: [
      ...[...apart].map((folder) => `${folder} is a repository of its own: plans in it are not compared.`),
      ...links.map((label) => `Symbolic links in ${label} are not followed.`),
      ...passedNotes(passed, [before.label, after.label]),
    ],
    lostSight: passed[1].some((file) => mayHideHazard(file) && !isIn(passed[0], file)),
  };
}

/** Files that look like plans and are in neither comparison. */
function passedIn(state: FolderState, apart: ReadonlySet<string>): PassedFile[] {
  const files = passedFiles(state.checker.passedBy(), state.folder);
  return files.filter(({ file }) => ![...apart].some((folder) => file.startsWith(`${folder}/`)));
}

function passedNotes(
  [before, after]: readonly [readonly PassedFile[], readonly PassedFile[]],
  [older, newer]: readonly [string, string],
): string[] {
  const inBoth = after.filter((file) => isIn(before, file));
  const groups = [
    [before.filter((file) => !isIn(after, file)), ` in ${older}`],
    [after.filter((file) => !isIn(before, file)), ` in ${newer}`],
    [inBoth, ""],
  ] as const;
  return groups.flatMap(([files, where]) =>
    passedInLines(files).map(({ title, lines }) => `${title}${where}: ${lines.join("; ")}.`),
  );
}

function isIn(files: readonly PassedFile[], { file, reason }: PassedFile): boolean {
  return files.some((one) => one.file === file && one.reason === reason);
}

/** A folder on disk that contains a repository is part of no revision of the outer one. */
function addNested(state: FolderState, root: Uri, apart: Set<string>): void {
  const names = pathIn(state, root).split("/").slice(0, -1);
  for (let depth = 1; depth <= names.length; depth++) {
    const folder = names.slice(0, depth).join("/");
    if (existsSync(join(state.folder, folder, ".git"))) apart.add(folder);
  }
}

/** The result of a plan in one state. */
interface FoundPlan extends PairedPlan {
  readonly evaluated: Evaluated;
  readonly outcome: CheckOutcome;
}

function foundPlan(state: FolderState, root: Uri, outcome: CheckOutcome, evaluated: Evaluated): FoundPlan {
  const judgement = evaluated.state === "evaluated" ? evaluated.judgement : undefined;
  return { ...pairedPlan(pathIn(state, root), judgement), evaluated, outcome };
}

/**
 * Whether the other state has the same texts for all inputs of a plan. If so, it need not run again: a plan depends only on its
 * texts. Line endings are ignored: git may change them on checkout.
 */
async function sameTexts({ outcome }: FoundPlan, one: FolderState, other: FolderState): Promise<boolean> {
  for (const uri of outcome.snapshot.keys()) {
    const there = pathToFileURL(join(other.folder, ...pathIn(one, uri).split("/"))).href;
    const texts = [
      await one.settled(() => one.workspace.read(uri)?.text),
      await other.settled(() => other.workspace.read(there)?.text),
    ].map((text) => text?.replace(/\r\n?/g, "\n"));
    if (texts[0] !== texts[1]) return false;
  }
  return true;
}

function comparedPair(one: FoundPlan, other: FoundPlan): ComparedPlan {
  const path = other.path;
  const movedFrom = one.path === path ? undefined : one.path;
  const [before, after] = [one.evaluated, other.evaluated];
  if (before.state === "evaluated" && after.state === "evaluated")
    return {
      ...{ path, movedFrom, state: "compared" },
      difference: planDifference(before.judgement, after.judgement),
    };
  const sides = { before: sideOf(before), after: sideOf(after) };
  // If the texts are the same, one result represents both states.
  return { path, movedFrom, state: "not-evaluated", unchanged: one === other, ...sides };
}

function standing(state: "added" | "removed", { path, evaluated }: FoundPlan): ComparedPlan {
  return { path, movedFrom: undefined, state, side: sideOf(evaluated) };
}

function sideOf(evaluated: Evaluated): PlanSide {
  return evaluated.state === "evaluated" ? evaluatedSide(evaluated.judgement) : evaluated;
}
