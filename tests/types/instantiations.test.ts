import { expect, it } from "vitest";
import { planCompiler } from "./compiler.ts";

const head = 'import { build, circuit } from "loomwright";\n';

/** Circuits of every kind: each alternative is compared with each. */
const kinds: readonly ((i: number) => string)[] = [
  (i) => `circuit({ name: "c${i}", load: ${(i % 40) + 1}, oneWayFt: 15, gauge: 4, protect: 50 });`,
  (i) =>
    `circuit({ name: "c${i}", loadW: ${i + 1}, oneWayM: 4, mm2: 2.5, protect: { ratingA: 10, distanceMm: 90 } });`,
  (i) =>
    `circuit({ load: ${(i % 9) + 1}, positiveFt: 12, negativeFt: 3, gauge: "1/0", critical: true, colour: "mauve", label: "${i}" });`,
  (i) =>
    `circuit({ loadW: ${i + 1}, positiveM: 4, negativeM: 1, mm2: 25, accept: { "protection/missing": "${i}" } });`,
];

const plan = (circuits: number) =>
  `${head}build({ voltage: 24, endSlackMm: 50, spools: [{ gauge: 4, lengthFt: 100, colour: "red" }, { mm2: 4, lengthM: 50, price: 40 }] });\n${Array.from({ length: circuits }, (_, i) => kinds[i % kinds.length]?.(i)).join("\n")}\n`;

it("costs an editor no type instantiation for any further circuit", () => {
  const compiler = planCompiler();
  expect(compiler.diagnostics(plan(300))).toEqual([]);
  expect(compiler.instantiations(plan(300)) - compiler.instantiations(plan(kinds.length))).toBe(0);
});

/** Cables between terminals of every kind, and circuits and loads in a network. */
const inNetwork: readonly ((i: number) => string)[] = [
  (i) => `cable({ from: house.positive, to: bus.stud, lengthM: ${i + 1}, gauge: 4, protect: 50 });`,
  (i) =>
    `cable({ from: bus.stud, to: panel.feed, lengthFt: ${i + 1}, mm2: 25, colour: "red", label: "${i}" });`,
  (i) => `cable({ name: "c${i}", from: panel.negative, to: house.negative, lengthM: 1, gauge: 4 });`,
  (i) => `circuit({ from: panel.branch, load: ${(i % 40) + 1}, oneWayFt: 15, gauge: 12, protect: 10 });`,
  (i) => `circuit({ from: bus.stud, returnTo: panel.negative, to: heat${i}, oneWayM: 2, mm2: 4 });`,
];

const networkPlan = (cables: number) =>
  `import { battery, busBar, cable, circuit, fusePanel, load } from "loomwright";
const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const panel = fusePanel({ positions: 12 });
const bus = busBar({});
${Array.from({ length: cables }, (_, i) => `const heat${i} = load({ powerW: ${i + 1}, termination: "screw clamp", torqueNm: 2, price: 5 });\n${inNetwork[i % inNetwork.length]?.(i)}`).join("\n")}
`;

it("costs an editor no type instantiation for any further cable or part", () => {
  const compiler = planCompiler();
  expect(compiler.diagnostics(networkPlan(300))).toEqual([]);
  const [few, many] = [inNetwork.length, 300].map((cables) => compiler.instantiations(networkPlan(cables)));
  expect((many ?? 0) - (few ?? 0)).toBe(0);
  // The count when this was written: the allowed ends of a cable from each kind of terminal. A change that needs more moves the
  // number here, and states the reason.
  expect(many).toBeLessThanOrEqual(150);
});

it("costs next to nothing over an empty plan", () => {
  const compiler = planCompiler();
  const words = compiler.instantiations(plan(300)) - compiler.instantiations("export {};\n");
  // The count when this was written: the record of accepted rules, the number behind a voltage, the text behind a colour, the
  // list of spools. A change that needs more moves the number here, and states the reason.
  expect(words).toBeLessThanOrEqual(7);
});
