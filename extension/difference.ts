import { commands, Disposable, EventEmitter, Uri, window, workspace } from "vscode";
import type { DifferenceAnswer, DifferenceParams, differenceMethod } from "../server/language/messages.ts";
import type { ServerSession } from "./server-session.ts";

const scheme = "loomwright-difference";

/** The command that shows what changed in the plan since the last commit, and what that does elsewhere. Asked again, it shows it anew. */
export function registerDifference(session: ServerSession): Disposable {
  const changed = new EventEmitter<Uri>();
  const texts = new Map<string, string>();
  /** Asked from the page itself, the same plan is meant again. */
  let asked: Uri | undefined;
  return Disposable.from(
    changed,
    workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: (page) => texts.get(page.path) ?? "",
    }),
    workspace.onDidCloseTextDocument(({ uri }) => {
      if (uri.scheme === scheme) texts.delete(uri.path);
    }),
    commands.registerCommand("loomwright.showDifference", async () => {
      asked = window.activeTextEditor?.document.uri ?? asked;
      if (!asked) {
        window.showInformationMessage("Open a file of the plan, and ask again.");
        return;
      }
      const answer = await differenceOf(asked, session);
      if (!answer) return;
      if (answer.state === "cannot") {
        window.showInformationMessage(answer.message);
        return;
      }
      // A path holds no "/" or "\" of a build's name; the name itself stands in the page.
      const page = Uri.from({
        scheme,
        path: `/${answer.title.replace(/[/\\]/g, "-")} since the last commit.md`,
      });
      texts.set(page.path, answer.markdown);
      changed.fire(page);
      await commands.executeCommand("markdown.showPreviewToSide", page);
    }),
  );
}

async function differenceOf(file: Uri, session: ServerSession): Promise<DifferenceAnswer | undefined> {
  const client = await session.client();
  if (!client) return undefined;
  const params: DifferenceParams = { textDocument: { uri: client.code2ProtocolConverter.asUri(file) } };
  return client.sendRequest<DifferenceAnswer>(
    "loomwright/difference" satisfies typeof differenceMethod,
    params,
  );
}
