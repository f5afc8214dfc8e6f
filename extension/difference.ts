import { commands, type Disposable } from "vscode";
import type { ServerSession } from "./server-session.ts";

/** The command that shows what changed in the plan since the last commit, and what that does elsewhere. */
export function registerDifference(_session: ServerSession): Disposable {
  return commands.registerCommand("loomwright.showDifference", () => undefined);
}
