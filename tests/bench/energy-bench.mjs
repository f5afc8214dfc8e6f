// A keystroke in a plan with a period, beside the same keystroke in the plan without it: `node tests/bench/energy-bench.mjs`, or as a
// part of `npm run bench`. One process holds a checker, and the two plans take turns, edit by edit. Processor time counts, of all threads
// of the process: another program on the machine changes it less than the clock.

import { fileURLToPath } from "node:url";
import { inTurns, withBenchChecker } from "./in-turns.mjs";

/** By the value that is edited: the median ratio of a keystroke with a period to one without, and both medians, ms. */
export function energyBench() {
  return withBenchChecker(async (checker) => {
    const results = {};
    for (const [name, edit] of Object.entries(edits)) {
      const [withMs, withoutMs] = [true, false].map((period) => keystrokes(checker, period, edit));
      const { ratio, firstMs, secondMs } = await inTurns(withMs, withoutMs);
      results[name] = { ratio, withMs: firstMs, withoutMs: secondMs };
    }
    return results;
  });
}

function keystrokes(checker, period, edit) {
  const uri = `file:///bench/${period ? "with" : "without"}.ts`;
  const text = planText(period);
  return (step) => checker.check(uri, edit(text, 1 + (step % 9)));
}

/** The texts of an edit: a builder types another digit each time. */
const edits = {
  "the load of a circuit": (text, digit) =>
    text.replace("load: 3, /* edited */", `load: ${digit}, /* edited */`),
  "a constant of all 20 circuits": (text, digit) => text.replace("const each = 3;", `const each = ${digit};`),
  "the bank": (text, digit) => text.replace("capacityAh: 400", `capacityAh: 40${digit}`),
  "the size of a conductor": (text, digit) =>
    text.replace("lengthM: 2, /* run */", `lengthM: 2.${digit}, /* run */`),
};

/** A bank, an array, an alternator's charger and 20 circuits, as a builder writes them. The figures are invented. */
function planText(period) {
  const uses = [
    "hoursPerDay: 4",
    'hoursPerDay: 3, when: "dark"',
    "dutyPercent: 30",
    "fromHour: 18, untilHour: 23",
  ];
  return `import { battery, build, busBar, cable, circuit, period, solarArray, solarController } from "loomwright";
build({ name: "measured build", insulationC: 105 });
const each = 3;
const house = battery({ chemistry: "LiFePO4", capacityAh: 400, internalMilliohm: 2, reservePercent: 20 });
const plus = busBar({ side: "positive" });
const minus = busBar({ side: "negative" });
cable({ from: house.positive, to: plus.stud, lengthM: 2, /* run */ gauge: "1/0", protect: 250 });
cable({ from: house.negative, to: minus.stud, lengthM: 1, gauge: "1/0" });
const roof = solarArray({ openCircuitV: 45, shortCircuitA: 11, maxPowerV: 37, maxPowerA: 10.5, tiltDeg: 20 });
const mppt = solarController({ maxInputV: 100, outputA: 30 });
cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: 6 });
const on = { from: plus.stud, returnTo: minus.stud, oneWayM: 4, gauge: 12, protect: 15 } as const;
circuit({ ...on, name: "first", load: 3, /* edited */ use: { hoursPerDay: 2 } });
${Array.from({ length: 19 }, (_, index) => `circuit({ ...on, name: "circuit ${index}", oneWayM: ${3 + (index % 7)}, load: each, use: { ${uses[index % 4]} } });`).join("\n")}
${period ? 'period({ name: "All year", place: "Tarifa, ES" });' : ""}
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [name, { ratio, withMs, withoutMs }] of Object.entries(await energyBench()))
    console.log(
      `${name}: ${withMs.toFixed(1)} ms with a period, ${withoutMs.toFixed(1)} ms without, ${ratio.toFixed(2)}`,
    );
