import { testRule } from "../rule.tester.ts";
import { grommetMissing } from "./grommet.ts";

const hole = (more: string) =>
  `const bulkhead = channel({ way: "hole", from: { on: board, leftMm: 500, topMm: 100 }, to: { on: roof, leftMm: 10, topMm: 10 }, lengthM: 0.02, ${more} });`;

const plan = (channels: string, lampOn = "roof") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 } });
  const roof = surface({ size: { widthMm: 500, heightMm: 500 }, orientation: "ceiling" });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 500, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 1, at: { on: ${lampOn}, leftMm: 100, topMm: 100 } });`;

testRule(grommetMissing, [
  { name: "a grommet", plan: plan(hole("grommet: true")), finds: "nothing" },
  {
    name: "none",
    plan: plan(hole("grommet: false")),
    finds: [
      {
        subject: "bulkhead",
        record: "bulkhead",
        on: "grommet",
        message:
          "2 conductors through this hole have no grommet: protect them from its edge (33 CFR 183.445(a)).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "not stated",
    plan: plan(hole("")),
    finds: [
      {
        on: "",
        severity: "info",
        message:
          "2 conductors through this hole, and the plan states no grommet: fit one (33 CFR 183.445(a)), then state grommet: true.",
        fixes: "no fix",
      },
    ],
  },
  { name: "a hole that no conductor uses", plan: plan(hole("grommet: false"), "board"), finds: "nothing" },
  {
    name: "accepted",
    plan: plan(hole('grommet: false, accept: { "placement/grommet": "they are in a conduit" }')),
    finds: [{ on: "grommet", message: "2 conductors", accepted: "they are in a conduit", fixes: "no fix" }],
  },
]);
