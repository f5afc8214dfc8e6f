import type { CancellationToken, Connection } from "vscode-languageserver";
import type { Judgement } from "../library/judge.ts";
import type { AnswerWiring } from "./answer-wiring.ts";
import type { CheckedPlan, Edit } from "./evaluate/checked-plan.ts";
import type { Checker } from "./evaluate/checker.ts";
import { fileName } from "./evaluate/files/file-name.ts";
import { otherRecordsChanged } from "./evaluate/fixes/fix-effect.ts";
import type { Uri } from "./evaluate/workspace.ts";
import { changeOf, leversOf, type PlanLever, valueWithin } from "./language/energy-levers.ts";
import { energyView, withLeastInSteps } from "./language/energy-view.ts";
import {
  type EnergyParams,
  type EnergyView,
  energyMethod,
  type LeverMove,
  type MoveAnswer,
  type MoveParams,
  moveMethod,
} from "./language/messages.ts";
import { plainWords } from "./language/plain-words.ts";
import type { PlanInView } from "./language/plan-in-view.ts";
import { planMeantBy, type ShownPlan } from "./open-plans.ts";
import { type RequestGuard, textChanged } from "./request-guard.ts";

/**
 * Answers the view of energy: the figures of the text, or those with a lever moved, and the edits of a lever that was let go. None of
 * the answers changes a text.
 */
export function answerEnergy(connection: Connection, wiring: AnswerWiring, guard: RequestGuard): void {
  const shownPlan = async (uri: string) => {
    const file = wiring.workspace.fromEditor(uri);
    const { plans, checker } = await wiring.running();
    return { checker, shown: planMeantBy(file, await plans.settledOf(file)) };
  };
  connection.onRequest(energyMethod, (params: EnergyParams, token) =>
    guard(energyMethod, params, token, async (): Promise<EnergyView | null> => {
      const { checker, shown } = await shownPlan(params.textDocument.uri);
      if (!shown) return null;
      const { view } = shown;
      if (!view) return withoutFigures(shown, wiring);
      if (!params.move) return withLeast(view, params, view.plan.judgement, token);
      const tried = await tryMove(view, params.move, wiring, checker, token);
      if (tried) return withLeast(view, params, tried.judgement, token);
      const asItIs = energyView(view, params);
      return { ...asItIs, notes: [...asItIs.notes, "With the lever there the plan could not be judged."] };
    }),
  );
  connection.onRequest<MoveAnswer, void>(moveMethod, (params: MoveParams, token: CancellationToken) =>
    guard(moveMethod, params, token, async (): Promise<MoveAnswer> => {
      const { checker, shown } = await shownPlan(params.textDocument.uri);
      const view = shown?.view;
      if (!view?.current || !isOfVersions(view, params.versions)) return dropped(changedMeanwhile);
      const made = moveIn(view.plan, params.move);
      if (!made) return dropped("The lever was not moved: the number is no longer there.");
      const tried = await tryMove(view, params.move, wiring, checker, token);
      const { changes } = made.fix;
      const others = tried && otherRecordsChanged(changes, view.plan.records, tried.records);
      if (!others) return dropped("The lever was not moved: the plan would change in other places too.");
      const edits = made.edits.map((edit) => placed(view, edit));
      if (edits.some((edit) => edit === undefined)) return dropped(changedMeanwhile);
      return { state: "edits", edits: edits.filter((edit) => edit !== undefined) };
    }),
  );
}

/** With the least single changes, if they are wanted. A cancelled request ends their search. */
async function withLeast(
  view: PlanInView,
  params: EnergyParams,
  judged: Judgement,
  token: CancellationToken,
): Promise<EnergyView> {
  const answer = energyView(view, params, judged);
  if (!params.least) return answer;
  const steps = withLeastInSteps(answer, judged);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    // Messages that wait are heard between two balances, a cancellation among them.
    await new Promise<void>((resume) => setImmediate(resume));
    if (token.isCancellationRequested) return answer;
  }
}

const changedMeanwhile = "The lever was not moved: the text changed meanwhile.";

function dropped(message: string): MoveAnswer {
  return { state: "dropped", message };
}

function moveIn(plan: CheckedPlan, { lever: id, value: asked }: LeverMove) {
  const lever = allLevers(plan).find((one) => one.id === id && one.fixed === undefined);
  const value = lever && valueWithin(lever, asked);
  if (!lever || value === undefined) return undefined;
  const fix = changeOf(lever, value);
  const edits = plan.editsOf(fix)?.edits;
  return edits && { fix, edits };
}

function allLevers(plan: CheckedPlan): readonly PlanLever[] {
  return plan.judgement.energy.flatMap((energy) =>
    energy.banks.flatMap((bank) => leversOf(plan, energy, bank)),
  );
}

/** The plan as it would be with a lever moved; undefined if it cannot be moved, or the plan then does not run. */
async function tryMove(
  view: PlanInView,
  move: LeverMove,
  { workspace }: AnswerWiring,
  checker: Checker,
  token: CancellationToken,
): Promise<CheckedPlan | undefined> {
  const made = view.current ? moveIn(view.plan, move) : undefined;
  if (!made) throw textChanged();
  const texts = new Map<Uri, string>();
  for (const edit of made.edits) {
    const source = workspace.read(edit.uri);
    if (source?.version !== edit.version) throw textChanged();
    const { text } = source;
    texts.set(edit.uri, text.slice(0, edit.start) + edit.newText + text.slice(edit.end));
  }
  // While the thumb is dragged on, the next request has taken the place of this one.
  if (token.isCancellationRequested) return undefined;
  const after = await checker.checkAs(view.plan.root, texts);
  return after.state === "checked" ? after : undefined;
}

function isOfVersions({ plan, client }: PlanInView, versions: MoveParams["versions"]): boolean {
  const of = new Map(versions.map(({ uri, version }) => [uri, version]));
  return [...plan.snapshot.keys()].every((file) => {
    const { uri, version } = client(file);
    return version === null || of.get(uri) === version;
  });
}

function placed(view: PlanInView, edit: Edit) {
  const { uri, version } = view.client(edit.uri);
  const range = view.range(edit) ?? view.span(edit);
  return version === null || !range ? undefined : { uri, version, range, newText: edit.newText };
}

function withoutFigures({ root, outcome }: ShownPlan, { workspace }: AnswerWiring): EnergyView {
  const broken = outcome?.state === "incomplete" ? fileName(outcome.broken) : "the plan";
  const why =
    outcome?.state === "failed"
      ? `The plan could not be checked: ${outcome.reason}`
      : `There are no figures yet: ${broken} is half typed.`;
  return {
    ...{ uri: workspace.client(root).uri, versions: {}, title: fileName(root), current: false },
    ...{ notes: [plainWords(why)], periods: [] },
  };
}
