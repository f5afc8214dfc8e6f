import { afterAll, beforeAll, expect, test } from "vitest";
import { findingsWithFixesTried } from "../evaluate/fixes/proofs-in-time.ts";
import { mostShownOfRule } from "../evaluate/shown-findings.ts";
import { checkPlans } from "./check-plans.ts";
import type { CheckedPlans } from "./check-result.ts";
import { CommandTester, samplePlans } from "./command.tester.ts";
import { jsonReport } from "./json-report.ts";
import { jsonReportSchema } from "./report-schema.ts";
import { sarifReport } from "./sarif-report.ts";
import { textReport } from "./text-report.ts";

const circuits = 3_000;
const rule = "conductor/voltage-drop";

let project: CommandTester;
let checked: CheckedPlans;

beforeAll(async () => {
  project = new CommandTester();
  const lamps = Array.from(
    { length: circuits },
    (_, index) => `circuit({ name: "lamp ${index}", load: 4, oneWayFt: 80, gauge: 14, protect: 5 });`,
  );
  project.write("plan.ts", samplePlans.head + lamps.join("\n"));
  checked = await checkPlans({ names: [], cwd: project.folder, fresh: true, progress: () => undefined });
}, 120_000);
afterAll(() => project.dispose());

test("text shows some of one rule, and how many more there are", () => {
  const text = textReport(checked, { colour: false, progress: false });
  expect(text.match(new RegExp(` · ${rule}$`, "gm"))).toHaveLength(mostShownOfRule);
  expect(text).toContain(`And 2,900 more of ${rule} in plan.ts; --format json lists all.`);
  expect(text).toContain("3,000 warnings");
});

test("a finding whose fixes were not tried says so", () => {
  const [plan] = checked.plans;
  const tried = plan!.findings.filter(({ fixes }) => fixes.length > 0);
  expect(tried).toHaveLength(findingsWithFixesTried({ records: Array(circuits + 1) }));
  expect(tried.every(({ fixesTried }) => fixesTried === undefined)).toBe(true);
  const untried = plan!.findings.filter(({ fixesTried }) => fixesTried === false);
  expect(untried).toHaveLength(circuits - tried.length);

  const text = textReport(checked, { colour: false, progress: false });
  expect(text.match(/^ {2}fix {2}/gm)).toHaveLength(tried.length);
  expect(text.match(/^ {2}fixes {2}not tried for this one, see below$/gm)).toHaveLength(
    mostShownOfRule - tried.length,
  );
  expect(text).toMatch(/^Fixes of 2,987 findings were not tried, /m);
});

test("JSON and SARIF have every finding, and which fixes were not tried", () => {
  const { plans } = jsonReportSchema.parse(JSON.parse(jsonReport(checked)));
  const untried = plans[0]!.findings.filter(({ fixesTried }) => fixesTried === false);
  expect([plans[0]!.findings.length, untried.length]).toEqual([circuits, 2_987]);
  const { results } = JSON.parse(sarifReport(checked)).runs[0];
  expect(results).toHaveLength(circuits);
  expect(
    results.filter(
      ({ properties }: { properties: { fixesTried?: boolean } }) => properties.fixesTried === false,
    ),
  ).toHaveLength(2_987);
});

test("the more calls a plan makes, the fewer findings get their fixes tried, and one always does", () => {
  const tried = (records: number) => findingsWithFixesTried({ records: Array(records) });
  expect([0, 1, 200, 201, 4_000, 20_000, 1_000_000].map(tried)).toEqual([200, 200, 200, 199, 10, 2, 1]);
});
