import { testRule } from "../rule.tester.ts";
import { throughUnused } from "./through.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;

testRule(throughUnused, [
  {
    name: "the named channel is on the way",
    plan: plan(trunking(), "through: [trunking]"),
    finds: "nothing",
  },
  { name: "in the open", plan: plan(trunking(), "through: []"), finds: "nothing" },
  {
    name: "a second channel that would be a detour",
    plan: plan(
      `${trunking()} const upper = channel({ on: board, path: [{ leftMm: 100, topMm: 0 }, { leftMm: 1_900, topMm: 0 }] });`,
      "through: [trunking, upper]",
    ),
    finds: [
      {
        subject: "Lamp",
        on: "through",
        message:
          "The way does not use upper: a shorter one through the other channels that are named, or in the open",
        values: { channels: ["upper"] },
        fixes: "no fix",
      },
    ],
  },
]);
