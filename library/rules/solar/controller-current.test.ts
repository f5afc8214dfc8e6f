import { testRule } from "../rule.tester.ts";
import { controllerCurrent } from "./controller-current.ts";

// NFPA 70, 690.8(A)(1): 1.25 times the short-circuit current, 8 A × 1.25 = 10 A.
testRule(controllerCurrent, [
  { name: "exactly the current in the brightest sun", plan: planWith(), finds: "nothing" },
  {
    name: "a little less",
    plan: planWith({ outputA: 9.9 }),
    finds: [
      {
        subject: "plain",
        record: "plain",
        on: "outputA",
        severity: "warning",
        message:
          "Modules of 8 A drive up to 10 A through this controller, which does not track (1.25 ×, NFPA 70 690.8(A)(1)); its rating is 9.9 A (outputA): use a controller with a higher one, or one that tracks.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "one that tracks holds its output",
    plan: planWith({ outputA: 5, tracking: true }),
    finds: "nothing",
  },
  {
    name: "two strings",
    plan: planWith({ more: "parallel: 2" }),
    finds: [{ on: "outputA", message: "Modules of 16 A drive up to 20 A", fixes: "no fix" }],
  },
  { name: "two in series", plan: planWith({ more: "series: 2" }), finds: "nothing" },
  {
    name: "accepted with a reason",
    plan: planWith({
      outputA: 8,
      accept: 'accept: { "solar/controller-current": "its manual allows 12 A from the modules" }',
    }),
    finds: [
      {
        on: "outputA",
        message: "Modules of 8 A",
        accepted: "its manual allows 12 A from the modules",
        fixes: "no fix",
      },
    ],
  },
]);

function planWith({ outputA = 10, tracking = false, more = "", accept = "" } = {}): string {
  return `
    build({ insulationC: 105, lowestC: 0 });
    const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
    const plain = solarController({ maxInputV: 100, outputA: ${outputA}, tracking: ${tracking}, ${accept} });
    const roof = solarArray({ openCircuitV: 22, shortCircuitA: 8, maxPowerV: 18, maxPowerA: 7, ${more} });
    circuit({ name: "roof cable", from: roof.positive, to: plain, oneWayFt: 10, gauge: 8 });
    circuit({ name: "charging", from: plain.positive, to: house, returnTo: plain.negative, oneWayFt: 3, gauge: 8, protectFarEnd: 30 });`;
}
