import { testRule } from "../rule.tester.ts";
import { bendTooTight } from "./bend-radius.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const bent = (apartMm: number, more = "") => `const trunking = channel({ on: board, ${more} path: [
  { leftMm: 100, topMm: 400 }, { leftMm: 1_000, topMm: 400 }, { leftMm: 1_000, topMm: ${400 - apartMm} },
  { leftMm: 1_900, topMm: ${400 - apartMm} }] });`;

testRule(bendTooTight, [
  {
    name: "4 times its diameter",
    plan: plan(bent(100, "bendRadiusMm: 40,"), "outsideMm: 10"),
    finds: "nothing",
  },
  {
    name: "just below 4 times its diameter",
    plan: plan(bent(100, "bendRadiusMm: 39,"), "outsideMm: 10"),
    finds: [
      {
        subject: "trunking",
        on: "bendRadiusMm",
        message:
          "Bends of 39 mm are too tight for the positive conductor of Lamp: it needs 40 mm, 4 times its 10 mm (common practice, no source; its data sheet comes first).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "pulled through a conduit",
    plan: plan(bent(200, 'way: "conduit", bendRadiusMm: 59,'), "outsideMm: 10"),
    finds: [
      {
        on: "bendRadiusMm",
        message:
          "Bends of 59 mm are too tight for the positive conductor of Lamp: it needs 60 mm, 6 times its 10 mm, as it is pulled through",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "6 times its diameter in a conduit",
    plan: plan(bent(200, 'way: "conduit", bendRadiusMm: 60,'), "outsideMm: 10"),
    finds: "nothing",
  },
  {
    name: "above 25 mm 6 times its diameter",
    plan: plan(bent(400, "bendRadiusMm: 150,"), "outsideMm: 26"),
    finds: [
      {
        on: "bendRadiusMm",
        message: "Bends of 150 mm are too tight for the positive conductor of Lamp: it needs 156 mm",
        fixes: "no fix",
      },
    ],
  },
  { name: "corners 2 r apart", plan: plan(bent(80), "outsideMm: 10"), finds: "nothing" },
  {
    name: "corners nearer to each other",
    plan: plan(bent(79), "outsideMm: 10"),
    finds: [
      {
        on: "path",
        message:
          "Two corners 79 mm apart leave no room to bend the positive conductor of Lamp: it needs 80 mm between them for a radius of 40 mm",
        fixes: "no fix",
      },
    ],
  },
  { name: "no outside diameter is stated", plan: plan(bent(10, "bendRadiusMm: 1,")), finds: "nothing" },
  {
    name: "the bend is not on its way",
    plan: plan(
      bent(100, "bendRadiusMm: 5,"),
      "outsideMm: 10, oneWayM: 1, at: { on: board, leftMm: 600, topMm: 300 }",
    ),
    finds: "nothing",
  },
]);
