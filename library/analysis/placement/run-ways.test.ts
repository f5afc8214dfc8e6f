import { expect, it } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { ampacityOf } from "../ampacity.ts";

const plan = (options: { trunking?: string; feed?: string; build?: string } = {}) => `
build({ insulationC: 105${options.build ?? ""} });
const board = surface({ name: "Board", size: { widthMm: 2000, heightMm: 800 } });
const trunking = channel({ name: "Trunking", on: board,
  path: [{ leftMm: 0, topMm: 400 }, { leftMm: 2000, topMm: 400 }]${options.trunking ?? ""} });
const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 100, topMm: 300 } });
const plus = busBar({ side: "positive", at: { on: board, leftMm: 1100, topMm: 300 } });
cable({ name: "feed", from: house.positive, to: plus.stud, gauge: 4, protect: 60${options.feed ?? ""} });
circuit({ name: "lamp", from: plus.stud, returnTo: house.negative, load: 4, gauge: 12, protect: 10,
  at: { on: board, leftMm: 1900, topMm: 300 } });`;

const judged = (text: string) => judge(runExample(text).records, []);

it("a run without a length has that of its way, with the slack of the build, both conductors by themselves", () => {
  const { network, placement } = judged(plan());
  const lengths = network!.network.conductors.map(({ name, role, lengthM }) => [name, role, lengthM]);
  expect(placement?.ways.map((way) => way.state === "found" && way.lengthMm)).toEqual([1200, 1000, 2000]);
  expect(lengths).toEqual([
    ["feed", "cable", expect.closeTo(1.32, 9)],
    ["lamp", "positive", expect.closeTo(1.1, 9)],
    ["lamp", "return", expect.closeTo(2.2, 9)],
  ]);
  const [feed] = judged(plan({ build: ", slackPercent: 0" })).circuits;
  expect(feed?.circuit.positiveM).toBeCloseTo(1.2, 9);
});

it("a stated length counts, although there is a way", () => {
  const [feed] = judged(plan({ feed: ", lengthM: 3" })).circuits;
  expect([feed?.circuit.positiveM, feed?.circuit.lengthsFrom]).toEqual([3, "plan"]);
});

it("the worst place on the way decides, each with its own surroundings", () => {
  const ampacityA = (options: Parameters<typeof plan>[0]) => {
    const { circuit } = judged(plan(options)).circuits[0]!;
    const ampacity = ampacityOf(circuit);
    return ampacity.judged ? [Math.round(ampacity.ampacityA), ampacity.place] : ampacity.why;
  };
  // 4 AWG of 105 °C: 160 A; in an engine space 0.85 of it; at 60 °C the root of 45 / 75.
  expect(ampacityA({})).toEqual([160, undefined]);
  expect(ampacityA({ trunking: ", engineSpace: true" })).toEqual([136, "Trunking"]);
  expect(ampacityA({ trunking: ", ambientC: 60" })).toEqual([124, "Trunking"]);
  expect(ampacityA({ trunking: ", ambientC: 25", build: ", ambientC: 60" })).toEqual([124, "Board"]);
  expect(ampacityA({ trunking: ", ambientC: 60", feed: ", ambientC: 30" })).toEqual([160, "Board"]);
  expect(ampacityA({ trunking: ", ambientC: 120" })).toBe("place-too-hot");
});

it("a place that is too hot for the insulation is named", () => {
  const { findings } = judged(plan({ trunking: ", ambientC: 120" }));
  const hot = findings.filter(({ rule }) => rule === "conductor/ambient");
  expect(hot.map(({ at, values }) => [at, (values as { at?: string }).at])).toContainEqual([
    { record: 5, path: ["insulationC"] },
    "Trunking",
  ]);
});
