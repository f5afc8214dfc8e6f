import fc from "fast-check";
import { expect, it } from "vitest";
import type { Body, Layout, Rectangle } from "../../model/placement/layout.ts";
import { keyOfFault } from "./body-fault.ts";
import { bodyFaults } from "./body-faults.ts";
import { distanceBetween, overlap } from "./rectangles.ts";

const small = fc.record({
  x: fc.integer({ min: 0, max: 20 }),
  y: fc.integer({ min: 0, max: 20 }),
  width: fc.integer({ min: 1, max: 10 }),
  height: fc.integer({ min: 1, max: 10 }),
});

/** Every corner of the unit squares of a rectangle, its edges included. */
function pointsOf({ x, y, width, height }: Rectangle): readonly (readonly [number, number])[] {
  return Array.from({ length: width + 1 }, (_, right) =>
    Array.from({ length: height + 1 }, (_, down) => [x + right, y + down] as const),
  ).flat();
}

/** The unit squares of a rectangle. */
function squaresOf({ x, y, width, height }: Rectangle): ReadonlySet<string> {
  return new Set(pointsOf({ x, y, width: width - 1, height: height - 1 }).map(String));
}

it("rectangles overlap exactly if they cover a square of a raster together", () => {
  fc.assert(
    fc.property(small, small, (one, other) => {
      const squares = squaresOf(one);
      expect(overlap(one, other)).toBe([...squaresOf(other)].some((square) => squares.has(square)));
    }),
  );
});

it("the distance of two rectangles is that of the nearest points of a raster", () => {
  fc.assert(
    fc.property(small, small, (one, other) => {
      const nearest = Math.min(
        ...pointsOf(one).flatMap(([x, y]) => pointsOf(other).map(([u, v]) => Math.hypot(x - u, y - v))),
      );
      expect(distanceBetween(one, other)).toBeCloseTo(nearest, 9);
    }),
  );
});

const air = fc.record(
  {
    left: fc.integer({ min: 0, max: 200 }),
    right: fc.integer({ min: 0, max: 200 }),
    top: fc.integer({ min: 0, max: 200 }),
    bottom: fc.integer({ min: 0, max: 200 }),
  },
  { requiredKeys: [] },
);

const bodies = fc
  .array(
    fc.record({
      outline: fc.record({
        x: fc.integer({ min: 0, max: 700 }),
        y: fc.integer({ min: 0, max: 500 }),
        width: fc.integer({ min: 20, max: 200 }),
        height: fc.integer({ min: 20, max: 200 }),
      }),
      air,
      keepCool: fc.boolean(),
      heatW: fc.constantFrom(0, 40),
    }),
    { minLength: 2, maxLength: 8 },
  )
  .map((drawn): readonly Body[] =>
    drawn.map(({ outline, ...more }, index) => ({
      ...{ index, record: index + 1, name: `part ${index}`, word: "load", terminals: {} },
      ...more,
      place: {
        ...{ kind: "on surface", surface: 0, outline },
        ...{ turnedDeg: 0, position: "upright", statedIn: "mm" },
      },
    })),
  );

function layoutOf(all: readonly Body[]): Layout {
  return {
    compartments: [],
    surfaces: [
      {
        ...{ record: 0, name: "board", width: 2_000, height: 2_000, orientation: "vertical" },
        ...{ keepFree: [], outOfReach: [], fixtures: [], bareMetal: false, openAbove: false },
        ...{ writtenIn: "mm", accept: {} },
      },
    ],
    channels: [],
    bodies: all,
    leads: [],
  };
}

function faultsOf(all: readonly Body[]) {
  return bodyFaults({ layout: layoutOf(all) });
}

function movedBy(body: Body, right: number, down: number): Body {
  if (body.place?.kind !== "on surface") return body;
  const { outline } = body.place;
  const moved = { ...outline, x: outline.x + right, y: outline.y + down };
  return { ...body, place: { ...body.place, outline: moved } };
}

it("moving all that is on a surface together changes no fault between bodies", () => {
  const by = fc.integer({ min: 0, max: 1_000 });
  fc.assert(
    fc.property(bodies, by, by, (all, right, down) => {
      const between = (found: readonly Body[]) => faultsOf(found).filter(({ kind }) => kind !== "outside");
      expect(between(all.map((body) => movedBy(body, right, down)))).toEqual(between(all));
    }),
  );
});

it("more air asked for never removes a fault of air", () => {
  fc.assert(
    fc.property(
      bodies,
      fc.nat(7),
      fc.constantFrom("left", "right", "top", "bottom"),
      fc.integer({ min: 1, max: 300 }),
      (all, at, side, more) => {
        const chosen = at % all.length;
        const asking = all.map((body, index) =>
          index === chosen ? { ...body, air: { ...body.air, [side]: (body.air[side] ?? 0) + more } } : body,
        );
        // The finding may pass to the part that now asks for more, so pairs are compared.
        const pairs = (found: readonly Body[]) =>
          faultsOf(found).flatMap((fault) =>
            fault.kind === "air" ? [[fault.body, fault.other].sort().join(" ")] : [],
          );
        expect(pairs(asking)).toEqual(expect.arrayContaining(pairs(all)));
        expect(new Set(faultsOf(all).map(keyOfFault)).size).toBe(faultsOf(all).length);
      },
    ),
  );
});
