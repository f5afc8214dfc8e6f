import { expect, test } from "vitest";
import { boardsView } from "./boards-view.ts";
import { planUnderCursor } from "./feature.tester.ts";

test("the effects of a move are a line for each run, with the lengths that change and the drop once", async () => {
  const plan = (
    leftMm: number,
  ) => `import { battery, build, busBar, cable, circuit, surface } from "loomwright";
build({ insulationC: 105 });
const board = surface({ size: { widthMm: 1_200, heightMm: 800 } });
const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 20, topMm: 100 } });
const plus = busBar({ side: "positive", at: { on: board, leftMm: ${leftMm}, topMm: 100 } });
const minus = busBar({ side: "negative", at: { on: board, leftMm: 100, topMm: 700 } });
cable({ name: "bank plus", from: bank.positive, to: plus.stud, gauge: 6 });
cable({ name: "bank minus", from: bank.negative, to: minus.stud, gauge: 6 });
circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, load: 8, gauge: 14, at: { on: board, leftMm: 1_100, topMm: 400 } });
`;
  const { view, checker, uri } = await planUnderCursor(plan(100));
  const moved = await checker.checkAs(uri, new Map([[uri, plan(300)]]));
  if (moved.state !== "checked") throw new Error("half typed");
  const { tried } = boardsView(view, { conductors: false, tried: moved });
  expect(tried?.lengths).toEqual([
    "bank plus: 0.088 → 0.308 m; drop 0.000968 → 0.00339 V",
    "lamp: positive 1.43 → 1.21 m; drop 1.78 → 1.67 % from the bank, limit 10 %",
  ]);
});
