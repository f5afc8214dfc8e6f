import { commands, type Disposable } from "vscode";
import type { ServerSession } from "./server-session.ts";

/** The command that shows the wiring diagram beside the plan, and the panel that it lives in. */
export function registerDiagram(_session: ServerSession): Disposable {
  return commands.registerCommand("loomwright.showDiagram", () => undefined);
}
