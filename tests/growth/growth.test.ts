import { afterAll, describe, expect, test } from "vitest";
import { checkFiles, closeCheckers, filesOf } from "../provenance/marked-plan.ts";
import { countedSteps } from "./counted-steps.ts";
import { plansByShape, plansByWord } from "./plans-of-size.ts";
import { plansByProvenance } from "./provenance-shapes.ts";

afterAll(closeCheckers);

const limits = { timeMs: 60_000 };

/** What a plan takes from its text to its findings in their places, without the run itself, which has a clock of its own. */
async function stepsOf(text: string): Promise<number> {
  return countedSteps(async () => {
    const { plan } = await checkFiles(filesOf(text), undefined, { limits });
    expect(plan.findings.length).toBeGreaterThan(0);
    expect(plan.judgement.problems).toEqual([]);
  });
}

/** Between n and n log n: from 250 to 1,000, n log n grows as n to the power of 1.16. */
const mostExponent = 1.2;

describe("work grows no faster than n log n", () => {
  test.each([
    ["batteries", plansByWord.battery],
    ["scenarios", plansByWord.scenario],
    ["circuits", plansByWord.circuit],
    ["findings", plansByShape["lone circuits, everything wrong"]!],
    ["findings on calls that are written out", plansByShape["circuits written out"]!],
  ])("in %s", { timeout: 600_000 }, async (_, plan) => {
    // Whatever is worked out once for all plans is worked out here.
    await stepsOf(plan(10));
    const [few, many] = [await stepsOf(plan(250)), await stepsOf(plan(1_000))];
    expect(Math.log(many / few) / Math.log(4)).toBeLessThan(mostExponent);
  });
});

/** The same, and what the editor asks: the value at a place, and the edits of every fix. */
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
  test.each(Object.entries(plansByProvenance))("of %s", { timeout: 600_000 }, async (_, plan) => {
    await stepsToText(plan(10));
    const [few, many] = [await stepsToText(plan(250)), await stepsToText(plan(1_000))];
    expect(Math.log(many / few) / Math.log(4)).toBeLessThan(mostExponent);
  });
});
