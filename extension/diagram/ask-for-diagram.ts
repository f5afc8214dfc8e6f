import { ProgressLocation, type Uri, window, workspace } from "vscode";
import type { CancellationToken, LanguageClient } from "vscode-languageclient/node";
import type { Diagram, DiagramParams, diagramMethod } from "../../server/language/messages.ts";
import type { ServerSession } from "../server-session.ts";
import { firstView } from "./panel-state.ts";

/** The picture of the plan that a file belongs to, in the view that a panel begins with; null where it belongs to none. */
export async function askForDiagram(
  session: ServerSession,
  file: Uri,
): Promise<Diagram | null | "no server"> {
  return window.withProgress(
    { location: ProgressLocation.Window, title: "Drawing the wiring diagram" },
    async () => {
      const client = await session.client();
      return client ? requestDiagram(client, file, { view: firstView }) : "no server";
    },
  );
}

export async function requestDiagram(
  client: LanguageClient,
  file: Uri,
  shown: Omit<DiagramParams, "textDocument">,
  token?: CancellationToken,
): Promise<Diagram | null> {
  // The server looks only at what is open, and the file of a panel need not be: its tab was closed, or the window loaded anew.
  // One that is gone, or was never saved, is not opened; then the server knows of no plan.
  if (file.scheme === "file") await workspace.openTextDocument(file).then(undefined, () => undefined);
  const params: DiagramParams = {
    textDocument: { uri: client.code2ProtocolConverter.asUri(file) },
    ...shown,
  };
  const method = "loomwright/diagram" satisfies typeof diagramMethod;
  // A token that is undefined would be sent along as a second parameter.
  return token ? client.sendRequest(method, params, token) : client.sendRequest(method, params);
}
