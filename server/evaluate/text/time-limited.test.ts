import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { build } from "esbuild";
import { expect, test } from "vitest";
import { withinTime } from "./time-limited.ts";

const forever = (): never => {
  for (;;);
};

test("gives what the work gives", () => {
  expect(withinTime(1_000, () => 5)).toEqual({ result: 5 });
  expect(withinTime(1_000, () => undefined)).toEqual({ result: undefined });
});

test("throws what the work throws", () => {
  const error = new Error("no");
  expect(() => withinTime(1_000, () => thrown(error))).toThrow(error);
});

test("interrupts work without end, and neither catch nor finally sees it", () => {
  const seen: string[] = [];
  const done = withinTime(20, () => {
    try {
      forever();
    } catch {
      seen.push("catch");
    } finally {
      seen.push("finally");
    }
  });
  expect(done).toBeUndefined();
  expect(seen).toEqual([]);
});

test("works within itself: the inner limit ends the inner work, the outer one both", () => {
  expect(withinTime(60_000, () => [withinTime(20, forever), withinTime(1_000, () => 1)])).toEqual({
    result: [undefined, { result: 1 }],
  });
  let after = false;
  const outer = withinTime(20, () => {
    withinTime(60_000, forever);
    after = true;
  });
  expect(outer).toBeUndefined();
  expect(after).toBe(false);
});

test("leaves nothing behind in the global object", () => {
  const before = Reflect.ownKeys(globalThis).length;
  withinTime(20, forever);
  withinTime(20, () => 1);
  expect(Reflect.ownKeys(globalThis)).toHaveLength(before);
});

test("interrupts in a worker thread too", async () => {
  const file = fileURLToPath(new URL("./time-limited.ts", import.meta.url));
  const bundled = await build({
    stdin: {
      contents: `import { withinTime } from ${JSON.stringify(file)};
        import { parentPort } from "node:worker_threads";
        parentPort.postMessage([withinTime(20, () => { for (;;); }), withinTime(20, () => 1)]);`,
      resolveDir: fileURLToPath(new URL(".", import.meta.url)),
    },
    bundle: true,
    platform: "node",
    format: "cjs",
    write: false,
  });
  const worker = new Worker(bundled.outputFiles[0]!.text, { eval: true });
  const said = await new Promise((resolve, reject) => {
    worker.once("message", resolve);
    worker.once("error", reject);
  });
  await worker.terminate();
  expect(said).toEqual([undefined, { result: 1 }]);
});

function thrown(error: Error): never {
  throw error;
}
