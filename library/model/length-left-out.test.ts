import { beforeEach, expect, it } from "vitest";
import { battery, busBar, cable, circuit, surface } from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import type { Ways } from "./placement/run-way.ts";
import { readModel } from "./read-model.ts";
import { recordsOf } from "./sample-plan.tester.ts";

beforeEach(() => continueNumberingAt(0));

function modelWith(ways?: Ways, lengthM?: number) {
  const house = battery({ name: "House", chemistry: "AGM", capacityAh: 100 });
  const bus = busBar({});
  return readModel(
    recordsOf([
      house,
      bus,
      cable({ from: house.positive, to: bus.stud, gauge: 4, ...(lengthM !== undefined && { lengthM }) }),
      circuit({ from: bus.stud, returnTo: house.negative, load: 5, gauge: 14, protect: 10 }),
      surface({ size: { widthMm: 1_200, heightMm: 800 } }),
    ]),
    ways && (() => ways),
  );
}

it("a run without a length is read, and its length is unknown", () => {
  const { network, networkUnread, invalid } = modelWith();
  expect({ networkUnread, invalid }).toEqual({ networkUnread: false, invalid: [] });
  expect(network?.conductors.map(({ lengthM }) => lengthM)).toEqual([undefined, undefined, undefined]);
  expect(network?.conductors.map(({ run }) => run.lengthsFrom)).toEqual(["unknown", "unknown", "unknown"]);
});

it("takes its lengths from its way, each conductor on its own, and a cable has one", () => {
  const ways: Ways = new Map([
    [2, { positiveM: 1.5, negativeM: 9, unit: "m" }],
    [3, { positiveM: 4, negativeM: 3, unit: "m" }],
  ]);
  const { network } = modelWith(ways);
  expect(network?.conductors.map(({ role, lengthM }) => [role, lengthM])).toEqual([
    ["cable", 1.5],
    ["positive", 4],
    ["return", 3],
  ]);
  expect(network?.conductors.map(({ run }) => run.lengthsFrom)).toEqual(["way", "way", "way"]);
  expect(network?.conductors[0]?.run).toMatchObject({ positiveM: 1.5, negativeM: 0, lengthsGiven: {} });
});

it("a stated length wins over that of the way", () => {
  const { network } = modelWith(new Map([[2, { positiveM: 1.5, negativeM: 0, unit: "m" }]]), 2);
  expect(network?.conductors[0]).toMatchObject({ lengthM: 2, run: { lengthsFrom: "plan" } });
});

it("another way gives another run, although the plan is as before", () => {
  const at = (positiveM: number) => {
    continueNumberingAt(0);
    return modelWith(new Map([[3, { positiveM, negativeM: 1, unit: "m" }]])).network?.conductors[1]?.lengthM;
  };
  expect([at(2), at(5), at(2)]).toEqual([2, 5, 2]);
});
