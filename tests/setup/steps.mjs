import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

/**
 * One program of Node that passes or fails.
 *
 * @typedef {{ what: string, words: readonly string[] }} Step name, and the words after `node`
 */

/**
 * Runs chains beside each other, and the steps of a chain one after another. Every step runs even if one before it failed: one
 * run reports everything. The output of a step is printed whole when the step ends, and the status of each step at the end.
 *
 * @param {readonly (readonly Step[])[]} chains
 * @returns {Promise<boolean>} whether every step passed
 */
export async function runSteps(chains) {
  const passed = new Map();
  const running = new Set();
  const stop = () => {
    for (const { step, child, output } of running) {
      child.kill();
      print(`${step.what}, broken off`, output);
    }
    process.exit(1);
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
  await Promise.all(
    chains.map(async (chain) => {
      for (const step of chain) passed.set(step, await run(step, running));
    }),
  );
  console.log("");
  const steps = chains.flat();
  for (const step of steps) console.log(`${passed.get(step) ? "passed" : "FAILED"}  ${step.what}`);
  const failed = steps.filter((step) => !passed.get(step)).length;
  console.log(`steps: ${steps.length - failed} passed, ${failed} failed`);
  return failed === 0;
}

function run(step, running) {
  console.log(`${step.what} …`);
  return new Promise((resolve) => {
    const child = spawn(process.execPath, step.words, {
      cwd: house,
      stdio: ["ignore", "pipe", "pipe"],
      env: process.stdout.isTTY ? { FORCE_COLOR: "1", ...process.env } : process.env,
    });
    const output = [];
    const entry = { step, child, output };
    running.add(entry);
    child.stdout.on("data", (data) => output.push(data));
    child.stderr.on("data", (data) => output.push(data));
    const end = (passed) => {
      if (!running.delete(entry)) return;
      print(step.what, output);
      resolve(passed);
    };
    child.on("error", (error) => {
      output.push(Buffer.from(`${error.message}\n`));
      end(false);
    });
    child.on("close", (code) => end(code === 0));
  });
}

function print(title, output) {
  process.stdout.write(Buffer.concat([Buffer.from(`\n== ${title} ==\n`), ...output]));
}
