import { testRule } from "../rule.tester.ts";
import { arrayVoltage } from "./array-voltage.ts";

// Common practice, no source: a controller lowers the voltage of its modules and cannot raise it.
testRule(arrayVoltage, [
  { name: "modules of 18 V on 14.4 V", plan: planWith(), finds: "nothing" },
  { name: "exactly the charging voltage", plan: planWith({ maxPowerV: 14.4 }), finds: "nothing" },
  {
    name: "a little less",
    plan: planWith({ maxPowerV: 14.3 }),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "maxPowerV",
        severity: "warning",
        message:
          "Gives 14.3 V at maximum power, the solar controller tracker charges with 14.4 V and only lowers the voltage (common practice, no source): put more modules in series.",
        fixes: "no fix",
      },
    ],
  },
  { name: "two modules in series", plan: planWith({ maxPowerV: 7.2, more: "series: 2" }), finds: "nothing" },
  {
    name: "two modules in series are still too low for 24 V",
    plan: planWith({ maxPowerV: 14, more: "series: 2", voltage: 24 }),
    finds: [
      {
        on: "maxPowerV",
        message:
          "2 modules in series give 28 V at maximum power, the solar controller tracker charges with 28.8 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "without tracking, exactly 1.5 times the charging voltage",
    plan: planWith({ maxPowerV: 21.6, controller: "tracking: false" }),
    finds: "nothing",
  },
  {
    name: "without tracking, a module for the roof of a house",
    plan: planWith({ maxPowerV: 31, controller: "tracking: false" }),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "maxPowerV",
        severity: "warning",
        message:
          "Gives 31 V at maximum power, and the solar controller tracker does not track: it pulls the modules down to 14.4 V or less, and at least 53.5 % of their power is lost (common practice, no source). Use modules of some 18 V for each 12 V, or a controller that tracks.",
        fixes: "no fix",
      },
    ],
  },
  { name: "the same with tracking", plan: planWith({ maxPowerV: 31 }), finds: "nothing" },
  {
    name: "accepted with a reason",
    plan: planWith({
      maxPowerV: 9,
      more: 'accept: { "solar/array-voltage": "the controller raises the voltage" }',
    }),
    finds: [
      {
        on: "maxPowerV",
        message: "Gives 9 V",
        accepted: "the controller raises the voltage",
        fixes: "no fix",
      },
    ],
  },
]);

function planWith({ maxPowerV = 18, more = "", voltage = 12, controller = "" } = {}): string {
  return `
    build({ insulationC: 105, voltage: ${voltage}, lowestC: 0 });
    const house = battery({ chemistry: "AGM", nominalV: ${voltage}, capacityAh: 100, internalMilliohm: 5 });
    const tracker = solarController({ maxInputV: 100, outputA: 20, ${controller} });
    const roof = solarArray({ openCircuitV: ${Math.max(22, 1.25 * maxPowerV)}, shortCircuitA: 8, maxPowerV: ${maxPowerV}, maxPowerA: 7, ${more} });
    circuit({ name: "roof cable", from: roof.positive, to: tracker, oneWayFt: 10, gauge: 10 });
    circuit({ name: "charging", from: tracker.positive, to: house, returnTo: tracker.negative, oneWayFt: 3, gauge: 8, protectFarEnd: 30 });`;
}
