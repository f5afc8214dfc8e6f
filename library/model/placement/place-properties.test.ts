import { describe, expect, test } from "vitest";
import { runExample } from "../../rules/page.tester.ts";
import { readModel } from "../read-model.ts";

/** The refusals of a plan with a part at a place, and with a channel: property and words of each. */
function refusedAt(at: string, channel = "lengthM: 1"): readonly string[] {
  const { records } = runExample(`build({ insulationC: 105 });
const board = surface({ size: { widthMm: 800, heightMm: 600 } });
channel({ name: "duct", from: { on: board, leftMm: 0, topMm: 0 }, ${channel} });
busBar({ at: ${at} });`);
  return readModel(records).invalid.map(({ path, wrong }) => [...path, wrong].join(" "));
}

describe("a wrong place is explained once", () => {
  test.each([
    ["{ on: board, leftMm: 5, topMm: 5 }", []],
    ["{ on: board, leftMm: -5, topMm: 5 }", ["at leftMm is negative"]],
    ["{ on: board, leftMm: 5, topMm: 5, turnedDeg: 45 }", ["at turnedDeg is not a quarter turn"]],
    ["{ on: board, leftMm: 5 }", ["at topMm is missing"]],
    ["{ on: board, leftMm: 5, topIn: 3 }", ["at topIn cannot be given together with leftMm"]],
    ["{ on: board }", ["at its place on the surface is missing"]],
  ])("%s", (at, expected) => {
    expect(refusedAt(at)).toEqual(expected);
  });

  test("so is the length of a channel", () => {
    const place = "{ on: board, leftMm: 5, topMm: 5 }";
    expect(refusedAt(place, "lengthM: -1")).toEqual(["lengthM is negative"]);
    expect(refusedAt(place, "")).toEqual([expect.stringMatching(/length.* is missing$/)]);
  });
});
