import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { watchEngine } from "./engine-watch.ts";

// Time is the test's own: nothing here waits. The machine seems to give the process none: then ten times a limit ends it.

beforeEach(() => {
  vi.spyOn(process, "cpuUsage").mockReturnValue({ user: 0, system: 0 });
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval", "performance"] });
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

function setUp() {
  const seen: string[] = [];
  const another = { isReady: false };
  const watch = watchEngine({
    limitMs: 10,
    ping: () => seen.push("ping"),
    slow() {
      if (!seen.includes("slow")) seen.push("slow");
    },
    isAnotherReady: () => another.isReady,
    stuck: () => seen.push("stuck"),
  });
  watch.busy();
  return { seen, another, watch };
}

const overMs = 10 * 10;

describe("an engine that does not answer", () => {
  test("has the limit from the time at which another one can take over", () => {
    const { seen, another } = setUp();
    vi.advanceTimersByTime(2 * overMs);
    expect(seen).toEqual(["ping", "slow"]);
    another.isReady = true;
    vi.advanceTimersByTime(overMs / 2);
    expect(seen).toEqual(["ping", "slow"]);
    vi.advanceTimersByTime(overMs);
    expect(seen).toEqual(["ping", "slow", "stuck"]);
  });

  test("is ended at the limit if another one could take over from the beginning", () => {
    const { seen, another } = setUp();
    another.isReady = true;
    vi.advanceTimersByTime(overMs);
    expect(seen).toEqual(["ping", "slow"]);
    vi.advanceTimersByTime(overMs);
    expect(seen).toEqual(["ping", "slow", "stuck"]);
  });

  test("is ended in the end if none gets ready", () => {
    const { seen } = setUp();
    vi.advanceTimersByTime(6 * overMs);
    expect(seen).toEqual(["ping", "slow", "stuck"]);
  });

  test("goes on if it answers before another one is ready", () => {
    const { seen, another, watch } = setUp();
    vi.advanceTimersByTime(2 * overMs);
    watch.answered();
    another.isReady = true;
    vi.advanceTimersByTime(50);
    expect(seen).toEqual(["ping", "slow", "ping"]);
  });
});
