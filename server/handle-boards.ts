import type { CancellationToken, Connection } from "vscode-languageserver";
import type { AnswerWiring } from "./answer-wiring.ts";
import type { CheckedPlan } from "./evaluate/checked-plan.ts";
import { fileName } from "./evaluate/files/file-name.ts";
import { placingOf } from "./language/board-places.ts";
import { boardsView } from "./language/boards-view.ts";
import {
  type ArrangementAnswer,
  type ArrangementParams,
  arrangementMethod,
  type BoardsParams,
  type BoardsView,
  boardsMethod,
  type MoveAnswer,
  type PlacePartsParams,
  placePartsMethod,
  type TriedPlace,
} from "./language/messages.ts";
import { editorWords, plainWords } from "./language/plain-words.ts";
import { isOfVersions } from "./language/versions-in-view.ts";
import { type ShownPlan, whyNothing } from "./open-plans.ts";
import { type RequestGuard, textChanged } from "./request-guard.ts";
import { suggestArrangement } from "./suggest-arrangement.ts";
import { createTrials } from "./tried-edits.ts";

/**
 * Answers the view of the boards: the places of the text, or those with parts moved, the edits of parts that were let go, and suggested
 * places. None of the answers changes a text.
 */
export function answerBoards(connection: Connection, wiring: AnswerWiring, guard: RequestGuard): void {
  const trials = createTrials(wiring);
  connection.onRequest(boardsMethod, (params: BoardsParams, token) =>
    guard(boardsMethod, params, token, async (): Promise<BoardsView | null> => {
      const { textDocument, tried, conductors = false } = params;
      const shown = await trials.shown(textDocument.uri);
      if (!shown) return null;
      const { view } = shown;
      if (!view) return withoutBoards(shown, wiring);
      if (!tried) return boardsView(view, { conductors });
      if (!isOfVersions(view, tried.versions)) throw textChanged();
      const after = await trials.judgedWith(view, placing(view.plan, tried.places), token);
      if (after) return boardsView(view, { conductors, tried: after });
      const asItIs = boardsView(view, { conductors });
      return { ...asItIs, notes: [...asItIs.notes, "With the part there the plan could not be judged."] };
    }),
  );
  connection.onRequest<MoveAnswer, void>(
    placePartsMethod,
    (params: PlacePartsParams, token: CancellationToken) =>
      guard(placePartsMethod, params, token, async (): Promise<MoveAnswer> => {
        const { textDocument, tried } = params;
        const shown = await trials.shown(textDocument.uri);
        const asked = {
          ...{
            view: shown?.view,
            versions: tried.versions,
            notMade: tried.places.length === 1 ? "The part was not moved" : "The places were not taken",
          },
          changeIn: ({ plan }: { readonly plan: CheckedPlan }) => placing(plan, tried.places),
        };
        return trials.editsFor(asked, token);
      }),
  );
  connection.onRequest<ArrangementAnswer, void>(
    arrangementMethod,
    (params: ArrangementParams, token: CancellationToken) =>
      guard(arrangementMethod, params, token, async (): Promise<ArrangementAnswer> => {
        const { textDocument, workDoneToken } = params;
        const shown = await trials.shown(textDocument.uri);
        if (!shown?.view) return { state: "none", message: "No arrangement is suggested: there is no plan." };
        const progress = connection.window.attachWorkDoneProgress(workDoneToken);
        progress.begin("Looking for places");
        const report = (message: string) => progress.report(editorWords(message));
        return suggestArrangement(trials, shown.view, params, { token, report }).finally(() =>
          progress.done(),
        );
      }),
  );
}

function placing(plan: CheckedPlan, places: readonly TriedPlace[]) {
  const { placement } = plan.judgement;
  return placement && placingOf(plan, placement.layout, places);
}

function withoutBoards({ root, outcome }: ShownPlan, { workspace }: AnswerWiring): BoardsView {
  return {
    ...{ uri: workspace.client(root).uri, versions: {}, title: fileName(root), current: false },
    ...{ notes: [plainWords(whyNothing(outcome, "There is no drawing yet"))], surfaces: [], parts: [] },
    conductors: [],
  };
}
