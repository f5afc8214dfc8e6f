import { Disposable, window } from "vscode";
import type { Working, WorkingParams, workingMethod } from "../server/language/messages.ts";
import { registerCommand } from "./command.ts";
import { createMarkdownPages } from "./markdown-pages.ts";
import type { ServerSession } from "./server-session.ts";

/** The command that shows, beside the plan, how the numbers under the cursor were worked out. */
export function registerWorking(session: ServerSession): Disposable {
  const pages = createMarkdownPages("loomwright-working");
  return Disposable.from(
    pages,
    registerCommand("loomwright.showWorking", async () => {
      const working = await workingAtCursor(session);
      if (!working) {
        window.showInformationMessage("Put the cursor on a circuit, or on one of its values, and ask again.");
        return;
      }
      await pages.show(working.circuit, working.markdown);
    }),
  );
}

async function workingAtCursor(session: ServerSession): Promise<Working | null> {
  const editor = window.activeTextEditor;
  const client = editor && (await session.client());
  if (!client) return null;
  const params: WorkingParams = {
    textDocument: { uri: client.code2ProtocolConverter.asUri(editor.document.uri) },
    position: client.code2ProtocolConverter.asPosition(editor.selection.active),
  };
  return client.sendRequest<Working | null>("loomwright/working" satisfies typeof workingMethod, params);
}
