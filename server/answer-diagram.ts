import type { Connection } from "vscode-languageserver";
import type { AnswerWiring } from "./answer-requests.ts";
import { diagramMethod } from "./language/messages.ts";
import type { RequestGuard } from "./request-guard.ts";

/** Answers requests for the picture of a plan. */
export function answerDiagram(connection: Connection, _wiring: AnswerWiring, guard: RequestGuard): void {
  connection.onRequest(diagramMethod, (params, token) =>
    guard(diagramMethod, params, token, async () => null),
  );
}
