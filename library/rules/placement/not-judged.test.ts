import { testRule } from "../rule.tester.ts";
import { notJudged } from "./not-judged.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(notJudged, [
  {
    name: "all that the rules need is stated",
    plan: oneBoard({
      house:
        'size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 20, topMm: 380 }, mountingPositions: ["upright"], terminalsAt: { positive: { leftMm: 40, topMm: 20, leaves: "up" }, negative: { leftMm: 260, topMm: 20, leaves: "up" } }',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 20, topMm: 100 }, terminalsAt: { line: { leftMm: 40, topMm: 70, leaves: "down" }, load: { leftMm: 40, topMm: 10, leaves: "up" } }',
      main: 'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 200, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      minus:
        'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 500, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      fridge: "size: { widthMm: 200, heightMm: 200 }, at: { on: board, leftMm: 500, topMm: 300 }",
    }),
    finds: "nothing",
  },
  {
    name: "a part without a place",
    plan: oneBoard({
      house:
        'size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 20, topMm: 380 }, mountingPositions: ["upright"], terminalsAt: { positive: { leftMm: 40, topMm: 20, leaves: "up" }, negative: { leftMm: 260, topMm: 20, leaves: "up" } }',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 20, topMm: 100 }, terminalsAt: { line: { leftMm: 40, topMm: 70, leaves: "down" }, load: { leftMm: 40, topMm: 10, leaves: "up" } }',
      main: 'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 200, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      minus:
        'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 500, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      fridge: "heatW: 0",
    }),
    finds: [
      {
        subject: "the plan",
        on: "",
        message: "Not stated, so not judged: the place of fridge (at).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a part without a size",
    plan: oneBoard({
      house:
        'size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 20, topMm: 380 }, mountingPositions: ["upright"], terminalsAt: { positive: { leftMm: 40, topMm: 20, leaves: "up" }, negative: { leftMm: 260, topMm: 20, leaves: "up" } }',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 20, topMm: 100 }, terminalsAt: { line: { leftMm: 40, topMm: 70, leaves: "down" }, load: { leftMm: 40, topMm: 10, leaves: "up" } }',
      main: 'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 200, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      minus:
        'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 500, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      fridge: "at: { on: board, leftMm: 500, topMm: 300 }",
    }),
    finds: [
      {
        subject: "the plan",
        on: "",
        message: "Not stated, so not judged: the fit of fridge (size).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a warm part without air and positions",
    plan: oneBoard({
      house:
        'size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 20, topMm: 380 }, mountingPositions: ["upright"], terminalsAt: { positive: { leftMm: 40, topMm: 20, leaves: "up" }, negative: { leftMm: 260, topMm: 20, leaves: "up" } }',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 20, topMm: 100 }, terminalsAt: { line: { leftMm: 40, topMm: 70, leaves: "down" }, load: { leftMm: 40, topMm: 10, leaves: "up" } }',
      main: 'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 200, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      minus:
        'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 500, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      fridge: "size: { widthMm: 200, heightMm: 200 }, at: { on: board, leftMm: 500, topMm: 300 }, heatW: 40",
    }),
    finds: [
      {
        subject: "the plan",
        on: "",
        message:
          "Not stated, so not judged: the air around fridge (air); the mounting position of fridge (mountingPositions).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "terminals without a direction",
    plan: oneBoard({
      house:
        'size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 20, topMm: 380 }, mountingPositions: ["upright"], terminalsAt: { positive: { leftMm: 40, topMm: 20, leaves: "up" }, negative: { leftMm: 260, topMm: 20, leaves: "up" } }',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 20, topMm: 100 }, terminalsAt: { line: { leftMm: 40, topMm: 70, leaves: "down" }, load: { leftMm: 40, topMm: 10, leaves: "up" } }',
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 200, topMm: 100 }",
      minus:
        'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 500, topMm: 100 }, terminalsAt: { stud: [{ leftMm: 20, topMm: 20, leaves: "up" }, { leftMm: 60, topMm: 20, leaves: "up" }] }',
      fridge: "size: { widthMm: 200, heightMm: 200 }, at: { on: board, leftMm: 500, topMm: 300 }",
    }),
    finds: [
      {
        subject: "the plan",
        on: "",
        message:
          "Not stated, so not judged: the room for lugs at the bus bar main (terminalsAt, or outsideMm of the conductor).",
        fixes: "no fix",
      },
    ],
  },
]);
