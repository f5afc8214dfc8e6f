import { testRule } from "../rule.tester.ts";
import { disconnectRating } from "./rating.ts";

const behind = (rest: string, more = "") => `
  const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3 });
  const off = disconnect({ ratedA: 100${more} });
  cable({ from: house.positive, to: off.line, lengthFt: 2, gauge: "2/0" });
  const out = (name, load) =>
    circuit({ name, from: off.load, returnTo: house.negative, load, oneWayFt: 5, gauge: 1, protect: 150 });
  ${rest}`;

/** Two circuits of 20 A, each with a device of its own. */
const behindFuse = (fuseA: number, branchA: number) => `
  build({ insulationC: 105 });
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
  const off = disconnect({ name: "off", ratedA: 100 });
  const plus = busBar({ name: "plus" });
  cable({ from: house.positive, to: off.line, lengthFt: 2, gauge: 2, protect: ${fuseA} });
  cable({ from: off.load, to: plus.stud, lengthFt: 2, gauge: 2 });
  for (const name of ["oven", "pump"])
    circuit({ name, from: plus.stud, returnTo: house.negative, load: 20, oneWayFt: 5, gauge: 4, protect: ${branchA} });`;

testRule(disconnectRating, [
  {
    name: "a charging relay between two batteries, which is seldom closed at a start",
    plan: `
      build({ insulationC: 105 });
      const engine = battery({ chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
      const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2 });
      const starter = starterMotor({ name: "starter", crankingA: 300 });
      circuit({ name: "crank", from: engine.positive, returnTo: engine.negative, to: starter, oneWayFt: 3, gauge: "2/0" });
      const combiner = relay({ name: "combiner", ratedA: 100 });
      cable({ from: engine.positive, to: combiner.line, lengthFt: 2, gauge: "2/0", protect: 250 });
      cable({ from: combiner.load, to: house.positive, lengthFt: 2, gauge: "2/0", protectFarEnd: 250 });
      cable({ from: engine.negative, to: house.negative, lengthFt: 3, gauge: "2/0" });`,
    finds: [
      {
        subject: "combiner",
        record: "combiner",
        on: "ratedA",
        severity: "info",
        message:
          'Carries 198 A in "cranking the engine" at the start of starter if it is closed by then, its rating is 100 A for hours (ratedA): state',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "behind a fuse above its rating, with circuits of 150 A",
    plan: behindFuse(200, 75),
    finds: [
      {
        subject: "off",
        record: "off",
        on: "ratedA",
        severity: "warning",
        message:
          "No device below 200 A protects this disconnect, and its rating is 100 A (ratedA): further loads could overload it (common practice, no source). Put a fuse of at most 100 A before it, or use one with a higher rating.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "behind a fuse of 125 % of its rating, as headroom asks for",
    plan: behindFuse(125, 75),
    finds: [{ on: "ratedA", severity: "info", message: "No device below 125 A protects", fixes: "no fix" }],
  },
  {
    name: "behind one of the next rating",
    plan: behindFuse(150, 75),
    finds: [
      { on: "ratedA", severity: "warning", message: "No device below 150 A protects", fixes: "no fix" },
    ],
  },
  { name: "behind such a fuse, with circuits of 100 A", plan: behindFuse(200, 50), finds: "nothing" },
  { name: "behind a fuse of its rating", plan: behindFuse(100, 75), finds: "nothing" },
  { name: "exactly its rating", plan: behind(`out("oven", 100);`), finds: "nothing" },
  {
    name: "just above its rating",
    plan: behind(`out("oven", 60); out("pump", 40.2);`),
    finds: [
      {
        subject: "off",
        record: "off",
        on: "ratedA",
        message:
          'Carries 100.2 A in "everything on", its rating is 100 A (ratedA): use a disconnect with a higher one, or split its loads.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "current that goes the other way, into the bank, counts as well",
    plan: behind(`
      const shore = shoreCharger({ outputA: 120 });
      cable({ from: shore.positive, to: off.load, lengthFt: 3, gauge: 1 });
      cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 1 });`),
    finds: [{ on: "ratedA", message: "Carries 120 A in ", fixes: "no fix" }],
  },
  {
    name: "open in the plan's only scenario",
    plan: behind(`out("oven", 130); scenario({ name: "laid up", off: [off] });`),
    finds: [{ on: "ratedA", message: "Carries 130 A with oven alone, its rating is 100 A", fixes: "no fix" }],
  },
  {
    name: "a motor that starts is no lasting current",
    plan: behind(`
      const windlass = motor({ runningA: 70, startingA: 200 });
      circuit({ from: off.load, returnTo: house.negative, to: windlass, oneWayFt: 5, gauge: 1, protect: 100 });
      scenario({ name: "start", starting: [windlass] });
      scenario({ name: "run", on: [windlass] });`),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: behind(`out("oven", 101);`, `, accept: { "disconnect/rating": "rated 120 A for an hour" }`),
    finds: [{ on: "ratedA", message: "Carries 101 A", accepted: "rated 120 A for an hour", fixes: "no fix" }],
  },
  {
    name: "the starter motor of an engine, within 1.5 times the rating",
    plan: behind(cranking(140)),
    finds: [
      {
        subject: "off",
        on: "ratedA",
        severity: "info",
        message:
          "Carries 140 A at the start of starter, its rating is 100 A for hours (ratedA): state its rating for seconds (momentaryA), which is commonly higher.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the starter motor of an engine, above that",
    plan: behind(cranking(260)),
    finds: [
      {
        subject: "off",
        record: "off",
        on: "ratedA",
        severity: "warning",
        message:
          "Carries 260 A at the start of starter; its rating is 100 A for hours (ratedA), which makes 150 A for seconds (common practice, no source): state its own rating for seconds (momentaryA), or use a disconnect with a higher one.",
        fixes: "no fix",
      },
    ],
  },
  { name: "a starter motor at exactly the rating", plan: behind(cranking(100)), finds: "nothing" },
  {
    name: "the rating for seconds is stated, and enough",
    plan: behind(cranking(260), ", momentaryA: 260"),
    finds: "nothing",
  },
  {
    name: "the rating for seconds is stated, and too low for a starter motor",
    plan: behind(cranking(260), ", momentaryA: 250"),
    finds: [
      {
        on: "momentaryA",
        severity: "warning",
        message:
          "Carries 260 A at the start of starter, its rating for seconds is 250 A (momentaryA): use a disconnect with a higher one.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the rating for seconds is stated, and too low for a pump",
    plan: behind(
      `const pump = motor({ runningA: 40, startingA: 160 });
      circuit({ from: off.load, returnTo: house.negative, to: pump, oneWayFt: 5, gauge: 1, protect: 100 });`,
      ", momentaryA: 150",
    ),
    finds: [{ on: "momentaryA", severity: "warning", message: "Carries 160 A", fixes: "no fix" }],
  },
  {
    name: "through one input of a selector switch",
    plan: `
      const [house, other] = [1, 2].map(() => battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 }));
      const choice = selectorSwitch({ ratedA: 100 });
      cable({ from: house.positive, to: choice.input1, lengthFt: 2, gauge: "2/0" });
      cable({ from: other.positive, to: choice.input2, lengthFt: 2, gauge: "2/0" });
      cable({ from: house.negative, to: other.negative, lengthFt: 2, gauge: "2/0" });
      const starter = starterMotor({ crankingA: 260 });
      circuit({ from: choice.common, returnTo: house.negative, to: starter, oneWayFt: 5, gauge: "2/0" });`,
    finds: [{ on: "ratedA", severity: "warning", message: "Carries 260 A", fixes: "no fix" }],
  },
]);

function cranking(crankingA: number): string {
  return `const starter = starterMotor({ crankingA: ${crankingA} });
    circuit({ from: off.load, returnTo: house.negative, to: starter, oneWayFt: 5, gauge: "2/0" });`;
}
