import { testRule } from "../rule.tester.ts";
import { invalidValue } from "./invalid-value.ts";

testRule(invalidValue, [
  { name: "every value can be used", circuits: [{}], finds: "nothing" },
  { name: "the greatest load that can be used", circuits: [{ load: 2000 }], finds: "nothing" },
  {
    name: "just above the greatest load",
    circuits: [{ load: 2000.1 }],
    finds: [
      {
        subject: "Heater",
        on: "load",
        message: "load is too large: 2000.1. Allowed: a current above 0 and up to 2,000 A.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "nothing at all",
    circuits: [{ load: 0 }],
    finds: [{ on: "load", message: "load is zero: 0. Allowed: a current above 0", fixes: "no fix" }],
  },
  {
    name: "negative",
    circuits: [{ oneWayFt: -4 }],
    finds: [{ on: "oneWayFt", message: "oneWayFt is negative: -4.", fixes: "no fix" }],
  },
  {
    name: "not a number, as it comes out of the sandbox",
    circuits: [{ load: { $strange: "NaN" } }],
    finds: [{ on: "load", message: "load is not a number: NaN.", fixes: "no fix" }],
  },
  {
    name: "a number written as text",
    circuits: [{ load: "12" }],
    finds: [
      {
        on: "load",
        message: 'load is text, not a number: "12".',
        fixes: [{ title: "Write 12 as a number", kind: "suggestion", gives: { load: 12 } }],
      },
    ],
  },
  {
    name: "a size that is not made",
    circuits: [{ gauge: 5 }],
    finds: [{ on: "gauge", message: "gauge is not", fixes: "no fix" }],
  },
  {
    name: "a thick size by its other name",
    circuits: [{ gauge: 0 }],
    finds: [
      {
        on: "gauge",
        message: 'gauge is not one of the sizes: 0. Did you mean "1/0"? Allowed: 18, 16',
        fixes: [{ title: 'Use "1/0"', kind: "suggestion", gives: { gauge: "1/0" } }],
      },
    ],
  },
  {
    name: "a misspelt property",
    circuits: [{ protect: undefined, protekt: 50 }],
    finds: [
      {
        on: "protekt",
        message: "protekt is not a property of circuit. Did you mean protect?",
        fixes: [
          { title: "Rename to protect", kind: "suggestion", gives: { protect: 50, protekt: undefined } },
        ],
      },
    ],
  },
  {
    name: "no size",
    circuits: [{ gauge: undefined }],
    finds: [{ on: "", message: "a size is missing", fixes: "no fix" }],
  },
  {
    name: "two sizes",
    circuits: [{ mm2: 25 }],
    finds: [
      {
        on: "mm2",
        message: "mm2 cannot be given together with gauge: 25. Allowed: only one of",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "inside an object",
    circuits: [{ protect: { ratingA: "50" } }],
    finds: [
      {
        on: "protect.ratingA",
        message: 'protect.ratingA is text, not a number: "50".',
        fixes: [{ title: "Write 50 as a number", kind: "suggestion", gives: { "protect.ratingA": 50 } }],
      },
    ],
  },
  {
    name: "in the build",
    build: { voltage: 230 },
    circuits: [{}],
    finds: [
      {
        subject: "the build",
        on: "voltage",
        message:
          "voltage is too large: 230. Allowed: 12, 24, 48 or another voltage from 1 to 50 V, or 51.2 V.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "it cannot be accepted",
    circuits: [{ load: 0, accept: { "plan/invalid-value": "later" } }],
    finds: [
      { on: "load", message: "load is zero", fixes: "no fix" },
      { on: "accept.plan/invalid-value", message: "accept.plan/invalid-value", fixes: "no fix" },
    ],
  },
  {
    name: "a number of a part",
    plan: `battery({ name: "house", chemistry: "AGM", capacityAh: 0 });`,
    finds: [
      {
        record: "house",
        on: "capacityAh",
        message:
          "capacityAh is zero: 0. Allowed: a capacity from 0.1 to 10,000 Ah. Currents, voltages and faults of the network connected with it are not judged until this is corrected.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a resistance so small that nothing could be worked out from it",
    plan: `battery({ name: "house", chemistry: "AGM", capacityAh: 100, internalMilliohm: 1e-300 });`,
    finds: [
      {
        record: "house",
        on: "internalMilliohm",
        message: "internalMilliohm is too small: 1e-300. Allowed: a resistance from 0.01 to 10,000 mΩ.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the greatest number of a part",
    plan: `battery({ name: "house", chemistry: "AGM", capacityAh: 10_000, shortCircuitA: 900 });`,
    finds: "nothing",
  },
  {
    name: "a circuit on its own beside it says nothing of a network",
    plan: `circuit({ name: "lamp", load: 0, oneWayFt: 9, gauge: 12, protect: 5 });`,
    finds: [
      {
        on: "load",
        message: "load is zero: 0. Allowed: a current above 0 and up to 2,000 A.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a whole part where a terminal should be",
    plan: `
      const house = battery({ chemistry: "AGM", capacityAh: 100 });
      const motor = inverter({ continuousW: 500 });
      cable({ name: "plus", from: house.positive, to: motor, lengthFt: 3, gauge: 2, protect: 80 });`,
    finds: [
      {
        record: "plus",
        on: "to",
        message:
          "to is the whole part, not one of its terminals: an inverter. Allowed: a terminal of a part of this plan, such as house.positive.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a return that nobody can tell",
    plan: `
      const bus = busBar({ name: "positive bus" });
      circuit({ name: "lamp", from: bus.stud, load: 2, oneWayFt: 9, gauge: 12, protect: 5 });`,
    finds: [
      {
        record: "lamp",
        on: "",
        message:
          "returnTo is missing, and positive bus has no negative terminal. Allowed: the negative terminal",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a build that the network relies on",
    plan: `build({ voltage: 0 }); battery({ chemistry: "gel", capacityAh: 100 });`,
    finds: [
      {
        on: "voltage",
        subject: "the build",
        message: "voltage is zero",
        fixes: "no fix",
        values: { stopsNetwork: true },
      },
    ],
  },
]);
