import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { StreamMessageReader, StreamMessageWriter } from "vscode-languageserver/node";

/**
 * Every request with every parameter left out or of another kind, written to the built server as raw messages: the answer is
 * InvalidParams and names the parameter. Notifications of the same kinds affect no other message.
 */
const uri = "file:///camper/plan.ts";
const text =
  'import { circuit } from "loomwright";\ncircuit({ load: 40, oneWayFt: 15, gauge: 4, protect: 50 });\n';
const textDocument = { uri };
const position = { line: 1, character: 12 };
const range = { start: { line: 0, character: 0 }, end: { line: 1, character: 20 } };

const requests: Readonly<Record<string, Params>> = {
  "textDocument/hover": { textDocument, position },
  "textDocument/completion": { textDocument, position },
  "textDocument/codeAction": {
    textDocument,
    range,
    context: { diagnostics: [], only: ["quickfix"], triggerKind: 1 },
  },
  "textDocument/documentSymbol": { textDocument },
  "textDocument/codeLens": { textDocument },
  "textDocument/inlayHint": { textDocument, range },
  "textDocument/diagnostic": { textDocument, previousResultId: "1" },
  "loomwright/working": { textDocument, position },
  "loomwright/diagram": { textDocument, view: "wiring", scenario: "Night" },
  "loomwright/energy": { textDocument, period: "winter", bank: 0, month: 3, move: { lever: "1", value: 2 } },
  "loomwright/moveLever": {
    textDocument,
    versions: [{ uri, version: 1 }],
    move: { lever: "1", value: 2 },
  },
  "loomwright/boards": { textDocument, conductors: true },
  "loomwright/placeParts": {
    textDocument,
    tried: {
      versions: [{ uri, version: 1 }],
      places: [{ record: 0, on: 1, left: 120, top: 80, turnedDeg: 0 }],
    },
  },
  "loomwright/arrangement": { textDocument, versions: [{ uri, version: 1 }], on: 1, workDoneToken: "places" },
  // For a plan that does not exist: no file is written.
  "loomwright/report": {
    textDocument: { uri: "file:///camper/none.ts" },
    path: "/none/report.html",
    page: "A4",
    revision: "commit",
    force: false,
  },
  "loomwright/document": {
    textDocument: { uri: "file:///camper/none.ts" },
    document: "drawing",
    path: "/none/drawing.svg",
    view: "wiring",
    scenario: "Night",
    page: "A4",
    revision: "commit",
    force: false,
  },
  "loomwright/difference": { textDocument },
};
const mayBeLeftOut = new Set([
  ...["previousResultId", "scenario", "revision", "only", "triggerKind"],
  ...["period", "bank", "month", "move", "conductors", "workDoneToken"],
]);
/** A wiring diagram on a sheet of its own size is the usual drawing. */
const usualOfDrawing = new Set(["view", "page"]);

const notifications: Readonly<Record<string, Params>> = {
  "textDocument/didOpen": {
    textDocument: { uri: "file:///camper/other.ts", languageId: "typescript", version: 1, text },
  },
  "textDocument/didChange": {
    textDocument: { uri: "file:///camper/changed.ts", version: 2 },
    contentChanges: [{ range, text: "x" }],
  },
  "textDocument/didClose": { textDocument: { uri: "file:///camper/unknown.ts" } },
  "textDocument/didSave": { textDocument: { uri: "file:///camper/unknown.ts" } },
  "workspace/didChangeWatchedFiles": { changes: [{ uri: "file:///camper/unknown.ts", type: 1 }] },
  "workspace/didChangeWorkspaceFolders": {
    event: { added: [{ uri: "file:///boat", name: "boat" }], removed: [] },
  },
  "workspace/didChangeConfiguration": { settings: { loomwright: { inlayHints: true } } },
  "$/cancelRequest": { id: 99_999 },
};

const values = [null, 5, -1, 1.5, 1e308, 2 ** 40, "text", "", "file:///a\0b", true, [], [[]], {}, { uri: 5 }];

let server: Server;
beforeAll(async () => {
  server = await startServer();
});
beforeEach(() => {
  server.notify("textDocument/didOpen", {
    textDocument: { uri, languageId: "typescript", version: 1, text },
  });
});
afterAll(async () => {
  expect(await server.quit()).toBe(0);
  expect(server.standardError()).toBe("");
  expect(server.log.filter((line) => /^\s+at /m.test(line))).toEqual([]);
});

test.each(Object.keys(requests))("%s: what is missing or of another kind is named", async (method) => {
  const sound = requests[method]!;
  expect(serious(await server.ask(method, sound))).toBeUndefined();
  for (const { params, path, isLegal } of malformedShapes(sound)) {
    const answer = await server.ask(method, params);
    const shown = `${method} ${JSON.stringify(params)}`;
    expect(serious(answer), shown).toBeUndefined();
    const isUsual =
      method === "loomwright/document" && !(path[0]! in (params as Params)) && usualOfDrawing.has(path[0]!);
    if (isLegal || isUsual) continue;
    expect(answer.error?.code, shown).toBe(-32602);
    if (path.length > 0) expect(answer.error!.message, shown).toContain(path[0]);
  }
});

test.each([
  ["textDocument/inlayHint", "range", { textDocument, range: { start: range.end, end: range.start } }],
  ["textDocument/hover", "position.line", { textDocument, position: { line: 2 ** 31, character: 0 } }],
  ["textDocument/hover", "textDocument.uri", { textDocument: { uri: "plan.ts" }, position }],
  ["loomwright/report", "path", { textDocument, path: "report.html", page: "A4", force: false }],
  ["loomwright/report", "path", { textDocument, path: "/tmp/a\0.html", page: "A4", force: false }],
  ["loomwright/report", "page", { textDocument, path: "/tmp/a.html", page: "A5", force: false }],
  ["loomwright/document", "document", { textDocument, document: "poem", force: false }],
  ["loomwright/document", "path", { textDocument, document: "lists", path: "lists", force: false }],
  ["loomwright/energy", "bank", { textDocument, bank: -1 }],
  ["loomwright/energy", "least", { textDocument, least: "yes" }],
  ["loomwright/energy", "move", { textDocument, move: { lever: "1", value: "2" } }],
  ["loomwright/diagram", "view", { textDocument, view: "round" }],
])("%s refuses a value of %s that means nothing", async (method, name, params) => {
  const { error } = await server.ask(method, params);
  expect(error?.code).toBe(-32602);
  expect(error?.message).toContain(name);
});

test("parameters that are no object are refused, whatever the method", async () => {
  for (const method of Object.keys(requests)) {
    for (const params of [undefined, null, 5, "text", true, [], [{}], [requests[method], 5]]) {
      expect((await server.ask(method, params)).error?.code, `${method} ${JSON.stringify(params)}`).toBe(
        -32602,
      );
    }
  }
});

describe("notifications", () => {
  test.each(Object.keys(notifications))("%s: whatever comes, the server goes on", async (method) => {
    const sound = notifications[method]!;
    for (const params of [undefined, null, 5, "text", [], [sound]]) server.notify(method, params);
    for (const { params } of malformedShapes(sound)) {
      server.notify("textDocument/didOpen", {
        textDocument: { uri: "file:///camper/changed.ts", languageId: "typescript", version: 1, text },
      });
      server.notify(method, params);
    }
    const { result, error } = await server.ask("textDocument/hover", { textDocument, position });
    expect(error).toBeUndefined();
    expect(JSON.stringify(result)).toContain("40 A");
  });

  test("a change that cannot be applied closes its document, and opening it again mends everything", async () => {
    const symbols = () => server.ask("textDocument/documentSymbol", { textDocument });
    expect((await symbols()).result).toHaveLength(1);
    server.notify("textDocument/didChange", {
      textDocument: { uri, version: 2 },
      contentChanges: [{ range: { start: { line: -1, character: 0 }, end: range.end }, text: "" }],
    });
    expect((await symbols()).result).toEqual([]);
    expect(server.log.join("\n")).toContain(`${uri} counts as closed`);
    server.notify("textDocument/didOpen", {
      textDocument: { uri, languageId: "typescript", version: 3, text },
    });
    expect((await symbols()).result).toHaveLength(1);
  });

  test("a range beyond the text means its end", async () => {
    const end = { line: 2 ** 31 - 1, character: 2 ** 31 - 1 };
    server.notify("textDocument/didChange", {
      textDocument: { uri, version: 2 },
      contentChanges: [
        { range: { start: end, end }, text: "circuit({ load: 4, oneWayFt: 15, gauge: 4, protect: 50 });\n" },
      ],
    });
    const { result } = await server.ask("textDocument/documentSymbol", { textDocument });
    expect(result).toHaveLength(2);
  });
});

test("a handshake without capabilities is refused, and the next one may be right", async () => {
  const other = await startServer({ handshake: false });
  for (const params of [undefined, null, {}, { capabilities: null }, { capabilities: 5 }, []]) {
    expect((await other.ask("initialize", params)).error?.code).toBe(-32602);
  }
  const answer = await other.ask("initialize", { processId: null, rootUri: null, capabilities: {} });
  expect(answer.result).toMatchObject({ serverInfo: { name: "loomwright" } });
  expect(await other.quit()).toBe(0);
  expect(other.standardError()).toBe("");
});

type Params = Readonly<Record<string, unknown>>;

interface Shape {
  readonly params: unknown;
  readonly path: readonly string[];
  /** The value is of the same kind as the one before it: only its meaning may be wrong. */
  readonly isLegal: boolean;
}

/** The protocol takes a text or a number. */
function isToken(path: readonly string[], value: unknown): boolean {
  return path.at(-1) === "workDoneToken" && ["string", "number"].includes(typeof value);
}

function* malformedShapes(sound: Params): Generator<Shape> {
  for (const path of pathsIn(sound)) {
    yield { params: withValue(sound, path), path, isLegal: mayBeLeftOut.has(path.at(-1)!) };
    const before = valueAt(sound, path);
    for (const value of values) {
      const isLegal =
        kindOf(value) === kindOf(before) && !(kindOf(value) === "object" || kindOf(value) === "list");
      yield {
        params: withValue(sound, path, value),
        path,
        isLegal: isLegal || isFreeList(path, value) || isToken(path, value),
      };
    }
  }
}

/** A list of diagnostics is the editor's own, and is not read. */
function isFreeList(path: readonly string[], value: unknown): boolean {
  return (
    Array.isArray(value) && (path.at(-1) === "diagnostics" || (path.at(-1) === "only" && value.length === 0))
  );
}

function pathsIn(value: unknown, path: readonly string[] = []): string[][] {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => [[...path, key], ...pathsIn(inner, [...path, key])]);
}

function valueAt(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((inner, key) => (inner as Params)[key], value);
}

/** Without the third argument, the property is left out. */
function withValue(value: Params, [key, ...rest]: readonly string[], ...given: [] | [unknown]): unknown {
  if (rest.length > 0) return { ...value, [key!]: withValue(value[key!] as Params, rest, ...given) };
  const { [key!]: _, ...others } = value;
  return given.length === 0 ? others : { ...others, [key!]: given[0] };
}

function kindOf(value: unknown): string {
  if (value === null) return "none";
  if (Array.isArray(value)) return "list";
  return typeof value;
}

/** An error that no client can handle. */
function serious({ error }: Answer): Answer["error"] {
  return error && [-32603, -32803, -32601].includes(error.code) ? error : undefined;
}

interface Answer {
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

interface Server {
  readonly log: readonly string[];
  ask(method: string, params: unknown): Promise<Answer>;
  notify(method: string, params: unknown): void;
  standardError(): string;
  quit(): Promise<number | null>;
}

const builtServer = fileURLToPath(new URL("../../server/dist/language-server.cjs", import.meta.url));

/** Sends raw messages: a client library would refuse to send most of these. */
async function startServer({ handshake = true } = {}): Promise<Server> {
  const child = spawn(process.execPath, [builtServer, "--stdio"], { stdio: ["pipe", "pipe", "pipe"] });
  const exited = new Promise<number | null>((resolve) => child.once("exit", resolve));
  const writer = new StreamMessageWriter(child.stdin);
  const waiting = new Map<number, (answer: Answer) => void>();
  const log: string[] = [];
  let standardError = "";
  child.stderr.on("data", (chunk) => {
    standardError += chunk;
  });
  new StreamMessageReader(child.stdout).listen((message) => {
    const { id, method, params } = message as { id?: number; method?: string; params?: { message?: string } };
    if (method === undefined) waiting.get(id!)?.(message as Answer);
    else if (method === "window/logMessage") log.push(params?.message ?? "");
    else if (id !== undefined) void writer.write({ jsonrpc: "2.0", id, result: null } as never);
  });
  const notify = (method: string, params: unknown) =>
    void writer.write({ jsonrpc: "2.0", method, params } as never);
  let ids = 0;
  const ask = (method: string, params: unknown): Promise<Answer> =>
    new Promise((resolve) => {
      ids++;
      waiting.set(ids, resolve);
      void writer.write({ jsonrpc: "2.0", id: ids, method, params } as never);
    });
  if (handshake) {
    const folders = { workspaceFolders: [{ uri: "file:///camper", name: "camper" }], rootUri: null };
    const capabilities = { workspace: { workspaceFolders: true }, textDocument: { diagnostic: {} } };
    await ask("initialize", { processId: null, ...folders, capabilities });
    notify("initialized", {});
  }
  return {
    log,
    ask,
    notify,
    standardError: () => standardError,
    async quit() {
      await ask("shutdown", undefined);
      notify("exit", undefined);
      return exited;
    },
  };
}
