import ts from "typescript";
import { expect, it } from "vitest";
import { readModel } from "../../library/model/read-model.ts";
import { words } from "../../library/model/record.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { planCompiler } from "./compiler.ts";

const head = `import { ${words.join(", ")} } from "loomwright";\n`;

/** The likeliest mistakes. A builder reads the snapshot beside this file; its changes are reviewed like prose. */
const mistakes: readonly [mistake: string, plan: string][] = [
  ["a size that is not made", "circuit({ load: 40, oneWayFt: 15, gauge: 5 });"],
  ["a size as text", 'circuit({ load: 40, oneWayFt: 15, gauge: "4" });'],
  ["a metric size that is not made", "circuit({ load: 40, oneWayM: 4, mm2: 3 });"],
  ["both sizes", "circuit({ load: 40, oneWayFt: 15, gauge: 4, mm2: 25 });"],
  ["no size", "circuit({ load: 40, oneWayFt: 15 });"],
  ["no load", "circuit({ oneWayFt: 15, gauge: 4 });"],
  ["no length", "circuit({ load: 40, gauge: 4 });"],
  ["both loads", "circuit({ load: 40, loadW: 480, oneWayFt: 15, gauge: 4 });"],
  ["two lengths", "circuit({ load: 40, oneWayFt: 15, oneWayM: 4.5, gauge: 4 });"],
  ["one conductor only", "circuit({ load: 40, positiveFt: 15, gauge: 4 });"],
  ["a misspelt size", "circuit({ load: 40, oneWayFt: 15, gage: 4 });"],
  ["a misspelt property that may be left out", "circuit({ load: 40, oneWayFt: 15, gauge: 4, protekt: 50 });"],
  ["a load as text", 'circuit({ load: "40", oneWayFt: 15, gauge: 4 });'],
  ["a voltage as text", 'circuit({ load: 40, oneWayFt: 15, gauge: 4, voltage: "12" });'],
  [
    "a fuse without its rating",
    'circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { family: "circuit breaker" } });',
  ],
  [
    "a family of fuses that does not exist",
    'circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50, family: "ISO 8820-3 Type X" } });',
  ],
  [
    "two distances of a fuse",
    "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50, distanceIn: 4, distanceMm: 100 } });",
  ],
  [
    "accepting a rule that does not exist",
    'circuit({ load: 40, oneWayFt: 15, gauge: 4, accept: { "conductor/voltage-drap": "old" } });',
  ],
  [
    "a size that may be any number",
    "const size: number = 4;\ncircuit({ load: 40, oneWayFt: 15, gauge: size });",
  ],
  ["a misspelt property of a build", "build({ ambient: 40 });"],
  ["no size, where the length is metric", "circuit({ load: 40, oneWayM: 4 });"],
  ["positive to negative", "cable({ from: panel.branch, to: house.negative, lengthM: 1, gauge: 4 });"],
  [
    "the plus of a battery to a negative bus",
    "cable({ from: house.positive, to: minus.stud, lengthM: 1, gauge: 4 });",
  ],
  ["a part instead of its terminal", "cable({ from: house, to: panel.feed, lengthM: 1, gauge: 4 });"],
  [
    "a part instead of its terminal, at the other end",
    "cable({ from: house.positive, to: panel, lengthM: 1, gauge: 4 });",
  ],
  ["a terminal that does not exist", "cable({ from: house.plus, to: panel.feed, lengthM: 1, gauge: 4 });"],
  [
    "a terminal that a part of one's own does not have",
    "cable({ from: socket.inn, to: panel.feed, lengthM: 1, gauge: 4 });",
  ],
  ["a cable without a size", "cable({ from: house.positive, to: panel.feed, lengthM: 1 });"],
  [
    "both lengths of a cable",
    "cable({ from: house.positive, to: panel.feed, lengthM: 1, lengthFt: 3, gauge: 4 });",
  ],
  ["a cable that leads nowhere", "cable({ from: house.positive, lengthM: 1, gauge: 4 });"],
  [
    "a misspelt property of a cable",
    "cable({ from: house.positive, to: panel.feed, lengthM: 1, gauge: 4, protekt: 50 });",
  ],
  ["a battery without its capacity", 'battery({ chemistry: "AGM" });'],
  ["a misspelt chemistry", 'battery({ chemistry: "LiFePo4", capacityAh: 100 });'],
  ["two ways to say what a load draws", "load({ currentA: 4, powerW: 48 });"],
  [
    "a circuit with a load and a part",
    "circuit({ from: panel.branch, load: 4, to: heat, oneWayFt: 15, gauge: 4 });",
  ],
  ["a circuit that starts at a minus", "circuit({ from: house.negative, load: 4, oneWayFt: 15, gauge: 4 });"],
  ["a circuit that ends at a bus bar", "circuit({ from: panel.branch, to: minus, oneWayFt: 15, gauge: 4 });"],
  [
    "a join of a terminal that is not there",
    'part({ terminals: ["in", "out"], joins: [{ between: ["in", "outt"] }] });',
  ],
  ["a stud that is not made", 'busBar({ termination: "M7" });'],
  ["slack at the ends in two units", "build({ endSlackIn: 4, endSlackMm: 100 });"],
  ["a spool without a length", "build({ spools: [{ gauge: 4 }] });"],
  ["two sizes on one spool", "build({ spools: [{ gauge: 4, mm2: 25, lengthFt: 100 }] });"],
  ["a colour as others spell it", 'circuit({ load: 40, oneWayFt: 15, gauge: 4, color: "red" });'],
  ["a scenario without a name", "scenario({ off: [heat] });"],
  ["what is on and what is off", 'scenario({ name: "Night", on: [heat], off: [heat] });'],
];

/** The parts that the mistakes in a network refer to. */
const parts = `const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const panel = fusePanel({ positions: 12 });
const minus = busBar({ side: "negative" });
const socket = part({ terminals: ["in", "out"] });
const heat = load({ powerW: 60 });
`;

it("leaves to the check what no type can tell", () => {
  // The positive of a battery may be connected to the negative of another one, and TypeScript cannot distinguish batteries.
  const plan = "cable({ from: house.positive, to: house.negative, lengthM: 1, gauge: 4, protect: 50 });";
  expect(planCompiler().diagnostics(`${head}${parts}${plan}`)).toEqual([]);
  const { records } = runExample(parts + plan);
  expect(readModel(records).invalid.map(({ path, wrong }) => [path, wrong])).toEqual([
    [["to"], "is the other pole of the same battery"],
  ]);
});

it("tells each of the likeliest mistakes in words that a builder understands", async () => {
  const sources = mistakes.map(([, plan]) => `${head}${parts}${plan}\n`);
  const diagnostics = planCompiler().diagnosticsOfEach(sources);
  const drawn = mistakes.map(([mistake], index) => {
    const [source, found] = [sources[index]!, diagnostics[index]!];
    expect(found.length, `the compiler lets it pass: ${mistake}`).toBeGreaterThan(0);
    return [`${mistake}`, ...found.map((diagnostic) => draw(source, diagnostic))].join("\n");
  });
  await expect(`${drawn.join("\n\n")}\n`).toMatchFileSnapshot("compiler-messages.snap");
});

/** The line as the editor shows it, with the underlined part marked below it, and the message. */
function draw(source: string, { start = 0, length = 0, messageText }: ts.Diagnostic): string {
  const lineStart = source.lastIndexOf("\n", start - 1) + 1;
  const line = source.slice(lineStart, source.indexOf("\n", start));
  const marks = " ".repeat(start - lineStart) + "~".repeat(length);
  const message = ts.flattenDiagnosticMessageText(messageText, "\n");
  return [line, marks, ...message.split("\n")].map((text) => `  ${text}`).join("\n");
}
