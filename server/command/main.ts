import { run } from "./run.ts";
import { terminalFor } from "./terminal.ts";

run(process.argv.slice(2), {
  cwd: process.cwd(),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  terminal: terminalFor(process.stdout, process.stderr, process.env),
}).then((code) => {
  process.exitCode = code;
});
