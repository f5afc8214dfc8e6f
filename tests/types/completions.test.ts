import { expect, it } from "vitest";
import { planCompiler } from "./compiler.ts";

const compiler = planCompiler();

/** What TypeScript itself proposes while a plan is typed; our server adds drop and margin to the values. */
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
];

it("offers what a builder may write, and no more", async () => {
  const offered = places.map(([what, plan]) => {
    const entries = compiler.completions(`import { build, circuit } from "loomwright";\n${plan}`);
    // Below these the editor lists keywords and every global name, which are the same everywhere.
    const own = entries.filter(
      ({ sortText, name }) => sortText < "15" || name === "true" || name === "false",
    );
    return `${what}\n  ${plan}\n  → ${own.map(({ name }) => name).join(", ")}\n`;
  });
  await expect(offered.join("\n")).toMatchFileSnapshot("completions.snap");
});
