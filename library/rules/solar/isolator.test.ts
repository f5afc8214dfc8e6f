import { testRule } from "../rule.tester.ts";
import { solarIsolator } from "./isolator.ts";

// IEC 60364-4-41, 414.4.5 (from memory): bare parts of up to 60 V direct voltage need no cover in dry places. By the coefficient, a
// module of 50 V with -0.4 %/K has 50 · (1 + 0.004 · 50) = 60 V at -25 °C (NFPA 70, 690.7(A)).
testRule(solarIsolator, [
  { name: "exactly 60 V on the coldest day", plan: planWith({ openCircuitV: 50 }), finds: "nothing" },
  {
    name: "a little more",
    plan: planWith({ openCircuitV: 50.1 }),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "openCircuitV",
        severity: "info",
        message:
          "Up to 60.1 V on the coldest day reach the solar controller tracker past no isolator; above 60 V bare parts can give a shock (IEC 60364-4-41, 414.4.5, unconfirmed figure): put a disconnect or breaker made for that voltage before it, and cover the terminals.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the coldest day is unknown: the voltage at 25 °C counts",
    plan: planWith({ openCircuitV: 61, lowestC: "" }),
    finds: [{ on: "openCircuitV", message: "Up to 61 V reach the solar controller", fixes: "no fix" }],
  },
  {
    name: "a disconnect between",
    plan: planWith({ openCircuitV: 55, through: "disconnect" }),
    finds: "nothing",
  },
  {
    name: "a breaker in the positive conductor",
    plan: planWith({ openCircuitV: 55, protect: '{ ratingA: 15, family: "circuit breaker", ratedV: 150 }' }),
    finds: "nothing",
  },
  {
    name: "a fuse is no isolator",
    plan: planWith({ openCircuitV: 55, protect: "15" }),
    finds: [{ on: "openCircuitV", message: "Up to 66 V on the coldest day", fixes: "no fix" }],
  },
  {
    name: "accepted with a reason",
    plan: planWith({ openCircuitV: 55, accept: "a blanket covers the modules" }),
    finds: [
      {
        on: "openCircuitV",
        message: "Up to 66 V",
        accepted: "a blanket covers the modules",
        fixes: "no fix",
      },
    ],
  },
]);

function planWith({
  openCircuitV = 50,
  lowestC = "lowestC: -25",
  through = "",
  protect = "",
  accept = "",
} = {}) {
  const from = through === "" ? "roof.positive" : "off.load";
  return `
    build({ insulationC: 105, ${lowestC} });
    const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
    const tracker = solarController({ maxInputV: 150, outputA: 30 });
    const roof = solarArray({ openCircuitV: ${openCircuitV}, shortCircuitA: 8, maxPowerV: 40, maxPowerA: 7,
      openCircuitPercentPerC: -0.4, ${accept && `accept: { "solar/isolator": "${accept}" }`} });
    ${through === "" ? "" : 'const off = disconnect({ ratedA: 30 }); cable({ name: "to the disconnect", from: roof.positive, to: off.line, lengthFt: 10, gauge: 10 });'}
    circuit({ name: "roof cable", from: ${from}, returnTo: roof.negative, to: tracker, oneWayFt: 10, gauge: 10, ${protect && `protect: ${protect}`} });
    circuit({ name: "charging", from: tracker.positive, to: house, returnTo: tracker.negative, oneWayFt: 3, gauge: 8, protectFarEnd: 40 });`;
}
