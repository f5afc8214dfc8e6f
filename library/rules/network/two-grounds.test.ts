import { testRule } from "../rule.tester.ts";
import { twoGrounds } from "./two-grounds.ts";

const bank = `
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
  const back = busBar({ name: "back", side: "negative" });
  const frame = chassis({ name: "frame", milliohm: 1 });
  const wire = (name, from, to) => cable({ name, from, to, lengthFt: 3, gauge: 4 });
  wire("bank to bus", house.negative, back.stud);
  circuit({ name: "lamp", from: house.positive, returnTo: back.stud, load: 5, oneWayFt: 5, gauge: 10, protect: 10 });`;

testRule(twoGrounds, [
  { name: "one bond", plan: `${bank} wire("bond", back.stud, frame.bond);`, finds: "nothing" },
  { name: "no metal in the plan", plan: bank.replace(/.*chassis.*\n/, ""), finds: "nothing" },
  {
    name: "bonded at the bus and at the bank",
    plan: `${bank} wire("bond", back.stud, frame.bond); wire("second bond", house.negative, frame.metal);`,
    finds: [
      {
        subject: "second bond",
        record: "second bond",
        on: "to",
        message:
          "Bonds the negative side to the frame in addition to the cable bond, so return current flows in the metal too; up to ",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a cable of two wires is one bond",
    plan: `${bank} wire("bond", back.stud, frame.bond); wire("beside it", back.stud, frame.bond);`,
    finds: "nothing",
  },
  {
    name: "an engine and a bank that meet in the metal alone have one bond each",
    plan: `${bank} wire("bond", back.stud, frame.bond);
      const engine = alternator({ ratedA: 50 });
      cable({ from: engine.positive, to: house.positive, lengthFt: 4, gauge: 4, protectFarEnd: 60 });
      wire("engine ground", engine.negative, frame.metal);`,
    finds: "nothing",
  },
  {
    name: "an engine that has a negative cable besides its own metal",
    plan: `${bank} wire("bond", back.stud, frame.bond);
      const engine = alternator({ ratedA: 50 });
      cable({ from: engine.positive, to: house.positive, lengthFt: 4, gauge: 4, protectFarEnd: 60 });
      wire("engine ground", engine.negative, frame.metal); wire("engine return", engine.negative, back.stud);`,
    finds: [{ subject: "engine ground", on: "to", message: "Bonds the negative side", fixes: "no fix" }],
  },
  {
    name: "loads that return through the metal are no bonds",
    plan: `${bank} wire("bond", back.stud, frame.bond);
      for (const name of ["horn", "beam"]) {
        const one = load({ name, currentA: 4 });
        cable({ from: house.positive, to: one.positive, lengthFt: 4, gauge: 12, protect: 10 });
        wire("foot", one.negative, frame.metal);
      }`,
    finds: "nothing",
  },
  {
    name: "two batteries joined by a charger that is not isolated, each bonded",
    plan: `${bank} wire("bond", back.stud, frame.bond);
      const starter = battery({ chemistry: "AGM", capacityAh: 70, internalMilliohm: 5 });
      const charger = dcDcCharger({ outputA: 10 });
      cable({ from: starter.positive, to: charger.inputPositive, lengthFt: 3, gauge: 8, protect: 20 });
      cable({ from: charger.outputPositive, to: house.positive, lengthFt: 3, gauge: 8, protectFarEnd: 20 });
      wire("in", charger.inputNegative, starter.negative); wire("out", charger.outputNegative, back.stud);
      wire("starter ground", starter.negative, frame.metal);`,
    finds: [{ subject: "starter ground", on: "to", message: "Bonds the negative side", fixes: "no fix" }],
  },
  {
    name: "accepted with a reason",
    plan: `${bank} wire("bond", back.stud, frame.bond);
      cable({ name: "second", from: house.negative, to: frame.metal, lengthFt: 3, gauge: 4, accept: { "network/two-grounds": "the frame is isolated there" } });`,
    finds: [{ on: "to", message: "Bonds", accepted: "the frame is isolated there", fixes: "no fix" }],
  },
]);
