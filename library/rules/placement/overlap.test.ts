import { testRule } from "../rule.tester.ts";
import { oneBoard } from "./one-board.tester.ts";
import { placementOverlap } from "./overlap.ts";

testRule(placementOverlap, [
  {
    name: "parts that touch",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 180, topMm: 120 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm less",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 179, topMm: 120 }",
    }),
    finds: [
      {
        subject: "main",
        on: "at",
        message: "Overlaps the main switch by 1 mm across and 40 mm down: move one of them.",
        fixes: [{ title: "Move it 1 mm right", kind: "suggestion", gives: { "at.leftMm": 180 } }],
      },
    ],
  },
  {
    name: "in inches, on a grid of a quarter",
    plan: oneBoard({
      off: "size: { widthIn: 3, heightIn: 3 }, at: { on: board, leftIn: 4, topIn: 4 }",
      main: "size: { widthIn: 6, heightIn: 2 }, at: { on: board, leftIn: 6.9, topIn: 4 }",
    }),
    finds: [
      {
        subject: "main",
        on: "at",
        message: "Overlaps the main switch by 0.1 in across and 2 in down",
        fixes: [{ title: "Move it 0.1 in right", kind: "suggestion", gives: { "at.leftIn": 7 } }],
      },
    ],
  },
  {
    name: "a part turned by a quarter",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
      main: "size: { widthMm: 40, heightMm: 150 }, at: { on: board, leftMm: 100, topMm: 50, turnedDeg: 90 }",
    }),
    finds: "nothing",
  },
  {
    name: "the same part upright",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
      main: "size: { widthMm: 40, heightMm: 150 }, at: { on: board, leftMm: 100, topMm: 50 }",
    }),
    finds: [
      {
        subject: "main",
        on: "at",
        message: "Overlaps the main switch by 40 mm across and 80 mm down",
        fixes: [{ title: "Move it 40 mm left", kind: "suggestion", gives: { "at.leftMm": 60 } }],
      },
    ],
  },
  {
    name: "a breaker on the part that it is mounted on",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }",
      more: 'breaker({ name: "on the bar", ratingA: 10, on: main.stud, size: { widthMm: 30, heightMm: 20 }, at: { on: board, leftMm: 120, topMm: 110 } });',
    }),
    finds: "nothing",
  },
  {
    name: "parts without a size",
    plan: oneBoard({
      off: "at: { on: board, leftMm: 100, topMm: 100 }",
      main: "at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "a place that no near one mends",
    plan: oneBoard({
      house: "size: { widthMm: 800, heightMm: 600 }, at: { on: board, leftMm: 0, topMm: 0 }",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [
      { subject: "main", on: "at", message: "Overlaps the battery house by 150 mm across", fixes: "no fix" },
    ],
  },
]);
