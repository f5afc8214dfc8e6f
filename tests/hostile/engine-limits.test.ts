import { afterEach, expect, test } from "vitest";
import type { Message } from "vscode-languageserver/node";
import { startEngineThread } from "../../server/front/engine-thread.ts";
import { createFront, type Front } from "../../server/front/front.ts";

// The front with real engines, and very short limits: a plan that the parser abandons after two seconds is too much for both.

const engine = new URL("../../server/dist/engine.cjs", import.meta.url);
const slow = (text: string) => `import { circuit } from "loomwright";\n${"async(".repeat(40)}${text}\n`;
const van = "file:///plans/van.ts";
const hostile = "file:///plans/hostile.ts";

let front: Front | undefined;

afterEach(() => {
  front?.end();
  front = undefined;
});

interface Heard {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: { readonly uri?: string; readonly diagnostics?: readonly { readonly message: string }[] };
  readonly result?: unknown;
  readonly error?: { readonly code: number };
}

function start() {
  const heard: Heard[] = [];
  const current = createFront({
    toEditor(message) {
      const { id, method } = message as Heard;
      heard.push(message as Heard);
      if (id !== undefined && method !== undefined)
        current.receive({ jsonrpc: "2.0", id, result: null } as Message);
    },
    exit: () => undefined,
    whenGone: () => undefined,
    limitsMs: { foreground: 300, background: 1_200 },
    spareAfterMs: 0,
    startThread: (number, events) => startEngineThread(engine, number, events),
  });
  front = current;
  const send = (message: object) => current.receive({ jsonrpc: "2.0", ...message } as Message);
  send({ id: 0, method: "initialize", params: { processId: null, rootUri: null, capabilities: {} } });
  send({ method: "initialized", params: {} });
  const open = (uri: string, text: string) =>
    send({
      method: "textDocument/didOpen",
      params: { textDocument: { uri, languageId: "typescript", version: 1, text } },
    });
  const change = (uri: string, version: number, text: string) =>
    send({
      method: "textDocument/didChange",
      params: { textDocument: { uri, version }, contentChanges: [{ text }] },
    });
  const messages = (uri: string) =>
    heard
      .findLast(({ method, params }) => method === "textDocument/publishDiagnostics" && params?.uri === uri)
      ?.params?.diagnostics?.map(({ message }) => message) ?? [];
  const answer = async (id: number) => {
    await expect
      .poll(() => heard.some((one) => one.id === id && one.method === undefined), { timeout: 60_000 })
      .toBe(true);
    return heard.find((one) => one.id === id && one.method === undefined)!;
  };
  return { send, open, change, messages, answer };
}

test("a plan that holds up every engine is given up until its text changes; the plan beside it never waits for it", {
  timeout: 240_000,
}, async () => {
  const { send, open, change, messages, answer } = start();
  const text = `import { circuit } from "loomwright";\ncircuit({ load: 9, oneWayFt: 9, gauge: 18, protect: 30 });\n`;
  open(van, text);
  open(hostile, slow("1"));
  const position = { line: 1, character: 33 };
  const hover = (id: number, uri: string) =>
    send({ id, method: "textDocument/hover", params: { textDocument: { uri }, position } });
  hover(1, van);
  expect((await answer(1)).result).not.toBeNull();
  await expect
    .poll(() => messages(hostile).join(), { timeout: 60_000 })
    .toMatch(/could not be checked: it took more than 1\.2 s/);
  hover(2, hostile);
  await answer(2);
  hover(3, van);
  expect((await answer(3)).result).not.toBeNull();
  expect(messages(van).length).toBeGreaterThan(0);
  // Another text is another attempt.
  change(hostile, 2, text);
  await expect
    .poll(() => messages(hostile).join(), { timeout: 60_000 })
    .toMatch(/^(?!.*could not be checked).+/);
});
