import { ProgressLocation, type Uri, window, workspace } from "vscode";
import type { CancellationToken, LanguageClient } from "vscode-languageclient/node";
import type { Diagram, DiagramParams, diagramMethod } from "../../server/language/messages.ts";
import type { ServerSession } from "../server-session.ts";
import { firstView } from "./panel-state.ts";

/** The diagram of the plan that a file belongs to, in a panel's initial view; null if it belongs to none. */
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
  // The server reads only open files, and the file of a panel may be closed: its tab was closed, or the window reloaded. A
  // deleted or never saved file is not opened; then the server knows no plan.
  if (file.scheme === "file") await workspace.openTextDocument(file).then(undefined, () => undefined);
  const params: DiagramParams = {
    textDocument: { uri: client.code2ProtocolConverter.asUri(file) },
    ...shown,
  };
  const method = "loomwright/diagram" satisfies typeof diagramMethod;
  // An undefined token would be sent along as a second parameter.
  return token ? client.sendRequest(method, params, token) : client.sendRequest(method, params);
}
