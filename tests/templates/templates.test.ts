import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { planCompiler } from "../types/compiler.ts";

const folder = new URL("../../library/templates/", import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), "utf8");
const listed: readonly { name: string; title: string; detail: string }[] = JSON.parse(
  textOf("templates.json"),
);
const plans = readdirSync(folder).filter((file) => file.endsWith(".ts"));

test("each template is listed, with its words", () => {
  expect(listed.map(({ name }) => `${name}.ts`).sort()).toEqual(plans.sort());
  for (const { title, detail } of listed) expect(title.length * detail.length).toBeGreaterThan(0);
});

test.each(plans)("%s compiles, and the check finds nothing in it, not even information", async (file) => {
  expect(planCompiler().diagnostics(textOf(file))).toEqual([]);
  const checker = createChecker(diskWorkspace([folder.href]), { sandbox: sharedSandbox });
  try {
    const plan = await checker.check(new URL(file, folder).href);
    if (plan.state !== "checked") throw new Error("half typed");
    expect(plan.findings.map(({ message }) => message)).toEqual([]);
    const { network } = plan.judgement;
    if (file === "circuit.ts") return;
    // Scenarios of its own, none of them built in, and currents in each.
    expect(
      network?.network.scenarios.filter(({ record }) => record !== undefined).length,
    ).toBeGreaterThanOrEqual(3);
    expect(network?.result.scenarios.every(({ state }) => state === "solved")).toBe(true);
  } finally {
    await checker.dispose();
  }
});
