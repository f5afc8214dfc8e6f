import { expect, test } from "vitest";
import { testWorld } from "../../analysis/energy/world.tester.ts";
import { type Judgement, judge } from "../../judge.ts";
import type { PlanRecord } from "../../model/record.ts";
import { runExample } from "../../rules/page.tester.ts";
import { describeDiff } from "./difference-in-words.ts";
import { isSame, planDifference } from "./plan-difference.ts";

const hut = (change: { ah?: number; hours?: number; name?: string; period?: string } = {}): Judgement => {
  const { ah = 50, hours = 10, name = "lamp", period = 'place: "Bergen, NO"' } = change;
  const { records, problems } = runExample(`
    const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: ${ah}, reservePercent: 20 });
    circuit({ name: "${name}", from: house.positive, returnTo: house.negative, oneWayM: 3, gauge: 10, protect: 15, loadW: 20, use: { hoursPerDay: ${hours} } });
    const roof = solarArray({ name: "roof", openCircuitV: 45, shortCircuitA: 6, maxPowerV: 37, maxPowerA: 5.4 });
    const mppt = solarController({ maxInputV: 100, outputA: 30 });
    cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
    cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
    cable({ from: mppt.positive, to: house.positive, lengthM: 1, gauge: 6, protectFarEnd: 40 });
    cable({ from: mppt.negative, to: house.negative, lengthM: 1, gauge: 6 });
    ${period === "" ? "" : `period({ name: "all year", ${period}, months: ["May", "Jun", "Nov", "Dec"] });`}`);
  expect(problems).toEqual([]);
  return judge(records as readonly PlanRecord[], problems, undefined, testWorld);
};

const labels = { before: "HEAD", after: "the working tree" };
function described(before: Judgement, after: Judgement, all = false) {
  const difference = planDifference(before, after);
  const plan = { path: "hut.ts", movedFrom: undefined, state: "compared", difference } as const;
  return { difference, text: describeDiff(plan, labels, { all }) };
}
const energyIn = ({ text }: ReturnType<typeof described>) =>
  text.blocks.find(({ title }) => title === "Energy");

test("a larger bank: its autonomy, and the months whose verdict changes", () => {
  const found = described(hut({ ah: 25, hours: 6 }), hut({ ah: 200, hours: 6 }));
  const [change, ...others] = found.difference.energy;
  expect(others).toEqual([]);
  expect(change!.autonomyDays.after! / change!.autonomyDays.before!).toBeCloseTo(8, 2);
  const rows = energyIn(found)!.rows;
  expect(rows[0]).toEqual([
    "all year: house",
    "autonomy",
    expect.stringMatching(/^about 2(\.\d)? days$/),
    expect.stringMatching(/^about 1\d days$/),
  ]);
  expect(rows.length).toBeGreaterThan(1);
  for (const [, month, before, after] of rows.slice(1)) {
    const at = change!.months.find((one) => one.before && one.after && before!.startsWith(one.before.words));
    expect([month, at === undefined]).toEqual([month, false]);
    expect(before!.split(",")[0]).not.toBe(after!.split(",")[0]);
  }
});

test("months with the same verdict are folded, and shown on request", () => {
  const [before, after] = [hut(), hut({ hours: 11 })];
  const block = energyIn(described(before, after))!;
  expect(block.folded?.words).toMatch(/^\d months? with the same verdict$/);
  const all = energyIn(described(before, after, true))!;
  expect(all.folded).toBeUndefined();
  expect(all.rows.length).toBe(block.rows.length + block.folded!.rows.length);
});

test("the summary counts months that run short now, and those that no longer do", () => {
  expect(described(hut({ hours: 1 }), hut({ hours: 24 })).text.summary).toMatch(
    /runs short in \d further months?/,
  );
  expect(described(hut({ hours: 24 }), hut({ hours: 1 })).text.summary).toMatch(
    /no longer short in \d months?/,
  );
});

test("the same plan, and a load with another name, change no energy", () => {
  expect(isSame(planDifference(hut(), hut()))).toBe(true);
  expect(planDifference(hut(), hut({ name: "light" })).energy).toEqual([]);
});

test("a changed period is a change of its own; one that came has only one side", () => {
  const moved = described(hut(), hut({ period: 'place: "Tarifa, ES"' }));
  expect(moved.text.blocks[0]!.rows).toEqual([["period all year", "place", "Bergen, NO", "Tarifa, ES"]]);
  expect(energyIn(moved)!.rows.length).toBeGreaterThan(0);
  const came = described(hut({ period: "" }), hut());
  expect(came.text.blocks[0]!.rows.map(([item, property]) => [item, property])).toEqual([
    ["period all year", "added"],
  ]);
  expect(came.difference.energy[0]!.months.map(({ before }) => before)).toEqual(Array(4).fill(undefined));
});
