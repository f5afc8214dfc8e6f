import { testRule } from "../rule.tester.ts";
import { oneBoard } from "./one-board.tester.ts";
import { placementReach } from "./reach.ts";

testRule(placementReach, [
  {
    name: "a fuse panel beside it",
    plan: oneBoard({
      surface: "outOfReach: [{ leftMm: 700, topMm: 0, widthMm: 100, heightMm: 600 }]",
      more: 'const fuses = fusePanel({ name: "fuses", ratedA: 50, positions: 6, size: { widthMm: 150, heightMm: 80 }, at: { on: board, leftMm: 550, topMm: 100 } });',
    }),
    finds: "nothing",
  },
  {
    name: "1 mm into it",
    plan: oneBoard({
      surface: "outOfReach: [{ leftMm: 700, topMm: 0, widthMm: 100, heightMm: 600 }]",
      more: 'const fuses = fusePanel({ name: "fuses", ratedA: 50, positions: 6, size: { widthMm: 150, heightMm: 80 }, at: { on: board, leftMm: 551, topMm: 100 } });',
    }),
    finds: [
      {
        subject: "fuses",
        on: "at",
        message:
          "Is at a place of board that a hand does not reach: move it to where its fuse can be changed",
        fixes: [{ title: "Move it 1 mm left", kind: "suggestion", gives: { "at.leftMm": 550 } }],
      },
    ],
  },
  {
    name: "a bus bar there",
    plan: oneBoard({
      surface: "outOfReach: [{ leftMm: 700, topMm: 0, widthMm: 100, heightMm: 600 }]",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 640, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "a fuse holder without a size",
    plan: oneBoard({
      surface: "outOfReach: [{ leftMm: 700, topMm: 0, widthMm: 100, heightMm: 600 }]",
      more: 'fuseHolder({ name: "holder", ratingA: 10, at: { on: board, leftMm: 750, topMm: 100 } });',
    }),
    finds: [
      {
        subject: "holder",
        on: "at",
        message: "Is at a place of board",
        fixes: [{ title: "Move it 50 mm left", kind: "suggestion", gives: { "at.leftMm": 700 } }],
      },
    ],
  },
]);
