import type { Message, MessageReader, MessageWriter } from "vscode-languageserver/node";
import {
  createServerPipeTransport,
  createServerSocketTransport,
  IPCMessageReader,
  IPCMessageWriter,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { jsonOf, withResultRead } from "../answer-text.ts";
import { startEngineThread } from "./engine-thread.ts";
import { createFront } from "./front.ts";

// The language server: speaks the Language Server Protocol over standard input and output (--stdio), Node's own channel between
// processes (--node-ipc), a socket or a pipe. This thread only passes messages on; the engines work in threads of their own.

/**
 * Time limits for one piece of work of an engine's thread. A keystroke in a plan of 3,000 circuits takes a tenth of the first.
 */
const limitsMs = { foreground: 400, background: 30_000 };

/** Our choice: an editor that opens needs the processor itself, and two seconds of it go into a spare engine. */
const spareAfterMs = 20_000;

const words = process.argv.slice(2);
const usage = "loomwright-language-server --stdio | --node-ipc | --socket=PORT | --pipe=NAME";
const transport = transportOf(words);

if (words.includes("--help") || !transport) {
  process.stderr.write(`An editor starts this server: ${usage}\n`);
  process.exitCode = words.includes("--help") ? 0 : 2;
} else {
  const { reader, writer, takesText } = transport;
  const report = (what: string) => (error: unknown) => {
    const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`loomwright: ${what}: ${text}\n`);
  };
  const toEditor = (message: Message) =>
    void writer
      .write(takesText ? message : withResultRead(message))
      .catch(report("the editor cannot be reached"));
  // An unhandled rejection affects no request; the server continues.
  process.on("unhandledRejection", report("something failed in the background"));
  process.on("uncaughtException", (error) => {
    report("the server cannot go on")(error);
    setTimeout(() => process.exit(1), 100);
  });
  const front = createFront({
    toEditor,
    limitsMs,
    spareAfterMs,
    startThread: (number, events) =>
      startEngineThread(new URL("../dist/engine.cjs", import.meta.url), number, events),
    whenGone(processId, gone) {
      const watching = setInterval(() => {
        if (isThere(processId)) return;
        clearInterval(watching);
        gone();
      }, 3_000);
    },
    exit(code) {
      // Lets the last message leave first.
      setImmediate(() => process.exit(code));
    },
  });
  reader.onError(report("the editor sent an invalid message"));
  reader.onClose(() => front.end());
  reader.listen((message) => front.receive(message));
}

function isThere(processId: number): boolean {
  try {
    return process.kill(processId, 0);
  } catch (error) {
    // The process exists, and belongs to another user.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

interface Transport {
  readonly reader: MessageReader;
  readonly writer: MessageWriter;
  /** The writer inserts the text of a result into the message as it is. */
  readonly takesText: boolean;
}

function transportOf(words: readonly string[]): Transport | undefined {
  const given = (name: string) => {
    const place = words.findIndex((word) => word === name || word.startsWith(`${name}=`));
    return place < 0 ? undefined : (words[place]!.split("=")[1] ?? words[place + 1]);
  };
  const readingText = ([reader, writer]: [MessageReader, MessageWriter]): Transport => ({
    reader,
    writer,
    takesText: false,
  });
  if (words.includes("--node-ipc"))
    return readingText([new IPCMessageReader(process), new IPCMessageWriter(process)]);
  if (words.includes("--stdio")) {
    const writer = new StreamMessageWriter(process.stdout, {
      contentTypeEncoder: { name: "application/json", encode },
    });
    return { reader: new StreamMessageReader(process.stdin), writer, takesText: true };
  }
  const port = Number(given("--socket"));
  if (port) return readingText(createServerSocketTransport(port));
  const pipe = given("--pipe");
  return pipe ? readingText(createServerPipeTransport(pipe)) : undefined;
}

async function encode(message: Message): Promise<Uint8Array> {
  return Buffer.from(jsonOf(message), "utf8");
}
