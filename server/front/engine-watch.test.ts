import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { watchEngine } from "./engine-watch.ts";

// Time is the test's own: nothing here waits.

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval", "performance"] });
});
afterEach(() => {
  vi.useRealTimers();
});

function setUp() {
  const seen: string[] = [];
  const another = { isReady: false };
  const watch = watchEngine({
    limitMs: 10,
    ping: () => seen.push("ping"),
    slow: () => seen.push("slow"),
    canBeReplaced: () => another.isReady,
    stuck: () => seen.push("stuck"),
  });
  watch.busy();
  return { seen, another, watch };
}

/** Ten times a limit ends it, however little time the machine gave. */
const overMs = 10 * 10;

describe("an engine that does not answer", () => {
  test("is ended once another one can take over", () => {
    const { seen, another } = setUp();
    vi.advanceTimersByTime(2 * overMs);
    expect(seen).toEqual(["ping", "slow"]);
    another.isReady = true;
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
