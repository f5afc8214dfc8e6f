import { testRule } from "../rule.tester.ts";
import { panelRating } from "./rating.ts";

const panel = (options: string, rest: string, feederA = 125) => `
  build({ insulationC: 105 });
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
  const off = disconnect({ ratedA: 200 });
  const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 };
  cable({ from: house.positive, to: off.line, lengthFt: 2, gauge: 1, protect: { ...classT, ratingA: 125, distanceIn: 6 } });
  const board = fusePanel({ ${options} });
  circuit({ name: "feeder", from: off.load, returnTo: house.negative, to: board, oneWayFt: 4, gauge: 1, protect: { ...classT, ratingA: ${feederA}, distanceIn: 4 } });
  const out = (name, load, protect, more) =>
    circuit({ name, from: board.branch, load, oneWayFt: 3, gauge: 8, protect, ...more });
  ${rest}`;

testRule(panelRating, [
  {
    name: "exactly what its bus is rated for",
    plan: panel("positions: 6, ratedA: 60", `out("a", 30, 40); out("b", 30, 40);`, 60),
    finds: "nothing",
  },
  {
    name: "behind a device above what its bus is rated for",
    plan: panel("positions: 6, ratedA: 60", `out("a", 3, 10);`, 80),
    finds: [
      {
        subject: "board",
        record: "board",
        on: "ratedA",
        severity: "info",
        message:
          "No device below 80 A protects this panel, and its rating is 60 A (ratedA): further loads could overload its bus (common practice, no source). Put a fuse of at most 60 A into its feed.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "just above what its bus is rated for",
    plan: panel("positions: 6, ratedA: 60", `out("a", 30, 40); out("b", 30.1, 40);`),
    finds: [
      {
        subject: "board",
        record: "board",
        on: "ratedA",
        message:
          'Carries 60.1 A in "everything on", its rating is 60 A (ratedA): use a panel with a higher one, or move some circuits with their returns to a bus bar.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the return of another device at its negative bus",
    plan: panel(
      "positions: 6, ratedA: 60",
      `out("a", 20, 25);
      const sine = load({ name: "sine", currentA: 40.1 });
      cable({ from: off.load, to: sine.positive, lengthFt: 2, gauge: 4, protect: { ...classT, ratingA: 60, distanceIn: 4 } });
      cable({ from: sine.negative, to: board.negative, lengthFt: 2, gauge: 4 });`,
      60,
    ),
    finds: [
      {
        subject: "board",
        on: "ratedA",
        message:
          'Carries 60.1 A in "everything on", its rating is 60 A (ratedA): use a panel with a higher one, or move some circuits with their returns to a bus bar.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "as many circuits as positions",
    plan: panel("positions: 2", `out("a", 5, 10); out("b", 5, 10, { parallel: 2 });`),
    finds: "nothing",
  },
  {
    name: "one circuit more than positions",
    plan: panel("positions: 2", `out("a", 5, 10); out("b", 5, 10); out("c", 5, 10);`),
    finds: [
      {
        subject: "board",
        on: "positions",
        message: "3 circuits leave this panel, it has 2 positions: use a panel with more, or a second one.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a fuse of exactly what a branch is rated for",
    plan: panel("positions: 6, branchRatedA: 30", `out("a", 20, 30);`),
    finds: "nothing",
  },
  {
    name: "a fuse above what a branch is rated for, and a smaller one carries the load",
    plan: panel("positions: 6, branchRatedA: 30", `out("a", 20, 40);`),
    finds: [
      {
        subject: "a",
        record: "a",
        on: "protect",
        severity: "error",
        message:
          "The fuse of 40 A is in the fuse panel board, whose branches are rated 30 A: use a 25 A fuse.",
        fixes: [{ title: "Use a 25 A fuse", gives: { protect: 25 } }],
      },
    ],
  },
  {
    name: "a fuse above what a branch is rated for, and none that fits carries the load",
    plan: panel("positions: 6, branchRatedA: 30", `out("a", 35, { ratingA: 50, distanceIn: 0 });`),
    finds: [
      {
        subject: "a",
        on: "protect.ratingA",
        severity: "error",
        message:
          "The fuse of 50 A is in the fuse panel board, whose branches are rated 30 A: feed this circuit from a bus bar, with a fuse there.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger's cable that ends on a branch has its fuse there",
    plan: panel(
      "positions: 6, branchRatedA: 30",
      `const shore = shoreCharger({ outputA: 20 });
      cable({ name: "from shore", from: shore.positive, to: board.branch, lengthFt: 3, gauge: 8, protectFarEnd: 40 });
      cable({ from: shore.negative, to: board.negative, lengthFt: 3, gauge: 8 });`,
    ),
    finds: [
      {
        subject: "from shore",
        record: "from shore",
        on: "protectFarEnd",
        severity: "error",
        message:
          "The fuse of 40 A is in the fuse panel board, whose branches are rated 30 A: use a 25 A fuse.",
        fixes: [{ title: "Use a 25 A fuse", gives: { protectFarEnd: 25 } }],
      },
    ],
  },
  {
    name: "neither rating is stated",
    plan: panel("positions: 6", `out("a", 40, 60);`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: panel(
      "positions: 6, branchRatedA: 30",
      `out("a", 20, 40, { accept: { "panel/rating": "position 1 is a 40 A one" } });`,
    ),
    finds: [
      {
        on: "protect",
        severity: "error",
        message: "The fuse of 40 A",
        accepted: "position 1 is a 40 A one",
        fixes: [{ title: "Use a 25 A fuse", gives: { protect: 25 } }],
      },
    ],
  },
]);
