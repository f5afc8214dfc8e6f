import { spawn } from "node:child_process";

/**
 * Runs a program to its end and returns its output on stdout and stderr.
 *
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, timeoutMs?: number }} [options] killed after `timeoutMs`, five minutes by
 * default
 * @returns {Promise<string>} rejects with the last lines of output if the exit code is not 0
 */
export function runCommand(program, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: options.cwd,
      env: options.env ?? process.env,
      stdio: ["ignore", "pipe", "pipe"],
      timeout: options.timeoutMs ?? 300_000,
    });
    let printed = "";
    child.stdout.on("data", (data) => {
      printed += data;
    });
    child.stderr.on("data", (data) => {
      printed += data;
    });
    child.on("error", reject);
    child.on("close", (code, signal) => {
      if (code === 0) resolve(printed);
      else {
        const end = printed.trim().split("\n").slice(-15).join("\n");
        reject(new Error(`${program} ${args.join(" ")} ended with ${code ?? signal}:\n${end}`));
      }
    });
  });
}
