import { testRule } from "../rule.tester.ts";
import { chargerWrongWay } from "./wrong-way.ts";

// Common practice, no source: the charger is between the alternator's battery and the other bank.
testRule(chargerWrongWay, [
  { name: "from the alternator's battery to the other", plan: planWith("engine", "house"), finds: "nothing" },
  {
    name: "turned round",
    plan: planWith("house", "engine"),
    finds: [
      {
        subject: "booster",
        record: "booster",
        on: "",
        severity: "error",
        message:
          "Runs with the engine, and its output leads to the side that the alternator charges already, while no alternator is at its input: while driving it empties the bank that it takes from. Exchange input and output, or state that it runs always (runs), if it keeps the engine battery full at rest.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "it keeps the engine battery full at rest",
    plan: planWith("house", "engine").replace("outputA: 10", 'outputA: 10, runs: "always"'),
    finds: "nothing",
  },
  {
    name: "an alternator at each side",
    plan: `${planWith("house", "engine")}
      const second = alternator({ name: "second", ratedA: 60 });
      cable({ from: second.positive, to: house.positive, lengthFt: 3, gauge: 6, protectFarEnd: 60 });
      cable({ from: second.negative, to: house.negative, lengthFt: 3, gauge: 6 });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: planWith("house", "engine").replace(
      'name: "booster",',
      'name: "booster", accept: { "charger/wrong-way": "for the winter" },',
    ),
    finds: [{ on: "", message: "Runs with the engine", accepted: "for the winter", fixes: "no fix" }],
  },
]);

function planWith(from: string, to: string): string {
  return `
    build({ insulationC: 105 });
    const engine = battery({ name: "engine", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
    const house = battery({ name: "house", chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
    const machine = alternator({ name: "alternator", ratedA: 60 });
    cable({ from: machine.positive, to: engine.positive, lengthFt: 3, gauge: 6, protectFarEnd: 60 });
    cable({ from: machine.negative, to: engine.negative, lengthFt: 3, gauge: 6 });
    const booster = dcDcCharger({ name: "booster", outputA: 10, isolated: true });
    circuit({ name: "in", from: ${from}.positive, to: booster, oneWayFt: 3, gauge: 8, protect: 25 });
    circuit({ name: "out", from: booster.outputPositive, returnTo: booster.outputNegative, to: ${to}, oneWayFt: 3, gauge: 8, protectFarEnd: 15 });`;
}
