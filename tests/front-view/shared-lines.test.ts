import { describe, expect, test } from "vitest";
import type { Point } from "../../library/documents/diagram/graph.ts";
import { drawFrontViews } from "../../library/documents/front-view/draw-front-view.ts";
import { laneCount, lanesOf } from "../../library/documents/front-view/lanes.ts";
import { nearestPx, sharedLines } from "../../library/documents/front-view/shared-lines.ts";
import { judge } from "../../library/judge.ts";
import { runExample } from "../../library/rules/page.tester.ts";

/** A line through points, written "x y". */
const line = (...points: readonly string[]): readonly Point[] =>
  points.map((point) => {
    const [x, y] = point.split(" ").map(Number) as [number, number];
    return { x, y };
  });
const conductor = (...points: readonly string[]) => ({ lines: [line(...points)], wires: 1 });
const found = (...conductors: Parameters<typeof sharedLines>[0]) =>
  sharedLines(conductors).map(({ piece, wires }) => [
    wires,
    ...piece.map(({ x, y }) => `${Math.round(x)} ${Math.round(y)}`),
  ]);

describe("lines that several conductors share", () => {
  test("one conductor shares none, also where it comes back", () => {
    expect(found(conductor("0 0", "100 0", "100 50", "100 0", "20 0"))).toEqual([]);
  });

  test("two on each other, in either direction, where both are", () => {
    expect(found(conductor("0 0", "100 0"), conductor("160 0", "40 0", "40 80"))).toEqual([
      [2, "40 0", "100 0"],
    ]);
    expect(found(conductor("10 90", "10 0"), conductor("10 20", "10 200"))).toEqual([[2, "10 20", "10 90"]]);
    expect(found(conductor("0 0", "60 60"), conductor("30 30", "90 90"))).toEqual([[2, "30 30", "60 60"]]);
  });

  test("nearer than 0.8 mm on paper, and not at that distance", () => {
    expect(nearestPx).toBeCloseTo(3.0236, 4);
    expect(found(conductor("0 0", "100 0"), conductor("0 3", "100 3"))).toEqual([[2, "0 2", "100 2"]]);
    expect(found(conductor("0 0", "100 0"), conductor("0 3.03", "100 3.03"))).toEqual([]);
    expect(found(conductor("0 0", "100 0"), conductor("50 -50", "50 50"))).toEqual([]);
  });

  test("a stretch for each number of conductors; wires side by side count each; none too short for a stroke", () => {
    expect(
      found(conductor("0 0", "100 0"), conductor("0 0", "60 0"), { ...conductor("0 0", "200 0"), wires: 3 }),
    ).toEqual([
      [5, "0 0", "60 0"],
      [4, "60 0", "100 0"],
    ]);
    expect(found(conductor("0 0", "100 0"), conductor("95 0", "200 0"))).toEqual([]);
    // One leaves where another one enters.
    expect(found(conductor("0 0", "100 0"), conductor("0 0", "50 0"), conductor("50 0", "100 0"))).toEqual([
      [2, "0 0", "100 0"],
    ]);
  });
});

describe("lanes in a channel", () => {
  const lanes = (...uses: readonly (readonly [number, number])[]) =>
    lanesOf(
      uses.map(([from, to], index) => ({ index, from, to })),
      10,
    );

  test("conductors beside each other have lanes of their own, others share one", () => {
    expect([...lanes([0, 100], [50, 200], [120, 300], [215, 400]).values()]).toEqual([0, 1, 0, 1]);
    expect(laneCount(lanes([0, 100], [0, 200], [0, 300], [310, 400]))).toBe(3);
    expect(laneCount(lanes())).toBe(0);
  });

  test("ends within the clearance are beside each other: two conductors would look like one", () => {
    expect(laneCount(lanes([0, 100], [110, 200]))).toBe(2);
    expect(laneCount(lanes([0, 100], [110.1, 200]))).toBe(1);
  });
});

const wall = (lamps: number, insideMm: number) => {
  const plan = `build({ name: "long wall", insulationC: 105 });
const wall = surface({ name: "wall", size: { widthMm: 6_500, heightMm: 2_000 } });
channel({ name: "Trunking", on: wall, inside: { widthMm: ${insideMm}, heightMm: 60 }, path: [{ leftMm: 400, topMm: 800 }, { leftMm: 6_200, topMm: 800 }] });
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 100, at: { on: wall, leftMm: 60, topMm: 1_500 } });
const plus = busBar({ name: "plus", size: { widthMm: 300, heightMm: 60 }, at: { on: wall, leftMm: 200, topMm: 1_000 } });
const minus = busBar({ name: "minus", size: { widthMm: 300, heightMm: 60 }, at: { on: wall, leftMm: 600, topMm: 1_000 } });
for (let lamp = 0; lamp < ${lamps}; lamp++)
  circuit({ name: "Lamp " + lamp, from: plus.stud, returnTo: minus.stud, load: 1, gauge: 14, protect: 5, size: { widthMm: 150, heightMm: 100 }, at: { on: wall, leftMm: 1_300 + lamp * 320, topMm: 400 } });`;
  const { records, problems } = runExample(plan);
  return drawFrontViews(judge(records, problems), {
    ...{ medium: "paper", conductors: true },
    numbers: (record, role) => `${record}${role === "return" ? "N" : ""}`,
  })[0]!.svg;
};

describe("in the front view", () => {
  test("thirty conductors in one trunking are one line, with their number where it changes", () => {
    const svg = wall(15, 60);
    expect(svg).toContain("scale 1:20");
    for (const count of [30, 28, 26, 2]) expect(svg).toMatch(new RegExp(`>${count}(×| conductors)<`));
    expect(svg).toContain("several conductors in one line, and how many");
    // At both ends, each has its own number.
    const [plusWires, minusWires] = [/>(\d+)<\/text>/g, />(\d+)N<\/text>/g].map(
      (pattern) => new Set([...svg.matchAll(pattern)].map(([, number]) => number)),
    );
    expect(plusWires!.size).toBeGreaterThanOrEqual(15);
    expect(minusWires!.size).toBe(15);
  });

  test("with room for lanes, conductors in a channel lie side by side", () => {
    const svg = wall(1, 200);
    expect(svg).not.toMatch(/>3(×| conductors)</);
    expect(svg).toContain("Trunking · 2 conductors");
  });

  test("conductors that pass each other nowhere need no room for each", () => {
    // Twelve in a channel of 40 mm, at 1:5, are too near to each other; six beside each other are not.
    const plan = `build({ insulationC: 105 });
const wall = surface({ name: "wall", size: { widthMm: 1_000, heightMm: 400 } });
const trunking = channel({ name: "Trunking", on: wall, inside: { widthMm: 40, heightMm: 60 }, path: [{ leftMm: 0, topMm: 200 }, { leftMm: 1_000, topMm: 200 }] });
for (const left of [50, 550])
  for (let lamp = 0; lamp < 6; lamp++) {
    const from = busBar({ at: { on: wall, leftMm: left + 10 * lamp, topMm: 60 } });
    const to = busBar({ at: { on: wall, leftMm: left + 300 + 10 * lamp, topMm: 60 } });
    cable({ from: from.stud, to: to.stud, gauge: 14, through: [trunking] });
  }`;
    const { records, problems } = runExample(plan);
    const [view] = drawFrontViews(judge(records, problems), { medium: "paper", conductors: true });
    expect(view!.svg).toContain("Trunking · 12 conductors");
    expect(view!.svg).not.toContain("several conductors in one line");
  });

  test("a number that is not kept yet is explained", () => {
    const { records, problems } = runExample(`build({ insulationC: 105 });
const wall = surface({ size: { widthMm: 1_000, heightMm: 400 } });
const from = busBar({ at: { on: wall, leftMm: 50, topMm: 60 } });
const to = busBar({ at: { on: wall, leftMm: 800, topMm: 60 } });
cable({ from: from.stud, to: to.stud, gauge: 14 });`);
    const noticesWith = (conductors: boolean, number: string) =>
      drawFrontViews(judge(records, problems), { medium: "paper", conductors, numbers: () => number })[0]!
        .notices;
    expect(noticesWith(true, "1*")).toContainEqual(expect.stringMatching(/not kept yet/));
    expect(noticesWith(true, "1")).not.toContainEqual(expect.stringMatching(/not kept yet/));
    expect(noticesWith(false, "1*")).not.toContainEqual(expect.stringMatching(/not kept yet/));
  });
});
