import {
  type Disposable,
  EventEmitter,
  type ExtensionContext,
  type LogOutputChannel,
  window,
  workspace,
} from "vscode";
import type { LanguageClient } from "vscode-languageclient/node";
import type { StatusParams, statusMethod } from "../server/language/messages.ts";
import { editorWords } from "../server/language/plain-words.ts";
import { createRestartPolicy } from "./restart-policy.ts";
import { linkToRulePages } from "./rule-page.ts";
import { type ServerProcess, startServerProcess } from "./server-process.ts";

/** The one server of this window, and the client that talks to it. */
export interface ServerSession extends Disposable {
  /**
   * The running client; starts it if need be. Undefined if the server cannot be started, which has been reported to the person.
   */
  client(): Promise<LanguageClient | undefined>;
  /** Ends the server and starts a fresh one, even after it ended too often for automatic restarts. */
  restart(): Promise<void>;
  readonly onStatus: (listener: (status: StatusParams) => void) => Disposable;
  /** Fires with true when the server runs, with false when it ended and was not started again. */
  readonly onRunning: (listener: (running: boolean) => void) => Disposable;
}

export function createServerSession(context: ExtensionContext, log: LogOutputChannel): ServerSession {
  const statuses = new EventEmitter<StatusParams>();
  const runnings = new EventEmitter<boolean>();
  const policy = createRestartPolicy(Date.now);
  let current: LanguageClient | undefined;
  let server: ServerProcess | undefined;
  let started: Promise<LanguageClient | undefined> | undefined;

  async function start(): Promise<LanguageClient | undefined> {
    await stop();
    // A server that dies early both closes the connection and fails the start; it must be handled once.
    let dealtWith = false;
    let client: LanguageClient | undefined;
    const ended = (why: string): Promise<LanguageClient | undefined> => {
      if (dealtWith || client !== current) return Promise.resolve(undefined);
      dealtWith = true;
      return startAgain(why);
    };
    try {
      client = await createClient(() => void ended(server?.ended() ?? "the connection was closed"));
      current = client;
      client.onNotification("loomwright/status" satisfies typeof statusMethod, (status: StatusParams) =>
        statuses.fire(status),
      );
      await client.start();
      return client;
    } catch (error) {
      return ended(server?.ended() ?? String(error));
    }
  }

  function startAgain(why: string): Promise<LanguageClient | undefined> {
    if (!policy.mayRestart()) {
      giveUp(why);
      return Promise.resolve(undefined);
    }
    log.warn(`The server stopped (${why}) and is started again.`);
    started = start();
    return started;
  }

  async function createClient(closed: () => void): Promise<LanguageClient> {
    // Loaded only now: it is most of the extension's code.
    const { CloseAction, ErrorAction, IPCMessageReader, IPCMessageWriter, LanguageClient, State } =
      await import("vscode-languageclient/node");
    const client = new LanguageClient(
      "loomwright",
      "Loomwright",
      async () => {
        server = startServerProcess(context.asAbsolutePath("dist/language-server.cjs"), (line) =>
          log.info(line),
        );
        return { reader: new IPCMessageReader(server.child), writer: new IPCMessageWriter(server.child) };
      },
      {
        documentSelector: ["typescript", "javascript"].flatMap((language) => [
          { scheme: "file", language },
          { scheme: "untitled", language },
        ]),
        outputChannel: log,
        initializationOptions: () => workspace.getConfiguration("loomwright"),
        middleware: linkToRulePages,
        // Restarts and messages to the person are decided here, not by the client.
        initializationFailedHandler: () => false,
        errorHandler: {
          error: () => ({ action: ErrorAction.Continue, handled: true }),
          closed() {
            closed();
            return { action: CloseAction.DoNotRestart, handled: true, message: "The server has stopped." };
          },
        },
      },
    );
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running) runnings.fire(true);
    });
    return client;
  }

  /** Shows the reason, the log and the way out. The next command that needs the server tries again. */
  function giveUp(why: string): void {
    started = undefined;
    runnings.fire(false);
    const message = `Loomwright's server stopped and was not started again, so no plan is being checked: ${why}.`;
    log.error(message);
    const restartIt = "Restart the Server";
    const showLog = "Show the Log";
    window.showErrorMessage(editorWords(message), restartIt, showLog).then((choice) => {
      if (choice === restartIt) void session.restart();
      if (choice === showLog) log.show();
    });
  }

  async function stop(): Promise<void> {
    const [client, process] = [current, server];
    current = undefined;
    server = undefined;
    await client?.dispose(2_000).catch((error: unknown) => log.warn(`While stopping: ${error}`));
    // It did not answer the request to end.
    if (process && process.ended() === undefined) process.child.kill();
  }

  const session: ServerSession = {
    client() {
      started ??= start();
      return started;
    },
    async restart() {
      await started;
      started = start();
      await started;
    },
    onStatus: statuses.event,
    onRunning: runnings.event,
    async dispose() {
      await stop();
      statuses.dispose();
      runnings.dispose();
    },
  };
  return session;
}
