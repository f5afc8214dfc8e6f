import { testRule } from "../rule.tester.ts";
import { energyNoBank } from "./no-bank.ts";
import { july, plan } from "./one-bank.tester.ts";

const aloneOnAlternator = `
  const machine = alternator({ ratedA: 50 });
  const far = busBar({ side: "positive" });
  cable({ name: "machine plus", from: machine.positive, to: far.stud, lengthFt: 2, gauge: 4 });
  const blower = circuit({ name: "blower", from: far.stud, returnTo: machine.negative, oneWayFt: 5, gauge: 10, protect: 10, load: 5, use: { hoursPerDay: 1 } });`;

testRule(energyNoBank, [
  { name: "a bank that feeds loads", plan: plan(july(2)), finds: "nothing" },
  {
    name: "a lone circuit has no bank",
    plan: `circuit({ load: 5, oneWayFt: 5, gauge: 10, protect: 10 }); const trip = period({ name: "trip", place: "Tarifa, ES" });`,
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "",
        message: "trip is not judged: the plan has no battery that feeds a load.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a load that only an alternator feeds is in no balance",
    plan: `${plan(july(2))} ${aloneOnAlternator}`,
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "",
        message:
          "trip leaves out blower: no bank of this plan feeds it. Connect it with a bank, or state notUsed.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the same, not used in the period",
    plan: plan(`${july(2)}, notUsed: [blower]`).replace("const trip", `${aloneOnAlternator} const trip`),
    finds: "nothing",
  },
]);
