import { testRule } from "../rule.tester.ts";
import { noWayForConductor } from "./no-way.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;

testRule(noWayForConductor, [
  { name: "a way through the trunking", plan: plan(trunking()), finds: "nothing" },
  {
    name: "another surface that no channel reaches",
    plan: plan(
      `const roof = surface({ size: { widthMm: 500, heightMm: 500 }, orientation: "ceiling" }); ${trunking()}`,
      "at: { on: roof, leftMm: 10, topMm: 10 }",
    ),
    finds: [
      {
        subject: "Lamp",
        record: "Lamp",
        on: "",
        message:
          "No way leads from the battery house to Lamp: no channel connects board with roof. Add one between these surfaces.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a hole between the surfaces",
    plan: plan(
      `const roof = surface({ size: { widthMm: 500, heightMm: 500 }, orientation: "ceiling" }); ${trunking()}
       channel({ way: "hole", from: { on: board, leftMm: 1_900, topMm: 10 }, to: { on: roof, leftMm: 10, topMm: 400 }, lengthM: 0.02 });`,
      "at: { on: roof, leftMm: 10, topMm: 10 }",
    ),
    finds: "nothing",
  },
  {
    name: "the named channels lead to another surface",
    plan: plan(
      `const roof = surface({ size: { widthMm: 500, heightMm: 500 }, orientation: "ceiling" }); ${trunking()}
       channel({ name: "Hole", way: "hole", from: { on: board, leftMm: 1_900, topMm: 10 }, to: { on: roof, leftMm: 10, topMm: 400 }, lengthM: 0.02 });`,
      "at: { on: roof, leftMm: 10, topMm: 10 }, through: [trunking]",
    ),
    finds: [
      {
        on: "through",
        message: "No way leads from the battery house to Lamp through trunking: name every channel",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a place kept free across the whole board",
    plan: plan("", "", ", keepFree: [{ leftMm: 900, topMm: 0, widthMm: 50, heightMm: 800 }]"),
    finds: "nothing",
  },
  {
    name: "a place kept free around the lamp",
    plan: plan(
      "",
      "",
      `, keepFree: [
        { leftMm: 1_700, topMm: 0, widthMm: 50, heightMm: 500 }, { leftMm: 1_700, topMm: 450, widthMm: 300, heightMm: 50 },
        { leftMm: 1_690, topMm: 0, widthMm: 70, heightMm: 800 }, { leftMm: 1_600, topMm: 0, widthMm: 1_000, heightMm: 900 }]`,
    ),
    finds: [{ on: "", message: "No way leads", fixes: "no fix" }],
  },
]);
