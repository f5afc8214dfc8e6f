import { setTimeout as wait } from "node:timers/promises";
import { expect, test } from "vitest";
import { startTimeLimit } from "./time-limit.ts";

test("what only waits is not over, however late it is: the machine had no time for it", async () => {
  const isOver = startTimeLimit(400);
  await wait(500);
  expect(isOver()).toBe(false);
});

test("waiting has an end too", async () => {
  const isOver = startTimeLimit(30);
  await wait(400);
  expect(isOver()).toBe(true);
});

test("what works without end is over", () => {
  const isOver = startTimeLimit(20);
  let looks = 0;
  while (!isOver()) looks++;
  expect(looks).toBeGreaterThan(0);
});
