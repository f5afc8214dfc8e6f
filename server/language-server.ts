import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { connect } from "./connect.ts";
import { wellFormedMessages } from "./well-formed-messages.ts";

// The language server: speaks the Language Server Protocol over standard input and output (--stdio) or Node's own channel
// between processes (--node-ipc). The checker, with TypeScript inside, is loaded only after the first handshake.

const words = process.argv.slice(2);
const usage = "loomwright-language-server --stdio | --node-ipc | --socket=PORT | --pipe=NAME";

if (words.includes("--help") || !words.some((word) => /^--(stdio|node-ipc|socket|pipe)\b/.test(word))) {
  process.stderr.write(`An editor starts this server: ${usage}\n`);
  process.exitCode = words.includes("--help") ? 0 : 2;
} else {
  const connection = createConnection(ProposedFeatures.all, {
    messageStrategy: wellFormedMessages((text) => connection.console.error(text)),
  });
  const report = (what: string) => (error: unknown) => {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`loomwright: ${what}: ${text}\n`);
    connection.console.error(`${what}: ${text}`);
  };
  // What was promised to nobody costs nobody; the server goes on.
  process.on("unhandledRejection", report("something failed in the background"));
  process.on("uncaughtException", (error) => {
    report("the server cannot go on")(error);
    connection.window.showErrorMessage(
      `Loomwright's server stopped: ${error.message}. The output channel has the details; the editor starts it again.`,
    );
    setTimeout(() => process.exit(1), 100);
  });
  connect(connection, () => import("./evaluate/checker.ts"));
  connection.listen();
}
