import { isMainThread, parentPort, workerData } from "node:worker_threads";
import {
  createConnection,
  PortMessageReader,
  PortMessageWriter,
  ProposedFeatures,
} from "vscode-languageserver/node";
import { connect } from "./connect.ts";
import type { EngineStart } from "./engine-messages.ts";

// An engine: reads, runs and judges plans in a thread of its own, and speaks the editor's protocol with the thread in front.

if (isMainThread || !parentPort) throw new Error("An engine runs in a thread of the language server.");

const connection = createConnection(
  ProposedFeatures.all,
  new PortMessageReader(parentPort),
  new PortMessageWriter(parentPort),
);
const report = (what: string) => (error: unknown) => {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`loomwright: ${what}: ${text}\n`);
  connection.console.error(`${what}: ${text}`);
};
// What was promised to nobody costs nobody; the engine goes on.
process.on("unhandledRejection", report("something failed in the background"));
const { number } = workerData as EngineStart;
connect(connection, { number, loadChecker: () => import("./evaluate/checker.ts") });
connection.listen();
