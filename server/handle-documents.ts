import type { CancellationToken, Connection } from "vscode-languageserver";
import type { AnswerWiring } from "./answer-wiring.ts";
import { type DocumentAnswer, type DocumentParams, documentMethod } from "./language/messages.ts";
import { planMeantBy, wholePlan } from "./open-plans.ts";
import type { Layouts } from "./output/layouts.ts";
import type { RequestGuard } from "./request-guard.ts";

/**
 * Answers requests for drawings, lists, labels and wire numbers: made from the current texts, each file whole or not at all. The code for it
 * is loaded at the first request.
 */
export function answerDocuments(
  connection: Connection,
  { workspace, running }: AnswerWiring,
  guard: RequestGuard,
  layouts: Layouts,
): void {
  connection.onRequest<DocumentAnswer, void>(
    documentMethod,
    (params: DocumentParams, token: CancellationToken) =>
      guard(documentMethod, params, token, async () => {
        const stopping = new AbortController();
        const listening = token.onCancellationRequested(() => stopping.abort(new Error("Cancelled.")));
        try {
          const file = workspace.fromEditor(params.textDocument.uri);
          const { plans } = await running();
          const plan = wholePlan(planMeantBy(file, await plans.borrowed(file)), "document");
          const { failed, makeDocument } = await import("./make-documents.ts");
          if (typeof plan === "string") return failed(plan);
          return await makeDocument(plan, params, {
            workspace,
            layouts,
            signal: stopping.signal,
          });
        } finally {
          listening.dispose();
        }
      }),
  );
}
