import { testRule } from "../rule.tester.ts";
import { conductorsShareChannel } from "./shared-channel.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;
const fan = (more: string) => `
  circuit({ name: "Fan", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${more} });`;

testRule(conductorsShareChannel, [
  { name: "two conductors", plan: plan(trunking()), finds: "nothing" },
  {
    name: "four conductors",
    plan: `${plan(trunking(), "insulationC: 105")}\n${fan("insulationC: 105,")}`,
    finds: [
      {
        subject: "trunking",
        record: "trunking",
        on: "",
        message:
          "Up to 4 conductors carry load together here over 610 mm or more (unconfirmed figure). The factor for that is a demand only from 50 V (33 CFR 183.435(b), with 183.425 Table 5, note 2). With it each run still carries its load, Lamp with 6 A of 36 A instead of 60 A. bundledInChannels in build judges by it.",
        values: { together: 4, above: [] },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one that would be overloaded",
    plan: `${plan(trunking(), "insulationC: 105")}\n${fan("insulationC: 105, load: 37, protect: 40,")}`,
    finds: [
      { on: "", message: "Up to 4 conductors", values: { above: ["Fan"], name: "Fan" }, fixes: "no fix" },
    ],
  },
  {
    name: "never on together",
    plan: `${plan(trunking(), "insulationC: 105, load: undefined, at: undefined, to: lamp").replace("circuit(", `const lamp = load({ currentA: 6, at: { on: board, leftMm: 1_900, topMm: 300 } }); circuit(`)}
      const fan = load({ currentA: 6, at: { on: board, leftMm: 1_900, topMm: 300 } });
      ${fan("load: undefined, at: undefined, to: fan,")}
      scenario({ name: "day", on: [fan] }); scenario({ name: "night", on: [lamp] });`,
    finds: "nothing",
  },
  {
    name: "together over less than 24 in",
    plan: `${plan(trunking())}\n${fan("oneWayM: 1, at: { on: board, leftMm: 709, topMm: 300 },")}`,
    finds: "nothing",
  },
  {
    name: "together over 24 in",
    plan: `${plan(trunking())}\n${fan("oneWayM: 1, at: { on: board, leftMm: 709.6, topMm: 300 },")}`,
    finds: [{ on: "", message: "Up to 4 conductors", fixes: "no fix" }],
  },
  {
    name: "as many as the plan states",
    plan: `${plan(trunking(), "bundledWith: 3")}\n${fan("bundledWith: 3,")}`,
    finds: "nothing",
  },
]);
