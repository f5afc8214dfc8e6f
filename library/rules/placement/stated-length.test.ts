import { testRule } from "../rule.tester.ts";
import { statedLength } from "./stated-length.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;

testRule(statedLength, [
  { name: "as long as the way of the longer conductor", plan: plan(trunking()), finds: "nothing" },
  { name: "10 mm shorter, which is rounding", plan: plan(trunking(), "oneWayM: 1.99"), finds: "nothing" },
  {
    name: "11 mm shorter",
    plan: plan(trunking(), "oneWayM: 1.989"),
    finds: [
      {
        subject: "Lamp",
        on: "oneWayM",
        message:
          "1.99 m stated, but the way of the positive conductor of Lamp is 2 m, without slack: state the length of the way, or move a part.",
        fixes: [
          { title: "State 2 m, the length of its way", kind: "suggestion", gives: { oneWayM: 2 } },
          {
            title: "Leave the length out, for that of the way",
            kind: "suggestion",
            gives: { oneWayM: undefined },
          },
        ],
      },
    ],
  },
  {
    name: "in feet",
    plan: plan(trunking(), "oneWayM: undefined, oneWayFt: 6"),
    finds: [
      {
        on: "oneWayFt",
        message: "6 ft stated, but the way of the positive conductor of Lamp is 6.56 ft",
        fixes: [
          { title: "State 6.57 ft, the length of its way", kind: "suggestion", gives: { oneWayFt: 6.57 } },
          {
            title: "Leave the length out, for that of the way",
            kind: "suggestion",
            gives: { oneWayFt: undefined },
          },
        ],
      },
    ],
  },
  {
    name: "each conductor by its own length",
    plan: plan(trunking(), "oneWayM: undefined, positiveM: 2, negativeM: 1.5"),
    finds: [
      {
        on: "negativeM",
        message: "1.5 m stated, but the way of the return of Lamp is 2 m",
        fixes: [
          { title: "State 2 m, the length of its way", kind: "suggestion", gives: { negativeM: 2 } },
          {
            title: "Leave the length out, for that of the way",
            kind: "suggestion",
            gives: { negativeM: undefined },
          },
        ],
      },
    ],
  },
  { name: "just below 1.5 times as long", plan: plan(trunking(), "oneWayM: 2.99"), finds: "nothing" },
  {
    name: "1.5 times as long",
    plan: plan(trunking(), "oneWayM: 3"),
    finds: [
      {
        on: "oneWayM",
        severity: "info",
        message:
          "3 m stated, and the way of the positive conductor of Lamp is 2 m: more than 1.5 times as long (common practice, no source).",
        fixes: [
          { title: "State 2 m, the length of its way", kind: "suggestion", gives: { oneWayM: 2 } },
          {
            title: "Leave the length out, for that of the way",
            kind: "suggestion",
            gives: { oneWayM: undefined },
          },
        ],
      },
    ],
  },
  {
    name: "twice as long, but by less than 0.5 m",
    plan: plan("", "oneWayM: 0.8, at: { on: board, leftMm: 500, topMm: 300 }"),
    finds: "nothing",
  },
  { name: "a part without a place", plan: plan(trunking(), "oneWayM: 1, at: undefined"), finds: "nothing" },
]);
