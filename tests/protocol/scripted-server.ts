import { type ChildProcess, fork, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import {
  type ClientCapabilities,
  createProtocolConnection,
  type InitializeResult,
  IPCMessageReader,
  IPCMessageWriter,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
  type WorkspaceFolder,
} from "vscode-languageserver/node";
import { type StatusParams, statusMethod } from "../../server/language/messages.ts";
import { pushing } from "./capabilities.mjs";

/** The built server as a child process, for one scripted editor after another: each has a folder of its own. */
export interface ScriptedServer {
  readonly introduced: InitializeResult;
  readonly connection: ProtocolConnection;
  /** Resolves with its exit code. */
  readonly exited: Promise<number | null>;
  /** False once an editor has changed its settings or duties: it is then no server for another editor. */
  isAsStarted: boolean;
  /** Another folder takes the place of the present one, and another editor gets the messages. */
  moveTo(folder: WorkspaceFolder, listener: ServerListener): Promise<void>;
  /** Ends it as the protocol requires; resolves with its exit code. */
  quit(): Promise<number | null>;
}

/** The editor's end of a server. */
export interface ServerListener {
  status(params: StatusParams): void;
  pushed(params: PublishDiagnosticsParams): void;
  logged(message: string): void;
  /** A request of the server, by its method. */
  asked(method: string): void;
  /** The settings for which the server asks. */
  configuration(): object;
}

export interface ServerOptions {
  readonly capabilities?: ClientCapabilities;
  readonly initializationOptions?: object;
  readonly configuration?: object;
  readonly transport?: "stdio" | "node-ipc";
}

export async function startServer(
  { capabilities = pushing, initializationOptions, transport = "stdio" }: ServerOptions,
  firstFolder: WorkspaceFolder,
  firstListener: ServerListener,
): Promise<ScriptedServer> {
  const { child, connection } = spawnServer(transport);
  const exited = new Promise<number | null>((resolve) => child.once("exit", (code) => resolve(code)));
  let folder = firstFolder;
  let listener = firstListener;

  connection.onNotification(statusMethod, (params: StatusParams) => listener.status(params));
  connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) =>
    listener.pushed(params),
  );
  connection.onNotification("window/logMessage", ({ message }: { message: string }) =>
    listener.logged(message),
  );
  for (const method of requestsOfServers) {
    connection.onRequest(method, (params: unknown) => {
      listener.asked(method);
      if (method !== "workspace/configuration") return null;
      return (params as { items: unknown[] }).items.map(() => listener.configuration());
    });
  }
  connection.listen();

  const introduced = await connection.sendRequest<InitializeResult>("initialize", {
    processId: process.pid,
    rootUri: folder.uri,
    workspaceFolders: [folder],
    capabilities,
    initializationOptions,
  });
  await connection.sendNotification("initialized", {});
  return {
    introduced,
    connection,
    exited,
    isAsStarted: true,
    async moveTo(next, nextListener) {
      listener = nextListener;
      const event = { added: [next], removed: [folder] };
      folder = next;
      await connection.sendNotification("workspace/didChangeWorkspaceFolders", { event });
    },
    async quit() {
      await connection.sendRequest("shutdown");
      void connection.sendNotification("exit");
      const code = await exited;
      connection.dispose();
      return code;
    },
  };
}

const requestsOfServers = [
  "client/registerCapability",
  "workspace/configuration",
  "workspace/diagnostic/refresh",
  "workspace/inlayHint/refresh",
  "workspace/codeLens/refresh",
];

const builtServer = fileURLToPath(new URL("../../server/dist/language-server.cjs", import.meta.url));

function spawnServer(transport: "stdio" | "node-ipc"): {
  child: ChildProcess;
  connection: ProtocolConnection;
} {
  if (!existsSync(builtServer)) throw new Error("The server is not built: run `npm run build` first.");
  if (transport === "node-ipc") {
    const child = fork(builtServer, ["--node-ipc"], { silent: true, execArgv: [] });
    return {
      child,
      connection: createProtocolConnection(new IPCMessageReader(child), new IPCMessageWriter(child)),
    };
  }
  const child = spawn(process.execPath, [builtServer, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
  return {
    child,
    connection: createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    ),
  };
}
