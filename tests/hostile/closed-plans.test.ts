import { describe, expect, test } from "vitest";
import { sampled } from "../setup/sampled.ts";
// @ts-expect-error the measurement is plain JavaScript, for the script that runs it as it is
import { afterAllAtOnce, afterFolderOf, afterOneByOne } from "../soak/closed-plans.mjs";

/**
 * The built server after few plans and after many, all closed again: heap after collection and array buffers of its largest thread.
 * `node tests/soak/closed-plans.mjs` measures the same with larger plans and more of them.
 */
describe("closed plans are freed", () => {
  // A retained plan of 150 circuits takes some 1.5 MB: thirty-five of them would double the memory of a few plans.
  test.each(
    sampled("ways to close plans", [
      ["opened one after another", () => afterOneByOne([5, 40], 150)],
      ["open at the same time", () => afterAllAtOnce([5, 40], 150)],
      ["all on disk in one folder", () => afterFolderOf([5, 40], 150)],
    ] as const),
  )(
    "%s",
    async (_, measure) => {
      const [few, many] = (await measure()) as [number, number];
      expect(few).toBeGreaterThan(10);
      expect(many / few).toBeLessThan(1.5);
      // Twice as long as usual: forty plans of 150 circuits are read, beside other tests and the stories in the editor.
    },
    240_000,
  );
});
