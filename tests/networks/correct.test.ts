import { readdirSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, expect, test } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";
import { diskWorkspace } from "../../server/evaluate/files/disk-workspace.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";

// Small networks as a careful builder would make them: no rule may report anything for them. Adding a file adds a test.

const folder = fileURLToPath(new URL("./correct/", import.meta.url));
const plans = readdirSync(folder).filter((name) => name.endsWith(".ts"));

const checker = createChecker(diskWorkspace([pathToFileURL(folder).href]), { sandbox: sharedSandbox });
afterAll(() => checker.dispose());

/** Information that a correct network must get. 33 CFR 183.435(a): sixteen cells of LiFePO4 are 51.2 V. */
const deserved: Readonly<Record<string, readonly string[]>> = {
  "forty-eight-volts.ts": ["battery/fifty-volts"],
  // Their panels state no tested combination.
  "charging-relay.ts": ["protection/interrupting"],
  "two-banks-on-a-selector.ts": ["protection/interrupting"],
};

test("there are at least fifteen of them", () => expect(plans.length).toBeGreaterThanOrEqual(15));

test.each(plans)("%s", async (name) => {
  const outcome = await checker.check(pathToFileURL(`${folder}${name}`).href);
  if (outcome.state !== "checked") throw new Error(`${name} is ${outcome.state}`);
  const { judgement, findings } = outcome;
  const unexpected = findings.filter(({ finding }) => !deserved[name]?.includes(finding.rule));
  expect(unexpected.map(({ finding, message }) => `${finding.rule}: ${message}`)).toEqual([]);
  expect(findings.length - unexpected.length).toBe(deserved[name]?.length ?? 0);
  expect(judgement.network?.result.scenarios.map(({ state }) => state)).toEqual(
    judgement.network?.network.scenarios.map(() => "solved"),
  );
});
