import { testRule } from "../rule.tester.ts";
import { oneBoard } from "./one-board.tester.ts";
import { overChannel } from "./over-channel.ts";

/** The main switch on a board with a channel of 40 mm, between 280 and 320 mm from the top. */
const board = (at: string, channel = 'inside: { widthMm: 40, heightMm: 60 }, way: "trunking"') =>
  oneBoard({
    off: `size: { widthMm: 80, heightMm: 80 }, at: { on: board, ${at} }`,
    more: `channel({ name: "duct", on: board, path: [{ leftMm: 100, topMm: 300 }, { leftMm: 700, topMm: 300 }], ${channel} });`,
  });

testRule(overChannel, [
  { name: "above it", plan: board("leftMm: 200, topMm: 200"), finds: "nothing" },
  { name: "below it", plan: board("leftMm: 200, topMm: 320"), finds: "nothing" },
  { name: "beyond its end", plan: board("leftMm: 20, topMm: 260"), finds: "nothing" },
  {
    name: "1 mm over its upper edge",
    plan: board("leftMm: 200, topMm: 201"),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Lies over duct by 1 mm: move it.",
        fixes: [{ title: "Move it 1 mm up", kind: "suggestion", gives: { "at.topMm": 200 } }],
      },
    ],
  },
  {
    name: "over a duct of which the plan states a diameter, and no kind",
    plan: board("leftMm: 200, topMm: 215", "inside: { diameterMm: 20 }"),
    finds: [
      {
        subject: "main switch",
        on: "at",
        message: "Lies over duct by 5 mm: move it.",
        fixes: [{ title: "Move it 5 mm up", kind: "suggestion", gives: { "at.topMm": 210 } }],
      },
    ],
  },
  {
    name: "over one whose inside is not stated",
    plan: board("leftMm: 200, topMm: 260", 'way: "trunking"'),
    finds: "nothing",
  },
  {
    name: "over a conduit, which may be behind the board",
    plan: board("leftMm: 200, topMm: 260", 'inside: { diameterMm: 20 }, way: "conduit"'),
    finds: "nothing",
  },
  {
    name: "a part without a size",
    plan: oneBoard({
      off: "at: { on: board, leftMm: 200, topMm: 300 }",
      more: "channel({ on: board, path: [{ leftMm: 100, topMm: 300 }, { leftMm: 700, topMm: 300 }], inside: { widthMm: 40, heightMm: 60 } });",
    }),
    finds: "nothing",
  },
]);
