import { testRule } from "../rule.tester.ts";
import { placementHeat } from "./heat.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(placementHeat, [
  {
    name: "the warm part above",
    plan: oneBoard({
      house:
        "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 350 }, keepCool: true",
      fridge: "size: { widthMm: 200, heightMm: 150 }, at: { on: board, leftMm: 150, topMm: 100 }, heatW: 40",
    }),
    finds: "nothing",
  },
  {
    name: "the warm part below",
    plan: oneBoard({
      house:
        "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }, keepCool: true",
      fridge: "size: { widthMm: 200, heightMm: 150 }, at: { on: board, leftMm: 150, topMm: 400 }, heatW: 40",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message:
          "Must stay cool, and fridge below it gives off heat (common practice, no source): put the warm part above it, or aside.",
        fixes: [{ title: "Move it 250 mm right", kind: "suggestion", gives: { "at.leftMm": 350 } }],
      },
    ],
  },
  {
    name: "100 mm beside it",
    plan: oneBoard({
      house:
        "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }, keepCool: true",
      fridge: "size: { widthMm: 200, heightMm: 150 }, at: { on: board, leftMm: 500, topMm: 100 }, heatW: 40",
    }),
    finds: "nothing",
  },
  {
    name: "99 mm beside it",
    plan: oneBoard({
      house:
        "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }, keepCool: true",
      fridge: "size: { widthMm: 200, heightMm: 150 }, at: { on: board, leftMm: 499, topMm: 100 }, heatW: 40",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message:
          "Must stay cool, and fridge gives off heat 99 mm beside it, nearer than 100 mm (common practice, no source): move one of them.",
        fixes: [{ title: "Move it 5 mm left", kind: "suggestion", gives: { "at.leftMm": 95 } }],
      },
    ],
  },
  {
    name: "no heat",
    plan: oneBoard({
      house:
        "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }, keepCool: true",
      fridge: "size: { widthMm: 200, heightMm: 150 }, at: { on: board, leftMm: 150, topMm: 400 }, heatW: 0",
    }),
    finds: "nothing",
  },
  {
    name: "a converter that states no heat",
    plan: oneBoard({
      house:
        "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }, keepCool: true",
      more: 'const inv = inverter({ name: "inverter", continuousW: 300, size: { widthMm: 200, heightMm: 150 }, at: { on: board, leftMm: 150, topMm: 400 } });',
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message: "Must stay cool, and the inverter below it gives off heat",
        fixes: [{ title: "Move it 250 mm right", kind: "suggestion", gives: { "at.leftMm": 350 } }],
      },
    ],
  },
  {
    name: "on a floor, on all sides",
    plan: oneBoard({
      surface: 'orientation: "floor"',
      house:
        "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 50 }, keepCool: true",
      fridge: "size: { widthMm: 200, heightMm: 150 }, at: { on: board, leftMm: 150, topMm: 349 }, heatW: 40",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message: "Must stay cool, and fridge gives off heat 99 mm beside it",
        fixes: [{ title: "Move it 5 mm up", kind: "suggestion", gives: { "at.topMm": 45 } }],
      },
    ],
  },
]);
