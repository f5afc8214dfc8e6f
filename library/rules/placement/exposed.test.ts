import { testRule } from "../rule.tester.ts";
import { placementExposed } from "./exposed.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(placementExposed, [
  {
    name: "covered terminals at bare metal",
    plan: oneBoard({
      surface: "bareMetal: true",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: true",
    }),
    finds: "nothing",
  },
  {
    name: "no cover is stated",
    plan: oneBoard({
      surface: "bareMetal: true",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message:
          "Has live terminals without a stated cover, and board is of bare metal: each needs a boot, cap or cover (33 CFR 183.445(b)). State terminalsCovered if it has.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "bare terminals where tools can fall",
    plan: oneBoard({
      surface: "openAbove: true",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: false",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Has bare live terminals, and board lies open to falling objects: each needs",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the negative bus bar",
    plan: oneBoard({
      surface: "bareMetal: true",
      minus: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "a consumer of which it is not stated",
    plan: oneBoard({
      surface: "bareMetal: true",
      fridge: "size: { widthMm: 150, heightMm: 140 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: "nothing",
  },
  {
    name: "a consumer with bare terminals",
    plan: oneBoard({
      surface: "bareMetal: true",
      fridge:
        "size: { widthMm: 150, heightMm: 140 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: false",
    }),
    finds: [{ subject: "fridge", on: "at", message: "Has bare live terminals", fixes: "no fix" }],
  },
  {
    name: "a wooden board",
    plan: oneBoard({
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, terminalsCovered: false",
    }),
    finds: "nothing",
  },
]);
