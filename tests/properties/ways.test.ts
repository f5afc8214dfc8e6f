import fc from "fast-check";
import { expect, test } from "vitest";
import { placementOf } from "../../library/analysis/placement/placement.ts";
import { judge } from "../../library/judge.ts";
import { readModel } from "../../library/model/read-model.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import { type Made, recordsOf } from "../../library/model/sample-plan.tester.ts";
import { battery } from "../../library/plan/battery.ts";
import { channel } from "../../library/plan/channel.ts";
import { circuit } from "../../library/plan/circuit.ts";
import { continueNumberingAt } from "../../library/plan/numbering.ts";
import { surface } from "../../library/plan/surface.ts";
import { ruleById } from "../../library/rules/registry.ts";
import { sampledRuns } from "../setup/sampled.ts";

/** Laws of ways: a longer channel shortens none, and a board that is moved with all that is on it is the same board. */

interface Spot {
  readonly left: number;
  readonly top: number;
}

const spot = fc.record({ left: fc.integer({ min: 0, max: 60 }), top: fc.integer({ min: 0, max: 40 }) });

/** A board of 1200 × 800 mm in steps of 20 mm: its loads, its channels by their corners, and a place kept free. */
const boards = fc.record({
  bank: spot,
  loads: fc.array(spot, { minLength: 1, maxLength: 5 }),
  channels: fc.array(fc.record({ start: spot, end: spot, isUprightFirst: fc.boolean() }), { maxLength: 4 }),
  free: fc.option(spot),
  /** A duct to a second board, with its length in metres, and a lamp there. */
  duct: fc.record({ from: spot, to: spot, lamp: spot, lengthM: fc.integer({ min: 1, max: 8 }) }),
});
type Board = typeof boards extends fc.Arbitrary<infer Value> ? Value : never;

const step = 20;

interface Moved {
  readonly dx: number;
  readonly dy: number;
  readonly ductLongerM: number;
}

function planOf(board: Board, { dx, dy, ductLongerM }: Moved): readonly PlanRecord[] {
  continueNumberingAt(0);
  const made: Made[] = [];
  const add = <One extends Made>(one: One): One => {
    made.push(one);
    return one;
  };
  const at = ({ left, top }: Spot) => ({ leftMm: left * step + dx, topMm: top * step + dy });
  const size = { widthMm: 60 * step, heightMm: 40 * step };
  // The moved board is that much larger, and the margin to its left and above is kept free.
  const margins = [
    { leftMm: 0, topMm: 0, widthMm: dx, heightMm: size.heightMm + dy },
    { leftMm: 0, topMm: 0, widthMm: size.widthMm + dx, heightMm: dy },
  ].filter(({ widthMm, heightMm }) => widthMm > 0 && heightMm > 0);
  const kept = board.free ? [{ ...at(board.free), widthMm: 100, heightMm: 60 }] : [];
  const first = add(
    surface({
      name: "board",
      size: { widthMm: size.widthMm + dx, heightMm: size.heightMm + dy },
      keepFree: [...margins, ...kept],
    }),
  );
  const second = add(surface({ name: "other", size }));
  for (const { start, end, isUprightFirst } of board.channels) {
    const corner = isUprightFirst ? { left: start.left, top: end.top } : { left: end.left, top: start.top };
    add(
      channel({
        on: first,
        path: [start, corner, end].map(at),
        bendRadiusMm: 30,
        inside: { widthMm: 20, heightMm: 20 },
        fillPercent: 40,
      }),
    );
  }
  add(
    channel({
      from: { on: first, ...at(board.duct.from) },
      to: { on: second, leftMm: board.duct.to.left * step, topMm: board.duct.to.top * step },
      lengthM: board.duct.lengthM + ductLongerM,
    }),
  );
  const bank = add(
    battery({
      name: "bank",
      chemistry: "AGM",
      capacityAh: 100,
      at: { on: first, ...at(board.bank) },
    }),
  );
  const run = { from: bank.positive, returnTo: bank.negative, load: 3, gauge: 10, protect: 10 } as const;
  const lamps = [
    ...board.loads.map((place) => ({ on: first, ...at(place) })),
    { on: second, leftMm: board.duct.lamp.left * step, topMm: board.duct.lamp.top * step },
  ];
  lamps.forEach((place, index) => {
    add(circuit({ ...run, name: `lamp ${index}`, oneWayM: 2, outsideMm: 5, at: place }));
  });
  return recordsOf(made);
}

const unmoved: Moved = { dx: 0, dy: 0, ductLongerM: 0 };

function lengthsIn(records: readonly PlanRecord[]): readonly (number | undefined)[] {
  const { layout, invalid } = readModel(records);
  expect(invalid).toEqual([]);
  return placementOf(layout!).ways.map((way) => (way.state === "found" ? way.lengthMm : undefined));
}

test("a longer channel at the same joints shortens no way", () => {
  fc.assert(
    fc.property(boards, fc.integer({ min: 1, max: 5 }), (board, ductLongerM) => {
      const before = lengthsIn(planOf(board, unmoved));
      const after = lengthsIn(planOf(board, { ...unmoved, ductLongerM }));
      before.forEach((length, lead) => {
        if (length !== undefined) expect(after[lead]).toBeGreaterThanOrEqual(length);
      });
      expect(before.length).toBe(2 * board.loads.length + 2);
      // The way to the other board leads through it, and becomes longer by as much.
      if (before.at(-1) !== undefined)
        expect(after.at(-1)! - before.at(-1)!).toBeCloseTo(ductLongerM * 1_000, 6);
    }),
    { numRuns: sampledRuns(50) },
  );
});

test("everything on a surface moved together changes no way and no finding", () => {
  fc.assert(
    fc.property(
      boards,
      fc.integer({ min: 0, max: 20 }),
      fc.integer({ min: 0, max: 20 }),
      (board, right, down) => {
        const here = planOf(board, unmoved);
        const there = planOf(board, { dx: right * step, dy: down * step, ductLongerM: 0 });
        expect(lengthsIn(there)).toEqual(lengthsIn(here));
        expect(findingsIn(there)).toEqual(findingsIn(here));
      },
    ),
    { numRuns: sampledRuns(30) },
  );
});

function findingsIn(records: readonly PlanRecord[]): readonly string[] {
  return judge(records, []).findings.map(({ rule, subject, values }) =>
    [rule, subject, ruleById(rule)?.message(values)].join(" "),
  );
}
