import { homedir } from "node:os";
import { whyNotWritten } from "../output/atomic-write.ts";
import { usersResults } from "./cache-folder.ts";
import { outputTo } from "./output.ts";
import { run } from "./run.ts";
import { terminalFor } from "./terminal.ts";

/** Incomplete output gives exit code 2, with or without findings. */
async function main(): Promise<void> {
  let isCutOff = false;
  const cutOff = () => {
    isCutOff = true;
    process.exitCode = 2;
  };
  const err = outputTo(process.stderr, cutOff);
  const out = outputTo(process.stdout, (error) => {
    cutOff();
    err(`loomwright: the output ${whyNotWritten(error)}; it is not complete.\n`);
  });
  const kept = usersResults({ env: process.env, platform: process.platform, home: homedir() });
  const code = await run(process.argv.slice(2), {
    ...{ cwd: process.cwd(), out, err },
    terminal: terminalFor(process.stdout, process.stderr, process.env),
    ...(kept ? { kept } : {}),
  });
  process.exitCode = isCutOff ? 2 : code;
}

main();
