import { describe, expect, it } from "vitest";
import { readModel } from "../../model/read-model.ts";
import { runExample } from "../../rules/page.tester.ts";
import { placementOf } from "./placement.ts";
import type { Way } from "./ways.ts";

/** Two parts on a board of 1200 × 800 mm, 800 mm apart, and the statements of a test. */
const board = (statements: string) => `
const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
const left = busBar({ size: { widthMm: 100, heightMm: 50 }, at: { on: board, leftMm: 100, topMm: 200 } });
const right = busBar({ size: { widthMm: 100, heightMm: 50 }, at: { on: board, leftMm: 900, topMm: 200 } });
${statements}`;

const link = "cable({ from: left.stud, to: right.stud, lengthM: 1, gauge: 4 })";

function waysIn(plan: string) {
  const { layout, invalid } = readModel(runExample(plan).records);
  expect(invalid).toEqual([]);
  return { layout: layout!, ways: placementOf(layout!).ways };
}

function wayIn(plan: string): Way {
  const [way] = waysIn(plan).ways;
  if (way?.state !== "found") throw new Error(`no way: ${way?.state}`);
  return way;
}

describe("the way of a conductor", () => {
  it("goes to the nearest channel, along it, and from there to the other terminal", () => {
    const { lengthMm, stretches } = wayIn(
      board(
        `channel({ on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 1200, topMm: 400 }] });\n${link}`,
      ),
    );
    // From the middles of the bars, at y = 225, down to 400, 800 mm along, and up again.
    expect(lengthMm).toBe(175 + 800 + 175);
    expect(stretches.map(({ channel, lengthMm }) => [channel, lengthMm])).toEqual([
      [undefined, 175],
      [0, 800],
      [undefined, 175],
    ]);
    expect(stretches[1]?.path).toEqual([
      { x: 150, y: 400 },
      { x: 950, y: 400 },
    ]);
  });

  it("is straight along the surface between neighbours, although a channel passes by", () => {
    const near = board(`
channel({ on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 1200, topMm: 400 }] });
const next = busBar({ size: { widthMm: 100, heightMm: 50 }, at: { on: board, leftMm: 300, topMm: 200 } });
cable({ from: left.stud, to: next.stud, lengthM: 1, gauge: 4 });`);
    expect(wayIn(near).lengthMm).toBe(200);
  });

  it("goes around a part and a place kept free", () => {
    const free = wayIn(board(link));
    expect(free.lengthMm).toBe(800);
    const blocked = wayIn(
      board(`${link};
fusePanel({ positions: 4, size: { widthMm: 200, heightMm: 300 }, at: { on: board, leftMm: 400, topMm: 100 } });`),
    );
    // Up from 225 to 100 and down again is shorter than below it, at 400.
    expect(blocked.lengthMm).toBe(800 + 2 * 125);
    expect(blocked.stretches[0]?.path?.map(({ y }) => y)).toContain(100);
  });

  it("does not lead around a part to a place beyond the edge of the surface", () => {
    const { ways } = waysIn(
      board(`
const beyond = busBar({ at: { on: board, leftMm: 1300, topMm: 225 } });
fusePanel({ positions: 4, size: { widthMm: 200, heightMm: 300 }, at: { on: board, leftMm: 400, topMm: 100 } });
cable({ from: left.stud, to: beyond.stud, lengthM: 1, gauge: 4 });`),
    );
    expect(ways).toEqual([{ state: "no way" }]);
  });

  it("leaves a terminal towards the stated side of its part", () => {
    const turned = (leaves: string) =>
      wayIn(`
const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
const trunking = channel({ on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 1200, topMm: 400 }] });
const one = busBar({ size: { widthMm: 100, heightMm: 60 }, at: { on: board, leftMm: 100, topMm: 200 },
  terminalsAt: { stud: { leftMm: 50, topMm: 30, leaves: "${leaves}" } } });
const far = busBar({ at: { on: board, leftMm: 950, topMm: 400 } });
cable({ from: one.stud, to: far.stud, lengthM: 1, gauge: 4 });`).lengthMm;
    const down = turned("down");
    expect(down).toBe(170 + 800);
    // Out at the top, and around its own part.
    expect(turned("up")).toBe(30 + 50 + 200 + 750);
  });

  it("passes through a hole to another surface, and along a conduit to a free end", () => {
    const plan = `
const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
const floor = surface({ size: { widthMm: 1200, heightMm: 800 }, orientation: "floor" });
const hole = channel({ way: "hole", from: { on: board, leftMm: 600, topMm: 790 }, to: { on: floor, leftMm: 600, topMm: 0 }, lengthM: 0.02 });
const mast = channel({ way: "conduit", from: { on: floor, leftMm: 600, topMm: 100 }, lengthM: 8 });
const one = busBar({ at: { on: board, leftMm: 600, topMm: 700 } });
const lamp = load({ currentA: 2, at: { endOf: mast, beyondM: 0.5 } });
cable({ from: one.stud, to: lamp.positive, lengthM: 1, gauge: 14 });`;
    const { lengthMm, stretches } = wayIn(plan);
    expect(lengthMm).toBe(90 + 20 + 100 + 8_000 + 500);
    expect(stretches.map(({ channel }) => channel)).toEqual([undefined, 0, undefined, 1, undefined]);
  });

  it("takes the channels that the plan names, and no others", () => {
    const two = (through: string) =>
      board(`
const near = channel({ on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 1200, topMm: 400 }] });
const far = channel({ on: board, path: [{ leftMm: 0, topMm: 700 }, { leftMm: 1200, topMm: 700 }] });
cable({ from: left.stud, to: right.stud, lengthM: 1, gauge: 4, through: [${through}] });`);
    expect(wayIn(two("near")).lengthMm).toBe(2 * 175 + 800);
    expect(wayIn(two("far")).lengthMm).toBe(2 * 475 + 800);
    expect(wayIn(two("")).lengthMm).toBe(800);
  });

  it("is not known without the place of a part, and there is none between surfaces that nothing connects", () => {
    const plan = `
const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
const roof = surface({ size: { widthMm: 1200, heightMm: 800 }, orientation: "ceiling" });
const one = busBar({ at: { on: board, leftMm: 600, topMm: 700 } });
const other = busBar({ at: { on: roof, leftMm: 600, topMm: 700 } });
const third = busBar({});
cable({ from: one.stud, to: other.stud, lengthM: 1, gauge: 4 });
cable({ from: one.stud, to: third.stud, lengthM: 1, gauge: 4 });`;
    expect(waysIn(plan).ways).toEqual([{ state: "no way" }, { state: "not placed", bodies: [2] }]);
  });

  it("of a conductor far from every channel tries each of them before there is none", () => {
    const plan = `
const board = surface({ size: { widthMm: 5000, heightMm: 3000 } });
const floor = surface({ size: { widthMm: 5000, heightMm: 3000 }, orientation: "floor" });
${[0, 1, 2, 3]
  .map(
    (at) =>
      `channel({ on: board, path: [{ leftMm: ${500 + at * 100}, topMm: 0 }, { leftMm: ${500 + at * 100}, topMm: 500 }] });`,
  )
  .join("\n")}
channel({ from: { on: board, leftMm: 4800, topMm: 2900 }, to: { on: floor, leftMm: 0, topMm: 0 }, lengthM: 1 });
const one = busBar({ at: { on: board, leftMm: 450, topMm: 250 } });
const other = busBar({ at: { on: floor, leftMm: 0, topMm: 100 } });
cable({ from: one.stud, to: other.stud, lengthM: 1, gauge: 4 });`;
    expect(wayIn(plan).lengthMm).toBe(4350 + 2650 + 1000 + 100);
  });

  it("is the same for both conductors of one cable", () => {
    const plan = (sheathed: string) => `
const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
const plus = busBar({ side: "positive", at: { on: board, leftMm: 100, topMm: 100 } });
const minus = busBar({ side: "negative", at: { on: board, leftMm: 100, topMm: 300 } });
circuit({ from: plus.stud, returnTo: minus.stud, load: 5, oneWayM: 1, gauge: 14${sheathed}, at: { on: board, leftMm: 500, topMm: 100 } });`;
    const lengths = (text: string) => waysIn(text).ways.map((way) => way.state === "found" && way.lengthMm);
    expect(lengths(plan(""))).toEqual([400, 600]);
    expect(lengths(plan(', sheathed: "flat duplex"'))).toEqual([600, 600]);
  });

  it("turns the terminals of a part with it", () => {
    const at = (turnedDeg: number) => {
      const { layout } = waysIn(`
const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
const bar = busBar({ size: { widthMm: 100, heightMm: 60 }, at: { on: board, leftMm: 200, topMm: 300, turnedDeg: ${turnedDeg} },
  air: { topMm: 9 }, terminalsAt: { stud: { leftMm: 10, topMm: 20, leaves: "up" } } });`);
      const [body] = layout.bodies;
      const place = body?.place;
      return {
        spot: body?.terminals.stud?.[0],
        air: body?.air,
        position: place?.kind === "on surface" && place.position,
      };
    };
    expect(at(0)).toEqual({ spot: { x: 210, y: 320, leaves: "up" }, air: { top: 9 }, position: "upright" });
    expect(at(90)).toEqual({
      spot: { x: 240, y: 310, leaves: "right" },
      air: { right: 9 },
      position: "left side up",
    });
    expect(at(180)).toEqual({
      spot: { x: 290, y: 340, leaves: "down" },
      air: { bottom: 9 },
      position: "upside down",
    });
    expect(at(270)).toEqual({
      spot: { x: 220, y: 390, leaves: "left" },
      air: { left: 9 },
      position: "right side up",
    });
  });
});
