// Two kinds of work that take turns in one process, and the checker that they use. Processor time counts, of all threads of the process:
// another program on the machine changes it less than the clock.

import { mkdirSync, mkdtempSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const house = fileURLToPath(new URL("../..", import.meta.url));
const blocks = 40;
const stepsPerBlock = 10;
const warmUpBlocks = 12;

/** The median ratio of the first to the second, and both medians of a step, ms. Each is called with the number of its step. */
export async function inTurns(first, second) {
  const works = [first, second].map((work) => ({ work, times: [] }));
  for (let block = 0; block < blocks + warmUpBlocks; block++) {
    for (const { work, times } of block % 2 ? works : works.toReversed()) {
      const before = process.cpuUsage();
      for (let step = 0; step < stepsPerBlock; step++) await work(block + step);
      const { user, system } = process.cpuUsage(before);
      if (block >= warmUpBlocks) times.push((user + system) / 1_000 / stepsPerBlock);
    }
  }
  const [one, other] = works.map(({ times }) => times);
  return {
    ratio: median(one.map((time, block) => time / other[block])),
    firstMs: median(one),
    secondMs: median(other),
  };
}

function median(values) {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}

/**
 * Runs with a checker in a bundle of its own: beside it, a folder with the files that it loads. `more`: further exports of the server,
 * such as \`export { boardsView } from "./language/boards-view.ts";\`.
 */
export async function withBenchChecker(run, more = "") {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-bench-"));
  try {
    const checker = await benchChecker(folder, more);
    const results = await run(checker);
    await checker.dispose();
    return results;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function benchChecker(folder, more) {
  mkdirSync(join(folder, "bench"));
  symlinkSync(join(house, "server/dist"), join(folder, "dist"), "junction");
  symlinkSync(join(house, "node_modules"), join(folder, "node_modules"), "junction");
  const bundle = join(folder, "bench/checker.mjs");
  await build({
    stdin: {
      contents: `export { createChecker } from "./evaluate/checker.ts";\n${more}`,
      resolveDir: join(house, "server"),
    },
    bundle: true,
    platform: "node",
    format: "esm",
    outfile: bundle,
    external: ["typescript"],
    banner: {
      js: `import { createRequire } from "node:module"; const require = createRequire(${JSON.stringify(join(house, "package.json"))});`,
    },
    logLevel: "warning",
  });
  const { createChecker, ...others } = await import(pathToFileURL(bundle).href);
  const texts = new Map();
  let version = 0;
  const checker = createChecker({
    read: (uri) => texts.get(uri),
    folders: () => ["file:///bench"],
    realUri: (uri) => uri,
    planFiles: () => [...texts.keys()],
  });
  const checked = (outcome) => {
    if (outcome.state !== "checked") throw new Error("the plan of the bench is not checked");
    return outcome;
  };
  return {
    ...others,
    dispose: () => checker.dispose(),
    async check(uri, text) {
      texts.set(uri, { uri, version: ++version, text });
      return checked(await checker.check(uri));
    },
    async checkAs(uri, text) {
      return checked(await checker.checkAs(uri, new Map([[uri, text]])));
    },
  };
}
