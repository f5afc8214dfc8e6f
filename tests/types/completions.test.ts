import { expect, it } from "vitest";
import { words } from "../../library/model/record.ts";
import { planCompiler } from "./compiler.ts";

const compiler = planCompiler();
const head = `import { ${words.join(", ")} } from "loomwright";\n`;
const parts = `const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const socket = part({ terminals: ["in", "out"] });
`;

/** TypeScript's own proposals while a plan is typed; our server adds drop and margin to the values. */
const places: readonly [what: string, plan: string][] = [
  ["the value of gauge", "circuit({ load: 40, oneWayFt: 15, gauge: | });"],
  [
    "the value of gauge, the size being all that is missing",
    "circuit({ load: 40, oneWayFt: 15, protect: 50, gauge: | });",
  ],
  ["the value of mm2", "circuit({ load: 40, oneWayM: 4, mm2: | });"],
  ["the value of voltage", "circuit({ load: 40, oneWayM: 4, mm2: 4, voltage: | });"],
  ["the value of insulationC", "circuit({ load: 40, oneWayM: 4, mm2: 4, insulationC: | });"],
  ["the value of critical", "circuit({ load: 40, oneWayM: 4, mm2: 4, critical: | });"],
  [
    "the family of a fuse",
    'circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50, family: "|" } });',
  ],
  ["the properties of a fuse", "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { | } });"],
  ["the properties of a new circuit", "circuit({ | });"],
  ["the properties still open", 'circuit({ name: "Lamp", load: 40, oneWayFt: 15, gauge: 4, | });'],
  ["the rules that can be accepted", 'circuit({ load: 40, oneWayFt: 15, gauge: 4, accept: { "|" } });'],
  ["the properties of a build", "build({ | });"],
  ["the properties of a spool", "build({ spools: [{ gauge: 4, | }] });"],
  ["the size on a spool", "build({ spools: [{ mm2: | }] });"],
  ["the colour of a conductor", 'circuit({ load: 40, oneWayFt: 15, gauge: 4, colour: "|" });'],
  ["how a battery is connected", 'battery({ chemistry: "AGM", capacityAh: 100, termination: "|" });'],
  ["the terminals of a battery", "cable({ from: house.| });"],
  ["the terminals of a part of one's own", "cable({ from: socket.| });"],
  ["the properties of a new cable", "cable({ | });"],
  [
    "the properties of a cable still open",
    "cable({ from: house.positive, to: socket.in, lengthM: 1, gauge: 4, | });",
  ],
  ["the size of a cable", "cable({ from: house.positive, to: socket.in, lengthM: 1, gauge: | });"],
  ["the chemistry of a battery", 'battery({ chemistry: "|" });'],
  ["the properties of a battery", "battery({ | });"],
  ["the properties of an inverter", "inverter({ | });"],
  ["the properties of a load", "load({ | });"],
  ["the properties of a scenario", "scenario({ | });"],
  ["the terminals of a join", 'part({ terminals: ["in", "out"], joins: [{ between: ["|"] }] });'],
];

it("offers what a builder may write, and no more", async () => {
  const offered = places.map(([what, plan]) => {
    const entries = compiler.completions(
      `${head}${plan.includes("house") || plan.includes("socket") ? parts : ""}${plan}`,
    );
    // Below these the editor lists keywords and every global name, which are the same everywhere.
    const own = entries.filter(
      ({ sortText, name }) => sortText < "15" || name === "true" || name === "false",
    );
    return `${what}\n  ${plan}\n  → ${own.map(({ name }) => name).join(", ")}\n`;
  });
  await expect(offered.join("\n")).toMatchFileSnapshot("completions.snap");
});
