import { commands, ProgressLocation, window } from "vscode";
import type { checkWorkspaceMethod, WorkspaceCheck } from "../server/language/messages.ts";
import { countsInWords, numbered, sumOf } from "./counts-in-words.ts";
import type { ServerSession } from "./server-session.ts";

/** The command that checks every plan of the workspace, open or not, and says what came out. Answers what the server answered. */
export async function checkWorkspace(session: ServerSession): Promise<WorkspaceCheck | undefined> {
  const client = await session.client();
  if (!client) return undefined;
  const check = await window.withProgress(
    { location: ProgressLocation.Window, title: "Checking all plans of the workspace" },
    () =>
      client.sendRequest<WorkspaceCheck>("loomwright/checkWorkspace" satisfies typeof checkWorkspaceMethod),
  );
  tell(check);
  return check;
}

function tell({ plans }: WorkspaceCheck): void {
  if (plans.length === 0) {
    window.showInformationMessage('No plan here: no TypeScript or JavaScript file imports "loomwright".');
    return;
  }
  const total = sumOf(plans.flatMap(({ counts }) => counts ?? []));
  const unchecked = plans.filter(({ counts }) => !counts).length;
  const message =
    `${numbered(plans.length - unchecked, "plan", "plans")} checked: ${countsInWords(total)}.` +
    (unchecked > 0 ? ` ${numbered(unchecked, "plan", "plans")} could not be checked.` : "");
  const tellAs =
    total.errors > 0 || unchecked > 0 ? window.showWarningMessage : window.showInformationMessage;
  const showProblems = "Show Problems";
  tellAs(message, showProblems).then((choice) => {
    if (choice === showProblems) commands.executeCommand("workbench.actions.view.problems");
  });
}
