import { testRule } from "../rule.tester.ts";
import { energyNoCharger } from "./no-charger.ts";
import { july, plan } from "./one-bank.tester.ts";

testRule(energyNoCharger, [
  { name: "a period without hours of a charger", plan: plan(july(2)), finds: "nothing" },
  {
    name: "driving hours without a charger",
    plan: plan(`${july(2)}, driving: { hoursPerDay: 2 }`),
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "driving",
        message: "The driving hours of trip have no effect: no alternator",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "shore hours without a charger",
    plan: plan(`${july(2)}, shore: { fromHour: 20, untilHour: 6 }`),
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "shore",
        message: "The shore hours of trip have no effect: no charger on the mains",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an alternator that charges the bank",
    plan: `${plan(`${july(2)}, driving: { hoursPerDay: 2 }`)}
  const machine = alternator({ ratedA: 50 });
  cable({ name: "charging", from: machine.positive, to: house.positive, lengthFt: 5, gauge: 4, protect: 60, protectFarEnd: 60 });
  cable({ name: "ground", from: machine.negative, to: house.negative, lengthFt: 5, gauge: 4 });`,
    finds: "nothing",
  },
  {
    name: "a plan without a bank",
    plan: `circuit({ load: 5, oneWayFt: 5, gauge: 10, protect: 10 }); const trip = period({ name: "trip", place: "Tarifa, ES", driving: { hoursPerDay: 2 } });`,
    finds: "nothing",
  },
]);
