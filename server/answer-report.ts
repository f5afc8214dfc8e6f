import type { Connection } from "vscode-languageserver";
import type { AnswerWiring } from "./answer-requests.ts";
import { reportMethod } from "./language/messages.ts";
import type { RequestGuard } from "./request-guard.ts";

/** Answers requests for the report. */
export function answerReport(connection: Connection, _wiring: AnswerWiring, guard: RequestGuard): void {
  connection.onRequest(reportMethod, (params, token) => guard(reportMethod, params, token, async () => null));
}
