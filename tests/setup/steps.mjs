import { spawn } from "node:child_process";
import { setPriority } from "node:os";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

/**
 * One program of Node that passes or fails.
 *
 * @typedef {object} Step
 * @property {string} what name
 * @property {readonly string[]} words the words after `node`
 * @property {Step} [after] a step of an earlier chain that ends first
 * @property {number} [priority] of the process as `os.setPriority` takes it: 0 is the usual one, 19 the lowest
 */

/**
 * Runs chains beside each other, and the steps of a chain one after another. Every step runs even if one before it failed: one
 * run reports everything. The output of a step is printed whole when the step ends, and the status of each step at the end.
 *
 * @param {readonly (readonly Step[])[]} chains
 * @returns {Promise<boolean>} whether every step passed
 */
export async function runSteps(chains) {
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
  const outcomes = new Map();
  for (const chain of chains) {
    let before;
    for (const step of chain) {
      before = Promise.all([before, outcomes.get(step.after)]).then(() => run(step, running));
      outcomes.set(step, before);
    }
  }
  const steps = chains.flat();
  const passed = await Promise.all(steps.map((step) => outcomes.get(step)));
  console.log("");
  for (const [place, { what }] of steps.entries())
    console.log(`${passed[place] ? "passed" : "FAILED"}  ${what}`);
  const failed = passed.filter((one) => !one).length;
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
    if (step.priority !== undefined && child.pid !== undefined) setPriority(child.pid, step.priority);
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
