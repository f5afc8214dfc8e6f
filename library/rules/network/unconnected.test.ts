import { testRule } from "../rule.tester.ts";
import { networkUnconnected } from "./unconnected.ts";

const bank = `
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
  const plus = (to, from = house.positive) => cable({ name: "plus", from, to, lengthFt: 5, gauge: 10, protect: 30 });
  const minus = (from, to = house.negative) => cable({ name: "minus", from, to, lengthFt: 5, gauge: 10 });`;
const lamp = `const lamp = load({ name: "lamp", currentA: 5 });`;
const lit = `${bank} ${lamp} plus(lamp.positive); minus(lamp.negative);`;

testRule(networkUnconnected, [
  { name: "out and back", plan: lit, finds: "nothing" },
  {
    name: "a load that nothing is joined to",
    plan: `${lit} const fan = load({ name: "fan", currentA: 2 });`,
    finds: [
      {
        subject: "fan",
        record: "fan",
        on: "",
        message:
          "No source feeds it: no path leads from a source's positive side to the positive terminal. Add a cable or a circuit to it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a load with its negative alone joined",
    plan: `${lit} const fan = load({ name: "fan", currentA: 2 }); minus(fan.negative);`,
    finds: [{ subject: "fan", record: "fan", on: "", message: "No source feeds it", fixes: "no fix" }],
  },
  {
    name: "a panel that nothing feeds is told once, with what hangs on it",
    plan: `${lit} const panel = fusePanel({ positions: 4 });
      minus(panel.negative);
      for (const name of ["fan", "pump"]) circuit({ name, from: panel.branch, load: 2, oneWayFt: 3, gauge: 12, protect: 5 });`,
    finds: [
      {
        subject: "panel",
        record: "panel",
        on: "",
        message:
          "No source reaches it, so no current reaches fan and pump: connect it to the positive side of a source.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a load the wrong way round",
    plan: `${bank} ${lamp}
      const a = busBar({ name: "a" }), b = busBar({ name: "b" });
      plus(a.stud); minus(b.stud);
      cable({ name: "one", from: b.stud, to: lamp.positive, lengthFt: 2, gauge: 12 });
      cable({ name: "other", from: lamp.negative, to: a.stud, lengthFt: 2, gauge: 12 });`,
    finds: [
      {
        subject: "lamp",
        record: "one",
        on: "from",
        message:
          "Reversed polarity: lamp has its positive on the negative side of the battery house, and its negative on the positive side. Exchange the two.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger that nothing feeds",
    plan: `${lit} const charger = dcDcCharger({ outputA: 10 });
      plus(house.positive, charger.outputPositive); minus(charger.outputNegative);`,
    finds: [
      {
        subject: "charger",
        record: "charger",
        on: "",
        message:
          "No source feeds it: no path leads from a source's positive side to the input's positive terminal.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a source that feeds nothing: information",
    plan: `${lit} const shore = shoreCharger({ outputA: 10 });`,
    finds: [
      {
        subject: "shore",
        record: "shore",
        on: "",
        severity: "info",
        message: "Feeds no load: the positive terminal leads to no part that could draw from it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a bank whose bus bar is still empty: information",
    plan: `${bank} const main = busBar({}); plus(main.stud);`,
    finds: [{ subject: "house", on: "", severity: "info", message: "Feeds no load", fixes: "no fix" }],
  },
  {
    name: "a bus bar, a disconnect, a part that nothing is joined to: information",
    plan: `${lit} const spare = busBar({});
      const off = disconnect({ ratedA: 100 });
      const relay = part({ terminals: ["a", "b"] });`,
    finds: [
      {
        record: "spare",
        on: "",
        severity: "info",
        message: "This bus bar is not connected: connect it, or take it out of the plan.",
        fixes: "no fix",
      },
      {
        record: "off",
        on: "",
        severity: "info",
        message: "This disconnect is not connected",
        fixes: "no fix",
      },
      {
        record: "relay",
        on: "",
        severity: "info",
        message: "This part is not connected",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a disconnect that switches nothing",
    plan: `${lit} const off = disconnect({ ratedA: 100 }); plus(off.line);`,
    finds: [
      {
        subject: "off",
        record: "off",
        on: "",
        severity: "warning",
        message:
          "Only one side of this disconnect is connected, so no current passes it: connect the load side too.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "terminals that need nothing: a panel's negative bus, the metal of a chassis, a second contact",
    plan: `${lit} const panel = fusePanel({ positions: 4 }), frame = chassis({ milliohm: 1 });
      const selector = part({ terminals: ["common", "first", "second"], joins: [{ between: ["common", "first"] }] });
      const fan = load({ name: "fan", currentA: 2 });
      plus(panel.feed); minus(frame.bond); plus(selector.common);
      plus(fan.positive, selector.first); minus(fan.negative);`,
    finds: "nothing",
  },
  {
    name: "a load behind a disconnect that is open in the plan's only scenario is joined all the same",
    plan: `${bank} ${lamp} const off = disconnect({ ratedA: 100 });
      plus(off.line); plus(lamp.positive, off.load); minus(lamp.negative);
      scenario({ name: "laid up", off: [off] });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: `${lit} load({ name: "fan", currentA: 2, accept: { "network/unconnected": "comes next year" } });`,
    finds: [{ on: "", message: "No source feeds it", accepted: "comes next year", fixes: "no fix" }],
  },
]);
