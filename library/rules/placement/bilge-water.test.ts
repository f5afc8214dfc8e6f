import { testRule } from "../rule.tester.ts";
import { bilgeWater } from "./bilge-water.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(bilgeWater, [
  {
    name: "just above the water",
    plan: oneBoard({
      surface: "bilgeWaterMm: 120",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 400 }",
    }),
    finds: "nothing",
  },
  {
    name: "1 mm in it",
    plan: oneBoard({
      surface: "bilgeWaterMm: 120",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 401 }",
    }),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message:
          "Its lower edge is 1 mm below the bilge water that the plan expects (common practice, no source): mount it higher.",
        fixes: [{ title: "Move it 1 mm up", kind: "suggestion", gives: { "at.topMm": 400 } }],
      },
    ],
  },
  {
    name: "a battery, by the standard",
    plan: oneBoard({
      surface: "bilgeWaterMm: 120",
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 300 }",
    }),
    finds: [
      {
        subject: "house",
        on: "at",
        message:
          "Its lower edge is 20 mm below the bilge water that the plan expects (ISO 10133:2012, 5.1): mount it higher.",
        fixes: [{ title: "Move it 20 mm up", kind: "suggestion", gives: { "at.topMm": 280 } }],
      },
    ],
  },
  {
    name: "on a floor that water covers",
    plan: oneBoard({
      surface: 'orientation: "floor", bilgeWaterMm: 30',
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [{ subject: "main switch", on: "at", message: "Its lower edge is 30 mm below", fixes: "no fix" }],
  },
  {
    name: "a consumer in it",
    plan: oneBoard({
      surface: "bilgeWaterMm: 120",
      fridge: "size: { widthMm: 80, heightMm: 200 }, at: { on: board, leftMm: 100, topMm: 400 }",
    }),
    finds: "nothing",
  },
]);
