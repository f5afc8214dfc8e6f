import { testRule } from "../rule.tester.ts";
import { waysCannotBeJudged } from "./ways-not-judged.ts";

const plan = (channels: string, run = "", more = "") => `
  const locker = compartment({ ${more} });
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 } });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;
const ac = (more = "") => `
  const inside = surface({ size: { widthMm: 500, heightMm: 500 }, compartment: locker });
  const ac = inverter({ continuousW: 1_000, efficiencyPercent: 90, at: { on: inside, leftMm: 10, topMm: 10 }${more} });`;

testRule(waysCannotBeJudged, [
  {
    name: "everything is stated",
    plan: plan(trunking(", inside: { diameterMm: 40 }, fillPercent: 40"), "outsideMm: 5"),
    finds: "nothing",
  },
  {
    name: "the fill of a channel",
    plan: plan(trunking(", inside: { diameterMm: 40 }, fillPercent: 40")),
    finds: [
      {
        subject: "the plan",
        record: "trunking",
        on: "",
        message: "Not stated, so not judged: the fill of trunking (inside, fillPercent or outsideMm).",
        fixes: "no fix",
      },
    ],
  },
  { name: "a bundle has no inside", plan: plan(trunking(', way: "bundle"')), finds: "nothing" },
  { name: "in the open", plan: plan(""), finds: "nothing" },
  {
    name: "a part without a place",
    plan: plan("", "at: undefined"),
    finds: [
      {
        record: "Lamp",
        on: "",
        message: "Not stated, so not judged: the ways of Lamp (the places of their parts).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "no part has a place",
    plan: plan("", "at: undefined").replace(", at: { on: board, leftMm: 100, topMm: 300 }", ""),
    finds: "nothing",
  },
  {
    name: "bends without their radius, a compass, and heat behind wood",
    plan: plan(
      `const bent = channel({ way: "bundle", on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_000, topMm: 400 },
         { leftMm: 1_000, topMm: 200 }, { leftMm: 1_900, topMm: 200 }] });
       const dash = surface({ size: { widthMm: 500, heightMm: 500 },
         fixtures: [{ fixture: "compass", leftMm: 0, topMm: 0, widthMm: 100, heightMm: 100 }] });
       ${ac()}`,
      "outsideMm: 5",
      'walls: [{ material: "wood", areaM2: 1 }]',
    ),
    finds: [
      {
        record: "bent",
        on: "",
        message:
          "Not stated, so not judged: the bends of bent (bendRadiusMm or outsideMm); the distance from the compass (distanceMm); the temperature in locker (walls of a material with a figure: 111 W / (U · area) is its rise).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "heat behind plastic",
    plan: plan(ac(), "", 'walls: [{ material: "plastic", areaM2: 1 }]'),
    finds: "nothing",
  },
]);
