import type { CancellationToken, Connection } from "vscode-languageserver";
import type { AnswerWiring } from "./answer-wiring.ts";
import { type DifferenceAnswer, type DifferenceParams, differenceMethod } from "./language/messages.ts";
import type { RequestGuard } from "./request-guard.ts";

/** Answers requests for the difference to the last commit. The code for it is loaded at the first request. */
export function answerDifference(connection: Connection, wiring: AnswerWiring, guard: RequestGuard): void {
  const { workspace, running } = wiring;
  connection.onRequest<DifferenceAnswer, void>(
    differenceMethod,
    (params: DifferenceParams, token: CancellationToken) =>
      guard(differenceMethod, params, token, async () => {
        const { plans } = await running();
        const uri = workspace.fromEditor(params.textDocument.uri);
        const settled = await plans.settledOf(uri);
        const stopping = new AbortController();
        const listening = token.onCancellationRequested(() => stopping.abort());
        try {
          const { difference } = await import("./language/difference.ts");
          const views = settled.flatMap(({ view }) => (view ? [view] : []));
          return await difference(views, workspace, stopping.signal);
        } finally {
          listening.dispose();
        }
      }),
  );
}
