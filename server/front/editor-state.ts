import type {
  DidChangeTextDocumentParams,
  DidOpenTextDocumentParams,
  InitializeParams,
} from "vscode-languageserver";
import type { Message, NotificationMessage, RequestMessage } from "vscode-languageserver/node";
import { TextDocument, type TextDocumentContentChangeEvent } from "vscode-languageserver-textdocument";

/** The messages that an engine needs to take over: the handshake, and each open document in the editor's current version. */
export interface EditorState {
  /**
   * Processes a message of the editor. Throws if it changes a document that is not open, or at a position that does not exist.
   */
  heard(message: RequestMessage | NotificationMessage): void;
  /**
   * The messages that bring a new engine up to date with the editor; its answers to the requests among them are not for the
   * editor.
   */
  replay(): readonly Message[];
}

export function createEditorState(): EditorState {
  const documents = new Map<string, TextDocument>();
  let initialize: InitializeParams | undefined;
  let initialized = false;
  let configuration: unknown;

  const heardNotification = ({ method, params }: NotificationMessage): void => {
    switch (method) {
      case "initialized":
        initialized = true;
        break;
      case "textDocument/didOpen": {
        const { uri, languageId, version, text } = (params as DidOpenTextDocumentParams).textDocument;
        documents.set(uri, TextDocument.create(uri, languageId, version, text));
        break;
      }
      case "textDocument/didChange": {
        const { textDocument, contentChanges } = params as DidChangeTextDocumentParams;
        const document = documents.get(textDocument.uri);
        if (!document) throw new Error(`${textDocument.uri} is not open`);
        TextDocument.update(
          document,
          contentChanges as TextDocumentContentChangeEvent[],
          textDocument.version,
        );
        break;
      }
      case "textDocument/didClose":
        documents.delete((params as { textDocument: { uri: string } }).textDocument.uri);
        break;
      case "workspace/didChangeConfiguration":
        configuration = params;
        break;
      case "workspace/didChangeWorkspaceFolders":
        changeFolders((params as { event: FolderChange }).event);
        break;
    }
  };

  const changeFolders = ({ added, removed }: FolderChange): void => {
    if (!initialize) return;
    const gone = new Set(removed.map(({ uri }) => uri));
    const kept = (initialize.workspaceFolders ?? []).filter(({ uri }) => !gone.has(uri));
    initialize = { ...initialize, workspaceFolders: [...kept, ...added] };
  };

  return {
    heard(message) {
      if (!("id" in message)) heardNotification(message);
      else if (message.method === "initialize") initialize = message.params as InitializeParams;
    },
    replay() {
      if (!initialize) return [];
      // The front monitors the editor's process; an engine ends with the front.
      const messages: object[] = [
        { id: handshakeId, method: "initialize", params: { ...initialize, processId: null } },
      ];
      if (initialized) messages.push({ method: "initialized", params: {} });
      if (configuration !== undefined)
        messages.push({ method: "workspace/didChangeConfiguration", params: configuration });
      for (const document of documents.values()) {
        const { uri, languageId, version } = document;
        const textDocument = { uri, languageId, version, text: document.getText() };
        messages.push({ method: "textDocument/didOpen", params: { textDocument } });
      }
      return messages.map((message) => ({ jsonrpc: "2.0", ...message }));
    },
  };
}

interface FolderChange {
  readonly added: readonly { readonly uri: string; readonly name: string }[];
  readonly removed: readonly { readonly uri: string }[];
}

/** No editor uses this as a request id. */
export const handshakeId = "loomwright/engine/handshake";
