import { describe, expect, test } from "vitest";
import type {
  Message,
  NotificationMessage,
  RequestMessage,
  ResponseMessage,
} from "vscode-languageserver/node";
import {
  atRestMethod,
  type Duty,
  dutyMethod,
  elsewhereMethod,
  quickMethod,
  type WorkingOn,
  workingOnMethod,
} from "../engine-messages.ts";
import { checkWorkspaceMethod, reportMethod, type StatusParams, statusMethod } from "../language/messages.ts";
import type { EngineEvents } from "./engine-thread.ts";
import { createFront } from "./front.ts";

const van = "file:///plans/van.ts";
const boat = "file:///plans/boat.ts";

/** Engines controlled by the test. */
interface FakeEngine {
  readonly number: number;
  readonly heard: (RequestMessage & NotificationMessage & ResponseMessage)[];
  ended: boolean;
  say(method: string, params?: object): void;
  ask(id: number, method: string, params: object): void;
  answer(id: string | number, result: unknown): void;
  die(): void;
  duty(): Duty;
}

const spareAfterMs = 10;

function setUp() {
  const engines: FakeEngine[] = [];
  const editor: (RequestMessage & NotificationMessage & ResponseMessage)[] = [];
  const exits: number[] = [];
  const front = createFront({
    toEditor: (message) => editor.push(message as never),
    exit: (code) => exits.push(code),
    whenGone: () => undefined,
    limitsMs: { foreground: 500, background: 30_000 },
    spareAfterMs,
    startThread(number, { received, ended }: EngineEvents) {
      const heard: FakeEngine["heard"] = [];
      const engine: FakeEngine = {
        number,
        heard,
        ended: false,
        say: (method, params = {}) => received({ jsonrpc: "2.0", method, params } as Message),
        ask: (id, method, params) => received({ jsonrpc: "2.0", id, method, params } as Message),
        answer: (id, result) => received({ jsonrpc: "2.0", id, result } as Message),
        die: () => ended("it ran out of memory"),
        duty: () => heard.findLast(({ method }) => method === dutyMethod)?.params as never as Duty,
      };
      engines.push(engine);
      return {
        send: (message) => heard.push(message as never),
        end() {
          engine.ended = true;
        },
      };
    },
  });
  const send = (message: object) => front.receive({ jsonrpc: "2.0", ...message } as Message);
  send({ id: 0, method: "initialize", params: { processId: null, rootUri: null, capabilities: {} } });
  send({ method: "initialized", params: {} });
  for (const uri of [van, boat]) {
    send({
      method: "textDocument/didOpen",
      params: { textDocument: { uri, languageId: "typescript", version: 1, text: "old" } },
    });
  }
  const worksOn = (root: string, openUris = [root]): WorkingOn => ({
    root,
    openUris,
    texts: [{ uri: root, sha256: "1" }],
  });
  return {
    ...{ engines, editor, exits, front, send, worksOn },
    hover: (id: number, uri: string) =>
      send({ id, method: "textDocument/hover", params: { textDocument: { uri } } }),
    answered: (id: number) => editor.find((message) => message.id === id && message.method === undefined),
    asked: (engine: FakeEngine | undefined) =>
      engine?.heard.flatMap(({ id, method }) => (typeof id === "number" && method ? [id] : [])) ?? [],
  };
}

describe("front", () => {
  test("answers the handshake itself, and hands the editor's state to the engine", () => {
    const { engines, answered } = setUp();
    expect(answered(0)?.result).toMatchObject({ serverInfo: { name: "loomwright" } });
    expect(engines[0]!.heard.map(({ method }) => method)).toEqual([
      dutyMethod,
      "initialize",
      "initialized",
      "textDocument/didOpen",
      "textDocument/didOpen",
    ]);
  });

  test("refuses what comes before the handshake and after the shutdown", () => {
    const { send, answered, exits, engines } = setUp();
    send({ id: 1, method: "shutdown" });
    expect(answered(1)).toMatchObject({ result: null });
    expect(engines[0]!.ended).toBe(true);
    send({ id: 2, method: "textDocument/hover", params: { textDocument: { uri: van } } });
    expect(answered(2)?.error?.code).toBe(-32600);
    send({ method: "exit" });
    expect(exits).toEqual([0]);
  });

  test("an engine that ends is followed by one that knows all texts as they are now; what it was asked is asked again", () => {
    const { engines, send, hover, worksOn, asked, answered } = setUp();
    const textDocument = { uri: boat, version: 2 };
    send({ method: "textDocument/didChange", params: { textDocument, contentChanges: [{ text: "new" }] } });
    hover(7, boat);
    engines[0]!.say(workingOnMethod, worksOn(van));
    engines[0]!.die();
    const next = engines[1]!;
    const opened = next.heard.filter(({ method }) => method === "textDocument/didOpen");
    expect(opened.map(({ params }) => (params as { textDocument: object }).textDocument)).toMatchObject([
      { uri: van, version: 1, text: "old" },
      { uri: boat, version: 2, text: "new" },
    ]);
    expect(asked(next)).toEqual([7]);
    next.answer(7, { contents: "boat" });
    expect(answered(7)?.result).toEqual({ contents: "boat" });
  });

  test("a spare engine starts some time after the first is at rest, and the next one at once", async () => {
    const { engines, worksOn } = setUp();
    engines[0]!.say(atRestMethod);
    expect(engines).toHaveLength(1);
    await expect.poll(() => engines.length).toBe(2);
    engines[0]!.say(atRestMethod);
    engines[0]!.say(workingOnMethod, worksOn(van));
    engines[0]!.die();
    expect(engines).toHaveLength(2);
    engines[1]!.say(atRestMethod);
    // One for the slow plan, and a spare one.
    expect(engines).toHaveLength(4);
  });

  test("the plan that held up the foreground becomes the background's, and so do the questions about it", () => {
    const { engines, hover, worksOn, asked, answered } = setUp();
    engines[0]!.say(workingOnMethod, worksOn(van));
    hover(7, van);
    hover(8, boat);
    engines[0]!.die();
    const [, foreground, background] = engines;
    expect(foreground!.duty()).toMatchObject({ role: "foreground", slow: [van] });
    expect(background!.duty()).toMatchObject({ role: "background", slow: [van] });
    expect(asked(foreground)).toEqual([8]);
    expect(asked(background)).toEqual([7]);
    hover(9, van);
    expect(asked(background)).toEqual([7, 9]);
    // A late answer of the ended engine is not for the editor.
    engines[0]!.answer(7, "late");
    expect(answered(7)).toBeUndefined();
  });

  test("a plan that held up the background too is given up, and questions about it are answered as cancelled", () => {
    const { engines, hover, worksOn, answered } = setUp();
    engines[0]!.say(workingOnMethod, worksOn(van));
    engines[0]!.die();
    hover(7, van);
    engines[2]!.say(workingOnMethod, worksOn(van));
    engines[2]!.die();
    expect(answered(7)?.error).toMatchObject({ code: -32802 });
    const next = engines[3]!;
    expect(next.duty()).toMatchObject({ role: "background", slow: [van], givenUp: [{ root: van }] });
    expect(engines[1]!.ended).toBe(false);
  });

  test("a plan that is quick again goes back once the foreground engine shows it, and only once", () => {
    const { engines, worksOn } = setUp();
    engines[0]!.say(workingOnMethod, worksOn(van));
    engines[0]!.die();
    engines[1]!.say(atRestMethod);
    const [, foreground, background] = engines;
    background!.say(quickMethod, { root: van });
    expect(foreground!.duty().slow).toEqual([]);
    expect(background!.duty().slow).toEqual([van]);
    foreground!.say(statusMethod, { uri: van, state: "idle", message: "" } satisfies StatusParams);
    expect(background!.duty().slow).toEqual([]);
    foreground!.say(workingOnMethod, worksOn(van));
    foreground!.die();
    background!.say(quickMethod, { root: van });
    expect(engines.at(-1)!.duty()).toMatchObject({ role: "foreground", slow: [van] });
  });

  test("an engine that lets go of a plan does not clear away what the other shows of it", () => {
    const { engines, worksOn, editor } = setUp();
    engines[0]!.say(workingOnMethod, worksOn(van));
    engines[0]!.die();
    engines[1]!.say(atRestMethod);
    const [, foreground, background] = engines;
    const push = (engine: FakeEngine, diagnostics: object[]) =>
      engine.say("textDocument/publishDiagnostics", { uri: van, diagnostics });
    push(background!, [{ message: "thin" }]);
    push(foreground!, [{ message: "thin" }]);
    push(background!, []);
    background!.say(statusMethod, { uri: van, state: "idle", message: "" });
    foreground!.say(statusMethod, { uri: van, state: "idle", message: "" });
    background!.say(statusMethod, { uri: van, state: "gone", message: "" });
    const pushes = editor.filter(({ method }) => method === "textDocument/publishDiagnostics");
    expect(pushes.at(-1)?.params).toMatchObject({ diagnostics: [{ message: "thin" }] });
    const statuses = editor.filter(({ method }) => method === statusMethod);
    expect(statuses.at(-1)?.params).toMatchObject({ state: "idle" });
    push(foreground!, []);
    expect(editor.at(-1)?.params).toMatchObject({ uri: van, diagnostics: [] });
  });

  test("what an ended engine has left behind goes when the next one has looked at everything", () => {
    const { engines, editor } = setUp();
    for (const uri of [van, boat]) {
      engines[0]!.say("textDocument/publishDiagnostics", { uri, diagnostics: [{ message: "thin" }] });
    }
    engines[0]!.die();
    engines[1]!.say("textDocument/publishDiagnostics", { uri: boat, diagnostics: [{ message: "thin" }] });
    const before = editor.length;
    engines[1]!.say(atRestMethod);
    expect(editor.slice(before)).toMatchObject([{ params: { uri: van, diagnostics: [] } }]);
  });

  test("documents are made in the background; the whole workspace is both engines' together", () => {
    const { engines, editor, send, answered, asked } = setUp();
    send({ id: 5, method: reportMethod, params: { textDocument: { uri: van } } });
    const [foreground, background] = engines;
    expect(asked(foreground)).toEqual([]);
    expect(asked(background)).toEqual([5]);
    send({ id: 6, method: checkWorkspaceMethod });
    const passedBy = [{ mayHideHazard: true, message: "old.ts is too large" }];
    foreground!.answer(6, { plans: [{ uri: van }], passedBy });
    expect(answered(6)).toBeUndefined();
    background!.answer(6, { plans: [{ uri: boat }], passedBy });
    expect(answered(6)?.result).toEqual({ plans: [{ uri: boat }, { uri: van }], passedBy });
    const logged = editor.filter(({ method }) => method === "window/logMessage");
    expect(logged.map(({ params }) => params)).toEqual([
      { type: 3, message: "Not checked: old.ts is too large" },
    ]);
  });

  test("what an engine asks of the editor comes back to it, and a capability is registered once", () => {
    const { engines, editor, send } = setUp();
    const registrations = [{ id: "1", method: "workspace/didChangeWatchedFiles", registerOptions: {} }];
    engines[0]!.ask(1, "client/registerCapability", { registrations });
    const asked = editor.at(-1)!;
    expect(asked).toMatchObject({ method: "client/registerCapability", params: { registrations } });
    send({ id: asked.id, result: "done" });
    expect(engines[0]!.heard.at(-1)).toMatchObject({ id: 1, result: "done" });
    engines[0]!.die();
    const before = editor.length;
    engines[1]!.ask(1, "client/registerCapability", { registrations });
    expect(editor.length).toBe(before);
    expect(engines[1]!.heard.at(-1)).toMatchObject({ id: 1, result: null });
  });

  test("open files that the foreground engine leaves to the other are asked of the other", () => {
    const { engines, worksOn, hover, asked } = setUp();
    engines[0]!.say(workingOnMethod, worksOn(van));
    engines[0]!.die();
    engines[1]!.say(atRestMethod);
    const [, foreground, background] = engines;
    foreground!.say(elsewhereMethod, { uris: [van, boat] });
    hover(7, boat);
    expect(asked(background)).toEqual([7]);
    foreground!.say(elsewhereMethod, { uris: [] });
    hover(8, van);
    expect(asked(foreground)).toEqual([8]);
  });

  test("an answer counts only from the engine that has the plans of its file by then", () => {
    const { engines, hover, asked, answered } = setUp();
    hover(7, van);
    engines[0]!.say(elsewhereMethod, { uris: [van] });
    engines[0]!.answer(7, "of no plan");
    expect(answered(7)).toBeUndefined();
    expect(asked(engines[1])).toEqual([7]);
    engines[0]!.say(elsewhereMethod, { uris: [] });
    engines[1]!.answer(7, "of no plan any more");
    expect(answered(7)).toBeUndefined();
    engines[0]!.answer(7, "of the van");
    expect(answered(7)?.result).toBe("of the van");
  });

  test("engines that end without end end the server, with a word", () => {
    const { engines, editor, exits } = setUp();
    for (let deaths = 0; exits.length === 0 && deaths < 100; deaths++) engines.at(-1)!.die();
    expect(exits).toEqual([1]);
    expect(editor.at(-1)).toMatchObject({ method: "window/showMessage", params: { type: 1 } });
  });
});
