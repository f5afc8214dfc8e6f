import { testRule } from "../rule.tester.ts";
import { conductorClearance } from "./conductor-clearance.ts";

const plan = (channels: string, run = "", more = "") => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 }${more} });
  ${channels}
  const house = battery({ chemistry: "AGM", capacityAh: 100, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "Lamp", from: house.positive, returnTo: house.negative, load: 6, gauge: 10, protect: 10,
    oneWayM: 2, at: { on: board, leftMm: 1_900, topMm: 300 }, ${run} });`;
const trunking = (more = "") =>
  `const trunking = channel({ on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;
const fixture = (kind: string, topMm: number, more = "") =>
  `, fixtures: [{ fixture: "${kind}", name: "the stove", leftMm: 1_000, topMm: ${topMm}, widthMm: 200, heightMm: 50${more} }]`;

testRule(conductorClearance, [
  {
    name: "125 mm from a source of heat",
    plan: plan(trunking(), "", fixture("source of heat", 525)),
    finds: "nothing",
  },
  {
    name: "just below 125 mm from a source of heat",
    plan: plan(trunking(), "", fixture("source of heat", 524)),
    finds: [
      {
        subject: "trunking",
        record: "trunking",
        on: "path",
        severity: "info",
        message:
          "The positive conductor of Lamp and 1 more pass the stove at 124 mm: that is permitted, 125 mm is better (Boat Safety Scheme 3.4).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "75 mm from a source of heat",
    plan: plan(trunking(), "", fixture("source of heat", 475)),
    finds: [
      {
        on: "path",
        severity: "info",
        message: "The positive conductor of Lamp and 1 more pass the stove at 75 mm",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "on a board in inches",
    plan: plan(trunking(), "", fixture("source of heat", 474)).replace(
      "widthMm: 2_000, heightMm: 800",
      "widthIn: 80, heightIn: 32",
    ),
    finds: [
      {
        on: "path",
        message:
          "The positive conductor of Lamp and 1 more pass the stove at 2.91 in: keep at least 2.95 in away, better 4.92 in (",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "just below 75 mm from a source of heat",
    plan: plan(trunking(), "", fixture("source of heat", 474)),
    finds: [
      {
        on: "path",
        message:
          "The positive conductor of Lamp and 1 more pass the stove at 74 mm: keep at least 75 mm away, better 125 mm (",
        fixes: "no fix",
      },
    ],
  },
  { name: "30 mm from a fuel line", plan: plan(trunking(), "", fixture("fuel line", 430)), finds: "nothing" },
  {
    name: "just below 30 mm from a fuel line",
    plan: plan(trunking(), "", fixture("fuel line", 429)),
    finds: [
      {
        on: "path",
        message:
          "The positive conductor of Lamp and 1 more pass the stove at 29 mm: keep at least 30 mm away (",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "in a conduit beside a gas line",
    plan: plan(trunking(', way: "conduit"'), "", fixture("gas line", 405)),
    finds: "nothing",
  },
  {
    name: "in a conduit beside a source of heat",
    plan: plan(trunking(', way: "conduit"'), "", fixture("source of heat", 405)),
    finds: [
      {
        on: "path",
        message: "The positive conductor of Lamp and 1 more pass the stove at 5 mm",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a compass without a stated distance",
    plan: plan(trunking(), "", fixture("compass", 401)),
    finds: "nothing",
  },
  {
    name: "a compass with a stated distance, in the open",
    plan: plan("", "", fixture("compass", 600, ", distanceMm: 301")),
    finds: [
      {
        subject: "Lamp",
        on: "",
        message:
          "The positive conductor of Lamp and 1 more pass the stove at 300 mm: keep at least 301 mm away (as stated); lead them elsewhere.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "as far as stated",
    plan: plan("", "", fixture("compass", 600, ", distanceMm: 300")),
    finds: "nothing",
  },
  {
    name: "its outside counts, not its middle",
    plan: plan("", "outsideMm: 10", fixture("compass", 600, ", distanceMm: 300")),
    finds: [
      {
        on: "",
        message: "The positive conductor of Lamp and 1 more pass the stove at 295 mm",
        fixes: "no fix",
      },
    ],
  },
]);
