import { describe, expect, test } from "vitest";
import type { CheckOutcome } from "./evaluate/checked-plan.ts";
import type { Snapshot } from "./evaluate/workspace.ts";
import { createPublishGate, type FailedPlan } from "./publish-gate.ts";

/** A checker with runs that the test ends, over texts that are only version numbers. */
function setUp() {
  const versions = new Map<string, number>();
  const runs: { root: string; end(): void; fail(reason: string): void }[] = [];
  const through: string[] = [];
  const log: string[] = [];
  const unshowable = new Set<string>();
  const gate = createPublishGate({
    check: (root) =>
      new Promise<CheckOutcome>((resolve, reject) => {
        const snapshot: Snapshot = new Map([[root, versions.get(root)]]);
        runs.push({
          root,
          end: () => resolve({ state: "checked", root, snapshot } as CheckOutcome),
          fail: (reason) => reject(new Error(reason)),
        });
      }),
    isUrgent: () => true,
    rested: () => undefined,
    isCurrent: ({ snapshot }) => [...snapshot].every(([uri, version]) => versions.get(uri) === version),
    log: (text) => log.push(text),
    started: () => undefined,
    letThrough(root, outcome: CheckOutcome | FailedPlan) {
      if (outcome.state !== "failed" && unshowable.has(root)) throw new Error("no such line");
      through.push(
        outcome.state === "failed"
          ? `${root} failed: ${outcome.reason}`
          : `${root} at ${outcome.snapshot.get(root)}`,
      );
    },
  });
  const type = (root: string) => {
    versions.set(root, (versions.get(root) ?? 0) + 1);
    gate.wake(root);
  };
  /** Lets all promise callbacks run. */
  const turn = () => new Promise((resolve) => setImmediate(resolve));
  return { gate, versions, runs, through, log, unshowable, type, turn };
}

describe("publish gate", () => {
  test("an idle plan starts at once, without any wait", () => {
    const { runs, type } = setUp();
    type("a");
    expect(runs.map(({ root }) => root)).toEqual(["a"]);
  });

  test("one run is in flight and one waits, however many texts come", async () => {
    const { runs, through, type, turn } = setUp();
    for (let i = 0; i < 5; i++) type("a");
    expect(runs).toHaveLength(1);
    runs[0]!.end();
    await turn();
    expect(through).toEqual([]);
    expect(runs).toHaveLength(2);
    runs[1]!.end();
    await turn();
    expect(through).toEqual(["a at 5"]);
    expect(runs).toHaveLength(2);
  });

  test("a result of an older text is never let through", async () => {
    const { runs, through, versions, type, turn } = setUp();
    type("a");
    versions.set("a", 2);
    runs[0]!.end();
    await turn();
    expect(through).toEqual([]);
    runs[1]!.end();
    await turn();
    expect(through).toEqual(["a at 2"]);
  });

  test("an edit in one plan neither cancels nor delays another", async () => {
    const { runs, through, type, turn } = setUp();
    type("a");
    type("b");
    type("b");
    expect(runs.map(({ root }) => root)).toEqual(["a", "b"]);
    runs[0]!.end();
    await turn();
    expect(through).toEqual(["a at 1"]);
  });

  test("a text that comes while the result is being shown is checked too", async () => {
    const { gate, runs, through, versions, turn } = setUp();
    versions.set("a", 1);
    gate.wake("a");
    runs[0]!.end();
    const settled = gate.settled("a").then(() => {
      versions.set("a", 2);
      gate.wake("a");
    });
    await settled;
    await turn();
    runs[1]!.end();
    await turn();
    expect(through).toEqual(["a at 1", "a at 2"]);
  });

  test("a failure is told, with the reason", async () => {
    const { runs, through, type, turn } = setUp();
    type("a");
    runs[0]!.fail("the worker died twice");
    await turn();
    expect(through).toEqual(["a failed: the worker died twice"]);
  });

  test("a result that cannot be shown is told as a failure, and the next one is shown again", async () => {
    const { runs, through, log, unshowable, type, turn } = setUp();
    unshowable.add("a");
    type("a");
    runs[0]!.end();
    await turn();
    expect(through).toEqual(["a failed: no such line"]);
    expect(log.join()).toContain("no such line");
    unshowable.delete("a");
    type("a");
    runs[1]!.end();
    await turn();
    expect(through.at(-1)).toBe("a at 2");
  });

  test("the failure of an old text is not told when a newer one waits", async () => {
    const { runs, through, type, turn } = setUp();
    type("a");
    type("a");
    runs[0]!.fail("the worker died");
    await turn();
    runs[1]!.end();
    await turn();
    expect(through).toEqual(["a at 2"]);
  });

  test("what is in flight for a plan that was closed is dropped", async () => {
    const { gate, runs, through, type, turn } = setUp();
    type("a");
    gate.forget("a");
    runs[0]!.end();
    await turn();
    expect(through).toEqual([]);
  });

  test("a plan that was closed and opened again is checked anew", async () => {
    const { gate, runs, through, type, turn } = setUp();
    type("a");
    gate.forget("a");
    type("a");
    runs[0]!.end();
    await turn();
    expect(through).toEqual([]);
    runs[1]!.end();
    await turn();
    expect(through).toEqual(["a at 2"]);
  });

  test("settled waits for the newest text, and not at all at rest", async () => {
    const { gate, runs, type, turn } = setUp();
    await gate.settled("a");
    type("a");
    type("a");
    let settled = false;
    void gate.settled("a").then(() => {
      settled = true;
    });
    runs[0]!.end();
    await turn();
    expect(settled).toBe(false);
    runs[1]!.end();
    await turn();
    expect(settled).toBe(true);
  });

  test("a file that is rewritten all the time does not keep the server busy for ever", async () => {
    const { runs, through, versions, type, turn } = setUp();
    type("a");
    for (let i = 0; i < runs.length && i < 100; i++) {
      versions.set("a", 100 + i);
      runs[i]!.end();
      await turn();
    }
    expect(runs.length).toBeLessThan(10);
    expect(through).toEqual(["a failed: its files keep changing on disk"]);
  });
});
