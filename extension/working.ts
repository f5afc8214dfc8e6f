import { commands, Disposable, EventEmitter, Uri, window, workspace } from "vscode";
import type { Working, WorkingParams, workingMethod } from "../server/language/messages.ts";
import type { ServerSession } from "./server-session.ts";

const scheme = "loomwright-working";

/** The command that shows, beside the plan, how the numbers under the cursor were worked out. */
export function registerWorking(session: ServerSession): Disposable {
  const changed = new EventEmitter<Uri>();
  const texts = new Map<string, string>();
  return Disposable.from(
    changed,
    workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: (page) => texts.get(page.path) ?? "",
    }),
    workspace.onDidCloseTextDocument(({ uri }) => {
      if (uri.scheme === scheme) texts.delete(uri.path);
    }),
    commands.registerCommand("loomwright.showWorking", async () => {
      const working = await workingAtCursor(session);
      if (!working) {
        window.showInformationMessage("Put the cursor on a circuit, or on one of its values, and ask again.");
        return;
      }
      // A path holds no "/" or "\" of a circuit's name; the name itself stands in the page.
      const page = Uri.from({ scheme, path: `/${working.circuit.replace(/[/\\]/g, "-")}.md` });
      texts.set(page.path, working.markdown);
      changed.fire(page);
      await commands.executeCommand("markdown.showPreviewToSide", page);
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
