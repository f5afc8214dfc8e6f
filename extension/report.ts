import { type Disposable, env, ProgressLocation, Uri, window, workspace } from "vscode";
import type { ReportAnswer, ReportParams, reportMethod } from "../server/language/messages.ts";
import { editorWords } from "../server/language/plain-words.ts";
import { reasonOf, registerCommand } from "./command.ts";
import type { ServerSession } from "./server-session.ts";

/**
 * The command that writes the report of the plan in the editor: asks for the file and, for a PDF, the paper size; offers to open
 * it.
 */
export function registerReport(session: ServerSession): Disposable {
  return registerCommand("loomwright.writeReport", async () => {
    const plan = planInEditor();
    const target = plan && (await askWhere(plan));
    const page = target && (await askPage(target));
    if (page) await writeReport(session, { plan, target, page });
  });
}

interface Asked {
  readonly plan: Uri;
  readonly target: Uri;
  readonly page: ReportParams["page"];
}

function planInEditor(): Uri | undefined {
  const uri = window.activeTextEditor?.document.uri;
  if (uri?.scheme === "file") return uri;
  window.showInformationMessage(
    uri?.scheme === "untitled"
      ? "Save the plan first: a report names its source files, and is written beside them."
      : "Open a plan in a folder on this machine, and ask again.",
  );
  return undefined;
}

async function askWhere(plan: Uri): Promise<Uri | undefined> {
  const chosen = await window.showSaveDialog({
    title: "Write the Report",
    saveLabel: "Write",
    defaultUri: plan.with({ path: `${plan.path.replace(/\.[cm]?[jt]sx?$/i, "")}.report.html` }),
    filters: { "Page for any browser": ["html"], "PDF, for paper": ["pdf"] },
  });
  if (!chosen || /\.(html|pdf)$/i.test(chosen.path)) return chosen;
  return chosen.with({ path: `${chosen.path}.html` });
}

/** An HTML page adapts to the paper it is printed on. */
async function askPage({ path }: Uri): Promise<ReportParams["page"] | undefined> {
  if (!/\.pdf$/i.test(path)) return "A4";
  const pages = [
    { label: "A4", description: "210 mm × 297 mm" },
    { label: "Letter", description: "8.5 in × 11 in" },
  ] as const;
  const inOrder = usesLetter() ? [...pages].reverse() : pages;
  const chosen = await window.showQuickPick(inOrder, { title: "Paper of the report" });
  return chosen?.label;
}

/** Puts Letter first if this machine's locale is of a country where Letter is usual. */
function usesLetter(): boolean {
  return /-(US|CA|MX|PH|CL|CO|VE)$/.test(Intl.DateTimeFormat().resolvedOptions().locale);
}

async function writeReport(session: ServerSession, asked: Asked): Promise<void> {
  const answer = await requestReport(session, asked, false);
  if (answer?.state !== "not-ours") return tell(answer);
  const replace = "Replace";
  const detail = "Its present content will be lost.";
  const choice = await window.showWarningMessage(
    editorWords(answer.message),
    { modal: true, detail },
    replace,
  );
  if (choice === replace) tell(await requestReport(session, asked, true));
}

/** Undefined: cancelled, or there is no server, which has been reported to the person. */
async function requestReport(
  session: ServerSession,
  { plan, target, page }: Asked,
  force: boolean,
): Promise<ReportAnswer | undefined> {
  const client = await session.client();
  if (!client) return undefined;
  const params: ReportParams = {
    textDocument: { uri: client.code2ProtocolConverter.asUri(plan) },
    ...{ path: target.fsPath, page, force },
  };
  const title = editorWords(`Writing ${workspace.asRelativePath(target)}`);
  return window.withProgress(
    { location: ProgressLocation.Notification, title, cancellable: true },
    async (_progress, token): Promise<ReportAnswer | undefined> => {
      try {
        return await client.sendRequest<ReportAnswer>(
          "loomwright/report" satisfies typeof reportMethod,
          params,
          token,
        );
      } catch (error) {
        if (token.isCancellationRequested) return undefined;
        return { state: "failed", message: reasonOf(error) };
      }
    },
  );
}

function tell(answer: ReportAnswer | undefined): void {
  if (!answer) return;
  if (answer.state !== "written") {
    window.showErrorMessage(editorWords(answer.message));
    return;
  }
  const file = Uri.file(answer.path);
  const missing =
    answer.missing === "" ? "" : ` Drawn as empty boxes, because the typeface lacks them: ${answer.missing}`;
  const open = "Open";
  const written = editorWords(`${workspace.asRelativePath(file)} is written.${missing}`);
  window.showInformationMessage(written, open).then((choice) => {
    if (choice === open) void env.openExternal(file);
  });
}
