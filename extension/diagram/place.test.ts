import fc from "fast-check";
import { expect, test } from "vitest";
import {
  between,
  heldStill,
  inSight,
  middleOf,
  moved,
  type Place,
  showing,
  shows,
  whole,
  zoomed,
} from "./place.ts";

const window = { width: 800, height: 600 };
/** Like our pictures: with a margin before the point 0. */
const picture = { x: -24, y: -24, width: 2000, height: 1000 };

/** The position of a picture's point in the window, px. */
const onScreen = ({ x, y, scale }: Place, point: { x: number; y: number }) => ({
  x: (point.x - x) * scale,
  y: (point.y - y) * scale,
});

const places = fc.record({
  x: fc.double({ min: -3000, max: 3000, noNaN: true }),
  y: fc.double({ min: -3000, max: 3000, noNaN: true }),
  scale: fc.double({ min: 0.05, max: 8, noNaN: true }),
});
const boxes = fc.record({
  x: fc.double({ min: 0, max: 1900, noNaN: true }),
  y: fc.double({ min: 0, max: 900, noNaN: true }),
  width: fc.double({ min: 1, max: 100, noNaN: true }),
  height: fc.double({ min: 1, max: 100, noNaN: true }),
});

test("the whole picture is in the window, in its middle", () => {
  const place = whole(picture, window);
  expect(shows(place, picture, window)).toBe(true);
  expect(middleOf(place, window)).toEqual({ x: 976, y: 476 });
});

test("a small picture is not blown up", () => {
  expect(whole({ x: 0, y: 0, width: 100, height: 50 }, window).scale).toBe(1);
});

test("zooming leaves the point under the pointer where it is", () => {
  fc.assert(
    fc.property(places, fc.double({ min: 0.2, max: 5, noNaN: true }), (place, factor) => {
      const still = { x: 123, y: 456 };
      const under = { x: place.x + still.x / place.scale, y: place.y + still.y / place.scale };
      const after = onScreen(zoomed(place, factor, still), under);
      expect(after.x).toBeCloseTo(still.x, 5);
      expect(after.y).toBeCloseTo(still.y, 5);
    }),
  );
});

test.each([
  { factor: 1e6, scale: 8 },
  { factor: 1e-6, scale: 0.05 },
])("zooming by $factor ends at $scale", ({ factor, scale }) => {
  expect(zoomed({ x: 0, y: 0, scale: 1 }, factor, { x: 0, y: 0 }).scale).toBe(scale);
});

test("however far it is pushed, some of the picture stays in the window", () => {
  fc.assert(
    fc.property(
      places,
      fc.integer({ min: -9000, max: 9000 }),
      fc.integer({ min: -9000, max: 9000 }),
      (place, x, y) => {
        const after = moved(place, { x, y }, picture, window);
        const topLeft = onScreen(after, picture);
        const bottomRight = onScreen(after, {
          x: picture.x + picture.width,
          y: picture.y + picture.height,
        });
        const least = Math.min(64, picture.height * place.scale, picture.width * place.scale) - 1e-6;
        expect(bottomRight.x).toBeGreaterThanOrEqual(least);
        expect(bottomRight.y).toBeGreaterThanOrEqual(least);
        expect(topLeft.x).toBeLessThanOrEqual(window.width - least);
        expect(topLeft.y).toBeLessThanOrEqual(window.height - least);
      },
    ),
  );
});

test("a push inside the picture moves it by as many pixels", () => {
  const before: Place = { x: 500, y: 300, scale: 2 };
  const after = moved(before, { x: 30, y: -20 }, picture, window);
  expect(onScreen(after, { x: 600, y: 400 })).toEqual({ x: 230, y: 180 });
  expect(inSight(before, picture, window)).toEqual(before);
});

test("what is brought into the window is in it, with the same scale, and nothing moves if it was there", () => {
  fc.assert(
    fc.property(places, boxes, (place, box) => {
      const after = showing(place, box, window);
      expect(after.scale).toBe(place.scale);
      if (shows(place, box, window)) expect(after).toBe(place);
      else expect(shows(after, { x: box.x, y: box.y, width: 0.001, height: 0.001 }, window)).toBe(true);
    }),
  );
});

test("what is out of the window to the right comes in at its right edge, not further", () => {
  const place: Place = { x: 0, y: 0, scale: 1 };
  expect(showing(place, { x: 900, y: 100, width: 50, height: 20 }, window)).toEqual({
    x: 166,
    y: 0,
    scale: 1,
  });
  expect(showing({ x: 500, y: 0, scale: 1 }, { x: 100, y: 100, width: 50, height: 20 }, window)).toEqual({
    x: 84,
    y: 0,
    scale: 1,
  });
});

test("in a new picture, what was looked at stands where it stood", () => {
  fc.assert(
    fc.property(places, boxes, boxes, (place, before, after) => {
      const now = onScreen(heldStill(place, before, after), {
        x: after.x + after.width / 2,
        y: after.y + after.height / 2,
      });
      const then = onScreen(place, { x: before.x + before.width / 2, y: before.y + before.height / 2 });
      expect(now.x).toBeCloseTo(then.x, 4);
      expect(now.y).toBeCloseTo(then.y, 4);
    }),
  );
});

test("on the way from one place to another it begins at the one and ends at the other", () => {
  const [from, to] = [
    { x: 0, y: 0, scale: 1 },
    { x: 10, y: 20, scale: 3 },
  ];
  expect(between(from, to, 0)).toEqual(from);
  expect(between(from, to, 1)).toEqual(to);
  expect(between(from, to, 0.5)).toEqual({ x: 5, y: 10, scale: 2 });
});
