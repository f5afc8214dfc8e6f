import { testRule } from "../rule.tester.ts";
import { chargerCircle } from "./circle.ts";

// Common practice, no source: each takes back the energy that the other gives.
testRule(chargerCircle, [
  {
    name: "two that always run",
    plan: planWith("always", "always"),
    finds: [
      {
        subject: "back",
        record: "back",
        on: "runs",
        severity: "error",
        message:
          "Always runs, and feeds the side that the DC-DC charger out draws from, which always runs too and feeds it in turn (common practice, no source): let one of them run with the engine only, or use one charger for both directions.",
        fixes: "no fix",
      },
    ],
  },
  { name: "one of them with the engine only", plan: planWith("always", "with the engine"), finds: "nothing" },
  { name: "two side by side in one direction", plan: planWith("always", "always", false), finds: "nothing" },
  {
    name: "three in a circle",
    plan: threeInTurn("always"),
    finds: [
      {
        subject: "c to a",
        record: "c to a",
        on: "runs",
        severity: "error",
        message:
          "Always runs, and closes a circle: it feeds the DC-DC charger a to b and the DC-DC charger b to c one after another, which always run too, and the last one feeds it in turn (common practice, no source): let one of them run with the engine only, or use one charger for both directions.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "three in a circle, one with the engine only",
    plan: threeInTurn("with the engine"),
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: planWith("always", "always").replace(
      'name: "back",',
      'name: "back", accept: { "charger/circle": "a relay lets one run at a time" },',
    ),
    finds: [
      {
        on: "runs",
        message: "Always runs",
        accepted: "a relay lets one run at a time",
        fixes: "no fix",
      },
    ],
  },
]);

function planWith(out: string, back: string, isBack = true): string {
  const [from, to] = isBack ? ["house", "engine"] : ["engine", "house"];
  return `
    build({ insulationC: 105 });
    const engine = battery({ name: "engine", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
    const house = battery({ name: "house", chemistry: "AGM", capacityAh: 200, internalMilliohm: 3 });
    const one = dcDcCharger({ name: "out", outputA: 10, runs: "${out}", isolated: true });
    circuit({ name: "out in", from: engine.positive, to: one, oneWayFt: 3, gauge: 8, protect: 25 });
    circuit({ name: "out out", from: one.outputPositive, returnTo: one.outputNegative, to: house, oneWayFt: 3, gauge: 8, protectFarEnd: 15 });
    const other = dcDcCharger({ name: "back", outputA: 10, runs: "${back}", isolated: true });
    circuit({ name: "back in", from: ${from}.positive, to: other, oneWayFt: 3, gauge: 8, protect: 25 });
    circuit({ name: "back out", from: other.outputPositive, returnTo: other.outputNegative, to: ${to}, oneWayFt: 3, gauge: 8, protectFarEnd: 15 });`;
}

function threeInTurn(second: string): string {
  const charger = (from: string, to: string, runs: string) => `
    const ${from}${to} = dcDcCharger({ name: "${from} to ${to}", outputA: 10, runs: "${runs}", isolated: true });
    circuit({ name: "${from}${to} in", from: ${from}.positive, to: ${from}${to}, oneWayFt: 3, gauge: 8, protect: 25 });
    circuit({ name: "${from}${to} out", from: ${from}${to}.outputPositive, returnTo: ${from}${to}.outputNegative, to: ${to}, oneWayFt: 3, gauge: 8, protectFarEnd: 15 });`;
  return `
    build({ insulationC: 105 });
    const a = battery({ name: "a", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
    const b = battery({ name: "b", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
    const c = battery({ name: "c", chemistry: "AGM", capacityAh: 80, internalMilliohm: 5 });
    ${charger("a", "b", "always")}${charger("b", "c", second)}${charger("c", "a", "always")}`;
}
