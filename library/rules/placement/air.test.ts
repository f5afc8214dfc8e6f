import { testRule } from "../rule.tester.ts";
import { placementAir } from "./air.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(placementAir, [
  {
    name: "as much air as it needs",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, air: { rightMm: 50 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 230, topMm: 120 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm less air than it needs",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, air: { rightMm: 50 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 229, topMm: 120 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message:
          "49 mm of air on its right, up to the bus bar main, below the 50 mm that it needs (stated in the plan): move one of them.",
        fixes: [{ title: "Move it 5 mm left", kind: "suggestion", gives: { "at.leftMm": 95 } }],
      },
    ],
  },
  {
    name: "the larger of two facing distances counts once",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, air: { rightMm: 50 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 260, topMm: 120 }, air: { leftMm: 80 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm less than the larger of the two",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, air: { rightMm: 50 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 259, topMm: 120 }, air: { leftMm: 80 }",
    }),
    finds: [
      {
        subject: "main",
        on: "at",
        message: "79 mm of air on its left, up to the main switch, below the 80 mm",
        fixes: [{ title: "Move it 1 mm right", kind: "suggestion", gives: { "at.leftMm": 260 } }],
      },
    ],
  },
  {
    name: "the sides turn with the part",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 200, turnedDeg: 90 }, air: { rightMm: 50 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 300 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "20 mm of air below it, up to the bus bar main, below the 50 mm",
        fixes: [{ title: "Move it 30 mm up", kind: "suggestion", gives: { "at.topMm": 170 } }],
      },
    ],
  },
  {
    name: "only diagonally beside it",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, air: { rightMm: 50, bottomMm: 50 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 190, topMm: 190 }",
    }),
    finds: "nothing",
  },
  {
    name: "the edge of the surface",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 0, topMm: 100 }, air: { leftMm: 50 }",
    }),
    finds: "nothing",
  },
]);
