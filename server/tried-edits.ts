import type { CancellationToken } from "vscode-languageserver";
import type { ProposedFix } from "../library/rules/finding.ts";
import type { AnswerWiring } from "./answer-wiring.ts";
import type { CheckedPlan } from "./evaluate/checked-plan.ts";
import type { Checker } from "./evaluate/checker.ts";
import { fileName } from "./evaluate/files/file-name.ts";
import { otherRecordsChanged } from "./evaluate/fixes/fix-effect.ts";
import { PieceTable } from "./evaluate/fixes/piece-table.ts";
import type { Uri } from "./evaluate/workspace.ts";
import type { MoveAnswer, ShownVersions } from "./language/messages.ts";
import { plainWords } from "./language/plain-words.ts";
import type { PlanInView } from "./language/plan-in-view.ts";
import { editsInView, isOfVersions } from "./language/versions-in-view.ts";
import { planMeantBy, type ShownPlan } from "./open-plans.ts";
import { textChanged } from "./request-guard.ts";

/** Finds the plan that a view shows, and tries changes of it. No text is changed. */
export interface Trials {
  /** At rest; undefined if the file belongs to no plan. */
  shown(uri: string): Promise<ShownPlan | undefined>;
  /**
   * The plan as it would be with a change; undefined if it then does not run, or if the request was cancelled. Refuses with ContentModified
   * if the change does not fit the text.
   */
  judgedWith(
    view: PlanInView,
    change: ProposedFix | undefined,
    token: CancellationToken,
  ): Promise<CheckedPlan | undefined>;
  /** The edits of a change, if it does to the plan what it states and no more. */
  editsFor(asked: AskedEdits, token: CancellationToken): Promise<MoveAnswer>;
  /** The same, with the plan as it would be. */
  triedEdits(asked: AskedEdits, token: CancellationToken): Promise<TriedEdits>;
}

type TriedEdits =
  | {
      readonly state: "tried";
      readonly plan: CheckedPlan;
      readonly edits: Extract<MoveAnswer, { state: "edits" }>["edits"];
    }
  | Extract<MoveAnswer, { state: "dropped" }>;

interface AskedEdits {
  readonly view: PlanInView | undefined;
  readonly versions: ShownVersions;
  /** Undefined: it does not fit the text. */
  changeIn(view: PlanInView): ProposedFix | undefined;
  /** The beginning of a sentence about a change that is not made: "The lever was not moved". */
  readonly notMade: string;
}

export function createTrials({ workspace, running }: AnswerWiring): Trials {
  const judgedWith = async (
    view: PlanInView,
    change: ProposedFix | undefined,
    token: CancellationToken,
    checker: Checker,
  ) => {
    const edits = view.current ? change && view.plan.editsOf(change)?.edits : undefined;
    if (!edits) throw textChanged();
    const texts = new Map<Uri, string>();
    for (const uri of new Set(edits.map((edit) => edit.uri))) {
      const own = edits.filter((edit) => edit.uri === uri);
      const source = workspace.read(uri);
      if (!source || own.some(({ version }) => version !== source.version)) throw textChanged();
      const text = new PieceTable(source.text);
      text.apply(own);
      texts.set(uri, text.text);
    }
    // While the pointer moves on, the next request has taken the place of this one.
    if (token.isCancellationRequested) return undefined;
    const after = await checker.checkAs(view.plan.root, texts);
    return after.state === "checked" ? after : undefined;
  };
  const triedEdits: Trials["triedEdits"] = async ({ view, versions, changeIn, notMade }, token) => {
    const dropped = (why: string) => ({ state: "dropped", message: `${notMade}: ${why}.` }) as const;
    if (!view?.current || !isOfVersions(view, versions)) return dropped(changedMeanwhile);
    const change = changeIn(view);
    const made = change && view.plan.editsOf(change);
    if (!made) return dropped("its place in the text is no longer there");
    const { checker } = await running();
    const tried = await judgedWith(view, change, token, checker);
    if (!tried) return dropped("the plan could not be judged with it");
    if (!otherRecordsChanged(change.changes, view.plan.records, tried.records))
      return dropped("the plan would change in other places too");
    const closed = made.edits.find(({ uri }) => view.client(uri).version === null);
    if (closed) return dropped(`it is written in ${plainWords(fileName(closed.uri))}, which is not open`);
    const edits = editsInView(view, made.edits);
    return edits ? { state: "tried", plan: tried, edits } : dropped(changedMeanwhile);
  };
  return {
    async shown(uri) {
      const file = workspace.fromEditor(uri);
      const { plans } = await running();
      return planMeantBy(file, await plans.settledOf(file));
    },
    async judgedWith(view, change, token) {
      const { checker } = await running();
      return judgedWith(view, change, token, checker);
    },
    async editsFor(asked, token) {
      const tried = await triedEdits(asked, token);
      return tried.state === "dropped" ? tried : { state: "edits", edits: tried.edits };
    },
    triedEdits,
  };
}

const changedMeanwhile = "the text changed meanwhile";
