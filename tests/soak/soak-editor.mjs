// A small editor for the soak. It starts the built server, uses the protocol over standard input and output, and depends on no
// other part of it. It counts every request, and lists as trouble everything that a sound server never does.

import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import {
  CancellationTokenSource,
  createMessageConnection,
  ResponseError,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-jsonrpc/node";
import { pulling, pushing } from "../protocol/capabilities.mjs";

const server = fileURLToPath(new URL("../../server/dist/language-server.cjs", import.meta.url));

/** No answer takes this long, even on a machine that is busy with much else. */
const patienceMs = 60_000;

/** Starts a server for the world, with all its documents open; `nodeWords` are options of Node for the server's process. */
export async function startSoakEditor(world, nodeWords = []) {
  const child = spawn(process.execPath, [...nodeWords, server, "--stdio"], {
    stdio: ["pipe", "pipe", "pipe", "ipc"],
  });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const troubles = [];
  const statuses = new Map();
  const pushed = new Map();
  const waiting = new Set();
  let configuration = world.configuration;
  let configurationsAsked = 0;
  let ending = false;

  child.stdin.on("error", () => undefined);
  child.stderr.setEncoding("utf8").on("data", (text) => troubles.push(`standard error: ${text}`));
  const exited = new Promise((resolve) => {
    child.once("exit", (code, signal) => {
      if (!ending) troubles.push(`the server ended with ${code ?? signal}`);
      wake();
      resolve();
    });
  });
  const wake = () => {
    for (const look of [...waiting]) look();
  };
  connection.onError(([error]) => troubles.push(`connection: ${error.message}`));
  connection.onNotification("loomwright/status", (status) => {
    if (status.state === "failed") troubles.push(`failed: ${status.uri} ${status.message}`);
    if (status.uri !== undefined) {
      if (status.state === "gone") statuses.delete(status.uri);
      else statuses.set(status.uri, status);
    }
    wake();
  });
  connection.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }) => {
    if (diagnostics.length === 0) pushed.delete(uri);
    else pushed.set(uri, diagnostics);
  });
  for (const method of ["window/logMessage", "window/showMessage"]) {
    connection.onNotification(method, ({ type, message }) => {
      if (type === 1) troubles.push(`${method}: ${message}`);
    });
  }
  connection.onRequest("workspace/configuration", ({ items }) => {
    configurationsAsked++;
    wake();
    return items.map(() => configuration);
  });
  for (const method of requestsOfServers) connection.onRequest(method, () => null);
  connection.listen();

  /** Resolves when the condition holds; rejects as stuck if it never does. */
  const until = (holds, what) =>
    new Promise((resolve, reject) => {
      const done = (end, value) => {
        clearTimeout(timer);
        waiting.delete(look);
        end(value);
      };
      const look = () => {
        if (child.exitCode !== null || child.signalCode !== null)
          done(reject, new Stuck(`the server ended while waiting for ${what}`));
        else if (holds()) done(resolve);
      };
      const timer = setTimeout(() => done(reject, new Stuck(`stuck: ${what}`)), patienceMs);
      waiting.add(look);
      look();
    });

  /** Never rejects except as stuck: an error is an answer too. Errors that no editor would ever see are trouble. */
  const ask = async (method, params, token) => {
    let timer;
    const stuck = new Promise((_, reject) => {
      timer = setTimeout(() => {
        troubles.push(`stuck: ${method} was not answered within ${patienceMs / 1000} s`);
        reject(new Stuck(`stuck: ${method}`));
      }, patienceMs);
    });
    try {
      return {
        answer: await Promise.race([
          connection.sendRequest(method, params, ...(token ? [token] : [])),
          stuck,
        ]),
      };
    } catch (error) {
      if (error instanceof Stuck) throw error;
      if (!(error instanceof ResponseError)) throw new Stuck(`${method}: ${error.message}`);
      const { code, message } = error;
      if (!expectedErrors.has(code)) troubles.push(`${method} answered ${code}: ${message}`);
      return { error: { code, message } };
    } finally {
      clearTimeout(timer);
    }
  };

  /** A server that has ended is detected by its end, not by each message that can no longer be written. */
  const notify = (method, params) => void connection.sendNotification(method, params).catch(() => undefined);
  const open = (document) =>
    notify("textDocument/didOpen", {
      textDocument: {
        uri: document.uri,
        languageId: "typescript",
        version: document.version,
        text: document.getText(),
      },
    });

  await ask("initialize", {
    processId: process.pid,
    rootUri: world.folders[0],
    workspaceFolders: world.folders.map((uri) => ({ uri, name: uri })),
    capabilities: world.pulls ? pulling : pushing,
  });
  notify("initialized", {});
  for (const document of world.open.values()) open(document);

  const editor = {
    processId: child.pid,
    troubles,
    statuses,
    pushed,
    notify,
    ask,
    open,
    /** Sends a request, and cancels it after that time. */
    async askAndCancel(method, params, afterMs) {
      const source = new CancellationTokenSource();
      const asked = ask(method, params, source.token);
      if (afterMs === 0) source.cancel();
      else setTimeout(() => source.cancel(), afterMs);
      return asked;
    },
    async configure(next) {
      const before = configurationsAsked;
      configuration = next;
      notify("workspace/didChangeConfiguration", { settings: null });
      await until(() => configurationsAsked > before, "the server to ask for its configuration");
    },
    /** Waits until the server reports for every plan that it has checked the newest texts. */
    async rest(documents) {
      // Twice: work started by the first round of answers must come to rest too.
      for (let round = 0; round < 2; round++) {
        await Promise.all(
          [...documents.keys()].map((uri) => ask("textDocument/documentSymbol", { textDocument: { uri } })),
        );
        await until(
          () => [...statuses.values()].every((status) => isAtRest(status, documents)),
          `rest: ${JSON.stringify([...statuses.values()].filter((status) => !isAtRest(status, documents)))}`,
        );
      }
    },
    async end() {
      ending = true;
      const killing = setTimeout(() => child.kill("SIGKILL"), patienceMs);
      if (child.exitCode === null && child.signalCode === null) {
        await connection.sendRequest("shutdown").catch(() => undefined);
        await connection.sendNotification("exit").catch(() => undefined);
      }
      await exited;
      clearTimeout(killing);
      connection.dispose();
    },
    kill() {
      ending = true;
      connection.dispose();
      child.kill("SIGKILL");
    },
    /**
     * Memory in use after garbage collection in the thread that uses most, MB; for a server with `memory-of-threads.cjs` loaded. Not
     * the sum: on a busy machine, the server has more threads.
     */
    async largestThreadMB() {
      let bytes;
      child.once("message", (message) => {
        bytes = message;
        wake();
      });
      child.send("measure");
      await until(() => bytes !== undefined, "the memory in use");
      return Math.max(...bytes) / 1e6;
    },
    /** Memory that the process holds, MB; undefined if the system does not show it. */
    residentMB() {
      try {
        const status = readFileSync(`/proc/${child.pid}/status`, "utf8");
        return Math.round(Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024);
      } catch {
        return undefined;
      }
    },
  };
  return editor;
}

/** The server did not answer, or has ended. */
export class Stuck extends Error {}

function isAtRest({ state, versions = {} }, documents) {
  if (state === "checking") return false;
  return Object.entries(versions).every(([uri, version]) => documents.get(uri)?.version === version);
}

/** Cancelled by us, the text changed meanwhile, or the server deferred the answer. */
const expectedErrors = new Set([-32800, -32801, -32802]);

const requestsOfServers = [
  "client/registerCapability",
  "workspace/diagnostic/refresh",
  "workspace/inlayHint/refresh",
  "workspace/codeLens/refresh",
];
