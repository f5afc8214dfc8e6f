import { testRule } from "../rule.tester.ts";
import { placementBusBars } from "./bus-bars.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(placementBusBars, [
  {
    name: "as far apart as a spanner is long",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: false",
      minus:
        "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 290 }, terminalsCovered: false",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm nearer",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: false",
      minus:
        "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 289 }, terminalsCovered: false",
    }),
    finds: [
      {
        subject: "minus",
        on: "at",
        message:
          "149 mm from the bus bar main, which has the other polarity: a spanner of 150 mm reaches both (common practice, no source). Cover one of them, or move them apart.",
        fixes: [{ title: "Move it 1 mm down", kind: "suggestion", gives: { "at.topMm": 290 } }],
      },
    ],
  },
  {
    name: "covers are not stated",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: false",
      minus: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 289 }",
    }),
    finds: [
      {
        subject: "minus",
        on: "at",
        severity: "info",
        message:
          "149 mm from the bus bar main, which has the other polarity: a spanner of 150 mm reaches both (common practice, no source). State terminalsCovered",
        fixes: [{ title: "Move it 1 mm down", kind: "suggestion", gives: { "at.topMm": 290 } }],
      },
    ],
  },
  {
    name: "one of them is covered",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: true",
      minus:
        "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 200 }, terminalsCovered: false",
    }),
    finds: "nothing",
  },
  {
    name: "two of the same polarity",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: false",
      more: 'const second = busBar({ name: "second", ratedA: 100, size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 200 }, terminalsCovered: false }); cable({ from: main.stud, to: second.stud, lengthFt: 1, gauge: 6 });',
    }),
    finds: "nothing",
  },
]);
