import ts from "typescript";
import { expect, it } from "vitest";
import { planCompiler } from "./compiler.ts";

/** The likeliest mistakes. The snapshot beside this file is what a builder reads; its changes are read like prose. */
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
];

it("tells each of the likeliest mistakes in words that a builder understands", async () => {
  const compiler = planCompiler();
  const drawn = mistakes.map(([mistake, plan]) => {
    const source = `import { build, circuit } from "loomwright";\n${plan}\n`;
    const found = compiler.diagnostics(source);
    expect(found.length, `the compiler lets it pass: ${mistake}`).toBeGreaterThan(0);
    return [`${mistake}`, ...found.map((diagnostic) => draw(source, diagnostic))].join("\n");
  });
  await expect(`${drawn.join("\n\n")}\n`).toMatchFileSnapshot("compiler-messages.snap");
});

/** The line as the editor shows it, the underlined part marked below it, and the message. */
function draw(source: string, { start = 0, length = 0, messageText }: ts.Diagnostic): string {
  const lineStart = source.lastIndexOf("\n", start - 1) + 1;
  const line = source.slice(lineStart, source.indexOf("\n", start));
  const marks = " ".repeat(start - lineStart) + "~".repeat(length);
  const message = ts.flattenDiagnosticMessageText(messageText, "\n");
  return [line, marks, ...message.split("\n")].map((text) => `  ${text}`).join("\n");
}
