import type { Word } from "../../library/model/record.ts";

/** The text of a plan with about `count` of something. */
export type PlanOfSize = (count: number) => string;

const bus = `const house = battery({ chemistry: "AGM", capacityAh: 100, name: "house" });
const [plus, minus] = [busBar({ side: "positive" }), busBar({ side: "negative" })];
cable({ from: house.positive, to: plus.stud, lengthM: 1, gauge: "4/0", protect: 300 });
cable({ from: minus.stud, to: house.negative, lengthM: 1, gauge: "4/0" });
const onBus = { from: plus.stud, returnTo: minus.stud, oneWayM: 1, gauge: 16, protect: { ratingA: 5, distanceIn: 1 } };
`;

/** Statements, repeated by a loop; each may use `i`. */
function looped(before: string, statements: string): PlanOfSize {
  return (count) => `${imports}${before}for (let i = 0; i < ${count}; i++) {\n${statements}\n}\n`;
}

/** Statements, written out once for each. */
function written(before: string, statements: (index: number) => string, after = ""): PlanOfSize {
  return (count) =>
    `${imports}${before}${Array.from({ length: count }, (_, index) => statements(index)).join("\n")}\n${after}`;
}

const imports = `import {
  alternator, battery, breaker, build, busBar, cable, channel, chassis, circuit, compartment, dcDcCharger, disconnect,
  fuseHolder, fusePanel,
  inverter, load, motor, part, period, relay, scenario, selectorSwitch, shoreCharger, shunt, solarArray, solarController,
  starterMotor, surface,
} from "loomwright";
`;

/** Many calls of each function on one pair of bus bars: a builder repeats these when a system grows. */
export const plansByWord: Readonly<Record<Word, PlanOfSize>> = {
  circuit: looped(bus, "circuit({ ...onBus, load: 0.05, name: `lamp ${i}` });"),
  build: looped("circuit({ load: 5, oneWayM: 1, gauge: 16, protect: 10 });\n", "build({ voltage: 12 });"),
  cable: looped(bus, "cable({ from: house.positive, to: plus.stud, lengthM: 1, gauge: 4, protect: 100 });"),
  scenario: looped(
    `${bus}const lamps = Array.from({ length: 10 }, (_, at) => circuit({ ...onBus, load: 0.1 + at / 50 }));\n`,
    "scenario({ name: `scenario ${i}`, on: lamps.filter((_, at) => (i >> at) & 1), bankV: 11.5 + (i % 100) / 100 });",
  ),
  surface: looped(bus, "surface({ size: { widthMm: 1200, heightMm: 800 }, name: `board ${i}` });"),
  // Each on a board of its own; many on one board are a shape below.
  channel: looped(
    bus,
    `const board = surface({ size: { widthMm: 1200, heightMm: 800 } });
channel({ on: board, path: [{ leftMm: 0, topMm: i % 800 }, { leftMm: 1200, topMm: i % 800 }] });`,
  ),
  compartment: looped(bus, "compartment({ name: `locker ${i}` });"),
  period: looped(
    `${bus}circuit({ ...onBus, load: 2, use: { hoursPerDay: 5 } });\n`,
    "period({ name: `period ${i}`, latitudeDeg: (i % 120) - 60, longitudeDeg: 5 });",
  ),
  battery: looped(
    bus,
    `const one = battery({ chemistry: "AGM", capacityAh: 100 });
cable({ from: one.positive, to: plus.stud, lengthM: 0.5, gauge: 2, protect: 100 });
cable({ from: one.negative, to: minus.stud, lengthM: 0.5, gauge: 2 });`,
  ),
  busBar: looped(
    `${bus}let end: any = plus.stud;\n`,
    `const next = busBar({});
cable({ from: end, to: next.stud, lengthM: 0.01, gauge: "4/0" });
end = next.stud;`,
  ),
  fusePanel: looped(
    bus,
    `const panel = fusePanel({ positions: 2, ratedA: 60 });
circuit({ ...onBus, to: panel, gauge: 8, protect: 40 });
circuit({ from: panel.branch, load: 0.05, oneWayM: 1, gauge: 16, protect: 5 });`,
  ),
  disconnect: looped(
    bus,
    `const off = disconnect({ ratedA: 100 });
cable({ from: plus.stud, to: off.line, lengthM: 1, gauge: 8, protect: 40 });
circuit({ ...onBus, from: off.load, load: 0.05 });`,
  ),
  selectorSwitch: looped(
    bus,
    `const selector = selectorSwitch({ ratedA: 100 });
cable({ from: plus.stud, to: selector.common, lengthM: 1, gauge: 8, protect: 40 });
circuit({ ...onBus, from: selector.input1, load: 0.05 });`,
  ),
  relay: looped(
    bus,
    `const contact = relay({ ratedA: 100 });
cable({ from: plus.stud, to: contact.line, lengthM: 1, gauge: 8, protect: 40 });
circuit({ ...onBus, from: contact.load, load: 0.05 });`,
  ),
  fuseHolder: looped(
    bus,
    `const fuse = fuseHolder({ ratingA: 40, on: plus.stud });
circuit({ ...onBus, from: fuse.load, load: 0.05, gauge: 8, protect: 40 });`,
  ),
  breaker: looped(
    bus,
    `const trip = breaker({ ratingA: 40, on: plus.stud });
circuit({ ...onBus, from: trip.load, load: 0.05, gauge: 8, protect: 40 });`,
  ),
  shunt: looped(
    bus,
    `const one = battery({ chemistry: "AGM", capacityAh: 100 });
const meter = shunt({ ratedA: 100 });
cable({ from: one.positive, to: plus.stud, lengthM: 0.5, gauge: 2, protect: 100 });
cable({ from: one.negative, to: meter.batterySide, lengthM: 0.5, gauge: 2 });
cable({ from: meter.systemSide, to: minus.stud, lengthM: 0.5, gauge: 2 });`,
  ),
  inverter: looped(bus, "circuit({ ...onBus, to: inverter({ continuousW: 1, idleW: 0.1, cutOffV: 10 }) });"),
  dcDcCharger: looped(
    bus,
    `const charger = dcDcCharger({ outputA: 1, outputV: 14 });
const starter = battery({ chemistry: "AGM", capacityAh: 50 });
cable({ from: starter.positive, to: charger.inputPositive, lengthM: 1, gauge: 8, protect: 40 });
cable({ from: starter.negative, to: charger.inputNegative, lengthM: 1, gauge: 8 });
cable({ from: charger.outputPositive, to: plus.stud, lengthM: 1, gauge: 8, protectFarEnd: 40 });
cable({ from: charger.outputNegative, to: minus.stud, lengthM: 1, gauge: 8 });`,
  ),
  alternator: looped(bus, "circuit({ ...onBus, to: alternator({ ratedA: 1 }) });"),
  shoreCharger: looped(bus, "circuit({ ...onBus, to: shoreCharger({ outputA: 1 }) });"),
  solarArray: looped(
    bus,
    `const panels = solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.5 });
circuit({ ...onBus, to: panels, gauge: 12 });`,
  ),
  solarController: looped(
    bus,
    `const panels = solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.5, parallel: 2 });
const controller = solarController({ maxInputV: 75, outputA: 10 });
circuit({ from: panels.positive, returnTo: panels.negative, to: controller, oneWayM: 1, gauge: 10 });
cable({ from: controller.positive, to: plus.stud, lengthM: 1, gauge: 10, protectFarEnd: 20 });
cable({ from: controller.negative, to: minus.stud, lengthM: 1, gauge: 10 });`,
  ),
  chassis: looped(
    bus,
    `const metal = chassis({ milliohm: 1 });
cable({ from: minus.stud, to: metal.bond, lengthM: 1, gauge: 8 });
circuit({ ...onBus, returnTo: metal.metal, load: 0.05 });`,
  ),
  load: looped(bus, "circuit({ ...onBus, to: load({ powerW: 1, minimumV: 11 }) });"),
  starterMotor: looped(bus, "circuit({ ...onBus, to: starterMotor({ crankingA: 1 }) });"),
  motor: looped(bus, "circuit({ ...onBus, to: motor({ runningA: 0.1, startingA: 0.2, minimumV: 9 }) });"),
  part: looped(
    bus,
    `const relay = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"] }], ratedA: 10 });
cable({ from: plus.stud, to: relay.in, lengthM: 1, gauge: 8, protect: 40 });
circuit({ ...onBus, from: relay.out, load: 0.05 });`,
  ),
};

/** Other shapes of growing plans: chains, meshes, lists, and plans with a fault in every circuit. */
export const plansByShape: Readonly<Record<string, PlanOfSize>> = {
  "batteries side by side": looped(
    'let before = battery({ chemistry: "AGM", capacityAh: 100 });\n',
    `const next = battery({ chemistry: "AGM", capacityAh: 100 });
cable({ from: before.positive, to: next.positive, lengthM: 0.1, gauge: 2 });
cable({ from: before.negative, to: next.negative, lengthM: 0.1, gauge: 2 });
before = next;`,
  ),
  "batteries in a row": looped(
    'let before = battery({ chemistry: "AGM", capacityAh: 100, nominalV: 12 });\n',
    `const next = battery({ chemistry: "AGM", capacityAh: 100, nominalV: 12 });
cable({ from: before.positive, to: next.negative, lengthM: 0.1, gauge: 2 });
before = next;`,
  ),
  "batteries on one stud": looped(
    'const first = battery({ chemistry: "AGM", capacityAh: 100 });\n',
    `const next = battery({ chemistry: "AGM", capacityAh: 100 });
cable({ from: first.positive, to: next.positive, lengthM: 0.1, gauge: 2 });
cable({ from: first.negative, to: next.negative, lengthM: 0.1, gauge: 2 });`,
  ),
  "strings of two on one bus": looped(
    `build({ voltage: 24 });\nconst [plus, minus] = [busBar({ side: "positive" }), busBar({ side: "negative" })];\n`,
    `const [low, high] = [battery({ chemistry: "AGM", capacityAh: 100 }), battery({ chemistry: "AGM", capacityAh: 100 })];
cable({ from: low.positive, to: high.negative, lengthM: 0.1, gauge: 2 });
cable({ from: high.positive, to: plus.stud, lengthM: 0.1, gauge: 2, protect: 100 });
cable({ from: low.negative, to: minus.stud, lengthM: 0.1, gauge: 2 });`,
  ),
  "batteries that short one another": looped(
    "const [one, other] = [busBar({}), busBar({})];\n",
    `const [up, down] = [battery({ chemistry: "AGM", capacityAh: 100 }), battery({ chemistry: "AGM", capacityAh: 100 })];
for (const [positive, negative] of [[up.positive, up.negative], [down.negative, down.positive]]) {
  cable({ from: positive, to: one.stud, lengthM: 0.5, gauge: 2 });
  cable({ from: negative, to: other.stud, lengthM: 0.5, gauge: 2 });
}`,
  ),
  "batteries each joined pole to pole": looped(
    "",
    `const one = battery({ chemistry: "AGM", capacityAh: 100 });
cable({ from: one.positive, to: one.negative, lengthM: 0.5, gauge: 2 });`,
  ),
  "batteries without a fuse": looped(
    bus,
    `const one = battery({ chemistry: "AGM", capacityAh: 100 });
cable({ from: one.positive, to: plus.stud, lengthM: 0.5, gauge: 10 });
cable({ from: one.negative, to: minus.stud, lengthM: 0.5, gauge: 10 });`,
  ),
  "islands of a battery and a lamp": looped(
    "",
    `const one = battery({ chemistry: "AGM", capacityAh: 100 });
circuit({ from: one.positive, returnTo: one.negative, load: 2, oneWayM: 1, gauge: 16, protect: 5 });`,
  ),
  "loads joined to nothing": looped("", "load({ powerW: 40 });"),
  "a chain of fused cables": looped(
    `${bus}let end: any = plus.stud;\n`,
    `const next = busBar({ ratedA: 150, studs: 1 });
cable({ from: end, to: next.stud, lengthM: 0.1, gauge: 4, protect: 60 });
circuit({ ...onBus, from: next.stud, load: 0.05 });
end = next.stud;`,
  ),
  "a ladder": looped(
    `${bus}let [up, down]: any[] = [plus.stud, minus.stud];\n`,
    `const [one, other] = [busBar({}), busBar({})];
cable({ from: up, to: one.stud, lengthM: 0.1, gauge: 2 });
cable({ from: down, to: other.stud, lengthM: 0.1, gauge: 2 });
circuit({ ...onBus, from: one.stud, returnTo: other.stud, load: 0.01 });
[up, down] = [one.stud, other.stud];`,
  ),
  "channels on one board": looped(
    `${bus}const board = surface({ size: { widthMm: 1200, heightMm: 800 } });\n`,
    "channel({ on: board, path: [{ leftMm: 0, topMm: i % 800 }, { leftMm: 1200, topMm: i % 800 }] });",
  ),
  "a ring of bus bars": (count) =>
    `${imports}${bus}const ring = [plus, ...Array.from({ length: ${count} }, () => busBar({}))];
ring.forEach((one, i) => cable({ from: one.stud, to: ring[(i + 1) % ring.length].stud, lengthM: 0.1, gauge: 2 }));
`,
  "disconnects in a row": looped(
    `${bus}let end: any = plus.stud;\n`,
    `const off = disconnect({ ratedA: 100 });
cable({ from: end, to: off.line, lengthM: 0.1, gauge: 2, protect: 100 });
end = off.load;`,
  ),
  "shunts in a row": looped(
    `${bus}let end: any = minus.stud;\n`,
    `const meter = shunt({ ratedA: 100 });
cable({ from: end, to: meter.batterySide, lengthM: 0.1, gauge: 2 });
circuit({ ...onBus, returnTo: meter.systemSide, load: 0.01 });
end = meter.systemSide;`,
  ),
  "panels in a row": looped(
    `${bus}let end: any = plus.stud;\n`,
    `const panel = fusePanel({ positions: 2, ratedA: 60 });
circuit({ from: end, returnTo: minus.stud, to: panel, oneWayM: 0.1, gauge: 8, protect: 40 });
end = panel.branch;`,
  ),
  "a fuse at each end": looped(
    `${bus}let end: any = plus.stud;\n`,
    `const next = busBar({});
cable({ from: end, to: next.stud, lengthM: 1, gauge: 8, protect: 40, protectFarEnd: 40 });
circuit({ ...onBus, from: next.stud, to: shoreCharger({ outputA: 1 }) });
end = next.stud;`,
  ),
  "one bus of few studs": looped(
    bus.replace('busBar({ side: "positive" })', 'busBar({ side: "positive", studs: 4, ratedA: 10 })'),
    "circuit({ ...onBus, load: 1 });",
  ),
  "scenarios that name many parts off": looped(
    `${bus}const all = Array.from({ length: 200 }, (_, at) => circuit({ ...onBus, load: 0.02 + at / 5_000 }));\n`,
    "scenario({ name: `scenario ${i}`, off: all.slice(i % 100, 100 + (i % 100)) });",
  ),
  "scenarios of many parts": (count) =>
    `${imports}${bus}const all = Array.from({ length: ${count} }, () => circuit({ ...onBus, load: 0.05 }));
scenario({ name: "few", off: all.slice(0, 250) });
scenario({ name: "many", on: all.slice(-250) });
`,
  "scenarios of few disconnects each": looped(
    `${bus}const offs = Array.from({ length: 20 }, () => disconnect({ ratedA: 100 }));
for (const off of offs) {
  cable({ from: plus.stud, to: off.line, lengthM: 1, gauge: 8, protect: 40 });
  circuit({ ...onBus, from: off.load, load: 0.05 });
}
`,
    "scenario({ name: `scenario ${i}`, off: offs.filter((_, at) => (i >> at) & 1) });",
  ),
  "scenarios of one name": looped(
    `${bus}circuit({ ...onBus, load: 2 });\n`,
    'scenario({ name: "again", sunPercent: i % 100 });',
  ),
  "lone circuits, everything wrong": looped(
    "",
    "circuit({ load: 40, oneWayFt: 15, gauge: 18, protect: 50, accept: { 'conductor/ampacity': '' } });",
  ),
  "lone circuits of values that are refused": looped(
    "",
    "circuit({ load: -40, oneWayFt: 1e9, gauge: 17 as any, protect: 'x' as any, colour: 'none' as any, nothing: 1 } as any);",
  ),
  "accepted findings": looped(
    "",
    "circuit({ load: 40, oneWayFt: 15, gauge: 12, protect: 50, accept: { 'conductor/ampacity': `reason ${i}`, 'protection/above-conductor': 'it is so' } });",
  ),
  "circuits of one name": looped(bus, 'circuit({ ...onBus, load: 8, name: "again" });'),
  "circuits of long names": looped(bus, 'circuit({ ...onBus, load: 8, name: "n".repeat(300) + i });'),
  "a table of circuits": (count) => `${imports}const rows = [
${Array.from({ length: count }, (_, row) => `  { name: "circuit ${row}", load: ${4 + (row % 4)}, oneWayFt: ${6 + (row % 9)} },`).join("\n")}
];
for (const row of rows) circuit({ gauge: 14, protect: 10, ...row });
`,
  "circuits by a function": written(
    "function lamp(name: string, oneWayFt: number) {\n  return circuit({ name, load: 9, oneWayFt, gauge: 16, protect: 5 });\n}\n",
    (index) => `lamp("lamp ${index}", ${8 + (index % 12)});`,
  ),
  "circuits written out": written(
    "",
    (index) =>
      `const lamp${index} = circuit({ load: 40, oneWayFt: 15, gauge: 12, protect: 50, name: "lamp ${index}" });`,
  ),
  "circuits of a network written out": written(
    bus,
    (index) =>
      `circuit({ from: plus.stud, returnTo: minus.stud, oneWayM: ${1 + (index % 5)}, gauge: 16, protect: 5, load: 8 });`,
  ),
  "constants that follow one another": (count) => `${imports}const size0 = 12;
${Array.from({ length: count }, (_, at) => `const size${at + 1} = size${at};`).join("\n")}
circuit({ load: 40, oneWayFt: 15, gauge: size${count}, protect: 50 });
`,
  "objects spread into one another": (count) => `${imports}const base0 = { load: 40, oneWayFt: 15 };
${Array.from({ length: Math.min(count, 400) }, (_, at) => `const base${at + 1} = { ...base${at}, label: "${at}" };`).join("\n")}
for (let i = 0; i < ${count}; i++) circuit({ ...base${Math.min(count, 400)}, gauge: 12, protect: 50 });
`,
};
