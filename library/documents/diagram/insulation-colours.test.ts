import { expect, test } from "vitest";
import { drawnColours } from "./insulation-colours.ts";

test.each([
  ["red", ["red"]],
  ["Red", ["red"]],
  ["green with yellow stripe", ["green", "yellow"]],
  ["yellow/green", ["yellow", "green"]],
  ["violet with white dots", ["purple", "white"]],
  ["light blue", ["blue"]],
  ["gray", ["grey"]],
  ["blue, dark blue tracer", ["blue"]],
  ["red, white and blue", ["red", "white"]],
  // Neither a colour nor a property of every object.
  ["constructor", []],
  ["natural", []],
  ["reddish", []],
  ["", []],
])("%s", (stated, colours) => {
  expect(drawnColours(stated)).toEqual(colours);
});
