import { afterAll, describe, expect, test } from "vitest";
import { checkFiles, closeCheckers, filesOf } from "../provenance/marked-plan.ts";
import { everyCase, sampled } from "../setup/sampled.ts";
import { countedSteps } from "./counted-steps.ts";
import { type PlanOfSize, plansByShape, plansByWord } from "./plans-of-size.ts";
import { plansByProvenance } from "./provenance-shapes.ts";

afterAll(closeCheckers);

const limits = { timeMs: 60_000 };

/** The steps of a plan from its text to its findings in their places, except the run itself, which is timed. */
async function stepsOf(text: string): Promise<number> {
  return countedSteps(async () => {
    const { plan } = await checkFiles(filesOf(text), undefined, { limits });
    expect(plan.findings.length).toBeGreaterThan(0);
    expect(plan.judgement.problems).toEqual([]);
  });
}

/** Between n and n log n: n log n itself grows as n to the power of 1.19 from 100 to 400, and of 1.14 from 750 to 3,000. */
const mostExponent = 1.2;

async function exponentOf(plan: PlanOfSize, few: number, many: number): Promise<number> {
  // Does the work here that is done once for all plans.
  await stepsOf(plan(10));
  const [less, more] = [await stepsOf(plan(few)), await stepsOf(plan(many))];
  return Math.log(more / less) / Math.log(many / few);
}

describe("work grows no faster than n log n up to 3,000", () => {
  test.each(
    sampled("growth up to 3,000", [
      ["batteries", plansByWord.battery],
      ["scenarios", plansByWord.scenario],
      ["findings", plansByShape["lone circuits, everything wrong"]!],
    ] as const),
  )("in %s", { timeout: 600_000 }, async (_, plan) => {
    expect(await exponentOf(plan, 750, 3_000)).toBeLessThan(mostExponent);
  });
});

/** The same, and the editor's questions: the value at a position, and the edits of every fix. */
async function stepsToText(text: string): Promise<number> {
  return countedSteps(async () => {
    const files = filesOf(text);
    const { plan } = await checkFiles(files, undefined, { limits });
    expect(plan.findings.length).toBeGreaterThan(0);
    expect(plan.at(plan.root, files.get(plan.root)!.lastIndexOf("protect"))?.path).toEqual(["protect"]);
    for (const { fixes } of plan.judgement.findings) for (const fix of fixes) plan.editsOf(fix);
  });
}

describe("the way back to the text grows no faster", () => {
  test.each(sampled("growth of the way back to the text", Object.entries(plansByProvenance)))(
    "of %s",
    { timeout: 600_000 },
    async (_, plan) => {
      await stepsToText(plan(10));
      const [few, many] = [await stepsToText(plan(250)), await stepsToText(plan(1_000))];
      expect(Math.log(many / few) / Math.log(4)).toBeLessThan(mostExponent);
    },
  );
});

/**
 * In these shapes each conductor is on the path of many others. The paths themselves are results, so they grow with the square of
 * the count. A builder has a handful in a row. The bound shows that growth is no worse.
 */
const quadraticShapes = new Set([
  // From each end of a channel, every other one within reach on its board is a way.
  "channels on one board",
  "batteries that short one another",
  "a chain of fused cables",
  "a ladder",
  "a ring of bus bars",
  "shunts in a row",
]);

/**
 * The gate tests a share of the functions at a few hundred. A run of every case tests every function at 500 and 2,000 and every
 * shape at 250 and 1,000, which takes minutes, and prints the exponents.
 */

describe("work grows no faster than n log n", () => {
  test.each(sampled("growth in words up to 400", Object.entries(plansByWord)))(
    "in %s",
    { timeout: 600_000 },
    async (name, plan) => {
      const exponent = await (everyCase ? exponentOf(plan, 500, 2_000) : exponentOf(plan, 100, 400));
      print(exponent, name);
      expect(exponent).toBeLessThan(mostExponent);
    },
  );

  test.each(everyCase ? Object.entries(plansByShape) : [])(
    "in %s",
    { timeout: 600_000 },
    async (name, plan) => {
      const exponent = await exponentOf(plan, 250, 1_000);
      print(exponent, name);
      expect(exponent).toBeLessThan(quadraticShapes.has(name) ? 2.05 : mostExponent);
    },
  );
});

function print(exponent: number, name: string): void {
  if (everyCase) process.stdout.write(`${exponent.toFixed(2)}  ${name}\n`);
}
