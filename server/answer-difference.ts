import type { Connection } from "vscode-languageserver";
import type { AnswerWiring } from "./answer-requests.ts";
import { differenceMethod } from "./language/messages.ts";
import type { RequestGuard } from "./request-guard.ts";

/** Answers requests for the difference to the last commit. */
export function answerDifference(connection: Connection, _wiring: AnswerWiring, guard: RequestGuard): void {
  connection.onRequest(differenceMethod, (params, token) =>
    guard(differenceMethod, params, token, async () => null),
  );
}
