import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { CheckedPlan, PlacedFinding } from "../../server/evaluate/checked-plan.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { type HostilePlan, hostilePlans, soundPlan } from "./hostile-plans.ts";

const folder = mkdtempSync(join(tmpdir(), "loomwright-hostile-"));
const inside = join(folder, "workspace");
const planFile = join(inside, "plan.ts");
const planUri = pathToFileURL(planFile).href;
const workspace = diskWorkspace([pathToFileURL(inside).href]);
const checker = createChecker(workspace, { limits: { timeMs: 300 } });
const patientChecker = createChecker(workspace, { limits: { timeMs: 60_000, records: 1_000 } });

beforeAll(() => {
  mkdirSync(join(inside, "lamps"), { recursive: true });
  writeFileSync(join(folder, "outside.ts"), 'export const secret = "not for plans";\n');
  symlinkSync(join(folder, "outside.ts"), join(inside, "link.ts"));
  symlinkSync(folder, join(inside, "linked"));
});

afterAll(async () => {
  await Promise.all([checker.dispose(), patientChecker.dispose()]);
  rmSync(folder, { recursive: true });
});

async function check({ text, patient }: Pick<HostilePlan, "text" | "patient">): Promise<CheckedPlan> {
  writeFileSync(planFile, text);
  const by = patient ? patientChecker : checker;
  by.changedOnDisk([planUri]);
  const outcome = await by.check(planUri);
  if (outcome.state !== "checked") throw new Error(`the plan was ${outcome.state}`);
  return outcome;
}

describe("a hostile plan", () => {
  it.each(hostilePlans)("$name", async (plan) => {
    const checked = await check(plan);
    const found = checked.findings.filter(({ finding }) => finding.rule === plan.finding);
    const told = found.find(({ message }) => message.includes(plan.says));
    expect(told, `found: ${found.map(({ message }) => message).join("\n")}`).toBeDefined();
    if (told) expect(textUnder(told, plan)).toBe(plan.on);
    expect(
      checked.judgement.circuits.map(({ circuit }) => circuit.name).filter((name) => name === "good"),
    ).toHaveLength(plan.circuits);
  });
});

describe("after all hostile plans", () => {
  it("there is no file but those that were there", () => {
    expect(readdirSync(inside).sort()).toEqual(["lamps", "link.ts", "linked", "plan.ts"]);
    expect(readdirSync(folder).sort()).toEqual(["outside.ts", "workspace"]);
  });

  it("a sound plan is checked as ever", async () => {
    const { findings, judgement } = await check({ text: soundPlan });
    expect(findings).toEqual([]);
    expect(judgement.circuits).toHaveLength(1);
  });
});

/** The text under the finding, cut to the expected length. */
function textUnder({ place }: PlacedFinding, { text, on }: HostilePlan): string {
  expect(place.uri).toBe(planUri);
  return text.slice(place.start, Math.min(place.end, place.start + on.length));
}
