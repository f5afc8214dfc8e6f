import { testRule } from "../rule.tester.ts";
import { outputCurrent } from "./output-current.ts";

// The rating as the plan states it; 13 V at the output.
testRule(outputCurrent, [
  { name: "exactly its rating", plan: planWith({ load: "load: 20" }), finds: "nothing" },
  {
    name: "a little more",
    plan: planWith({ load: "load: 20.1" }),
    finds: [
      {
        subject: "down",
        record: "down",
        on: "outputA",
        severity: "warning",
        message:
          'Asked for 20.1 A in "everything on" (lamps), gives 20 A, and no battery helps (common practice, no source): run less at once, or choose a larger one.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "watts, by the voltage at its output: 260 W are 20 A at 13 V",
    plan: planWith({ load: "loadW: 260" }),
    finds: "nothing",
  },
  {
    name: "a few watts more",
    plan: planWith({ load: "loadW: 262" }),
    finds: [{ on: "outputA", message: "Asked for 20.2 A", fixes: "no fix" }],
  },
  {
    name: "a battery at its output helps",
    plan: planWith({
      load: "load: 40",
      more: `const buffer = battery({ chemistry: "AGM", nominalV: 12, capacityAh: 60, internalMilliohm: 6 });
        circuit({ name: "buffer", from: plus.stud, returnTo: minus.stud, to: buffer, oneWayFt: 2, gauge: 4, protectFarEnd: 80 });`,
    }),
    finds: "nothing",
  },
  {
    name: "a scenario in which less is on",
    plan: planWith({ load: "load: 25", more: 'scenario({ name: "night", on: [] });' }),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: planWith({
      load: "load: 25",
      down: 'accept: { "charger/output-current": "it gives 30 A for minutes" }',
    }),
    finds: [
      { on: "outputA", message: "Asked for 25 A", accepted: "it gives 30 A for minutes", fixes: "no fix" },
    ],
  },
]);

/** A converter from 24 to 12 V, with nothing but loads behind it. */
function planWith({ load, down = "", more = "" }: { load: string; down?: string; more?: string }): string {
  return `
    build({ insulationC: 105, voltage: 24 });
    const house = battery({ chemistry: "AGM", nominalV: 24, capacityAh: 100, internalMilliohm: 8 });
    const down = dcDcCharger({ outputA: 20, outputV: 13, isolated: true, runs: "always", ${down} });
    circuit({ name: "input", from: house.positive, returnTo: house.negative, to: down, oneWayFt: 3, gauge: 8, protect: 30 });
    const plus = busBar({ side: "positive" });
    const minus = busBar({ side: "negative" });
    cable({ name: "output", from: down.outputPositive, to: plus.stud, lengthFt: 2, gauge: 4 });
    cable({ name: "output return", from: down.outputNegative, to: minus.stud, lengthFt: 2, gauge: 4 });
    circuit({ name: "lamps", from: plus.stud, returnTo: minus.stud, ${load}, voltage: 12, oneWayFt: 4, gauge: 4, protect: 60 });
    ${more}`;
}
