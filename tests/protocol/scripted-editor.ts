import { existsSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import {
  type CodeAction,
  type Diagnostic,
  FileChangeType,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type TextDocumentEdit,
  TextDocumentSaveReason,
} from "vscode-languageserver/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { StatusParams } from "../../server/language/messages.ts";
import {
  type ScriptedServer,
  type ServerListener,
  type ServerOptions,
  startServer,
} from "./scripted-server.ts";

/**
 * A small editor without a screen: talks to the built server, a child process, over the real protocol. It waits for the
 * server's own messages, never for time to pass.
 */
export interface ScriptedEditor {
  readonly server: InitializeResult;
  readonly connection: ProtocolConnection;
  /** Every status, newest last. */
  readonly statuses: readonly StatusParams[];
  /** Every push, newest last. */
  readonly pushes: readonly PublishDiagnosticsParams[];
  /** Methods of the requests that the server sent, newest last. */
  readonly asked: readonly string[];
  readonly logged: readonly string[];
  uri(file: string): string;
  /** Opens a file with the text on disk, or another. */
  open(file: string, text?: string): void;
  /** Replaces the first occurrence of a text, as one incremental change. Returns the new version. */
  type(file: string, found: string, replacement: string): number;
  /** Replaces the whole text, as one change without a range. */
  retype(file: string, text: string): number;
  close(file: string): void;
  textOf(file: string): string;
  /** The position just after the first occurrence of a text; after `before` within it, if that is given. */
  behind(file: string, found: string): Position;
  /** The last push for a file; undefined before the first push. */
  pushed(file: string): Diagnostic[] | undefined;
  /** Resolves with the first status, past or future, that covers the newest text of the file and has one of the states. */
  until(file: string, ...states: StatusParams["state"][]): Promise<StatusParams>;
  /** Resolves at the next request of this kind from the server. */
  asks(method: string): Promise<void>;
  request<T>(method: string, params: object): Promise<T>;
  /** Sends a request with `textDocument` and `position` filled in. */
  ask<T>(method: string, file: string, more?: object): Promise<T>;
  /** Applies an action's versioned edits as an editor does: refuses them for any other version. */
  apply(action: CodeAction): void;
  /** Writes files on disk, or removes those with undefined, and notifies the server. */
  onDisk(files: Readonly<Record<string, string | undefined>>): void;
  /** The same, without notifying the server. */
  onDiskUnheard(files: Readonly<Record<string, string>>): void;
  /** @param reason As the protocol numbers it: 1 by the builder, 2 by the editor itself after a pause. */
  save(file: string, reason?: TextDocumentSaveReason): void;
  setConfiguration(section: object): void;
  /** Closes everything, and ends without its server, which then is ready for another editor. */
  leave(): Promise<ScriptedServer>;
  /** Ends the server as the protocol requires; resolves with its exit code. */
  quit(): Promise<number | null>;
}

export interface EditorOptions extends ServerOptions {
  readonly files: Readonly<Record<string, string>>;
}

/**
 * @param running a server that was started with the same options, and that an editor has left: its next folder is that of these
 * files. By default a server of its own.
 */
export async function startEditor(
  { files, ...options }: EditorOptions,
  running?: ScriptedServer,
): Promise<ScriptedEditor> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "loomwright-protocol-")));
  const write = (name: string, text: string) => {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  };
  for (const [name, text] of Object.entries(files)) write(name, text);

  const statuses: StatusParams[] = [];
  const pushes: PublishDiagnosticsParams[] = [];
  const asked: string[] = [];
  const logged: string[] = [];
  const waiting = new Set<() => void>();
  let section = options.configuration ?? {};
  const workspaceFolder = { uri: pathToFileURL(folder).href, name: "plans" };
  /** False for the files of an editor that had the server before. */
  const isOurs = (file: string) => file.startsWith(`${workspaceFolder.uri}/`);
  const listener: ServerListener = {
    status(params) {
      if (params.uri && !isOurs(params.uri)) return;
      statuses.push(params);
      for (const look of [...waiting]) look();
    },
    pushed(params) {
      if (isOurs(params.uri)) pushes.push(params);
    },
    logged: (message) => logged.push(message),
    asked(method) {
      asked.push(method);
      for (const look of [...waiting]) look();
    },
    configuration: () => section,
  };
  const server = running ?? (await startServer(options, workspaceFolder, listener));
  const { connection, exited } = server;
  if (running) await running.moveTo(workspaceFolder, listener);

  const documents = new Map<string, TextDocument>();
  const uri = (file: string) => pathToFileURL(join(folder, file)).href;
  const documentOf = (file: string): TextDocument => {
    const document = documents.get(uri(file));
    if (!document) throw new Error(`${file} is not open.`);
    return document;
  };
  const change = (file: string, contentChanges: Parameters<typeof TextDocument.update>[1]): number => {
    const document = documentOf(file);
    const version = document.version + 1;
    documents.set(uri(file), TextDocument.update(document, contentChanges, version));
    void connection.sendNotification("textDocument/didChange", {
      textDocument: { uri: uri(file), version },
      contentChanges,
    });
    return version;
  };
  const waitFor = <T>(find: () => T | undefined, what: () => string): Promise<T> =>
    new Promise((resolve, reject) => {
      const look = () => {
        const found = find();
        if (found === undefined) return;
        waiting.delete(look);
        resolve(found);
      };
      waiting.add(look);
      void exited.then((code) =>
        reject(new Error(`The server ended (${code}) while waiting for ${what()}.`)),
      );
      look();
    });
  return {
    server: server.introduced,
    connection,
    statuses,
    pushes,
    asked,
    logged,
    uri,
    open(file, text = files[file] ?? "") {
      documents.set(uri(file), TextDocument.create(uri(file), "typescript", 1, text));
      void connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri: uri(file), languageId: "typescript", version: 1, text },
      });
    },
    type(file, found, replacement) {
      const document = documentOf(file);
      const start = document.getText().indexOf(found);
      if (start < 0) throw new Error(`${file} does not contain ${JSON.stringify(found)}.`);
      const range = { start: document.positionAt(start), end: document.positionAt(start + found.length) };
      return change(file, [{ range, text: replacement }]);
    },
    retype: (file, text) => change(file, [{ text }]),
    close(file) {
      documents.delete(uri(file));
      void connection.sendNotification("textDocument/didClose", { textDocument: { uri: uri(file) } });
    },
    textOf: (file) => documentOf(file).getText(),
    behind(file, found) {
      const document = documentOf(file);
      const start = document.getText().indexOf(found);
      if (start < 0) throw new Error(`${file} does not contain ${JSON.stringify(found)}.`);
      return document.positionAt(start + found.length);
    },
    pushed: (file) => pushes.findLast((push) => push.uri === uri(file))?.diagnostics,
    until(file, ...states) {
      const version = () => documents.get(uri(file))?.version;
      return waitFor(
        () =>
          statuses.findLast(
            ({ state, versions }) => states.includes(state) && versions?.[uri(file)] === version(),
          ),
        () => `${states.join(" or ")} at version ${version()} of ${file}`,
      );
    },
    async asks(method) {
      const before = asked.length;
      await waitFor(
        () => (asked.slice(before).includes(method) ? true : undefined),
        () => method,
      );
    },
    request(method, params) {
      // From then on, the server checks all plans of its folders.
      if (method === "loomwright/checkWorkspace") server.isAsStarted = false;
      return connection.sendRequest(method, params);
    },
    ask: (method, file, more = {}) =>
      connection.sendRequest(method, { textDocument: { uri: uri(file) }, ...more }),
    apply(action) {
      for (const edit of (action.edit?.documentChanges ?? []) as TextDocumentEdit[]) {
        const document = documents.get(edit.textDocument.uri);
        if (document?.version !== edit.textDocument.version) {
          throw new Error(`An edit for version ${edit.textDocument.version} of ${edit.textDocument.uri}.`);
        }
        const text = TextDocument.applyEdits(document, edit.edits as never);
        const version = document.version + 1;
        documents.set(document.uri, TextDocument.create(document.uri, "typescript", version, text));
        void connection.sendNotification("textDocument/didChange", {
          textDocument: { uri: document.uri, version },
          contentChanges: [{ text }],
        });
      }
    },
    onDisk(changed) {
      const changes = Object.entries(changed).map(([name, text]) => {
        const known = existsSync(join(folder, name));
        if (text === undefined) rmSync(join(folder, name));
        else write(name, text);
        const type =
          text === undefined
            ? FileChangeType.Deleted
            : known
              ? FileChangeType.Changed
              : FileChangeType.Created;
        return { uri: uri(name), type };
      });
      void connection.sendNotification("workspace/didChangeWatchedFiles", { changes });
    },
    onDiskUnheard(changed) {
      for (const [name, text] of Object.entries(changed)) write(name, text);
    },
    save(file, reason = TextDocumentSaveReason.Manual) {
      const textDocument = { uri: uri(file) };
      void connection.sendNotification("textDocument/willSave", { textDocument, reason });
      void connection.sendNotification("textDocument/didSave", { textDocument });
    },
    setConfiguration(next) {
      section = next;
      server.isAsStarted = false;
      void connection.sendNotification("workspace/didChangeConfiguration", { settings: null });
    },
    async leave() {
      for (const open of documents.keys())
        await connection.sendNotification("textDocument/didClose", { textDocument: { uri: open } });
      rmSync(folder, { recursive: true, force: true });
      return server;
    },
    async quit() {
      const code = await server.quit();
      rmSync(folder, { recursive: true, force: true });
      return code;
    },
  };
}
