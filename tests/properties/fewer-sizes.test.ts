import { readdirSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, expect, test } from "vitest";
import { sizesAbove } from "../../library/analysis/made-sizes.ts";
import { fewerSizes } from "../../library/documents/fewer-sizes.ts";
import { type Judgement, judge } from "../../library/judge.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";

/* For each of our plans: the suggestion is written into the records, and judged again separately. */

const folders = ["examples/", "tests/networks/correct/"].map((path) =>
  fileURLToPath(new URL(`../../${path}`, import.meta.url)),
);
const plans = folders.flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.endsWith("endless.ts"))
    .map((name): [name: string, uri: string] => [name, pathToFileURL(`${folder}${name}`).href]),
);
const checker = createChecker(diskWorkspace(folders.map((folder) => pathToFileURL(folder).href)), {
  sandbox: sharedSandbox,
});
afterAll(() => checker.dispose());

let suggestions = 0;

test.each(plans)("%s", async (name, uri) => {
  const plan = await checker.check(uri);
  if (plan.state !== "checked") throw new Error(`${name} is ${plan.state}`);
  const { records, judgement } = plan;
  let asked = 0;
  const found = fewerSizes(records, judgement, (changed) => {
    asked++;
    return judge(changed, [], judgement);
  });
  expect(asked).toBeLessThanOrEqual(160);
  if (!found) return;
  suggestions++;
  const changed = records.map((record, index): PlanRecord => {
    const change = found.changes.find((one) => one.record === index);
    if (!change) return record;
    const { from, to } = change;
    expect([sizesAbove(to, from) > 0, to.system, to.parallel]).toEqual([true, from.system, from.parallel]);
    const size = to.system === "awg" ? { gauge: to.awg } : { mm2: to.mm2 };
    return { ...record, input: { ...(record.input as object), ...size } };
  });
  const after = judge(changed, []);
  expect(sizesIn(after).size).toBe(found.keeps.length);
  expect(found.keeps.length).toBeLessThan(sizesIn(judgement).size);
  expect(found.extraCopperKg).toBeGreaterThan(0);
  const before = new Set(keysOf(judgement));
  expect(keysOf(after).filter((key) => !before.has(key))).toEqual([]);
  // No fuse or breaker changes.
  const devices = ({ circuits }: Judgement) =>
    circuits.map(({ circuit }) => [circuit.record, circuit.protection, circuit.protectionFarEnd]);
  expect(devices(after)).toEqual(devices(judgement));
});

test("there is something to suggest for most of the example builds", () =>
  expect(suggestions).toBeGreaterThan(5));

function sizesIn({ circuits }: Judgement): ReadonlySet<string> {
  return new Set(
    circuits.map(({ circuit: { conductor } }) =>
      conductor.system === "awg" ? `${conductor.awg} AWG` : `${conductor.mm2} mm²`,
    ),
  );
}

function keysOf({ findings }: Judgement): readonly string[] {
  return findings.map(({ rule, severity, at }) => JSON.stringify([rule, severity, at]));
}
