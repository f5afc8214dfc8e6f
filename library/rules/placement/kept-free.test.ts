import { testRule } from "../rule.tester.ts";
import { keptFree } from "./kept-free.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(keptFree, [
  {
    name: "above the bed frame",
    plan: oneBoard({
      surface: 'keepFree: [{ leftMm: 0, topMm: 300, widthMm: 800, heightMm: 40, name: "bed frame" }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 220 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm into it",
    plan: oneBoard({
      surface: 'keepFree: [{ leftMm: 0, topMm: 300, widthMm: 800, heightMm: 40, name: "bed frame" }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 221 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Covers a place of board that must stay free, bed frame: move it.",
        fixes: [{ title: "Move it 1 mm up", kind: "suggestion", gives: { "at.topMm": 220 } }],
      },
    ],
  },
  {
    name: "a place without a name",
    plan: oneBoard({
      surface: "keepFree: [{ leftMm: 0, topMm: 0, widthMm: 110, heightMm: 600 }]",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Covers a place of board that must stay free: move it.",
        fixes: [{ title: "Move it 10 mm right", kind: "suggestion", gives: { "at.leftMm": 110 } }],
      },
    ],
  },
  {
    name: "without a size, its corner at the edge of the place",
    plan: oneBoard({
      surface: "keepFree: [{ leftMm: 0, topMm: 0, widthMm: 110, heightMm: 600 }]",
      off: "at: { on: board, leftMm: 110, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "without a size, its corner within the place",
    plan: oneBoard({
      surface: "keepFree: [{ leftMm: 0, topMm: 0, widthMm: 110, heightMm: 600 }]",
      off: "at: { on: board, leftMm: 109, topMm: 100 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Covers a place of board that must stay free: move it.",
        fixes: [{ title: "Move it 1 mm right", kind: "suggestion", gives: { "at.leftMm": 110 } }],
      },
    ],
  },
]);
