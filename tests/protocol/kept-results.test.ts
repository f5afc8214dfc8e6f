import { spawnSync } from "node:child_process";
import { appendFileSync, cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";

const dist = fileURLToPath(new URL("../../server/dist", import.meta.url));

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loomwright-kept-"));
  mkdirSync(join(folder, "project/boat"), { recursive: true });
  writeFileSync(
    join(folder, "project/boat/plan.ts"),
    'import { circuit } from "loomwright";\nimport "./lamps.ts";\ncircuit({ name: "winch", load: 48, oneWayFt: 10, gauge: 12, protect: 45 });\n',
  );
  writeFileSync(
    join(folder, "project/boat/lamps.ts"),
    'import { circuit } from "loomwright";\ncircuit({ name: "lamp", load: 4, oneWayFt: 80, gauge: 14, protect: 5 });\n',
  );
  // Reports the loaded modules when it ends. A sandbox that is slow to start is started again: their number may differ.
  writeFileSync(
    join(folder, "witness.cjs"),
    `const threads = require("node:worker_threads");
let started = false;
const { Worker } = threads;
threads.Worker = class extends Worker { constructor(...given) { super(...given); started = true; } };
process.on("exit", () => {
  const parser = Object.keys(require.cache).some((file) => file.endsWith("typescript.cjs"));
  process.stderr.write(JSON.stringify({ parser, sandbox: started }));
});
`,
  );
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("an unchanged repository needs neither the parser nor the sandbox, and says the same", () => {
  const first = check();
  expect(first.loaded).toEqual({ parser: true, sandbox: true });
  const again = check();
  expect(again.loaded).toEqual({ parser: false, sandbox: false });
  expect([again.status, again.out]).toEqual([first.status, first.out]);
  expect(first.out).toContain("winch");
  expect(first.status).toBe(1);
});

test("one file changed, or --fresh: it needs both again", () => {
  check();
  expect(check({ words: ["--fresh"] }).loaded).toEqual({ parser: true, sandbox: true });
  appendFileSync(join(folder, "project/boat/lamps.ts"), "// A line more.\n");
  expect(check().loaded).toEqual({ parser: true, sandbox: true });
  expect(check().loaded).toEqual({ parser: false, sandbox: false });
});

test("another Loomwright takes nothing from this one", () => {
  check();
  const other = join(folder, "dist");
  cpSync(dist, other, { recursive: true });
  expect(check({ from: other }).loaded).toEqual({ parser: false, sandbox: false });
  appendFileSync(join(other, "plan-worker.cjs"), "\n");
  expect(check({ from: other }).loaded).toEqual({ parser: true, sandbox: true });
});

test("results lie in the user's cache folder, and nothing of them in the repository", () => {
  check();
  expect(readdirSync(join(folder, "caches/loomwright"))).toEqual(["check"]);
  expect(readdirSync(join(folder, "project"), { recursive: true }).map(String).sort()).toEqual([
    "boat",
    join("boat", "lamps.ts"),
    join("boat", "plan.ts"),
  ]);
});

function check({
  words = [],
  from = dist,
}: {
  readonly words?: readonly string[];
  readonly from?: string;
} = {}) {
  const caches = join(folder, "caches");
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ["--require", join(folder, "witness.cjs"), join(from, "command.cjs"), "check", ...words],
    {
      cwd: join(folder, "project"),
      encoding: "utf8",
      env: { ...process.env, XDG_CACHE_HOME: caches, LOCALAPPDATA: caches, LOOMWRIGHT_CACHE: "" },
    },
  );
  return { out: stdout, status, loaded: JSON.parse(stderr) as unknown };
}
