import { commands, type Disposable } from "vscode";
import type { ServerSession } from "./server-session.ts";

/** The command that writes the report of the plan in the editor. */
export function registerReport(_session: ServerSession): Disposable {
  return commands.registerCommand("loomwright.writeReport", () => undefined);
}
