import { expect, it } from "vitest";
import { judge } from "../../../judge.ts";
import { runExample } from "../../../rules/page.tester.ts";
import { withKnownCurrent } from "../../../rules/rule.ts";

/** Two unconnected islands; `second` adds the fault in the second one. */
function plan(second: string) {
  return judge(
    runExample(`
build({ insulationC: 105 });
const one = battery({ name: "one", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
circuit({ name: "sound lamp", from: one.positive, load: 4, oneWayFt: 6, gauge: 12, protect: 5 });
const two = battery({ name: "two", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
circuit({ name: "other lamp", from: two.positive, load: 4, oneWayFt: 6, gauge: 12, protect: 5 });
${second}`).records,
    [],
  );
}

const told = ({ circuits }: ReturnType<typeof plan>) =>
  withKnownCurrent(circuits).map(({ circuit }) => circuit.name);

/** The least that flows in each run whose greatest current is unknown, A. */
const leastIn = ({ circuits }: ReturnType<typeof plan>) =>
  circuits.flatMap(({ circuit }) => (circuit.loadIsLeast ? [[circuit.name, circuit.loadA]] : []));

it("tells the worst of every island that was solved", () => {
  expect(told(plan(""))).toEqual(["sound lamp", "other lamp"]);
});

it("tells no worst of an island in which a source is joined across itself, and still of the others", () => {
  const judged = plan(`
const bus = busBar({ name: "bus" });
cable({ name: "first half", from: two.positive, to: bus.stud, lengthFt: 3, gauge: 6, protect: 60 });
cable({ name: "second half", from: bus.stud, to: two.negative, lengthFt: 3, gauge: 6 });`);
  expect(judged.findings.map(({ rule }) => rule)).toContain("network/shorted");
  expect(told(judged)).toEqual(["sound lamp"]);
});

it("tells no worst of an island that has no operating point in a scenario that lasts", () => {
  const judged = plan(`
circuit({ name: "far heater", from: two.positive, loadW: 2_000, oneWayFt: 200, gauge: 12, protect: 40 });`);
  expect(judged.findings.map(({ rule }) => rule)).toContain("voltage/collapse");
  expect(told(judged)).toEqual(["sound lamp"]);
  // The lamp as it is stated; the heater's watts at the nominal voltage, 2,000 W / 12 V.
  expect(leastIn(judged)).toEqual([
    ["other lamp", 4],
    ["far heater", expect.closeTo(2_000 / 12, 9)],
  ]);
});
