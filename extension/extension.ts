// The client for VS Code. It has no knowledge of conductors: it starts the server when there is a plan to check, and shows the
// results.

import { type ExtensionContext, window } from "vscode";
import { registerBoards } from "./board-view.ts";
import { registerCommand } from "./command.ts";
import { registerDiagram } from "./diagram-panel.ts";
import { registerDifference } from "./difference.ts";
import { registerDocuments } from "./documents.ts";
import { registerEnergy } from "./energy-view.ts";
import { newBuild } from "./new-build.ts";
import { onFirstPlan } from "./plan-documents.ts";
import { showPlanStatus } from "./plan-status.ts";
import { registerRulePages } from "./rule-page.ts";
import { createServerSession } from "./server-session.ts";
import { registerWorking } from "./working.ts";
import { checkWorkspace } from "./workspace-check.ts";

/**
 * Runs when the first TypeScript or JavaScript file is opened, in any project. Therefore it only looks for the library's name;
 * neither the language client nor the server is loaded until that is found or a command needs them.
 */
export function activate(context: ExtensionContext): void {
  const log = window.createOutputChannel("Loomwright", { log: true });
  const session = createServerSession(context, log);
  context.subscriptions.push(
    log,
    session,
    onFirstPlan(() => void session.client()),
    showPlanStatus(session),
    registerRulePages(),
    registerWorking(session),
    registerDiagram(context, session, log),
    registerEnergy(context, session, log),
    registerBoards(context, session, log),
    registerDocuments(session),
    registerDifference(session),
    registerCommand("loomwright.newBuild", (folder: unknown, template: unknown) =>
      newBuild(context, log, folder, template),
    ),
    registerCommand("loomwright.checkWorkspace", () => checkWorkspace(session)),
    registerCommand("loomwright.restartServer", () => session.restart()),
    registerCommand("loomwright.showLog", () => log.show()),
  );
}
