import { testRule } from "../rule.tester.ts";
import { kinderStated } from "./kinder-than-way.ts";

const plan = (channelMore: string, run: string, more = "") => `
  ${more}
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 } });
  const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }], ${channelMore} });
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  const lamp = { from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10, insulationC: 105,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 } };
  circuit({ ...lamp, name: "Lamp", ${run} });`;

testRule(kinderStated, [
  { name: "as warm as its way", plan: plan("ambientC: 50", "ambientC: 50"), finds: "nothing" },
  {
    name: "cooler than its way",
    plan: plan("ambientC: 50", "ambientC: 49"),
    finds: [
      {
        subject: "Lamp",
        record: "Lamp",
        on: "ambientC",
        message:
          "49 °C stated, and trunking on its way has 50 °C: the stated value wins; leave it out to judge by the way.",
        fixes: "no fix",
      },
    ],
  },
  { name: "nothing is stated for the run", plan: plan("ambientC: 50", ""), finds: "nothing" },
  {
    name: "cooler in the build alone: the place counts",
    plan: plan("ambientC: 50", "", "build({ ambientC: 30 });"),
    finds: "nothing",
  },
  {
    name: "not in an engine space, and its way is",
    plan: plan("engineSpace: true", "engineSpace: false"),
    finds: [
      {
        on: "engineSpace",
        message: "No engine space stated, and trunking on its way is in one: the stated value wins",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "in an engine space, as its way",
    plan: plan("engineSpace: true", "engineSpace: true"),
    finds: "nothing",
  },
  {
    name: "fewer conductors together than on its way",
    plan: `${plan("", "bundledWith: 1")}\n  circuit({ ...lamp, name: "Fan", bundledWith: 3 });`,
    finds: [
      {
        subject: "Lamp",
        on: "bundledWith",
        message:
          "1 other conductor stated, and in trunking on its way up to 3 carry load with it: the stated value wins.",
        fixes: "no fix",
      },
    ],
  },
]);
