import { testRule } from "../rule.tester.ts";
import { lugRoom } from "./lug-room.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(lugRoom, [
  {
    name: "6 AWG with 38.1 mm, NFPA 70 Table 312.6(A)",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 218.1 }",
    }),
    finds: "nothing",
  },
  {
    name: "6 AWG with 38 mm",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 218 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message:
          "38 mm before the load side, up to the bus bar main; 6 AWG of feed needs 38.1 mm beyond its lug to bend (NFPA 70 312.6, Table 312.6(A)).",
        fixes: [{ title: "Move it 5 mm up", kind: "suggestion", gives: { "at.topMm": 95 } }],
      },
    ],
  },
  {
    name: "the edge of the board",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 500 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "20 mm before the load side, up to the edge of board; 6 AWG of feed",
        fixes: [{ title: "Move it 20 mm up", kind: "suggestion", gives: { "at.topMm": 480 } }],
      },
    ],
  },
  {
    name: "a place kept free",
    plan: oneBoard({
      surface: 'keepFree: [{ leftMm: 0, topMm: 300, widthMm: 800, heightMm: 40, name: "bed frame" }]',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 200 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "20 mm before the load side, up to bed frame; 6 AWG",
        fixes: [{ title: "Move it 20 mm up", kind: "suggestion", gives: { "at.topMm": 180 } }],
      },
    ],
  },
  {
    name: "no bending space is asked for 10 AWG",
    plan: oneBoard({
      surface: "keepFree: [{ leftMm: 0, topMm: 150, widthMm: 800, heightMm: 40 }]",
      fridge:
        'size: { widthMm: 80, heightMm: 50 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsAt: { positive: { leftMm: 40, topMm: 50, leaves: "down" } }',
    }),
    finds: "nothing",
  },
  {
    name: "straight into the terminal opposite",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
      main: 'size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 200 }, terminalsAt: { stud: [{ leftMm: 40, topMm: 20, leaves: "up" }, { leftMm: 100, topMm: 20 }] }',
    }),
    finds: "nothing",
  },
  {
    name: "towards the front",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 500 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "front" } }',
    }),
    finds: "nothing",
  },
  {
    name: "a metric size with 4 times its outside diameter",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 488 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
      feed: "gauge: undefined, mm2: 16, outsideMm: 8",
    }),
    finds: "nothing",
  },
  {
    name: "a metric size with less",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 489 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
      feed: "gauge: undefined, mm2: 16, outsideMm: 8",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message:
          "31 mm before the load side, up to the edge of board; 16 mm² of feed needs 32 mm beyond its lug to bend (common practice, no source).",
        fixes: [{ title: "Move it 4 mm up", kind: "suggestion", gives: { "at.topMm": 485 } }],
      },
    ],
  },
  {
    name: "a metric size without an outside diameter",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 500 }, terminalsAt: { load: { leftMm: 40, topMm: 80, leaves: "down" } }',
      feed: "gauge: undefined, mm2: 16",
    }),
    finds: "nothing",
  },
]);
