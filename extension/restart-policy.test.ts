import { expect, test } from "vitest";
import { createRestartPolicy } from "./restart-policy.ts";

const second = 1_000;
const minute = 60 * second;

test.each([
  { name: "the first three ends", endsAtMs: [0, 1, 2], restarts: [true, true, true] },
  {
    name: "a fourth, just inside three minutes of the first",
    endsAtMs: [0, 1, 2, 3 * minute - 1],
    restarts: [true, true, true, false],
  },
  {
    name: "a fourth, three minutes after the first",
    endsAtMs: [0, 1, 2, 3 * minute],
    restarts: [true, true, true, true],
  },
  {
    name: "one end every two minutes, for ever",
    endsAtMs: [0, 2, 4, 6, 8, 10].map((minutes) => minutes * minute),
    restarts: [true, true, true, true, true, true],
  },
])("restarts after $name: $restarts", ({ endsAtMs, restarts }) => {
  let now = 0;
  const policy = createRestartPolicy(() => now);
  const answers = endsAtMs.map((at) => {
    now = at;
    return policy.mayRestart();
  });
  expect(answers).toEqual(restarts);
});
