import {
  ErrorCodes,
  type InitializeParams,
  LSPErrorCodes,
  type Message,
  MessageType,
  type NotificationMessage,
  type RequestMessage,
  type ResponseMessage,
} from "vscode-languageserver/node";
import { type AnswerText, withResultRead } from "../answer-text.ts";
import { initializeResult } from "../client-capabilities.ts";
import { atRestMethod, type Elsewhere, elsewhereMethod } from "../engine-messages.ts";
import {
  checkWorkspaceMethod,
  documentMethod,
  reportMethod,
  type StatusParams,
  statusMethod,
  type WorkspaceCheck,
} from "../language/messages.ts";
import { editorWords } from "../language/plain-words.ts";
import { normalisedUri } from "../normalise-uri.ts";
import { wellFormedMessages } from "../well-formed-messages.ts";
import { createEditorState, handshakeId } from "./editor-state.ts";
import { createEngines, type Engine, type Engines, type EnginesWiring } from "./engines.ts";
import { createOwners } from "./owners.ts";

/**
 * Connects the editor and the engines: passes each message on to the engine that answers for it, and each answer back. It never
 * parses or judges, because it must always be able to answer; the editor does not notice when an engine ends.
 */
export interface Front {
  /** Processes a message of the editor. */
  receive(message: Message): void;
  /** The editor has gone. */
  end(): void;
}

export interface FrontWiring extends Pick<EnginesWiring, "startThread" | "limitsMs" | "spareAfterMs"> {
  /** The results of engines are still text: {@link AnswerText}. */
  toEditor(message: Message): void;
  /** Ends the process. */
  exit(code: number): void;
  /** Calls back when the process with that id, the editor's, no longer exists. */
  whenGone(processId: number, gone: () => void): void;
}

export function createFront({ toEditor, exit, whenGone, ...starting }: FrontWiring): Front {
  const editor = createEditorState();
  /** Unanswered requests of the editor, by their id. */
  const asked = new Map<Id, Asked>();
  /** Requests of engines to the editor, by their id at the editor. */
  const askedOfEditor = new Map<Id, { readonly engine: Engine; readonly id: Id }>();
  /** Open files that the background engine answers for, by the editor's URIs. */
  let elsewhere: ReadonlySet<string> = new Set();
  let registered = new Set<string>();
  let stage: "new" | "running" | "shut down" = "new";
  let asking = 0;

  const log = (message: string, type: MessageType = MessageType.Warning) =>
    notifyEditor("window/logMessage", { type, message });
  const notifyEditor = (method: string, params: object) =>
    toEditor({ jsonrpc: "2.0", method, params } as Message);
  const owners = createOwners(notifyEditor);

  const engines: Engines = createEngines({
    ...starting,
    log,
    replay: () => editor.replay(),
    received: (engine, message) => fromEngine(engine, message),
    replaced(ended, next, role, because) {
      owners.ended(ended);
      for (const [id, { engine }] of askedOfEditor) if (engine === ended) askedOfEditor.delete(id);
      if (role === "foreground" && because) elsewhere = new Set([...elsewhere, ...because.openUris]);
      for (const [id, request] of asked) {
        if (!request.waitsFor.delete(ended)) continue;
        // A request about a plan that was given up is cancelled; any other request goes to the engine that took over.
        if (role === "background" && because?.openUris.includes(fileOf(request.message) ?? ""))
          answer(id, { error: cancelled("The plan took too long.") });
        else for (const engine of again(request.message, next)) put(request, engine);
      }
    },
    hopeless(why) {
      const message = `Loomwright's server stopped: its engine ended again and again, at last because ${why}.`;
      notifyEditor("window/showMessage", { type: MessageType.Error, message: editorWords(message) });
      exit(1);
    },
  });

  const answer = (id: Id, outcome: Outcome) => {
    asked.delete(id);
    toEditor({ jsonrpc: "2.0", id, ...outcome } as ResponseMessage);
  };

  const put = (request: Asked, engine: Engine) => {
    request.waitsFor.add(engine);
    engine.send(request.message);
  };

  const enginesFor = (message: RequestMessage, foreground: Engine): readonly Engine[] => {
    const { method } = message;
    // A check of all plans, or a document, would delay a person who types.
    if (method === checkWorkspaceMethod) return [foreground, engines.startBackground()];
    if (method === reportMethod || method === documentMethod) return [engines.startBackground()];
    const uri = fileOf(message);
    if (uri !== undefined && elsewhere.has(uri)) return [engines.startBackground()];
    return [foreground];
  };

  /** For a request to both engines, the other one already has its part. */
  const again = (message: RequestMessage, next: Engine): readonly Engine[] =>
    message.method === checkWorkspaceMethod ? [next] : enginesFor(message, engines.foreground);

  const request = (message: RequestMessage) => {
    const id = message.id as Id;
    if (message.method === "initialize") {
      if (stage !== "new")
        return answer(id, { error: error(ErrorCodes.InvalidRequest, "Initialized already.") });
      const params = message.params as InitializeParams | undefined;
      if (!params) return answer(id, { error: error(ErrorCodes.InvalidParams, "capabilities are missing.") });
      stage = "running";
      editor.heard(message);
      for (const one of editor.replay()) engines.foreground.send(one);
      if (typeof params.processId === "number") whenGone(params.processId, end);
      return answer(id, { result: initializeResult(params) });
    }
    if (stage === "new")
      return answer(id, { error: error(ErrorCodes.ServerNotInitialized, "Not initialized yet.") });
    if (stage === "shut down")
      return answer(id, { error: error(ErrorCodes.InvalidRequest, "The server is shut down.") });
    if (message.method === "shutdown") {
      stage = "shut down";
      engines.end();
      for (const waiting of asked.keys()) answer(waiting, { error: cancelled("The server is shut down.") });
      return answer(id, { result: null });
    }
    const entry: Asked = { message, waitsFor: new Set(), results: [] };
    asked.set(id, entry);
    for (const engine of enginesFor(message, engines.foreground)) put(entry, engine);
  };

  const notification = (message: NotificationMessage) => {
    if (message.method === "exit") return end();
    if (stage !== "running") return;
    engines.foreground.send(message);
    engines.background?.send(message);
    // Last, because no engine has to wait for it.
    try {
      editor.heard(message);
    } catch (problem) {
      log(`${message.method} could not be applied: ${problem instanceof Error ? problem.message : problem}.`);
    }
  };

  const fromEngine = (engine: Engine, message: Message) => {
    if (isResponse(message)) return answerOf(engine, message);
    if (isRequest(message)) return requestOf(engine, message);
    const { method, params } = message as NotificationMessage;
    switch (method) {
      case elsewhereMethod:
        if (engine === engines.foreground) elsewhere = new Set((params as unknown as Elsewhere).uris);
        return;
      case atRestMethod:
        return owners.atRest(engine, [engines.foreground, engines.background]);
      case "textDocument/publishDiagnostics":
        return owners.findings(engine, params as { uri: string; diagnostics: unknown[] });
      case statusMethod:
        return statusOf(engine, params as unknown as StatusParams);
      default:
        toEditor(message);
    }
  };

  const statusOf = (engine: Engine, status: StatusParams) => {
    // The editor need not know that a further engine is ready.
    if (status.uri === undefined && (engine !== engines.foreground || engine.number > 1)) return;
    if (!owners.status(engine, status) || status.uri === undefined) return;
    const root = normalisedUri(status.uri);
    if (status.state === "gone") engines.forget(root);
    else if (engine === engines.foreground && status.state !== "checking") engines.movedToForeground(root);
  };

  const answerOf = (engine: Engine, message: ResponseMessage | AnswerText) => {
    const { id } = message;
    if (id === handshakeId || id === null) return;
    const request = asked.get(id);
    if (!request?.waitsFor.delete(engine)) return;
    if (request.message.method !== checkWorkspaceMethod) {
      // The plans of the file went to the other engine meanwhile: the answer of this one lacks them.
      const now = enginesFor(request.message, engines.foreground);
      const failed = "error" in message && message.error !== undefined;
      if (!failed && !now.includes(engine)) return now.forEach((other) => void put(request, other));
      asked.delete(id);
      return toEditor(message);
    }
    const { result, error: problem } = withResultRead(message) as ResponseMessage;
    if (problem) return answer(id, { error: problem });
    request.results.push(result);
    if (request.waitsFor.size > 0) return;
    const check = together(request.results);
    for (const { message } of check.passedBy) log(`Not checked: ${message}`, MessageType.Info);
    answer(id, { result: check });
  };

  const requestOf = (engine: Engine, message: RequestMessage) => {
    const { method, params } = message;
    const inEngine = message.id as Id;
    if (method === "client/registerCapability") {
      const { registrations } = params as { registrations: { method: string; registerOptions?: unknown }[] };
      const key = JSON.stringify(registrations.map((one) => [one.method, one.registerOptions]));
      // An engine that took over requests a capability that is already registered.
      if (registered.has(key)) return engine.send({ jsonrpc: "2.0", id: inEngine, result: null } as Message);
      registered = new Set([...registered, key]);
    }
    asking++;
    const id = `engine/${asking}`;
    askedOfEditor.set(id, { engine, id: inEngine });
    toEditor({ ...message, id } as Message);
  };

  const end = () => {
    engines.end();
    exit(stage === "shut down" ? 0 : 1);
  };

  const wellFormed = wellFormedMessages(log);

  const take = (message: Message) => {
    if (isResponse(message)) {
      const question = askedOfEditor.get(message.id as Id);
      askedOfEditor.delete(message.id as Id);
      question?.engine.send({ ...message, id: question.id } as Message);
    } else if (isRequest(message)) request(message);
    else if (typeof (message as NotificationMessage).method === "string")
      notification(message as NotificationMessage);
  };

  return {
    receive: (message) => wellFormed.handleMessage(message, take),
    end,
  };
}

type Id = string | number;

interface Asked {
  readonly message: RequestMessage;
  /** The engines that have not answered yet. */
  readonly waitsFor: Set<Engine>;
  readonly results: unknown[];
}

type Outcome = { readonly result: unknown } | Required<Pick<ResponseMessage, "error">>;

function error(code: number, message: string) {
  return { code, message: editorWords(message) };
}

function cancelled(message: string) {
  return {
    code: LSPErrorCodes.ServerCancelled,
    message: editorWords(message),
    data: { retriggerRequest: false },
  };
}

/** The plans of both engines. One that moved between them meanwhile is in both answers, and the later one counts. */
function together(checks: readonly unknown[]): WorkspaceCheck {
  const plans = (checks as WorkspaceCheck[]).flatMap((check) => check.plans);
  const byUri = new Map(plans.map((plan) => [plan.uri, plan]));
  return {
    ...(checks.at(-1) as WorkspaceCheck),
    plans: [...byUri.values()].sort((a, b) => (a.uri < b.uri ? -1 : 1)),
  };
}

/** The file that a request is about, by the editor's URI; undefined if it is about none. */
function fileOf({ params }: RequestMessage): string | undefined {
  const { textDocument } = (params ?? {}) as { readonly textDocument?: { readonly uri?: unknown } | null };
  return typeof textDocument?.uri === "string" ? textDocument.uri : undefined;
}

function isResponse(message: Message): message is ResponseMessage {
  return "id" in message && !("method" in message);
}

function isRequest(message: Message): message is RequestMessage {
  return "id" in message && "method" in message;
}
