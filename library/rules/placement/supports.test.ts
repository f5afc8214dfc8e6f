import { testRule } from "../rule.tester.ts";
import { supportsMissing } from "./supports.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;

testRule(supportsMissing, [
  {
    name: "a support every 450 mm",
    plan: plan(trunking(', way: "bundle", supportsEveryMm: 450')),
    finds: "nothing",
  },
  {
    name: "just farther apart",
    plan: plan(trunking(', way: "bundle", supportsEveryMm: 451')),
    finds: [
      {
        subject: "trunking",
        on: "supportsEveryMm",
        message:
          "Supports every 451 mm are too far apart: conductors here need one at least every 450 mm (ISO 10133:2012, 7.3), 5 supports in all.",
        values: { needed: 5 },
        fixes: [{ title: "Support it every 450 mm", gives: { supportsEveryMm: 450 } }],
      },
    ],
  },
  { name: "trunking supports throughout", plan: plan(trunking()), finds: "nothing" },
  {
    name: "the conductor from a battery to its disconnect",
    plan: `${plan(trunking(', way: "bundle", supportsEveryMm: 400'))}
      const off = disconnect({ ratedA: 100, at: { on: board, leftMm: 1_000, topMm: 300 } });
      cable({ name: "bank cable", from: house.positive, to: off.line, lengthM: 1.1, gauge: 6 });`,
    finds: [
      {
        on: "supportsEveryMm",
        message:
          "Supports every 400 mm are too far apart: the conductor from a battery to its disconnect needs one at least every 300 mm (ISO 10133:2012, 7.4), 7 supports in all.",
        fixes: [{ title: "Support it every 300 mm", gives: { supportsEveryMm: 300 } }],
      },
    ],
  },
  {
    name: "300 mm for the conductor from a battery, through its fuse",
    plan: `${plan(trunking(', way: "bundle", supportsEveryMm: 300'))}
      const fuse = fuseHolder({ ratingA: 60, at: { on: board, leftMm: 400, topMm: 300 } });
      const off = disconnect({ ratedA: 100, at: { on: board, leftMm: 1_000, topMm: 300 } });
      cable({ from: house.positive, to: fuse.line, lengthM: 0.5, gauge: 6 });
      cable({ name: "bank cable", from: fuse.load, to: off.line, lengthM: 0.8, gauge: 6 });`,
    finds: "nothing",
  },
  {
    name: "in the open, both conductors along one path",
    plan: plan(""),
    finds: [
      {
        subject: "the plan",
        record: "Lamp",
        on: "",
        severity: "info",
        message:
          "Lamp lies in the open over up to 1,800 mm: a support at least every 450 mm (ISO 10133:2012, 7.3) takes 3 supports in all; the parts list counts them.",
        values: { needed: 3 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "in the open, on a board in inches",
    plan: plan("").replace("widthMm: 2_000, heightMm: 800", "widthIn: 80, heightIn: 32"),
    finds: [
      {
        on: "",
        severity: "info",
        message: "Lamp lies in the open over up to 70.9 in: a support at least every 17.7 in (ISO",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a bundle states its supports in mm, on a board in inches too",
    plan: plan(trunking(', way: "bundle", supportsEveryMm: 451')).replace(
      "widthMm: 2_000, heightMm: 800",
      "widthIn: 80, heightIn: 32",
    ),
    finds: [
      {
        on: "supportsEveryMm",
        message: "Supports every 451 mm are too far apart: conductors here need one at least every 450 mm",
        fixes: [{ title: "Support it every 450 mm", gives: { supportsEveryMm: 450 } }],
      },
    ],
  },
  {
    name: "at most 450 mm in the open",
    plan: plan("", "oneWayM: 0.5, at: { on: board, leftMm: 550, topMm: 300 }"),
    finds: "nothing",
  },
  {
    name: "451 mm in the open",
    plan: plan("", "oneWayM: 0.5, at: { on: board, leftMm: 551, topMm: 300 }"),
    finds: [
      {
        on: "",
        severity: "info",
        message: "Lamp lies in the open over up to 451 mm",
        values: { needed: 1 },
        fixes: "no fix",
      },
    ],
  },
]);
