import { expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { numberWires } from "../schedules/wire-numbers.ts";
import { readWireNumbers } from "../schedules/wire-numbers-file.ts";
import { wireSchedule } from "../schedules/wire-schedule.ts";
import { wiresOf } from "../schedules/wires.ts";
import { describeDiff } from "./difference-in-words.ts";
import { planDifference } from "./plan-difference.ts";

const plan = ({ left = 1100, on = "board", rest = "", size = "widthMm: 2000, heightMm: 800" } = {}) =>
  judge(
    runExample(`
build({ insulationC: 105, slackPercent: 0 });
const board = surface({ name: "Board", size: { ${size} } });
const wall = surface({ name: "Wall", size: { ${size} } });
channel({ name: "Trunking", on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 2000, topMm: 400 }] });
channel({ name: "Hole", way: "hole", grommet: true, from: { on: board, leftMm: 2000, topMm: 400 },
  to: { on: wall, leftMm: 0, topMm: 400 }, lengthM: 0.02 });
const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 100, topMm: 300 } });
const plus = busBar({ side: "positive", at: { on: ${on}, leftMm: ${left}, topMm: 300 } });
cable({ name: "feed", from: house.positive, to: plus.stud, gauge: 4, protect: 60 });
circuit({ name: "lamp", from: plus.stud, returnTo: house.negative, load: 4, gauge: 12, protect: 10,
  at: { on: board, leftMm: 1900, topMm: 300 } });
circuit({ name: "fan", from: plus.stud, returnTo: house.negative, load: 4, oneWayM: 1, gauge: 12, protect: 10 });
${rest}`).records,
    [],
  );

const labels = { before: "then", after: "now" };
const rowsOf = (before: ReturnType<typeof plan>, after: ReturnType<typeof plan>, title: string) => {
  const compared = {
    state: "compared",
    path: "a.ts",
    movedFrom: undefined,
    difference: planDifference(before, after),
  };
  const { blocks } = describeDiff(compared as never, labels, { all: true });
  return blocks.find((block) => block.title === title)?.rows;
};

test("a part that is moved, and the lengths that follow it; a stated length does not", () => {
  expect(rowsOf(plan(), plan({ left: 1180 }), "Moves")).toEqual([
    ["bus bar plus", "moved 80 mm, 2 lengths follow"],
  ]);
  expect(rowsOf(plan(), plan({ left: 1180 }), "Changes")).toEqual([
    ["bus bar plus", "from the left edge", "1,100 mm", "1,180 mm"],
    ["cable feed", "length", "1.2 m", "1.28 m"],
    ["circuit lamp", "length of the positive", "1 m", "0.92 m"],
  ]);
  expect(rowsOf(plan(), plan(), "Moves")).toBeUndefined();
});

test("on boards in inches, places are in inches; the unit of boards alone is no change of a place", () => {
  const inches = (left: number) => plan({ left, size: "widthIn: 80, heightIn: 32" });
  expect(rowsOf(inches(1016), inches(1041.4), "Moves")).toEqual([
    ["bus bar plus", "moved 1 in, 2 lengths follow"],
  ]);
  expect(rowsOf(inches(1016), inches(1041.4), "Changes")![0]).toEqual([
    ...["bus bar plus", "from the left edge", "40 in", "41 in"],
  ]);
  const changed = rowsOf(plan(), inches(1100), "Changes")!;
  expect(changed[0]).toEqual(["surface Board", "width", "2,000 mm", "80 in"]);
  expect(changed.filter(([item]) => item === "bus bar plus")).toEqual([]);
});

test("a part on another surface has no distance", () => {
  expect(rowsOf(plan(), plan({ on: "wall", left: 100 }), "Moves")).toEqual([
    ["bus bar plus", "moved to another place, 2 lengths follow"],
  ]);
});

test("surfaces and channels come, go and change by their names", () => {
  const rest = 'surface({ name: "Lid", size: { widthMm: 300, heightMm: 200 }, orientation: "ceiling" });';
  expect(rowsOf(plan(), plan({ rest }), "Changes")).toEqual([
    ["surface Lid", "added", "", "width 300 mm, height 200 mm, orientation ceiling"],
  ]);
});

test("the wire schedule names the channels on the way of each wire", () => {
  const judged = plan({ on: "wall", left: 100 });
  const table = wireSchedule(
    numberWires(wiresOf(judged), readWireNumbers(undefined)).wires,
    judged.model.build.bench,
  );
  const at = table.columns.findIndex(({ id }) => id === "way");
  expect(table.rows.map((row) => row[at])).toEqual([
    "Trunking, Hole",
    "Hole, Trunking",
    "Trunking",
    null,
    null,
  ]);
});
