// The three servers that are compared, behind one interface: open a file, then change one character and wait for this version's
// findings. Each is asked for them in its own way, and none is delayed.

import { spawn } from "node:child_process";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";

const house = fileURLToPath(new URL("../..", import.meta.url));

/** Our language server, asked as any editor that pulls diagnostics does. */
export function loomwrightServer(folder) {
  return lspServer(process.execPath, [`${house}server/dist/language-server.cjs`, "--stdio"], folder);
}

/** Native TypeScript 7, through the same protocol. */
export async function nativeTypeScript(folder) {
  const { default: getExePath } = await import(
    pathToFileURL(`${house}node_modules/@typescript/native/lib/getExePath.js`).href
  );
  return lspServer(getExePath(), ["--lsp", "--stdio"], folder);
}

async function lspServer(program, words, folder) {
  const child = spawn(program, words, { cwd: folder, stdio: ["pipe", "pipe", "ignore"] });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  connection.onRequest("client/registerCapability", () => null);
  connection.onRequest("workspace/configuration", ({ items }) => items.map(() => null));
  connection.onRequest("window/workDoneProgress/create", () => null);
  connection.onRequest("workspace/diagnostic/refresh", () => null);
  connection.onRequest("workspace/codeLens/refresh", () => null);
  connection.onRequest("workspace/inlayHint/refresh", () => null);
  connection.listen();
  const rootUri = pathToFileURL(folder).href;
  await connection.sendRequest("initialize", {
    processId: process.pid,
    rootUri,
    workspaceFolders: [{ uri: rootUri, name: "bench" }],
    capabilities: {
      textDocument: {
        diagnostic: { dynamicRegistration: false, relatedDocumentSupport: false },
        synchronization: {},
      },
      workspace: { diagnostics: { refreshSupport: true }, configuration: false },
    },
  });
  connection.sendNotification("initialized", {});
  let version = 0;
  const diagnostics = (uri) => connection.sendRequest("textDocument/diagnostic", { textDocument: { uri } });
  return {
    async open(file, text) {
      const uri = pathToFileURL(file).href;
      version = 1;
      connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "typescript", version, text },
      });
      return (await diagnostics(uri)).items;
    },
    async change(file, range, text) {
      const uri = pathToFileURL(file).href;
      version += 1;
      connection.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ range, text }],
      });
      return (await diagnostics(uri)).items;
    },
    /** Like {@link open} and {@link change}, without waiting for an answer: the whole text at once. */
    openUnasked(file, text) {
      const textDocument = { uri: pathToFileURL(file).href, languageId: "typescript", version: 1, text };
      connection.sendNotification("textDocument/didOpen", { textDocument });
    },
    changeUnasked(file, text) {
      version += 1;
      const textDocument = { uri: pathToFileURL(file).href, version };
      connection.sendNotification("textDocument/didChange", { textDocument, contentChanges: [{ text }] });
    },
    /** At the first occurrence of a word. */
    hover(file, text, word) {
      const before = text.slice(0, text.indexOf(word)).split("\n");
      const position = { line: before.length - 1, character: before.at(-1).length + 1 };
      const textDocument = { uri: pathToFileURL(file).href };
      return connection.sendRequest("textDocument/hover", { textDocument, position });
    },
    complete(file, position) {
      const textDocument = { uri: pathToFileURL(file).href };
      return connection.sendRequest("textDocument/completion", { textDocument, position });
    },
    /** The picture of the plan after a change; only our server has it. */
    async picture(file, range, text, asked) {
      const uri = pathToFileURL(file).href;
      version += 1;
      connection.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ range, text }],
      });
      return connection.sendRequest("loomwright/diagram", { textDocument: { uri }, ...asked });
    },
    close() {
      connection.dispose();
      child.kill();
    },
  };
}

/** TypeScript 6's own server, in its own protocol. */
export async function typescriptServer(folder) {
  const child = spawn(
    process.execPath,
    [
      `${house}node_modules/typescript/lib/tsserver.js`,
      "--disableAutomaticTypingAcquisition",
      "--suppressDiagnosticEvents",
    ],
    { cwd: folder, stdio: ["pipe", "pipe", "ignore"] },
  );
  const waiting = new Map();
  let sequence = 0;
  let received = Buffer.alloc(0);
  child.stdout.on("data", (chunk) => {
    received = Buffer.concat([received, chunk]);
    for (;;) {
      const headEnd = received.indexOf("\r\n\r\n");
      if (headEnd < 0) return;
      const length = Number(/Content-Length: (\d+)/.exec(received.subarray(0, headEnd).toString())[1]);
      if (received.length < headEnd + 4 + length) return;
      const message = JSON.parse(received.subarray(headEnd + 4, headEnd + 4 + length).toString());
      received = received.subarray(headEnd + 4 + length);
      if (message.type === "response") waiting.get(message.request_seq)?.(message);
    }
  });
  const send = (command, args) => {
    sequence += 1;
    child.stdin.write(`${JSON.stringify({ seq: sequence, type: "request", command, arguments: args })}\n`);
    return sequence;
  };
  const ask = (command, args) =>
    new Promise((resolve, reject) => {
      const number = send(command, args);
      waiting.set(number, (message) => {
        waiting.delete(number);
        if (message.success) resolve(message.body);
        else reject(new Error(`${command}: ${message.message}`));
      });
    });
  return {
    async open(file, text) {
      send("open", { file, fileContent: text, scriptKindName: "TS" });
      return ask("semanticDiagnosticsSync", { file });
    },
    async change(file, { start, end }, text) {
      send("change", {
        file,
        line: start.line + 1,
        offset: start.character + 1,
        endLine: end.line + 1,
        endOffset: end.character + 1,
        insertString: text,
      });
      return ask("semanticDiagnosticsSync", { file });
    },
    close() {
      child.kill();
    },
  };
}
