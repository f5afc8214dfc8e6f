import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrangementTask } from "../../documents/suggested-places.ts";
import { judge } from "../../judge.ts";
import type { PartWord } from "../../model/parts/index.ts";
import type { Layout, Rectangle } from "../../model/placement/layout.ts";
import { readModel } from "../../model/read-model.ts";
import type { MountingPosition } from "../../plan/place.ts";
import { runExample } from "../../rules/page.tester.ts";
import { arrange } from "./arrangement.ts";
import { type ArrangedBody, turnsOn } from "./arrangement-board.ts";
import { bodyFaults } from "./body-faults.ts";
import { placedAt, withBody } from "./moved-body.ts";

interface Piece {
  readonly width: number;
  readonly height: number;
  readonly air: number;
  readonly turns: boolean;
}

/** Parts in a row of cables, on a board with a place kept free and a part that has its place. */
function layoutOf(pieces: readonly Piece[]): Layout {
  const part = ({ width, height, air, turns }: Piece, index: number) =>
    `const part${index} = busBar({ size: { widthMm: ${width}, heightMm: ${height} }, air: { leftMm: ${air}, topMm: ${air} }${turns ? ', mountingPositions: ["upright", "left side up"]' : ""} });
cable({ from: ${index === 0 ? "fixed" : `part${index - 1}`}.stud, to: part${index}.stud, lengthM: 1, gauge: 4 });`;
  const plan = `
const board = surface({ size: { widthMm: 900, heightMm: 600 }, keepFree: [{ leftMm: 300, topMm: 200, widthMm: 200, heightMm: 60 }] });
const fixed = busBar({ size: { widthMm: 120, heightMm: 50 }, air: { rightMm: 30 }, at: { on: board, leftMm: 50, topMm: 50 } });
${pieces.map(part).join("\n")}`;
  return readModel(runExample(plan).records).layout!;
}

const arrangementsOf = (layout: Layout) =>
  arrange({
    ...{ facts: { layout }, surface: 0, copperMm2: layout.leads.map(() => 20) },
    bodies: layout.bodies.flatMap(({ place, index }) => (place ? [] : [index])),
  });
const arrangeAll = (layout: Layout) => arrangementsOf(layout)[0]?.places;

const piece = fc.record({
  width: fc.integer({ min: 20, max: 220 }),
  height: fc.integer({ min: 20, max: 220 }),
  air: fc.integer({ min: 0, max: 40 }),
  turns: fc.boolean(),
});

/** A part or place with the distances that it needs: left, top, right, bottom, mm. */
interface Area {
  readonly outline: Rectangle;
  readonly air: readonly [number, number, number, number];
}

/** The square millimetres of a board of 900 by 600 mm, each painted with the number of what lies there: unlike the arrangement's own way. */
function painted(areas: readonly Area[]): Uint8Array {
  const board = new Uint8Array(900 * 600);
  for (const [index, { outline }] of areas.entries())
    for (let y = outline.y; y < outline.y + outline.height; y++)
      for (let x = outline.x; x < outline.x + outline.width; x++) {
        if (board[y * 900 + x] !== 0) expect.fail(`${index} overlaps ${board[y * 900 + x]! - 1}`);
        board[y * 900 + x] = index + 1;
      }
  return board;
}

function expectAir(areas: readonly Area[], board: Uint8Array): void {
  for (const [index, { outline, air }] of areas.entries()) {
    const [left, top, right, bottom] = air;
    for (let y = Math.max(0, outline.y - top); y < Math.min(600, outline.y + outline.height + bottom); y++)
      for (let x = Math.max(0, outline.x - left); x < Math.min(900, outline.x + outline.width + right); x++)
        if (board[y * 900 + x] !== 0 && board[y * 900 + x] !== index + 1)
          expect.fail(`${index} has ${board[y * 900 + x]! - 1} in its air`);
  }
}

describe("a suggested arrangement", () => {
  test("overlaps nothing, stays on the surface, out of places kept free, and keeps the stated air", () => {
    let found = 0;
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 5 }), (pieces) => {
        const layout = layoutOf(pieces);
        const places = arrangeAll(layout);
        if (!places) return;
        found++;
        const areas = [
          { outline: { x: 50, y: 50, width: 120, height: 50 }, air: [0, 0, 30, 0] as const },
          { outline: layout.surfaces[0]!.keepFree[0]!, air: [0, 0, 0, 0] as const },
          ...places.map(({ outline, body, turnedDeg }) => {
            const { air, size } = layout.bodies[body]!;
            const [l, t] = [Math.max(10, air.left ?? 0), Math.max(10, air.top ?? 0)];
            const { width, height } = outline;
            expect(turnedDeg === 0 ? [width, height] : [height, width]).toEqual([size!.width, size!.height]);
            // Turned clockwise by a quarter, its left side is up and its top to the right.
            return {
              outline,
              air: turnedDeg === 0 ? ([l, t, 10, 10] as const) : ([10, l, t, 10] as const),
            };
          }),
        ];
        for (const { outline } of places) {
          expect([outline.x, outline.y].every((mm) => Number.isInteger(mm) && mm >= 0)).toBe(true);
          expect(outline.x + outline.width).toBeLessThanOrEqual(900);
          expect(outline.y + outline.height).toBeLessThanOrEqual(600);
        }
        expectAir(areas, painted(areas));
      }),
      { numRuns: 8, seed: 11 },
    );
    expect(found).toBeGreaterThan(4);
  });

  test("leaves a channel free, also where that takes a place beside it to the millimetre", () => {
    const plan = `
const board = surface({ size: { widthMm: 325, heightMm: 100 } });
channel({ on: board, path: [{ leftMm: 165, topMm: 0 }, { leftMm: 165, topMm: 100 }], inside: { widthMm: 20, heightMm: 40 } });
const one = busBar({ size: { widthMm: 145, heightMm: 95 } });
const other = busBar({ size: { widthMm: 140, heightMm: 95 } });
cable({ from: one.stud, to: other.stud, lengthM: 1, gauge: 4 });`;
    const places = arrangeAll(readModel(runExample(plan).records).layout!);
    expect(places?.map(({ outline }) => outline.x)).toEqual([0, 185]);
  });

  test("is the same each time", () => {
    const pieces = [90, 140, 60].map((width) => ({ width, height: 70, air: 10, turns: true }));
    const first = arrangeAll(layoutOf(pieces));
    expect(first).toBeDefined();
    expect(arrangeAll(layoutOf(pieces))).toEqual(first);
  });

  test("leaves conductors short: two parts lie beside the one that they are connected with", () => {
    const places = arrangeAll(layoutOf([1, 2].map(() => ({ width: 60, height: 40, air: 0, turns: false }))));
    const far = ({ outline }: ArrangedBody) => Math.abs(outline.x + 30 - 110) + Math.abs(outline.y + 20 - 75);
    expect(Math.max(...places!.map(far))).toBeLessThan(250);
  });

  test("is none if the parts have no room", () => {
    const pieces = [1, 2, 3].map(() => ({ width: 500, height: 400, air: 0, turns: false }));
    expect(arrangeAll(layoutOf(pieces))).toBeUndefined();
  });

  test("keeps the room ahead of lugs, and other distances that the check asks for", () => {
    const plan = `
const board = surface({ size: { widthMm: 900, heightMm: 600 }, bilgeWaterMm: 90, keepFree: [{ leftMm: 600, topMm: 250, widthMm: 200, heightMm: 60 }] });
const house = battery({ chemistry: "LiFePO4", capacityAh: 200, size: { widthMm: 200, heightMm: 150 }, keepCool: true,
  at: { on: board, leftMm: 50, topMm: 50 }, terminalsAt: { positive: { leftMm: 180, topMm: 20, leaves: "right" }, negative: { leftMm: 180, topMm: 130, leaves: "right" } } });
const kettle = inverter({ size: { widthMm: 200, heightMm: 120 }, continuousW: 1000, efficiencyPercent: 90 });
const main = disconnect({ ratedA: 300, size: { widthMm: 120, heightMm: 80 },
  terminalsAt: { line: { leftMm: 10, topMm: 40, leaves: "left" }, load: { leftMm: 110, topMm: 40, leaves: "right" } } });
const plus = busBar({ side: "positive", size: { widthMm: 150, heightMm: 40 }, terminalsCovered: false, terminalsAt: { stud: { leftMm: 20, topMm: 20, leaves: "up" } } });
const minus = busBar({ side: "negative", size: { widthMm: 150, heightMm: 40 }, terminalsCovered: false, terminalsAt: { stud: { leftMm: 20, topMm: 20, leaves: "down" } } });
cable({ from: house.positive, to: main.line, gauge: "2/0", lengthM: 1, protect: 250 });
cable({ from: main.load, to: plus.stud, gauge: "2/0", lengthM: 1 });
cable({ from: house.negative, to: minus.stud, gauge: "2/0", lengthM: 1 });
circuit({ name: "kettle", from: plus.stud, returnTo: minus.stud, to: kettle, gauge: "1/0", oneWayM: 1, protect: 150 });`;
    const judged = judge(runExample(plan).records, []);
    const task = arrangementTask(
      judged,
      0,
      judged.model.layout!.bodies.filter(({ place, size }) => !place && size),
    );
    expect([judged.model.invalid, task.bodies.length]).toEqual([[], 4]);
    const found = arrange(task);
    expect(found.length).toBeGreaterThan(0);
    expect(found.map(({ newFaults }) => newFaults)).toEqual(found.map(() => 0));
    const kinds = (demands: boolean) => {
      const at = found[0]!.places.map(({ body, outline: { x, y }, turnedDeg }) => ({
        body,
        x,
        y,
        turnedDeg,
      }));
      // Every part in a row, without a gap: the faults that the search avoids are real ones.
      let left = 0;
      let { layout } = task.facts;
      for (const { body, x, y, turnedDeg } of at) {
        const place = demands ? { x, y, turnedDeg } : { x: left, y: 520, turnedDeg: 0 as const };
        layout = withBody(layout, placedAt(layout, layout.bodies[body]!, { surface: 0, ...place }));
        left += layout.bodies[body]!.size!.width;
      }
      return new Set(bodyFaults({ ...task.facts, layout }).map(({ kind }) => kind));
    };
    expect(kinds(true)).toEqual(new Set());
    expect(kinds(false)).toEqual(new Set(["heat", "bus bars", "bilge water", "lug room", "outside"]));
  });

  test("turns a part only as it may be mounted", () => {
    const on = (
      orientation: "vertical" | "floor" | "ceiling",
      positions?: readonly MountingPosition[],
      word: PartWord = "busBar",
    ) => turnsOn({ word, ...(positions && { mountingPositions: positions }) }, { orientation });
    expect(on("vertical")).toEqual([0]);
    expect(on("vertical", ["left side up", "upside down"])).toEqual([90, 180]);
    expect(on("floor", ["upright"])).toEqual([]);
    // A battery is upright on a floor.
    expect(on("floor", ["upright"], "battery")).toEqual([0, 90]);
    expect(on("floor", ["on its back"], "battery")).toEqual([]);
    expect(on("ceiling", ["face down"])).toEqual([0, 90]);
  });
});
