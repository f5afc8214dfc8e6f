import { expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { numberWires } from "../schedules/wire-numbers.ts";
import { readWireNumbers } from "../schedules/wire-numbers-file.ts";
import { wireSchedule } from "../schedules/wire-schedule.ts";
import { wiresOf } from "../schedules/wires.ts";
import { describeDiff } from "./difference-in-words.ts";
import { planDifference } from "./plan-difference.ts";

const plan = ({
  left = 1100,
  on = "board",
  rest = "",
  size = "widthMm: 2000, heightMm: 800",
  trunking = "[{ leftMm: 0, topMm: 400 }, { leftMm: 2000, topMm: 400 }]",
} = {}) =>
  judge(
    runExample(`
build({ insulationC: 105, slackPercent: 0 });
const board = surface({ name: "Board", size: { ${size} } });
const wall = surface({ name: "Wall", size: { ${size} } });
channel({ name: "Trunking", on: board, path: ${trunking} });
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

/** A board with everything that has a place, in either unit: all distances are whole inches. */
const boards = (unit: "mm" | "in", rest = "") => {
  const lengths = (inches: Readonly<Record<string, number>>) =>
    Object.entries(inches)
      .map(
        ([name, value]) => `${name}${unit === "mm" ? "Mm" : "In"}: ${unit === "mm" ? 25.4 * value : value}`,
      )
      .join(", ");
  const metres = (name: string, feet: number) =>
    unit === "mm" ? `${name}M: ${0.3048 * feet}` : `${name}Ft: ${feet}`;
  const place = { left: 3, top: 1, width: 7, height: 3 };
  return judge(
    runExample(`
build({ insulationC: 105, slackPercent: 0 });
const board = surface({ name: "Board", size: { ${lengths({ width: 79, height: 31 })} },
  keepFree: [{ name: "hinge", ${lengths(place)} }], outOfReach: [{ ${lengths({ ...place, left: 60 })} }],
  fixtures: [{ fixture: "stove", ${lengths({ ...place, left: 70 })}, distanceMm: 50 }] });
const wall = surface({ name: "Wall", size: { ${lengths({ width: 79, height: 31 })} } });
const trunking = channel({ name: "Trunking", on: board, path: [{ ${lengths({ left: 1, top: 15.7 })} }, { ${lengths({ left: 78.3, top: 15.7 })} }],
  inside: { ${lengths({ width: 1.1, height: 2.3 })} } });
const loom = channel({ name: "Loom", way: "bundle", from: { on: board, ${lengths({ left: 78.3, top: 15.7 })} },
  to: { on: wall, ${lengths({ left: 1.3, top: 3.7 })} }, ${metres("length", 7)}, inside: { ${lengths({ diameter: 1.7 })} } });
const mast = channel({ name: "Mast", from: { on: wall, ${lengths({ left: 1.3, top: 3.7 })} }, ${metres("length", 17)} });
const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, ${lengths({ left: 4.1, top: 12.3 })} } });
const plus = busBar({ side: "positive", size: { ${lengths({ width: 5.1, height: 1.9 })} }, air: { ${lengths({ top: 0.7 })} },
  terminalsAt: { stud: { ${lengths({ left: 0.3, top: 0 })}, leaves: "up" } }, at: { on: board, ${lengths({ left: 43.3, top: 12.3 })} } });
cable({ name: "feed", from: house.positive, to: plus.stud, gauge: 4, protect: 60 });
circuit({ name: "fan", from: plus.stud, returnTo: house.negative, load: 4, oneWayFt: 3, gauge: 12, protect: 10 });
${rest}
circuit({ name: "masthead lamp", from: plus.stud, returnTo: house.negative, load: 1, gauge: 12, protect: 10,
  at: { endOf: mast, ${metres("beyond", 1)} } });`).records,
    [],
  );
};

test("values are compared by what they are, not by their unit", () => {
  const rows = rowsOf(boards("mm"), boards("in"), "Changes");
  expect(rows).toBeUndefined();
  expect(rowsOf(boards("mm"), boards("in"), "Moves")).toBeUndefined();
  const lid = boards("in", 'surface({ name: "Lid", size: { widthIn: 9, heightIn: 9 } });');
  const { added, changed, purchases } = planDifference(boards("mm"), lid);
  expect([added.map(({ subject }) => subject.name), changed, purchases]).toEqual([["Lid"], [], []]);
});

test("a channel with another course, and the lengths that follow it", () => {
  const lower = (topMm: number, rightMm = 2000) =>
    plan({ trunking: `[{ leftMm: 0, topMm: ${topMm} }, { leftMm: ${rightMm}, topMm: ${topMm} }]` });
  expect(rowsOf(lower(400), lower(450), "Moves")).toEqual([
    ["channel Trunking", "moved 50 mm, 2 lengths follow"],
  ]);
  expect(rowsOf(lower(400), lower(400, 1990), "Moves")).toEqual([
    ["channel Trunking", "has another course, no length follows"],
  ]);
});

test("lengths of conductors that pass around a part follow it, and each of several moves has its own", () => {
  const wall = (box: number, plus = 500) =>
    judge(
      runExample(`
build({ insulationC: 105, slackPercent: 0 });
const board = surface({ name: "Board", size: { widthMm: 1000, heightMm: 800 } });
const house = battery({ name: "house", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 100, topMm: 300 } });
const plus = busBar({ name: "plus", side: "positive", at: { on: board, leftMm: ${plus}, topMm: 300 } });
const box = busBar({ name: "box", size: { widthMm: 100, heightMm: 200 }, at: { on: board, leftMm: 250, topMm: ${box} } });
cable({ name: "feed", from: house.positive, to: plus.stud, gauge: 4, protect: 60 });
cable({ name: "other", from: plus.stud, to: box.stud, gauge: 4, lengthM: 2 });`).records,
      [],
    );
  // 400 mm across, and around 100 mm of the box.
  const moves = (box: number, plus?: number) => rowsOf(wall(500), wall(box, plus), "Moves");
  expect(moves(250)).toEqual([["bus bar box", "moved 250 mm, 1 length follows"]]);
  expect(moves(520)).toEqual([["bus bar box", "moved 20 mm, no length follows"]]);
  expect(moves(520, 530)).toEqual([
    ["bus bar plus", "moved 30 mm, 1 length follows"],
    ["bus bar box", "moved 20 mm, no length follows"],
  ]);
  expect(moves(250, 530)).toEqual([
    ["bus bar plus", "moved 30 mm, 1 length follows"],
    ["bus bar box", "moved 250 mm, 1 length follows"],
  ]);
});

test("of very many moves, the lengths that follow are those of the runs that end there", () => {
  const wall = (left: number) =>
    judge(
      runExample(`
build({ insulationC: 105, slackPercent: 0 });
const board = surface({ name: "Board", size: { widthMm: 9000, heightMm: 800 } });
channel({ name: "Trunking", on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 9000, topMm: 400 }] });
const house = battery({ name: "house", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 100, topMm: 300 } });
for (let at = 0; at < 110; at++) circuit({ name: "lamp " + at, from: house.positive, returnTo: house.negative, load: 0.1, gauge: 12, protect: 10,
  at: { on: board, leftMm: ${left} + 70 * at, topMm: 300 } });`).records,
      [],
    );
  const { moves } = planDifference(wall(300), wall(310));
  expect(moves.map(({ distanceMm, lengths }) => [distanceMm, lengths])).toEqual(
    Array.from({ length: 110 }, () => [expect.closeTo(10, 6), 1]),
  );
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
