import { testRule } from "../rule.tester.ts";
import { returnConductor } from "./return-conductor.ts";

/*
 * Expected: IEC 60364-4-43, 433.1: the rating of the device is at most the ampacity of the conductors of the circuit, the return
 * among them. An electrician calls a return that burns before the fuse opens a fire hazard, as he would the positive: an error.
 * 33 CFR 183.425 Table 5, 105 °C: 10 AWG 60 A, 8 AWG 80 A, 6 AWG 120 A, 4 AWG 160 A, 2 AWG 210 A.
 */
const bank = `
  build({ insulationC: 105 });
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });`;

/** A feed behind 100 A to a panel, and the return of the panel. */
const panel = (back: string, more = "") => `${bank}
  const fuses = fusePanel({ positions: 6 });
  const minus = busBar({ side: "negative" });
  cable({ name: "feed", from: house.positive, to: fuses.feed, lengthFt: 4, gauge: 4, protect: 100 });
  cable({ name: "back", from: fuses.negative, to: minus.stud, lengthFt: 4, ${back} });
  cable({ name: "main return", from: minus.stud, to: house.negative, lengthFt: 2, gauge: 2 });
  circuit({ name: "lamp", from: fuses.branch, load: 5, oneWayFt: 6, gauge: 14, protect: 10 });
  ${more}`;

/** A house bank behind 200 A, and a charger of common negative that a start battery feeds through 70 A. */
function twoBanks(main: string, input: string, startFirst = false): string {
  const start = 'const start = battery({ chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });';
  return `${startFirst ? start : ""}${bank}
    const plus = busBar({ side: "positive" }), minus = busBar({ side: "negative" });
    cable({ name: "feed", from: house.positive, to: plus.stud, lengthFt: 3, gauge: 2, protect: 200 });
    cable({ name: "main return", from: minus.stud, to: house.negative, lengthFt: 3, ${main} });
    circuit({ name: "oven", from: plus.stud, returnTo: minus.stud, load: 40, oneWayFt: 5, gauge: 8, protect: 60 });
    ${startFirst ? "" : start}
    const charger = dcDcCharger({ outputA: 30, inputMinV: 10.5 });
    cable({ name: "charger's feed", from: start.positive, to: charger.inputPositive, lengthFt: 9, gauge: 8, protect: 70 });
    cable({ name: "charger's return", from: charger.inputNegative, to: start.negative, lengthFt: 9, ${input} });
    cable({ name: "output", from: plus.stud, to: charger.outputPositive, lengthFt: 3, gauge: 8, protect: 50 });
    cable({ name: "output's return", from: charger.outputNegative, to: minus.stud, lengthFt: 3, gauge: 8 });`;
}

testRule(returnConductor, [
  { name: "a return of the panel that carries its fuse", plan: panel("gauge: 6"), finds: "nothing" },
  {
    name: "a return of the panel that is thinner than its fuse allows",
    plan: panel("gauge: 8"),
    finds: [
      {
        subject: "back",
        record: "back",
        on: "gauge",
        message:
          "8 AWG may carry 80 A here (33 CFR 183.425(b), Table 5), and the current of a fault behind the 100 A fuse in the cable feed returns through it: use 6 AWG.",
        values: { ampacityA: 80, ratingA: 100 },
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "an inverter whose return ends at the bar of the panel, behind a greater fuse",
    plan: panel(
      "gauge: 6",
      `const sine = load({ name: "sine", currentA: 90 });
      cable({ name: "sine plus", from: house.positive, to: sine.positive, lengthFt: 3, gauge: 2, protect: 150 });
      cable({ name: "sine minus", from: sine.negative, to: fuses.negative, lengthFt: 2, gauge: 2 });`,
    ),
    finds: [
      {
        subject: "back",
        on: "gauge",
        message:
          "6 AWG may carry 120 A here (33 CFR 183.425(b), Table 5), and the current of a fault behind the 150 A fuse in the cable sine plus returns through it: use 4 AWG.",
        values: { ampacityA: 120, ratingA: 150 },
        fixes: [{ title: "Use 4 AWG", gives: { gauge: 4 } }],
      },
    ],
  },
  {
    name: "a return that goes on from the negative terminal of another load",
    plan: `${bank}
      const lamp = load({ name: "lamp", currentA: 5 }), oven = load({ name: "oven", currentA: 40 });
      cable({ name: "to the lamp", from: house.positive, to: lamp.positive, lengthFt: 5, gauge: 14, protect: 10 });
      cable({ name: "from the lamp", from: lamp.negative, to: house.negative, lengthFt: 5, gauge: 10 });
      cable({ name: "to the oven", from: house.positive, to: oven.positive, lengthFt: 5, gauge: 6, protect: 70 });
      cable({ name: "from the oven", from: oven.negative, to: lamp.negative, lengthFt: 2, gauge: 6 });`,
    finds: [
      {
        subject: "from the lamp",
        on: "gauge",
        message: "10 AWG may carry 60 A here",
        values: { ampacityA: 60, ratingA: 70 },
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "a return that all loads of the bank share",
    plan: `${bank}
      const plus = busBar({ side: "positive" }), minus = busBar({ side: "negative" });
      cable({ name: "feed", from: house.positive, to: plus.stud, lengthFt: 3, gauge: 2, protect: 200 });
      cable({ name: "main return", from: minus.stud, to: house.negative, lengthFt: 3, gauge: 4 });
      const from = { from: plus.stud, returnTo: minus.stud, oneWayFt: 5 };
      circuit({ ...from, name: "pump", load: 20, gauge: 10, protect: 30 });
      circuit({ ...from, name: "oven", load: 40, gauge: 8, protect: 60 });`,
    finds: [
      {
        subject: "main return",
        on: "gauge",
        message: "4 AWG may carry 160 A here",
        values: { ratingA: 200 },
        fixes: [{ title: "Use 2 AWG", gives: { gauge: 2 } }],
      },
    ],
  },
  {
    name: "a return of some loads of a bus, whose others return elsewhere: their own fuses count",
    plan: `${bank}
      const plus = busBar({ side: "positive" }), minus = busBar({ side: "negative" });
      cable({ name: "feed", from: house.positive, to: plus.stud, lengthFt: 3, gauge: 2, protect: 200 });
      cable({ name: "lamps' return", from: minus.stud, to: house.negative, lengthFt: 3, gauge: 8 });
      circuit({ from: plus.stud, returnTo: minus.stud, name: "pump", load: 20, oneWayFt: 5, gauge: 10, protect: 30 });
      circuit({ from: plus.stud, returnTo: minus.stud, name: "oven", load: 40, oneWayFt: 5, gauge: 8, protect: 60 });
      circuit({ from: plus.stud, returnTo: house.negative, name: "winch", load: 90, oneWayFt: 5, gauge: 4, protect: 125 });`,
    finds: "nothing",
  },
  {
    name: "a return of one load, thinner than the fuse of its positive",
    plan: `${bank}
      const oven = load({ currentA: 40 });
      cable({ name: "to the oven", from: house.positive, to: oven.positive, lengthFt: 5, gauge: 6, protect: 100 });
      cable({ name: "from the oven", from: oven.negative, to: house.negative, lengthFt: 5, gauge: 10 });`,
    finds: [
      {
        subject: "from the oven",
        on: "gauge",
        message: "10 AWG may carry 60 A here",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "the return of a bank whose minus a charger connects with that of another",
    plan: twoBanks("gauge: 4", "gauge: 8"),
    finds: [
      {
        subject: "main return",
        on: "gauge",
        message:
          "4 AWG may carry 160 A here (33 CFR 183.425(b), Table 5), and the current of a fault behind the 200 A fuse in the cable feed returns through it: use 2 AWG.",
        fixes: [{ title: "Use 2 AWG", gives: { gauge: 2 } }],
      },
    ],
  },
  {
    name: "the return of that charger at the other bank, which carries a fault at its input",
    plan: twoBanks("gauge: 2", "gauge: 10"),
    finds: [
      {
        subject: "charger's return",
        on: "gauge",
        message:
          "10 AWG may carry 60 A here (33 CFR 183.425(b), Table 5), and the current of a fault behind the 70 A",
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "the same if the plan states the start battery first",
    plan: twoBanks("gauge: 4", "gauge: 8", true),
    finds: [
      {
        subject: "main return",
        on: "gauge",
        message:
          "4 AWG may carry 160 A here (33 CFR 183.425(b), Table 5), and the current of a fault behind the 200 A fuse in the cable feed",
        fixes: [{ title: "Use 2 AWG", gives: { gauge: 2 } }],
      },
    ],
  },
  { name: "both as thick as their fuses ask", plan: twoBanks("gauge: 2", "gauge: 8"), finds: "nothing" },
  {
    name: "a fuse too great for both conductors of a circuit is reported at its positive",
    plan: `${bank}
      circuit({ from: house.positive, returnTo: house.negative, load: 40, oneWayFt: 5, gauge: 10, protect: 100 });`,
    finds: "nothing",
  },
  {
    name: "past no device at all is reported at the positive",
    plan: `${bank}
      const oven = load({ currentA: 40 });
      cable({ from: house.positive, to: oven.positive, lengthFt: 5, gauge: 6 });
      cable({ name: "from the oven", from: oven.negative, to: house.negative, lengthFt: 5, gauge: 10 });`,
    finds: "nothing",
  },
  {
    name: "the return of a charger, behind the fuse at the bank",
    plan: `${bank}
      const shore = shoreCharger({ outputA: 30 });
      cable({ name: "charger", from: shore.positive, to: house.positive, lengthFt: 5, gauge: 8, protectFarEnd: 60 });
      cable({ name: "charger's return", from: shore.negative, to: house.negative, lengthFt: 5, gauge: 12 });`,
    finds: [
      {
        subject: "charger's return",
        on: "gauge",
        message: "12 AWG may carry 45 A here",
        fixes: [{ title: "Use 10 AWG", gives: { gauge: 10 } }],
      },
    ],
  },
  {
    name: "two returns side by side: their shares are unknown",
    plan: `${bank}
      const oven = load({ currentA: 40 });
      cable({ from: house.positive, to: oven.positive, lengthFt: 5, gauge: 6, protect: 100 });
      cable({ from: oven.negative, to: house.negative, lengthFt: 5, gauge: 8 });
      cable({ from: oven.negative, to: house.negative, lengthFt: 5, gauge: 8 });`,
    finds: "nothing",
  },
  {
    name: "a bond to the hull that carries nothing back",
    plan: `${bank}
      const hull = chassis({ milliohm: 2 });
      cable({ name: "bond", from: house.negative, to: hull.bond, lengthFt: 2, gauge: 8 });
      const oven = load({ currentA: 40 });
      cable({ from: house.positive, to: oven.positive, lengthFt: 5, gauge: 6, protect: 100 });
      cable({ from: oven.negative, to: house.negative, lengthFt: 5, gauge: 6 });`,
    finds: "nothing",
  },
  {
    name: "the thin return of a lamp behind its own fuse, and the one load of its bus bars",
    plan: `${bank}
      const plus = busBar({ side: "positive" }), minus = busBar({ side: "negative" });
      cable({ name: "feed", from: house.positive, to: plus.stud, lengthFt: 3, gauge: 4, protect: 100 });
      cable({ name: "main return", from: minus.stud, to: house.negative, lengthFt: 3, gauge: 4 });
      circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, load: 5, oneWayFt: 5, gauge: 14, protect: 10 });`,
    finds: "nothing",
  },
]);
