import { testRule } from "../rule.tester.ts";
import { channelFill } from "./channel-fill.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;

testRule(channelFill, [
  {
    name: "exactly as full as permitted",
    plan: plan(trunking(", inside: { diameterMm: 20 }, fillPercent: 50"), "outsideMm: 10"),
    finds: "nothing",
  },
  {
    name: "just above",
    plan: plan(trunking(", inside: { diameterMm: 20 }, fillPercent: 49.9"), "outsideMm: 10"),
    finds: [
      {
        subject: "trunking",
        record: "trunking",
        on: "fillPercent",
        message:
          "2 conductors fill 50 % of it (157 mm² of 314 mm²) 0 m to 1.8 m from its beginning; permitted is 49.9 % as stated. Use a larger channel",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "both conductors in one sheath count once",
    plan: plan(
      trunking(", inside: { diameterMm: 20 }, fillPercent: 25"),
      'outsideMm: 10, sheathed: "round duplex"',
    ),
    finds: "nothing",
  },
  {
    name: "wires in parallel count one by one",
    plan: plan(trunking(", inside: { diameterMm: 20 }, fillPercent: 50"), "outsideMm: 10, parallel: 2"),
    finds: [{ on: "fillPercent", message: "2 conductors fill 100 % of it", fixes: "no fix" }],
  },
  {
    name: "no permitted fill, and they do not fit at all",
    plan: plan(trunking(", inside: { widthMm: 15, heightMm: 10 }"), "outsideMm: 10"),
    finds: [{ on: "inside", message: "2 conductors fill 105 % of it", fixes: "no fix" }],
  },
  {
    name: "no permitted fill, and they fit",
    plan: plan(trunking(", inside: { widthMm: 16, heightMm: 10 }"), "outsideMm: 10"),
    finds: "nothing",
  },
  {
    name: "no outside diameter",
    plan: plan(trunking(", inside: { diameterMm: 1 }, fillPercent: 1")),
    finds: "nothing",
  },
  {
    name: "one of unknown diameter beside others that are too thick",
    plan: `${plan(trunking(", inside: { diameterMm: 20 }, fillPercent: 40"), "outsideMm: 10")}
      circuit({ name: "Fan", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
        oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 } });`,
    finds: [{ on: "fillPercent", message: "4 conductors fill at least 50 % of it", fixes: "no fix" }],
  },
  {
    name: "the fullest stretch decides",
    plan: `${plan(trunking(", inside: { diameterMm: 20 }, fillPercent: 60"), "outsideMm: 10")}
      circuit({ name: "Fan", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
        oneWayM: 1, at: { on: board, leftMm: 600, topMm: 300 }, outsideMm: 10 });`,
    finds: [
      {
        on: "fillPercent",
        message:
          "4 conductors fill 100 % of it (314 mm² of 314 mm²) 0 m to 0.5 m from its beginning; permitted is 60 % as stated. Use",
        fixes: "no fix",
      },
    ],
  },
]);
