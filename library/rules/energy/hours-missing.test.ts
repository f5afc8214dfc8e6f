import { testRule } from "../rule.tester.ts";
import { energyHoursMissing } from "./hours-missing.ts";
import { july, plan } from "./one-bank.tester.ts";

testRule(energyHoursMissing, [
  { name: "each load states its hours", plan: plan(july(2)), finds: "nothing" },
  {
    name: "no period, no question",
    plan: plan(july(2), { pump: "" }).replace(/const trip.*/, ""),
    finds: "nothing",
  },
  {
    name: "a load that is not used in the period",
    plan: plan(`${july(2)}, notUsed: [pump]`, { pump: "" }),
    finds: "nothing",
  },
  {
    name: "hours that are refused have a finding of their own",
    plan: plan(july(2), { pump: "use: { hoursPerDay: 25 }" }),
    finds: "nothing",
  },
  {
    name: "an inverter without its idle power, and one without devices",
    plan: `${plan(july(2))}
      const power = inverter({ continuousW: 300, devices: [{ name: "laptop", powerW: 60, use: { hoursPerDay: 2 } }] });
      circuit({ from: main.stud, returnTo: house.negative, to: power, oneWayFt: 3, gauge: 4, protect: 60 });
      const spare = inverter({ continuousW: 300, idleW: 5 });
      circuit({ from: main.stud, returnTo: house.negative, to: spare, oneWayFt: 3, gauge: 4, protect: 60 });`,
    finds: [
      {
        subject: "the plan",
        record: "power",
        on: "",
        message:
          "The plan does not say how long power, idle and spare, devices run: state the idleW of the inverter and the devices of the inverter. Until",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two loads without hours, in two periods",
    plan: `${plan(july(2), { pump: "", lamp: "" })} period({ name: "winter", place: "Tarifa, ES", months: ["Jan"] });`,
    finds: [
      {
        subject: "the plan",
        record: "lamp",
        on: "",
        message: "The plan does not say how long lamp and pump run:",
        fixes: "no fix",
      },
    ],
  },
]);
