import { Disposable, type Uri, window } from "vscode";
import type { DifferenceAnswer, DifferenceParams, differenceMethod } from "../server/language/messages.ts";
import { editorWords } from "../server/language/plain-words.ts";
import { registerCommand } from "./command.ts";
import { createMarkdownPages } from "./markdown-pages.ts";
import type { ServerSession } from "./server-session.ts";

/**
 * The command that shows the changes in the plan since the last commit, and their effects elsewhere. Run again, it refreshes
 * them.
 */
export function registerDifference(session: ServerSession): Disposable {
  const pages = createMarkdownPages("loomwright-difference");
  /** If the command is run from the page itself, it means the same plan again. */
  let asked: Uri | undefined;
  return Disposable.from(
    pages,
    registerCommand("loomwright.showDifference", async () => {
      asked = window.activeTextEditor?.document.uri ?? asked;
      if (!asked) {
        window.showInformationMessage("Open a file of the plan, and ask again.");
        return;
      }
      const answer = await differenceOf(asked, session);
      if (!answer) return;
      if (answer.state === "cannot") {
        window.showInformationMessage(editorWords(answer.message));
        return;
      }
      await pages.show(`${answer.title} since the last commit`, answer.markdown);
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
