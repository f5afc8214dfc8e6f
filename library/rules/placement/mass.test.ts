import { testRule } from "../rule.tester.ts";
import { placementMass } from "./mass.ts";
import { oneBoard } from "./one-board.tester.ts";

testRule(placementMass, [
  {
    name: "as much as the board carries",
    plan: oneBoard({
      surface: "carriesKg: 24.3",
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 300, topMm: 300 }, massKg: 24",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, massKg: 0.1",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 300 }, massKg: 0.2",
    }),
    finds: "nothing",
  },
  {
    name: "100 g more",
    plan: oneBoard({
      surface: "carriesKg: 24.2",
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 300, topMm: 300 }, massKg: 24",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }, massKg: 0.1",
      main: "size: { widthMm: 150, heightMm: 40 }, at: { on: board, leftMm: 100, topMm: 300 }, massKg: 0.2",
    }),
    finds: [
      {
        subject: "board",
        on: "carriesKg",
        message:
          "24.3 kg on it, above the 24.2 kg that it carries (stated in the plan): move a heavy part, or strengthen it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "with a part that states no mass",
    plan: oneBoard({
      surface: "carriesKg: 20",
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 300, topMm: 300 }, massKg: 24",
      off: "size: { widthMm: 80, heightMm: 80 }, at: { on: board, leftMm: 100, topMm: 100 }",
    }),
    finds: [
      {
        subject: "board",
        on: "carriesKg",
        message: "24 kg on it, without the parts that state no mass, above the 20 kg",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "no limit is stated",
    plan: oneBoard({
      house: "size: { widthMm: 300, heightMm: 200 }, at: { on: board, leftMm: 300, topMm: 300 }, massKg: 24",
    }),
    finds: "nothing",
  },
]);
