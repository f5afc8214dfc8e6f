import { writeFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, onTestFinished, test } from "vitest";
import type { DiagramGraph } from "../../library/documents/diagram/graph.ts";
import { layOut } from "../../library/documents/diagram/lay-out.ts";
import { createLayouts, type LayoutOptions } from "../../server/output/layouts.ts";

const folder = await mkdtemp(join(tmpdir(), "layouts-"));
afterAll(() => rm(folder, { recursive: true }));

/** Two parts one above the other, and a line from each to a third. `width` distinguishes graphs. */
function graphOf(width: number): DiagramGraph {
  const port = (side: "west" | "east") => ({ side, y: 10, height: 20 });
  return {
    nodes: [
      { width, height: 30, ports: "placed", rows: [port("east")] },
      { width: 40, height: 30, ports: "placed", rows: [port("east")] },
      { width: 40, height: 80, ports: "free", rows: [port("west"), port("west")] },
    ],
    edges: [
      { from: [0, 0], to: [2, 0] },
      { from: [1, 0], to: [2, 1] },
    ],
  };
}

function layoutsWith(options?: LayoutOptions) {
  const layouts = createLayouts(options);
  onTestFinished(() => layouts.dispose());
  return layouts;
}

function workerOf(name: string, text: string): string {
  const file = join(folder, `${name}.cjs`);
  writeFileSync(file, text);
  return file;
}

test("the worker gives the numbers that this thread gives", async () => {
  const answer = await layoutsWith().layOut(graphOf(60));
  expect(answer).toEqual(await layOut(graphOf(60)));
  expect(answer.laidOut && answer.placed.nodes.map(({ rowY }) => rowY.length)).toEqual([1, 1, 2]);
});

test("one that waits is superseded by a newer one of its key, and by that alone", async () => {
  const layouts = layoutsWith();
  const [running, older, other, newer] = await Promise.all([
    layouts.layOut(graphOf(50), "a"),
    layouts.layOut(graphOf(51), "a"),
    layouts.layOut(graphOf(52), "b"),
    layouts.layOut(graphOf(53), "a"),
  ]);
  expect([running, older, other, newer].map(({ laidOut }) => laidOut)).toEqual([true, false, true, true]);
  expect(older).toMatchObject({ superseded: true });
});

test("a graph that was laid out lately is answered without a worker", async () => {
  const marked = workerOf(
    "counts",
    `const { parentPort } = require("node:worker_threads");
     let count = 0;
     parentPort.on("message", () => parentPort.postMessage({ laidOut: { laidOut: true, placed: { count: ++count } } }));`,
  );
  const layouts = layoutsWith({ workerFile: marked });
  const first = await layouts.layOut(graphOf(1));
  const second = await layouts.layOut(graphOf(2));
  expect([first, second, await layouts.layOut(graphOf(1))]).toMatchObject([
    { placed: { count: 1 } },
    { placed: { count: 2 } },
    { placed: { count: 1 } },
  ]);
});

test("a worker that dies costs its diagram and no other", async () => {
  const dies = workerOf(
    "dies",
    `const { parentPort } = require("node:worker_threads");
     parentPort.on("message", ({ graph }) => {
       if (graph.nodes[0].width === 1) throw new Error("out of paper\\nat some line");
       if (graph.nodes[0].width === 2) process.exit(3);
       parentPort.postMessage({ laidOut: { laidOut: true, placed: {} } });
     });`,
  );
  const layouts = layoutsWith({ workerFile: dies });
  const answers = await Promise.all([1, 2, 3].map((width) => layouts.layOut(graphOf(width))));
  expect(answers).toEqual([
    { laidOut: false, why: "The diagram could not be laid out: out of paper" },
    { laidOut: false, why: "The diagram could not be laid out: its thread has ended." },
    { laidOut: true, placed: {} },
  ]);
});

test("a worker that is not there is said, not thrown", async () => {
  const answer = await layoutsWith({ workerFile: join(folder, "not-there.cjs") }).layOut(graphOf(1));
  expect(answer).toMatchObject({ laidOut: false, why: expect.stringContaining("could not be laid out") });
});

test("a worker that hangs is killed when its time is over, and the next diagram gets another", async () => {
  const hangs = workerOf(
    "hangs",
    `const { parentPort } = require("node:worker_threads");
     parentPort.on("message", ({ graph }) => {
       for (;graph.nodes[0].width === 1;);
       parentPort.postMessage({ laidOut: { laidOut: true, placed: {} } });
     });`,
  );
  const timers: (() => void)[] = [];
  const layouts = layoutsWith({
    workerFile: hangs,
    setTimer(_ms, callBack) {
      timers.push(callBack);
      return () => {};
    },
  });
  const hung = layouts.layOut(graphOf(1));
  const after = layouts.layOut(graphOf(2));
  timers[0]!();
  expect(await hung).toMatchObject({ laidOut: false, why: expect.stringMatching(/within \d+ seconds/) });
  expect(await after).toMatchObject({ laidOut: true });
});

test("what waits when it is closed is answered, and what comes later too", async () => {
  const layouts = createLayouts();
  const waiting = [layouts.layOut(graphOf(8)), layouts.layOut(graphOf(9))];
  await layouts.dispose();
  for (const answer of [...waiting, layouts.layOut(graphOf(10))])
    expect(await answer).toMatchObject({ laidOut: false });
});
