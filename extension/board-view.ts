import type { Disposable, ExtensionContext, LogOutputChannel } from "vscode";
import { readViewState } from "./board/messages.ts";
import { boardsKind, createPlanBoards } from "./board/plan-boards.ts";
import { registerViews } from "./plan-view/register-views.ts";
import type { ServerSession } from "./server-session.ts";

/** The command that shows the boards with the parts on them beside the plan. */
export function registerBoards(
  context: ExtensionContext,
  session: ServerSession,
  log: LogOutputChannel,
): Disposable {
  return registerViews(context, session, log, {
    kind: boardsKind,
    command: "loomwright.showBoards",
    notOpened: "The boards could not be shown",
    readState: readViewState,
    create: createPlanBoards,
  });
}
