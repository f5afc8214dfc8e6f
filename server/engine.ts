import { isMainThread, parentPort, workerData } from "node:worker_threads";
import {
  createConnection,
  type Message,
  type NotificationMessage,
  PortMessageReader,
  PortMessageWriter,
  ProposedFeatures,
} from "vscode-languageserver/node";
import { withResultAsText } from "./answer-text.ts";
import { connect } from "./connect.ts";
import { type EngineStart, pingMethod, pongMethod } from "./engine-messages.ts";
import { createSandbox } from "./evaluate/sandbox.ts";
import { warmUp } from "./warm-up.ts";

// An engine: reads, runs and judges plans in a thread of its own, and speaks the editor's protocol with the front thread.

if (isMainThread || !parentPort) throw new Error("An engine runs in a thread of the language server.");

// Outside the connection: inside it, a ping would wait behind every earlier message.
const port = parentPort;
const pong = { jsonrpc: "2.0", method: pongMethod };
port.on("message", ({ method }: NotificationMessage) => {
  if (method === pingMethod) port.postMessage(pong);
});

class AnswersAsText extends PortMessageWriter {
  override write(message: Message): Promise<void> {
    return super.write(withResultAsText(message));
  }
}

const connection = createConnection(
  ProposedFeatures.all,
  new PortMessageReader(parentPort),
  new AnswersAsText(parentPort),
);
const report = (what: string) => (error: unknown) => {
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`loomwright: ${what}: ${text}\n`);
  connection.console.error(`${what}: ${text}`);
};
// An unhandled rejection affects no request; the engine continues.
process.on("unhandledRejection", report("something failed in the background"));
const { number } = workerData as EngineStart;
const sandbox = createSandbox();
connect(connection, {
  number,
  sandbox,
  loadChecker: () => import("./evaluate/checker.ts"),
  // The very first engine has its first plan to check, and no time for another.
  prepare: ({ createChecker }, isOnDuty) =>
    number > 1 ? warmUp(createChecker, { sandbox, isOver: isOnDuty }) : Promise.resolve(),
});
connection.listen();
