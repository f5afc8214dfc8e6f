import { testRule } from "../rule.tester.ts";
import { oneBoard } from "./one-board.tester.ts";
import { placementSpill } from "./spill.ts";

testRule(placementSpill, [
  {
    name: "beside it",
    plan: oneBoard({
      house:
        'chemistry: "flooded lead-acid", size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 400, topMm: 400 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm of the switch is below it",
    plan: oneBoard({
      house:
        'chemistry: "flooded lead-acid", size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 399, topMm: 400 }",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message:
          "Is above the main switch, and its acid can spill (common practice, no source): put the battery lowest, or aside.",
        fixes: [{ title: "Move it 5 mm left", kind: "suggestion", gives: { "at.leftMm": 95 } }],
      },
    ],
  },
  {
    name: "an AGM battery",
    plan: oneBoard({
      house:
        'chemistry: "AGM", size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 150, topMm: 400 }",
    }),
    finds: "nothing",
  },
  {
    name: "on a floor",
    plan: oneBoard({
      surface: 'orientation: "floor"',
      house:
        'chemistry: "flooded lead-acid", size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 150, topMm: 400 }",
    }),
    finds: "nothing",
  },
]);
