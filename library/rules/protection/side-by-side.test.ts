import { testRule } from "../rule.tester.ts";
import { sideBySide } from "./side-by-side.ts";

/*
 * Expected: IEC 60364-4-43, 433.1: the conductor is protected up to its ampacity, and an overload divides between devices side by
 * side. NFPA 70, 240.8 (recalled): fuses are not put in parallel except as a unit made so. An electrician calls it an error. Each
 * battery with a fuse of its own is right in itself, and the common cable then needs one of its own: a warning.
 * 33 CFR 183.425 Table 5, 105 °C: 4 AWG 160 A, 2 AWG 210 A.
 */
const bank = `
  build({ insulationC: 105 });
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });`;

const twoHolders = (ratingA: number, gauge: string) => `${bank}
  const plus = busBar({ side: "positive" }), block = busBar({ side: "positive" });
  cable({ name: "feed", from: house.positive, to: plus.stud, lengthFt: 1, gauge: "4/0", protect: 300 });
  for (const name of ["upper", "lower"]) {
    const holder = fuseHolder({ name, ratingA: ${ratingA}, on: plus.stud });
    cable({ name: name + " link", from: holder.load, to: block.stud, lengthFt: 1, gauge: 4 });
  }
  const winch = load({ currentA: 90 });
  cable({ name: "to the winch", from: block.stud, to: winch.positive, lengthFt: 5, gauge: ${gauge} });
  cable({ name: "back", from: winch.negative, to: house.negative, lengthFt: 5, gauge: "4/0" });`;

const batteries = (gauge: string, more = "") => `
  build({ insulationC: 105 });
  const plus = busBar({ side: "positive" }), minus = busBar({ side: "negative" });
  for (const name of ["one", "two"]) {
    const bat = battery({ name, chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
    cable({ name: name + " plus", from: bat.positive, to: plus.stud, lengthFt: 1, gauge: 4, protect: 125 });
    cable({ name: name + " minus", from: bat.negative, to: minus.stud, lengthFt: 1, gauge: 4 });
  }
  circuit({ name: "winch", from: plus.stud, returnTo: minus.stud, load: 90, oneWayFt: 5, gauge: ${gauge}${more} });`;

testRule(sideBySide, [
  { name: "two fuses whose sum the conductor carries", plan: twoHolders(100, "2"), finds: "nothing" },
  {
    name: "two fuses whose sum is more",
    plan: twoHolders(100, "4"),
    finds: [
      {
        subject: "to the winch",
        on: "gauge",
        severity: "error",
        message:
          "Fed side by side by the 100 A fuse in the fuse holder upper and the 100 A fuse in the fuse holder lower, 200 A together, and 4 AWG may carry 160 A here (33 CFR 183.425(b), Table 5): put one device of at most that rating into it, or use a thicker conductor.",
        values: { sumA: 200 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two batteries with a fuse each, and a thick cable behind both",
    plan: batteries(`"1/0"`),
    finds: "nothing",
  },
  {
    name: "two batteries with a fuse each, and a cable that carries one of them",
    plan: batteries("4"),
    finds: [
      {
        subject: "winch",
        on: "gauge",
        severity: "warning",
        message:
          "Fed side by side by the 125 A fuse in the cable one plus and the 125 A fuse in the cable two plus, 250 A together",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the same cable with a fuse of its own",
    plan: batteries("4", ", protect: 125"),
    finds: "nothing",
  },
  {
    name: "a charger beside the battery limits itself",
    plan: `${bank}
      const plus = busBar({ side: "positive" });
      cable({ name: "feed", from: house.positive, to: plus.stud, lengthFt: 1, gauge: 4, protect: 125 });
      const shore = shoreCharger({ outputA: 30 });
      cable({ from: shore.positive, to: plus.stud, lengthFt: 5, gauge: 6, protectFarEnd: 50 });
      cable({ from: shore.negative, to: house.negative, lengthFt: 5, gauge: 6 });
      circuit({ from: plus.stud, returnTo: house.negative, load: 90, oneWayFt: 5, gauge: 4 });`,
    finds: "nothing",
  },
  {
    name: "two batteries with a fuse each that crank an engine",
    plan: `
      build({ insulationC: 105 });
      const plus = busBar({ side: "positive" });
      const minus = busBar({ side: "negative" });
      for (const name of ["one", "two"]) {
        const bat = battery({ name, chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
        cable({ name: name + " plus", from: bat.positive, to: plus.stud, lengthFt: 1, gauge: "2/0", protect: 250 });
        cable({ name: name + " minus", from: bat.negative, to: minus.stud, lengthFt: 1, gauge: "2/0" });
      }
      const starter = starterMotor({ crankingA: 250 });
      cable({ from: plus.stud, to: starter.positive, lengthFt: 4, gauge: "2/0" });
      cable({ from: starter.negative, to: minus.stud, lengthFt: 4, gauge: "2/0" });`,
    finds: "nothing",
  },
  {
    name: "two banks that a selector connects",
    plan: `
      build({ insulationC: 105 });
      const both = selectorSwitch({ ratedA: 300 });
      const minus = busBar({ side: "negative" });
      for (const [name, input] of [["one", both.input1], ["two", both.input2]]) {
        const bat = battery({ name, chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
        cable({ name: name + " plus", from: bat.positive, to: input, lengthFt: 1, gauge: 4, protect: 125 });
        cable({ name: name + " minus", from: bat.negative, to: minus.stud, lengthFt: 1, gauge: 4 });
      }
      circuit({ name: "winch", from: both.common, returnTo: minus.stud, load: 90, oneWayFt: 5, gauge: 4 });`,
    finds: "nothing",
  },
]);
