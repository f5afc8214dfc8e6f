import { expect, test } from "vitest";
import { differenceMarkdown } from "../../library/documents/difference/difference-markdown.ts";
import { planDifference } from "../../library/documents/difference/plan-difference.ts";
import { judge } from "../../library/judge.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { differenceJson, jsonDifferenceSchema } from "./difference-json.ts";
import { differenceText } from "./difference-text.ts";

const board = (topMm: number) =>
  judge(
    runExample(`
const board = surface({ name: "Board", size: { widthMm: 2000, heightMm: 800 } });
channel({ name: "Trunking", on: board, path: [{ leftMm: 0, topMm: ${topMm} }, { leftMm: 2000, topMm: ${topMm} }] });
const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 100, topMm: 300 } });
const plus = busBar({ side: "positive", at: { on: board, leftMm: 1100, topMm: 300 } });
cable({ name: "feed", from: house.positive, to: plus.stud, gauge: 4, protect: 60 });
circuit({ name: "lamp", from: plus.stud, returnTo: house.negative, load: 4, gauge: 12, protect: 10, oneWayM: 1 });`)
      .records,
    [],
  );

test("every form of a difference says the same number of lengths that follow a move", () => {
  const difference = planDifference(board(400), board(450));
  const plan = { state: "compared", path: "a.ts", movedFrom: undefined, difference } as const;
  const comparison = { before: "then", after: "now", plans: [plan], notes: [] };
  const words = "moved 50 mm, 1 length follows";
  expect(differenceText(comparison, { all: false }, { colour: false, progress: false })).toContain(words);
  expect(differenceMarkdown(comparison, { all: false })).toContain(words);
  const [json] = jsonDifferenceSchema.parse(JSON.parse(differenceJson(comparison))).plans;
  expect(json).toMatchObject({
    moves: [{ kind: "channel", name: "Trunking", distanceMm: 50, lengths: 1 }],
  });
});
