import { type ChildProcess, fork } from "node:child_process";

/** The server as a separate process, connected by Node's channel between parent and child. */
export interface ServerProcess {
  readonly child: ChildProcess;
  /** Why it ended, in words; undefined while it runs. */
  ended(): string | undefined;
}

/**
 * Starts the bundled server with the Node that the editor runs on.
 *
 * @param module path of the server's bundle
 * @param print called with each line it writes outside the protocol
 */
export function startServerProcess(module: string, print: (line: string) => void): ServerProcess {
  const child = fork(module, ["--node-ipc"], {
    stdio: ["ignore", "pipe", "pipe", "ipc"],
    // The server must not get any of the editor's own flags (a debugger's port, say).
    execArgv: [],
    // On a desktop the editor's program is no plain Node; this makes it one.
    env: { ...process.env, ELECTRON_RUN_AS_NODE: "1", ELECTRON_NO_ASAR: "1" },
  });
  let ended: string | undefined;
  let lastLine = "";
  const take = (data: Buffer) => {
    for (const line of data.toString().split("\n")) {
      if (line.trim() === "") continue;
      print(line);
      // The line of a Node failure that names it, e.g. "RangeError: …" or "FATAL ERROR: …"; the rest is the stack.
      if (/^[\w.$ ]*error\b.*:/i.test(line)) lastLine = line.trim();
    }
  };
  child.stdout?.on("data", take);
  child.stderr?.on("data", take);
  child.on("error", (error) => {
    ended = `it could not be started (${error.message})`;
  });
  child.on("exit", (code, signal) => {
    const how = signal ? `signal ${signal}` : `exit code ${code}`;
    ended = lastLine === "" ? how : `${how}: ${lastLine}`;
  });
  return { child, ended: () => ended };
}
