import { testRule } from "../rule.tester.ts";
import { oneBoard } from "./one-board.tester.ts";
import { placementOutside } from "./outside.ts";

testRule(placementOutside, [
  {
    name: "up to the edge",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 650, topMm: 120 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm beyond the right edge",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 651, topMm: 120 }",
    }),
    finds: [
      {
        subject: "main",
        on: "at",
        message: "Reaches 1 mm beyond the right edge of board: move it, or choose a larger surface.",
        fixes: [{ title: "Move it 1 mm left", kind: "suggestion", gives: { "at.leftMm": 650 } }],
      },
    ],
  },
  {
    name: "beyond two edges, the farther one is named",
    plan: oneBoard({
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 660, topMm: 600 }",
    }),
    finds: [
      {
        subject: "main",
        on: "at",
        message: "Reaches 40 mm beyond the bottom edge of board",
        fixes: [
          {
            title: "Move it 10 mm left and 40 mm up",
            kind: "suggestion",
            gives: { "at.leftMm": 650, "at.topMm": 560 },
          },
        ],
      },
    ],
  },
  {
    name: "larger than the board",
    plan: oneBoard({ main: "size: { widthMm: 900, heightMm: 40 }, at: { on: board, leftMm: 0, topMm: 0 }" }),
    finds: [{ subject: "main", on: "at", message: "Reaches 100 mm beyond the right edge", fixes: "no fix" }],
  },
  {
    name: "without a size, its corner at the edge",
    plan: oneBoard({ main: "at: { on: board, leftMm: 800, topMm: 120 }" }),
    finds: "nothing",
  },
  {
    name: "without a size, its corner 1 mm beyond the right edge",
    plan: oneBoard({ main: "at: { on: board, leftMm: 801, topMm: 120 }" }),
    finds: [
      {
        subject: "main",
        on: "at",
        message: "Reaches 1 mm beyond the right edge of board: move it, or choose a larger surface.",
        fixes: [{ title: "Move it 1 mm left", kind: "suggestion", gives: { "at.leftMm": 800 } }],
      },
    ],
  },
  {
    name: "a channel up to the edges",
    plan: oneBoard({
      more: 'channel({ name: "duct", on: board, path: [{ leftMm: 0, topMm: 600 }, { leftMm: 800, topMm: 600 }] });',
    }),
    finds: "nothing",
  },
  {
    name: "a channel that leads 200 mm too far",
    plan: oneBoard({
      more: 'channel({ name: "duct", on: board, path: [{ leftMm: 0, topMm: 300 }, { leftMm: 900, topMm: 300 }, { leftMm: 1_000, topMm: 610 }] });',
    }),
    finds: [
      {
        subject: "duct",
        on: "path",
        message:
          "Leads 200 mm beyond the right edge of board: keep it on the surface, or choose a larger one.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a hole beside the board",
    plan: oneBoard({
      more: 'channel({ name: "hole", way: "hole", grommet: true, from: { on: board, leftMm: 700, topMm: 601 }, lengthM: 0.1 });',
    }),
    finds: [
      { subject: "hole", on: "from", message: "Leads 1 mm beyond the bottom edge of board", fixes: "no fix" },
    ],
  },
]);
