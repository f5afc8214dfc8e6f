import { describe, expect, test } from "vitest";
import { judge } from "../judge.ts";
import { runExample } from "../rules/page.tester.ts";
import { suggestedPlaces } from "./suggested-places.ts";

const cabin = ({ board = "", channel = "", plus = "", lamp = "" }) => `
build({ insulationC: 105, slackPercent: 0 });
const board = surface({ name: "Board", size: { widthMm: 1_500, heightMm: 800 }${board} });
${channel}
const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, terminalsCovered: true, size: { widthMm: 300, heightMm: 200 },
  at: { on: board, leftMm: 20, topMm: 550 }, terminalsAt: { positive: { leftMm: 150, topMm: 0 }, negative: { leftMm: 250, topMm: 0 } } });
const plus = busBar({ name: "plus", side: "positive", size: { widthMm: 200, heightMm: 50 }${plus} });
cable({ name: "feed", from: house.positive, to: plus.stud, gauge: 4, protect: 60, outsideMm: 10 });
${lamp}`;

const suggested = (plan: string) => {
  const { records } = runExample(plan);
  const judgement = judge(records, []);
  return suggestedPlaces(records, judgement, 0, (changed) => judge(changed, [], judgement));
};

describe("places are only suggested", () => {
  test("if the whole plan has no new error and no new warning with them", () => {
    const { places, why, added } = suggested(cabin({}));
    expect([places.length, why]).toEqual([1, undefined]);
    expect(added.map(({ severity }) => severity)).toEqual(added.map(() => "info"));
  });

  test("else the reason is given: a live terminal near bare metal at any place of the board", () => {
    const { places, why } = suggested(cabin({ board: ", bareMetal: true" }));
    expect(places).toEqual([]);
    expect(why).toMatch(
      /^no arrangement was found that brings no new finding: .* brings at least one, the best of them "[^"]+" \(plus\)$/,
    );
  });

  test("a finding that the plan accepts is none", () => {
    const plus = ', accept: { "placement/exposed": "behind a cover" }';
    expect(suggested(cabin({ board: ", bareMetal: true", plus })).places).toHaveLength(1);
  });

  test("a channel that would be too full is a new finding", () => {
    const through = (inside: string) => `
const trunking = channel({ name: "Trunking", on: board, path: [{ leftMm: 0, topMm: 500 }, { leftMm: 1_500, topMm: 500 }], inside: { ${inside} }, fillPercent: 40 });`;
    const lamp = `
circuit({ name: "lamp", from: plus.stud, returnTo: house.negative, load: 4, gauge: 12, protect: 10, outsideMm: 8, through: [trunking],
  at: { on: board, leftMm: 1_400, topMm: 400 } });`;
    const why = (inside: string) => suggested(cabin({ channel: through(inside), lamp })).why;
    expect(why("diameterMm: 40")).toBeUndefined();
    expect(why("diameterMm: 16")).toContain('"Channel too full" (Trunking)');
  });
});
