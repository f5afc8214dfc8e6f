import { commands, ProgressLocation, window } from "vscode";
import type { checkWorkspaceMethod, WorkspaceCheck } from "../server/language/messages.ts";
import { editorWords } from "../server/language/plain-words.ts";
import { countsInWords, numbered, sumOf } from "./counts-in-words.ts";
import type { ServerSession } from "./server-session.ts";

/** The command that checks every plan of the workspace, open or not, and shows a summary. Returns the server's answer. */
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

function tell({ plans, passedBy }: WorkspaceCheck): void {
  if (plans.length === 0 && passedBy.length === 0) {
    window.showInformationMessage('No plan here: no TypeScript or JavaScript file imports "loomwright".');
    return;
  }
  const total = sumOf(plans.flatMap(({ counts }) => counts ?? []));
  const failed = plans.filter(({ state }) => state === "failed").length;
  const held = plans.filter(({ state }) => state === "incomplete").length;
  const unjudged = passedBy.filter(({ mayHideHazard }) => mayHideHazard).length;
  const known = passedBy.length - unjudged;
  const sentences = [
    `${numbered(plans.length - failed - held, "plan", "plans")} checked.`,
    held > 0
      ? `${numbered(held, "plan is", "plans are")} half typed, and counted as of the last complete text.`
      : "",
    failed > 0 ? `${numbered(failed, "plan", "plans")} could not be checked.` : "",
    unjudged > 0
      ? `${numbered(unjudged, "file", "files")} could not be judged and may hide a hazard: the log gives the reasons.`
      : "",
    known > 0
      ? `${numbered(known, "file was", "files were")} passed by, such as a link or one that git ignores: the log lists ${known === 1 ? "it" : "them"}.`
      : "",
    `In all: ${countsInWords(total)}.`,
  ];
  const message = editorWords(sentences.filter((sentence) => sentence !== "").join(" "));
  const showProblems = "Show Problems";
  const shown =
    total.errors > 0 || failed > 0 || unjudged > 0
      ? window.showWarningMessage(message, showProblems)
      : window.showInformationMessage(message, showProblems);
  shown.then((choice) => {
    if (choice === showProblems) commands.executeCommand("workbench.actions.view.problems");
  });
}
