import { testRule } from "../rule.tester.ts";
import { oneBoard } from "./one-board.tester.ts";
import { placementPosition } from "./position.ts";

testRule(placementPosition, [
  {
    name: "upright, as its maker permits",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, mountingPositions: ["upright"]',
    }),
    finds: "nothing",
  },
  {
    name: "turned by a quarter",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100, turnedDeg: 90 }, mountingPositions: ["upright"]',
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message:
          "Is left side up on board; permitted: upright (stated in the plan). Turn it, or choose another surface.",
        fixes: [{ title: "Mount it upright", kind: "suggestion", gives: { "at.turnedDeg": 0 } }],
      },
    ],
  },
  {
    name: "on a floor, where no turn helps",
    plan: oneBoard({
      surface: 'orientation: "floor"',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, mountingPositions: ["upright", "upside down"]',
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Is on its back on board; permitted: upright and upside down",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "on a floor, and permitted on its back",
    plan: oneBoard({
      surface: 'orientation: "floor"',
      off: 'size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, mountingPositions: ["on its back"]',
    }),
    finds: "nothing",
  },
  {
    name: "a turn for which there is no room",
    plan: oneBoard({
      off: 'size: { widthMm: 80, heightMm: 300 }, at: { on: board, leftMm: 720, topMm: 100, turnedDeg: 0 }, mountingPositions: ["left side up"]',
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Is upright on board; permitted: left side up",
        fixes: "no fix",
      },
    ],
  },
]);
