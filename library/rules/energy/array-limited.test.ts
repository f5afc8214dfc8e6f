import { testRule } from "../rule.tester.ts";
import { energyArrayLimited } from "./array-limited.ts";
import { plan, roof } from "./one-bank.tester.ts";

const year = plan('place: "Tarifa, ES"');
/** 36 cells for a battery of 12 V, 60 cells for a controller that tracks, and 32 cells that a hot roof leaves too little. */
const cells36 = "openCircuitV: 22, shortCircuitA: 9.5, maxPowerV: 18, maxPowerA: 9";
const cells60 = "openCircuitV: 38, shortCircuitA: 9.5, maxPowerV: 31, maxPowerA: 9";
const cells28 = "openCircuitV: 17.5, shortCircuitA: 9.5, maxPowerV: 14, maxPowerA: 9";

testRule(energyArrayLimited, [
  { name: "a controller that tracks", plan: year + roof(cells60, "outputA: 30"), finds: "nothing" },
  {
    name: "without tracking, with modules for such a battery",
    plan: year + roof(cells36, "outputA: 30, tracking: false"),
    finds: "nothing",
  },
  {
    name: "without tracking, with modules of 31 V",
    plan: year + roof(cells60, "outputA: 30, tracking: false"),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "",
        severity: "warning",
        message: "roof gives about 5",
        values: { limit: "voltage", months: "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ") },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "without tracking, with modules of 14 V that are too hot",
    plan: year + roof(cells28, "outputA: 30, tracking: false"),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "",
        severity: "warning",
        message: "roof gives no energy in about ",
        values: { limit: "heat" },
        fixes: "no fix",
      },
    ],
  },
  { name: "a current that is seldom reached", plan: year + roof(cells60, "outputA: 18"), finds: "nothing" },
  {
    name: "a current of a third",
    plan: year + roof(cells60, "outputA: 7"),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "",
        severity: "info",
        message: "The output current of its controller cuts off about ",
        values: { limit: "current" },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the same, without a period",
    plan: (year + roof(cells60, "outputA: 7")).replace(/const trip.*/, ""),
    finds: "nothing",
  },
]);
