import fc from "fast-check";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { type Checker, createChecker } from "../../server/evaluate/checker.ts";
import { sharedSandbox } from "../../server/evaluate/shared-sandbox.tester.ts";
import { sampledRuns } from "../setup/sampled.ts";
import { closeCheckers, folder, workspaceOf } from "./marked-plan.ts";

/*
 * Parts first, then statements that need only them: in any order of these, the plan describes the same build, with the same
 * findings. Parts may also be reordered among themselves.
 */

const head =
  'import { battery, build, busBar, cable, circuit, disconnect, fusePanel, inverter, motor, scenario, shunt } from "loomwright";';

const parts = [
  'const house = battery({ chemistry: "LiFePO4", capacityAh: 200, maxDischargeA: 60 });',
  'const starter = battery({ chemistry: "AGM", capacityAh: 70 });',
  "const bus = busBar({ ratedA: 60, studs: 3 });",
  "const minus = busBar({});",
  "const cutOff = disconnect({ ratedA: 40 });",
  "const meter = shunt({ ratedA: 500 });",
  "const panel = fusePanel({ positions: 1, ratedA: 30, branchRatedA: 10 });",
  "const galley = inverter({ continuousW: 800 });",
  "const windlass = motor({ runningA: 40, startingA: 160 });",
];

const rest = [
  "build({ voltage: 12, insulationC: 105 });",
  'cable({ name: "a", from: house.positive, to: cutOff.line, lengthM: 1, gauge: 6, protect: 100 });',
  'cable({ name: "b", from: cutOff.load, to: bus.stud, lengthM: 1, gauge: 8 });',
  'cable({ name: "c", from: bus.stud, to: panel.feed, lengthM: 6, gauge: 10, protect: { ratingA: 30, distanceIn: 30 } });',
  'cable({ name: "d", from: minus.stud, to: meter.systemSide, lengthM: 1, gauge: 6 });',
  'cable({ name: "e", from: meter.batterySide, to: house.negative, lengthM: 1, gauge: 6 });',
  'cable({ name: "f", from: panel.negative, to: minus.stud, lengthM: 6, gauge: 10 });',
  'cable({ name: "g", from: starter.positive, to: house.positive, lengthM: 3, gauge: 4 });',
  'cable({ name: "h", from: starter.negative, to: house.negative, lengthM: 3, gauge: 4 });',
  'circuit({ name: "i", from: panel.branch, load: 12, oneWayM: 5, gauge: 16, protect: 15 });',
  'circuit({ name: "j", from: panel.branch, load: 5, oneWayM: 9, gauge: 16, protect: 5 });',
  'circuit({ name: "k", from: bus.stud, returnTo: minus.stud, to: galley, oneWayM: 2, gauge: 8, protect: 100 });',
  'circuit({ name: "l", from: bus.stud, returnTo: minus.stud, to: windlass, oneWayM: 5, gauge: 6, protect: 60 });',
  'circuit({ name: "m", load: 9, oneWayFt: 20, gauge: 16, protect: 20 });',
  'scenario({ name: "Weighing anchor", starting: [windlass], engine: true });',
  'scenario({ name: "Night", off: [windlass], bankV: 12.4 });',
];

let checker: Checker;
const files = new Map<string, string>();
const uri = `${folder}/plan.ts`;

beforeAll(() => {
  checker = createChecker(workspaceOf(files), { sandbox: sharedSandbox });
});
afterAll(async () => {
  await checker.dispose();
  await closeCheckers();
});

it("finds the same in whatever order independent statements stand", { timeout: 60_000 }, async () => {
  const wanted = await found([...parts, ...rest]);
  // A plan with few faults would prove little.
  expect(new Set(wanted.map((line) => line.split(" ")[1])).size).toBeGreaterThan(6);
  await fc.assert(
    fc.asyncProperty(fc.shuffledSubarray(rest, { minLength: rest.length }), async (then) => {
      expect(await found([...parts, ...then])).toEqual(wanted);
    }),
    { numRuns: sampledRuns(30) },
  );
});

it("finds the same in whatever order parts stand, which are named in that order", {
  timeout: 60_000,
}, async () => {
  // "The battery house and the battery starter" or the other way round: the words are the same.
  const words = (lines: readonly string[]) =>
    lines
      .map((line) =>
        line
          .toLowerCase()
          .split(/[ ,:.]+/)
          .sort()
          .join(" "),
      )
      .sort();
  const wanted = words(await found([...parts, ...rest]));
  await fc.assert(
    fc.asyncProperty(fc.shuffledSubarray(parts, { minLength: parts.length }), async (first) => {
      expect(words(await found([...first, ...rest]))).toEqual(wanted);
    }),
    { numRuns: sampledRuns(30) },
  );
});

async function found(statements: readonly string[]): Promise<readonly string[]> {
  files.set(uri, `${head}\n${statements.join("\n")}\n`);
  checker.changedOnDisk([uri]);
  const plan = await checker.check(uri);
  if (plan.state !== "checked") throw new Error("incomplete");
  expect(plan.judgement.problems).toEqual([]);
  expect(plan.judgement.model.invalid).toEqual([]);
  return plan.findings.map((placed) => describePlaced(placed, plan)).sort();
}

/** The finding with its statement and the text that it covers, its message and its proposals. */
function describePlaced(
  { finding, place, message }: CheckedPlan["findings"][number],
  plan: CheckedPlan,
): string {
  const text = files.get(place.uri) ?? "";
  const line = text.slice(text.lastIndexOf("\n", place.start) + 1).split("\n")[0];
  const fixes = finding.fixes.map((fix) => `${fix.title} ${plan.editsOf(fix)?.edits.length}`).join("; ");
  return [finding.severity, finding.rule, text.slice(place.start, place.end), line, message, fixes].join(" ");
}
