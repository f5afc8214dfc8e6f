import { testRule } from "../rule.tester.ts";
import { placementFixture } from "./fixture.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(placementFixture, [
  {
    name: "as far from the compass as it asks",
    plan: oneBoard({
      surface:
        'fixtures: [{ fixture: "compass", leftMm: 480, topMm: 100, widthMm: 120, heightMm: 120, distanceMm: 300 }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm nearer",
    plan: oneBoard({
      surface:
        'fixtures: [{ fixture: "compass", leftMm: 479, topMm: 100, widthMm: 120, heightMm: 120, distanceMm: 300 }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "299 mm from the compass, below 300 mm (stated in the plan): move it.",
        fixes: [{ title: "Move it 5 mm left", kind: "suggestion", gives: { "at.leftMm": 95 } }],
      },
    ],
  },
  {
    name: "a compass that states no distance",
    plan: oneBoard({
      surface:
        'fixtures: [{ fixture: "compass", leftMm: 200, topMm: 100, widthMm: 120, heightMm: 120, name: "steering compass" }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "a part over it",
    plan: oneBoard({
      surface:
        'fixtures: [{ fixture: "compass", leftMm: 150, topMm: 100, widthMm: 120, heightMm: 120, name: "steering compass" }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Covers steering compass: move one of them.",
        fixes: [{ title: "Move it 30 mm left", kind: "suggestion", gives: { "at.leftMm": 70 } }],
      },
    ],
  },
  {
    name: "2 ft from a petrol engine, 33 CFR 183.410(b)(3)",
    plan: oneBoard({
      surface:
        'fixtures: [{ fixture: "petrol engine", leftMm: 709.6, topMm: 100, widthMm: 20, heightMm: 120 }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 20, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "less than 2 ft from a petrol engine",
    plan: oneBoard({
      surface:
        'fixtures: [{ fixture: "petrol engine", leftMm: 709, topMm: 100, widthMm: 20, heightMm: 120 }]',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 20, topMm: 100 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message:
          "609 mm from the petrol engine, below 610 mm (33 CFR 183.410(b)(3)): move it, unless it is marked as ignition protected or a bulkhead is between.",
        fixes: [{ title: "Move it 5 mm left", kind: "suggestion", gives: { "at.leftMm": 15 } }],
      },
    ],
  },
]);
