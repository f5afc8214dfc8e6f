import { Worker } from "node:worker_threads";
import { afterAll, expect, test } from "vitest";
import { defaultLimits, type RunRequest } from "../../server/evaluate/sandbox/contract.ts";
import { createSandbox } from "../../server/evaluate/sandbox.ts";
import { sampled } from "../setup/sampled.ts";

/**
 * Other work may delay the thread that waits for a plan at any moment, for longer than the plan may run. The thread then finds
 * its own timer and several messages of the worker at once, and must still reach the end of the plan.
 */
const limitMs = 150;

const sandbox = createSandbox();
afterAll(() => sandbox.dispose());

const root = "file:///camper/plan.ts";
const soundCall = "circuit({ load: 1 });";

const plans: readonly { name: string; js: string; limits?: Partial<RunRequest["limits"]>; ends: unknown }[] =
  [
    { name: "ends well", js: soundCall, ends: "whole" },
    { name: "throws", js: `${soundCall}null.gauge;`, ends: { why: "error", began: true } },
    { name: "is no JavaScript", js: `${soundCall}let a, a;`, ends: { why: "error", began: false } },
    { name: "runs out of time", js: `${soundCall}for (;;);`, ends: { why: "time" } },
    {
      name: "runs out of memory",
      js: `${soundCall}const all = []; for (;;) all.push(new Array(10_000).fill(0));`,
      limits: { timeMs: 60_000, memoryBytes: 4 * 1024 * 1024 },
      ends: { why: "memory" },
    },
    {
      name: "makes too many records",
      js: `for (;;) { ${soundCall} }`,
      limits: { timeMs: 60_000, records: 50 },
      ends: { why: "records" },
    },
  ];

// Around the limit, and around the moment when an unresponsive worker is killed.
const busyMs = [0, limitMs + 290, limitMs + 310, 7 * limitMs];

const moments: readonly { name: string; comes: () => Promise<unknown> }[] = [
  { name: "when the plan is sent", comes: async () => undefined },
  { name: "when it is waited for", comes: () => new Promise((resolve) => setImmediate(resolve)) },
  { name: "a little later", comes: () => new Promise((resolve) => setTimeout(resolve, 15)) },
];

const cases = moments.flatMap(({ name: moment, comes }) =>
  busyMs.flatMap((lengthMs) => plans.map((plan) => ({ moment, comes, lengthMs, ...plan }))),
);

test.each(sampled("moments at which a thread is held up", cases))(
  "held up $moment for $lengthMs ms, a plan that $name is known to",
  async ({ comes, lengthMs, js, limits, ends }) => {
    const modules = [
      {
        uri: root,
        js: `import { circuit } from "loomwright";${js}`,
        imports: { loomwright: "loomwright" },
      },
    ];
    const sent = nextMessageToWorker();
    const running = sandbox.run({
      root,
      modules,
      limits: { ...defaultLimits, timeMs: limitMs, ...limits },
    });
    await sent;
    await comes();
    holdUp(lengthMs);
    const { end, records } = await running;
    expect([end]).toMatchObject([ends]);
    if (ends === "whole") expect(records).toHaveLength(1);
  },
);

test("held up between the end of a plan and the next one, both are known", async () => {
  const run = (js: string) =>
    sandbox.run({
      root,
      modules: [{ uri: root, js, imports: {} }],
      limits: { ...defaultLimits, timeMs: limitMs },
    });
  for (const lengthMs of busyMs) {
    const first = run("throw new Error('first');");
    const second = first.then((outcome) => {
      holdUp(lengthMs);
      return [outcome, run("throw new Error('second');")] as const;
    });
    const [outcome, next] = await second;
    expect(outcome.end).toMatchObject({ why: "error", message: "Error: first" });
    expect((await next).end).toMatchObject({ why: "error", message: "Error: second" });
  }
});

/** The worker may first have to start or prepare itself; the thread must not be delayed during that time. */
function nextMessageToWorker(): Promise<void> {
  return new Promise((resolve) => {
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function (...given) {
      Worker.prototype.postMessage = postMessage;
      postMessage.apply(this, given);
      resolve();
    };
  });
}

/** Without any work of this process, which would use up the plan's own time. */
function holdUp(lengthMs: number) {
  if (lengthMs > 0) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, lengthMs);
}
