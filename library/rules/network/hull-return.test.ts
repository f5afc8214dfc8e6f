import { testRule } from "../rule.tester.ts";
import { networkHullReturn } from "./hull-return.ts";

// 46 CFR 111.05-11(a), from memory: the hull is no conductor, except for the start of an engine.
const wired = (place: string, rest: string) => `
  build({ insulationC: 105${place} });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
  const hull = chassis({ name: "hull", milliohm: 0.5 });
  cable({ name: "bond", from: bank.negative, to: hull.bond, lengthFt: 2, gauge: 1 });
  ${rest}`;
const lamps = (name: string) =>
  `circuit({ name: "${name}", from: bank.positive, returnTo: hull.metal, load: 5, oneWayFt: 8, gauge: 12, protect: 10 });`;
const boat = ', installedIn: "boat"';

testRule(networkHullReturn, [
  { name: "the hull is bonded, and carries no return", plan: wired(boat, ""), finds: "nothing" },
  { name: "a vehicle returns through its frame", plan: wired("", lamps("lamps")), finds: "nothing" },
  {
    name: "a load in a boat",
    plan: wired(boat, lamps("lamps")),
    finds: [
      {
        subject: "hull",
        record: "hull",
        on: "",
        severity: "error",
        message:
          "lamps returns through this metal, and a boat's hull is no conductor (46 CFR 111.05-11(a)): lead the return to the negative bus in a conductor, and keep the hull as a bond alone.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two loads in a boat with a petrol engine: one finding",
    plan: wired(', installedIn: "boat with petrol engine"', lamps("lamps") + lamps("horn")),
    finds: [{ on: "", message: "lamps and horn return through this metal", fixes: "no fix" }],
  },
  {
    name: "the starter motor of an engine",
    plan: wired(
      boat,
      `const starter = starterMotor({ crankingA: 200 });
       cable({ from: bank.positive, to: starter.positive, lengthFt: 3, gauge: "1/0" });
       cable({ from: starter.negative, to: hull.metal, lengthFt: 1, gauge: "1/0" });`,
    ),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: wired(boat, lamps("lamps")).replace(
      'name: "hull",',
      'name: "hull", accept: { "network/hull-return": "it is an engine block" },',
    ),
    finds: [{ on: "", message: "lamps returns through", accepted: "it is an engine block", fixes: "no fix" }],
  },
]);
