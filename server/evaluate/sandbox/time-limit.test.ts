import { expect, test } from "vitest";
import { startTimeLimit } from "./time-limit.ts";

/** A limit of 400 ms, and the clocks as they are later. */
function after(passed: { readonly wallMs: number; readonly cpuMs: number }): boolean {
  const now = { wallMs: 7_000, cpuMs: 900 };
  const isOver = startTimeLimit(400, { wallMs: () => now.wallMs, cpuMs: () => now.cpuMs });
  now.wallMs += passed.wallMs;
  now.cpuMs += passed.cpuMs;
  return isOver();
}

test("what only waits is not over, however late it is: the machine had no time for it", () => {
  expect(after({ wallMs: 3_999, cpuMs: 399 })).toBe(false);
});

test("what has worked for as long is over", () => {
  expect(after({ wallMs: 3_999, cpuMs: 400 })).toBe(true);
});

test("several threads have more time than passes: the limit is not over sooner for that", () => {
  expect(after({ wallMs: 399, cpuMs: 800 })).toBe(false);
});

test("waiting has an end too", () => {
  expect(after({ wallMs: 4_000, cpuMs: 0 })).toBe(true);
});

test("what works without end is over by the clocks of the process", () => {
  const isOver = startTimeLimit(20);
  let looks = 0;
  while (!isOver()) looks++;
  expect(looks).toBeGreaterThan(0);
});
