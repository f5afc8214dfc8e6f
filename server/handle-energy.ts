import type { CancellationToken, Connection } from "vscode-languageserver";
import type { Judgement } from "../library/judge.ts";
import type { ProposedFix } from "../library/rules/finding.ts";
import type { AnswerWiring } from "./answer-wiring.ts";
import type { CheckedPlan } from "./evaluate/checked-plan.ts";
import { fileName } from "./evaluate/files/file-name.ts";
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
import { type ShownPlan, whyNothing } from "./open-plans.ts";
import type { RequestGuard } from "./request-guard.ts";
import { createTrials } from "./tried-edits.ts";

/**
 * Answers the view of energy: the figures of the text, or those with a lever moved, and the edits of a lever that was let go. None of
 * the answers changes a text.
 */
export function answerEnergy(connection: Connection, wiring: AnswerWiring, guard: RequestGuard): void {
  const trials = createTrials(wiring);
  connection.onRequest(energyMethod, (params: EnergyParams, token) =>
    guard(energyMethod, params, token, async (): Promise<EnergyView | null> => {
      const shown = await trials.shown(params.textDocument.uri);
      if (!shown) return null;
      const { view } = shown;
      if (!view) return withoutFigures(shown, wiring);
      if (!params.move) return withLeast(view, params, view.plan.judgement, token);
      const tried = await trials.judgedWith(view, moveIn(view.plan, params.move), token);
      if (tried) return withLeast(view, params, tried.judgement, token);
      const asItIs = energyView(view, params);
      return { ...asItIs, notes: [...asItIs.notes, "With the lever there the plan could not be judged."] };
    }),
  );
  connection.onRequest<MoveAnswer, void>(moveMethod, (params: MoveParams, token: CancellationToken) =>
    guard(moveMethod, params, token, async (): Promise<MoveAnswer> => {
      const { textDocument, versions, move } = params;
      const shown = await trials.shown(textDocument.uri);
      const changeIn = ({ plan }: { readonly plan: CheckedPlan }) => moveIn(plan, move);
      const asked = { view: shown?.view, versions, changeIn, notMade: "The lever was not moved" };
      return trials.editsFor(asked, token);
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

function moveIn(plan: CheckedPlan, { lever: id, value: asked }: LeverMove): ProposedFix | undefined {
  const lever = allLevers(plan).find((one) => one.id === id && one.fixed === undefined);
  const value = lever && valueWithin(lever, asked);
  return lever && value !== undefined ? changeOf(lever, value) : undefined;
}

function allLevers(plan: CheckedPlan): readonly PlanLever[] {
  return plan.judgement.energy.flatMap((energy) =>
    energy.banks.flatMap((bank) => leversOf(plan, energy, bank)),
  );
}

function withoutFigures({ root, outcome }: ShownPlan, { workspace }: AnswerWiring): EnergyView {
  const why = whyNothing(outcome, "There are no figures yet");
  return {
    ...{ uri: workspace.client(root).uri, versions: {}, title: fileName(root), current: false },
    ...{ notes: [plainWords(why)], periods: [] },
  };
}
