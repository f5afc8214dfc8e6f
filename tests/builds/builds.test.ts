import { readdirSync, readFileSync } from "node:fs";
import { afterAll, describe, expect, test } from "vitest";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import type { Uri } from "../../server/evaluate/workspace.ts";
import { applyEdits } from "../fixes/apply-edits.ts";
import { folder, workspaceOf } from "../provenance/marked-plan.ts";
import { sampled } from "../setup/sampled.ts";
import { disagreements, readVerdict } from "./verdict.ts";

/**
 * Whole builds and the verdicts that an electrician gives on them. `clean`: as a good installer makes them. `faulty`: one
 * realistic mistake each. `drafts`: as a hasty beginner writes them, for the repairs. Adding a file adds a test. `verdict.ts`
 * explains the comments in which a plan states its verdict.
 */
const files = new Map<Uri, string>();
const checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

describe("clean builds", () => {
  const plans = plansIn("clean");
  test("there are at least thirty", () => expect(plans.length).toBeGreaterThanOrEqual(30));
  test.each(plans)("%s", judged);
});

describe("builds with one mistake", () => {
  const plans = plansIn("faulty");
  test("there are at least sixty", () => expect(plans.length).toBeGreaterThanOrEqual(60));
  test.each(plans)("%s", async (name, text) => {
    const { expected, because } = readVerdict(text);
    expect({ expected: expected.length, because }).toEqual({
      expected: 1,
      because: expect.stringMatching(/./),
    });
    await judged(name, text);
  });
});

/** The labels of LiFePO4 batteries of 4, 8 and 16 cells, which others label 12, 24 and 48 V. */
const labelsV: Readonly<Record<string, number>> = { 12: 12.8, 24: 25.6, 48: 51.2 };

test("the label of a lithium battery changes no verdict", async () => {
  const lithium = /chemistry: "LiFePO4",(?:\s*nominalV: (\d+),)?/g;
  const differences: string[] = [];
  const plans = [...plansIn("clean"), ...plansIn("faulty")].filter(([, text]) => text.search(lithium) >= 0);
  for (const [name, text] of plans) {
    const [, systemV] = /voltage: (\d+)/.exec(text)!;
    // A battery of a string states its own voltage.
    const other = text.replace(
      lithium,
      (_, statedV?: string) => `chemistry: "LiFePO4", nominalV: ${labelsV[statedV ?? systemV!]},`,
    );
    const before = verdicts.get(name) ?? verdictOf(await check(name, text));
    const after = verdictOf(await check(name, other));
    if (before !== after) differences.push(`${name}: ${before} / ${after}`);
  }
  expect(differences).toEqual([]);
  expect(plans.length).toBeGreaterThanOrEqual(30);
});

/** The findings of each build as it is written, one of the first checks of this file. */
const verdicts = new Map<string, string>();

function verdictOf({ findings }: CheckedPlan): string {
  return findings
    .map(({ finding, subjects }) => `${finding.severity} ${finding.rule} at ${subjects}`)
    .join(", ");
}

describe("first drafts", () => {
  const plans = plansIn("drafts");
  test("there are at least thirty", () => expect(plans.length).toBeGreaterThanOrEqual(30));
  test.each(plans)("%s", async (name, text) => {
    const { notMetYet } = readVerdict(text);
    expect((await check(name, text)).findings.filter(isSerious)).not.toEqual([]);
    const problems = await repairProblems(name, text);
    if (notMetYet === undefined) expect(problems).toEqual([]);
    else expect(problems, `met now: remove "Not met yet" from ${name}`).not.toEqual([]);
  });
});

test("the repairs of builds with one mistake leave nothing that has a repair", async () => {
  const problems: string[] = [];
  for (const [name, text] of sampled("repairs of builds with one mistake", plansIn("faulty")))
    problems.push(...(await repairProblems(name, text)).map((problem) => `${name} ${problem}`));
  expect(problems).toEqual([]);
});

/** A plan's findings agree with the verdict that its comments state, or disagree and the comments say so. */
async function judged(name: string, text: string): Promise<void> {
  const verdict = readVerdict(text);
  const plan = await check(name, text);
  verdicts.set(name, verdictOf(plan));
  const found = disagreements(verdict, plan);
  if (verdict.notMetYet === undefined) expect(found).toEqual([]);
  else expect(found, `met now: remove "Not met yet" from ${name}`).not.toEqual([]);
}

/** The defects of a plan's repair: it leaves a finding that has a repair, or changes something the second time. */
async function repairProblems(name: string, text: string): Promise<string[]> {
  const draft = await check(name, text);
  const repair = await checker.fixAll(draft);
  const repaired = repair ? await check(name, applyEdits(files, repair.edits).get(uriOf(name))!) : draft;
  const problems: string[] = [];
  for (const finding of repaired.findings.filter(isSerious)) {
    const fixes = await checker.provenFixes(repaired, finding);
    if (fixes.some(({ kind }) => kind === "repair")) problems.push(`left: ${finding.message}`);
  }
  const again = await checker.fixAll(repaired);
  for (const { expected, newText } of again?.edits ?? [])
    problems.push(`changed the second time: ${expected} → ${newText}`);
  return problems;
}

async function check(name: string, text: string): Promise<CheckedPlan> {
  files.set(uriOf(name), text);
  const outcome = await checker.check(uriOf(name));
  if (outcome.state !== "checked") throw new Error(`${name} is ${outcome.state}`);
  return outcome;
}

function isSerious({ finding }: CheckedPlan["findings"][number]): boolean {
  return (finding.severity === "error" || finding.severity === "warning") && finding.accepted === undefined;
}

function uriOf(name: string): Uri {
  return `${folder}/${name}`;
}

function plansIn(kind: string): (readonly [name: string, text: string])[] {
  const at = new URL(`./${kind}/`, import.meta.url);
  return readdirSync(at).map((name) => [`${kind}/${name}`, readFileSync(new URL(name, at), "utf8")] as const);
}
