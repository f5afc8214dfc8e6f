import { testRule } from "../rule.tester.ts";
import { batteryFuel } from "./battery-fuel.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(batteryFuel, [
  {
    name: "beside the plane of the tank, and 12 in from it",
    plan: oneBoard({
      surface: 'fixtures: [{ fixture: "fuel tank", leftMm: 0, topMm: 0, widthMm: 100, heightMm: 60 }]',
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 364.8 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm below the tank",
    plan: oneBoard({
      surface: 'fixtures: [{ fixture: "fuel tank", leftMm: 0, topMm: 0, widthMm: 101, heightMm: 60 }]',
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 380 }",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message: "Is directly below the fuel tank, where no battery may be (33 CFR 183.420(d)): move it.",
        fixes: [{ title: "Move it 5 mm right", kind: "suggestion", gives: { "at.leftMm": 105 } }],
      },
    ],
  },
  {
    name: "above the tank",
    plan: oneBoard({
      surface: 'fixtures: [{ fixture: "fuel tank", leftMm: 0, topMm: 500, widthMm: 300, heightMm: 60 }]',
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message: "Is directly above the fuel tank",
        fixes: [{ title: "Move it 200 mm right", kind: "suggestion", gives: { "at.leftMm": 300 } }],
      },
    ],
  },
  {
    name: "nearer than 12 in to a tank that is higher than its top",
    plan: oneBoard({
      surface: 'fixtures: [{ fixture: "fuel tank", leftMm: 0, topMm: 0, widthMm: 100, heightMm: 60 }]',
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 364 }",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        severity: "info",
        message:
          "Is within 12 in of the fuel tank, which is higher than its top: fuel parts of metal there need a dielectric shield (33 CFR 183.420(c)).",
        fixes: [{ title: "Move it 1 mm down", kind: "suggestion", gives: { "at.topMm": 365 } }],
      },
    ],
  },
  {
    name: "on a floor over a tank",
    plan: oneBoard({
      surface:
        'orientation: "floor", fixtures: [{ fixture: "fuel tank", leftMm: 0, topMm: 100, widthMm: 300, heightMm: 60 }]',
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 250, topMm: 100 }",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message: "Is directly above or below the fuel tank",
        fixes: [{ title: "Move it 50 mm right", kind: "suggestion", gives: { "at.leftMm": 300 } }],
      },
    ],
  },
]);
