import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { rules } from "../../library/rules/registry.ts";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { expectBuilt } from "../package/built.tester.ts";

const examples = fileURLToPath(new URL("../../examples", import.meta.url));
const folders = readdirSync(examples, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

const checker = createChecker(diskWorkspace([pathToFileURL(examples).href]), { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

test("every folder type-checks with its own settings", () => {
  expectBuilt();
  const settingsOf = (folder: string) => readFileSync(join(examples, folder, "tsconfig.json"), "utf8");
  for (const settings of new Set(folders.map(settingsOf)))
    expectToTypeCheck(
      settings,
      folders.filter((folder) => settingsOf(folder) === settings),
    );
});

/** One program for all folders with the same settings, since most of its time is the library's; TypeScript 7, for its speed. */
function expectToTypeCheck(settings: string, of: readonly string[]): void {
  const elsewhere = mkdtempSync(join(tmpdir(), "loomwright-examples-"));
  try {
    const include = of.map((folder) => join(examples, folder, "**/*.ts"));
    writeFileSync(join(elsewhere, "tsconfig.json"), JSON.stringify({ ...JSON.parse(settings), include }));
    const tsc = fileURLToPath(new URL("../../node_modules/@typescript/native/bin/tsc", import.meta.url));
    const words = [tsc, "-p", elsewhere, "--listFiles"];
    const { status, stdout } = spawnSync(process.execPath, words, { encoding: "utf8" });
    expect([status, stdout]).toEqual([0, expect.not.stringContaining("error TS")]);
    for (const folder of of) expect(stdout).toContain(join(examples, folder, "/"));
  } finally {
    rmSync(elsewhere, { recursive: true });
  }
}

describe("plans that a reader would learn from are clean", () => {
  test.each([
    ...["first-circuit/plan.ts", "library-bus/bus.ts", "river-launch/launch.ts", "rangers-hut/hut.ts"],
    ...["gatehouse", "tool-trailer", "ferry-shelter"].map((build) => `shared-builds/${build}/plan.ts`),
  ])("%s", async (file) => {
    const plan = await checked(file);
    expect(plan.findings.map(({ message }) => message)).toEqual([]);
    expect(plan.judgement.circuits.length).toBeGreaterThan(0);
  });

  test("the library bus has about twenty circuits", async () => {
    expect((await checked("library-bus/bus.ts")).judgement.circuits.length).toBeGreaterThanOrEqual(18);
  });
});

test("the northbound van: its fridge takes most in summer, and it is too late in one of its periods", async () => {
  const { findings } = await checked("northbound-van/van.ts");
  expect(findings.map(({ finding }) => [finding.rule, finding.subject])).toEqual([
    ["placement/shared-channel", "board trunking"],
    ["placement/shared-channel", "trunking to the floor"],
    ["placement/shared-channel", "under the floor"],
    ["energy/greatest-use", "fridge"],
    ["energy/runs-short", "Lapland in November"],
  ]);
});

test("the camper's draft has three runs that are wrong, each with a proven fix", async () => {
  const plan = await checked("camper-draft/camper.ts");
  expect(plan.findings.map(({ finding }) => `${finding.subject}: ${finding.rule}`).sort()).toEqual([
    "awning lights: protection/missing",
    "cabin heater: conductor/voltage-drop",
    "inverter: protection/above-conductor",
  ]);
  for (const finding of plan.findings) expect(await checker.provenFixes(plan, finding)).not.toEqual([]);
});

test("the faulty workshop breaks each rule once", async () => {
  const files = readdirSync(join(examples, "faulty-workshop")).filter((name) => name.endsWith(".ts"));
  const plans = await Promise.all(files.map((file) => checked(`faulty-workshop/${file}`)));
  const broken = plans
    .flatMap(({ findings }) => findings)
    .filter(({ finding }) => finding.accepted === undefined)
    .map(({ finding }) => finding.rule);
  expect(broken.sort()).toEqual(rules.map(({ id }) => id).sort());
});

test("every example file belongs to a plan", () => {
  const files = folders.flatMap((folder) =>
    readdirSync(join(examples, folder))
      .filter((name) => name.endsWith(".ts"))
      .map((name) => join(examples, folder, name)),
  );
  const without = files.filter((file) => checker.rootsOf(pathToFileURL(file).href).length === 0);
  expect(without.map((file) => dirname(file))).toEqual([]);
});

async function checked(file: string): Promise<CheckedPlan> {
  const outcome = await checker.check(pathToFileURL(join(examples, file)).href);
  if (outcome.state !== "checked") throw new Error(`${file} is ${outcome.state}`);
  return outcome;
}
