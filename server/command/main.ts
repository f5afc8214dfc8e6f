import { homedir } from "node:os";
import { usersResults } from "./cache-folder.ts";
import { run } from "./run.ts";
import { terminalFor } from "./terminal.ts";

// Whoever reads along may have seen enough (`loomwright check | head`); the exit code still tells what was found.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code !== "EPIPE") throw error;
});

const kept = usersResults({ env: process.env, platform: process.platform, home: homedir() });

run(process.argv.slice(2), {
  cwd: process.cwd(),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  terminal: terminalFor(process.stdout, process.stderr, process.env),
  ...(kept ? { kept } : {}),
}).then((code) => {
  process.exitCode = code;
});
