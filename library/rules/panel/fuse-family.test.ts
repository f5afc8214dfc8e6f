import { testRule } from "../rule.tester.ts";
import { fuseFamily } from "./fuse-family.ts";

const panel = (options: string, rest: string) => `
  build({ insulationC: 105 });
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
  const off = disconnect({ ratedA: 100 });
  cable({ from: house.positive, to: off.line, lengthFt: 2, gauge: 6, protect: { ratingA: 60, family: "UL 248-15 Class T", interruptingA: 20_000, distanceIn: 6 } });
  const board = fusePanel({ positions: 4${options} });
  circuit({ name: "feeder", from: off.load, returnTo: house.negative, to: board, oneWayFt: 4, gauge: 6 });
  ${rest}`;
const lamp = (protect: string) =>
  `circuit({ name: "lamp", from: board.branch, load: 3, oneWayFt: 6, gauge: 12, protect: ${protect} });`;
const typeC = ', branchFamily: "ISO 8820-3 Type C"';
const ofThePanel = (gives: Readonly<Record<string, unknown>>) =>
  ({ title: "Use the family of the panel, ISO 8820-3 Type C", kind: "suggestion", gives }) as const;

testRule(fuseFamily, [
  {
    name: "no family stated at the fuse: that of the panel",
    plan: panel(typeC, lamp("5")),
    finds: "nothing",
  },
  {
    name: "the same family stated at the fuse",
    plan: panel(typeC, lamp('{ ratingA: 5, family: "ISO 8820-3 Type C" }')),
    finds: "nothing",
  },
  {
    name: "another family at the fuse, and none at the panel",
    plan: panel("", lamp('{ ratingA: 5, family: "ISO 8820-3 Type F" }')),
    finds: "nothing",
  },
  {
    name: "another family than that of the panel",
    plan: panel(typeC, lamp('{ ratingA: 5, family: "ISO 8820-3 Type F" }')),
    finds: [
      {
        subject: "lamp",
        record: "lamp",
        on: "protect.family",
        message:
          "A fuse of ISO 8820-3 Type F does not fit the fuse panel board, whose branches take fuses of ISO 8820-3 Type C (branchFamily): use one of that family, or correct the family of the panel.",
        fixes: [
          {
            title: "Use the family of the panel, ISO 8820-3 Type C",
            kind: "suggestion",
            gives: { protect: { ratingA: 5, family: "ISO 8820-3 Type C" } },
          },
        ],
      },
    ],
  },
  {
    name: "a breaker in the form of a blade fuse",
    plan: panel(typeC, lamp('{ ratingA: 5, family: "circuit breaker", interruptingA: 3_000 }')),
    finds: "nothing",
  },
  {
    name: "a fuse in a panel of breakers",
    plan: panel(', branchFamily: "circuit breaker"', lamp('{ ratingA: 5, family: "ISO 8820-3 Type C" }')),
    finds: [
      {
        on: "protect.family",
        message:
          "A fuse of ISO 8820-3 Type C does not fit the fuse panel board, whose branches take circuit breakers (branchFamily)",
        fixes: [
          {
            title: "Use the family of the panel, circuit breaker",
            kind: "suggestion",
            gives: { protect: { ratingA: 5, family: "circuit breaker" } },
          },
        ],
      },
    ],
  },
  {
    name: "a fuse holder that is mounted on a branch",
    plan: panel(
      typeC,
      `const holder = fuseHolder({ name: "holder", on: board.branch, ratingA: 5, family: "ISO 8820-3 Type F" });
      circuit({ name: "lamp", from: holder.load, returnTo: board.negative, load: 3, oneWayFt: 6, gauge: 12 });`,
    ),
    finds: [
      {
        subject: "holder",
        on: "family",
        message: "A fuse of ISO 8820-3 Type F does not fit the fuse panel board",
        fixes: [
          {
            title: "Use the family of the panel, ISO 8820-3 Type C",
            kind: "suggestion",
            gives: { family: "ISO 8820-3 Type C" },
          },
        ],
      },
    ],
  },
  {
    name: "a cable that ends on a branch, with its fuse there",
    plan: panel(
      typeC,
      `const shore = shoreCharger({ outputA: 10 });
      cable({ name: "from shore", from: shore.positive, to: board.branch, lengthFt: 3, gauge: 10, protectFarEnd: { ratingA: 15, family: "ISO 8820-3 Type F" } });
      cable({ from: shore.negative, to: board.negative, lengthFt: 3, gauge: 10 });`,
    ),
    finds: [
      {
        subject: "from shore",
        on: "protectFarEnd.family",
        message: "A fuse of ISO 8820-3 Type F",
        fixes: [ofThePanel({ protectFarEnd: { ratingA: 15, family: "ISO 8820-3 Type C" } })],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: panel(
      typeC,
      `circuit({ name: "lamp", from: board.branch, load: 3, oneWayFt: 6, gauge: 12, protect: { ratingA: 5, family: "ISO 8820-3 Type F" }, accept: { "panel/fuse-family": "position 4 is a mini one" } });`,
    ),
    finds: [
      {
        on: "protect.family",
        message: "A fuse of",
        accepted: "position 4 is a mini one",
        fixes: [ofThePanel({ protect: { ratingA: 5, family: "ISO 8820-3 Type C" } })],
      },
    ],
  },
]);
