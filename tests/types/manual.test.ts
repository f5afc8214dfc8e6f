import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { buildProperties } from "../../library/model/build-properties.ts";
import { circuitProperties } from "../../library/model/circuit-properties.ts";
import { protection } from "../../library/model/protection-properties.ts";
import { readModel } from "../../library/model/read-model.ts";
import { planCompiler } from "./compiler.ts";

/*
 * The doc comment of a property is its manual: the editor shows it on hover. These tests hold it to what it promises, and run
 * every example in it.
 */

const planFolder = fileURLToPath(new URL("../../library/plan", import.meta.url));
const properties = readdirSync(planFolder).flatMap((file) => propertiesIn(file));
const compiler = planCompiler();

describe.each(properties)("$name ($file)", ({ name, optional, manual, examples, file }) => {
  it("says what is taken when it is left out, and shows an example that holds", () => {
    expect(manual.length).toBeGreaterThan(80);
    if (optional) expect(manual).toMatch(/Left out: taken (as|from) /);
    else expect(manual).toMatch(/needed|Give `/);
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) {
      expect(example).toContain(`${name}: `);
      const { word, input } = argumentOf(file, example);
      expect(compiler.diagnostics(`import { ${word} } from "loomwright";\n${word}(${input});\n`)).toEqual([]);
      const value: unknown = new Function(`return (${input})`)();
      expect(readModel([{ word, input: value, fallbackName: "example" }]).invalid).toEqual([]);
    }
  });
});

it("covers every property that the check knows", () => {
  const known = [circuitProperties, buildProperties, protection.parts].flatMap((table) => [
    ...(table?.properties.keys() ?? []),
  ]);
  expect(properties.map(({ name }) => name).sort()).toEqual([...known].sort());
});

it.each([
  ["circuit({ name|: 'Lamp', load: 40, oneWayFt: 15, gauge: 4 });", "What the circuit is called"],
  ["circuit({ load|: 40, oneWayFt: 15, gauge: 4 });", "Current that the load draws, A"],
  ["circuit({ loadW|: 40, oneWayFt: 15, gauge: 4 });", "Power that the load draws, W"],
  [
    "circuit({ load: 40, oneWayFt|: 15, gauge: 4 });",
    "Length of the run from the source to the load, one way, in feet",
  ],
  [
    "circuit({ load: 40, oneWayM|: 15, mm2: 4 });",
    "Length of the run from the source to the load, one way, in metres",
  ],
  [
    "circuit({ load: 40, positiveFt|: 15, negativeFt: 3, gauge: 4 });",
    "Length of the positive conductor, in feet",
  ],
  [
    "circuit({ load: 40, positiveM: 15, negativeM|: 3, gauge: 4 });",
    "Length of the return (negative) conductor, in metres",
  ],
  ["circuit({ load: 40, oneWayFt: 15, gauge|: 4 });", "Size of the conductors, AWG"],
  ["circuit({ load: 40, oneWayFt: 15, mm2|: 4 });", "Cross-section of the conductors, mm²"],
  ["circuit({ load: 40, oneWayFt: 15, gauge: 4, protect|: 50 });", "The fuse or breaker that protects"],
  [
    "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA|: 50 } });",
    "Rating of the fuse or breaker, A",
  ],
  [
    "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50, distanceMm|: 9 } });",
    "in millimetres",
  ],
  ["build({ voltage|: 24 });", "Nominal voltage of the system, V"],
])("is what the editor shows: %s", (plan, start) => {
  const shown = compiler.hover(`import { build, circuit } from "loomwright";\n${plan}`);
  expect(shown).toContain(start);
  // One manual, not also that of an alternative.
  expect(shown.match(/Example:/g)).toHaveLength(1);
});

it("quotes the same limits as the check", () => {
  for (const { name, manual, file } of properties) {
    const table =
      file === "build.ts" ? buildProperties : file === "protection.ts" ? protection.parts : circuitProperties;
    const allowed = table?.properties.get(name)?.allowed ?? "";
    const limits = /(?:above (?<above>\S+) and up to|from (?<from>\S+) to) (?<upTo>[\d,.]+)/.exec(
      allowed,
    )?.groups;
    // Limits that depend on another value are said in words, and the far end is written like the near one.
    if (!limits || name === "minimumV" || name === "protectFarEnd") continue;
    const lowest = limits.above ?? limits.from ?? "";
    const stated = new RegExp(
      `(above|from|number,|\\.) ?${lowest}( and|,)? (up )?to ${limits.upTo}(?![\\d,]*\\d)`,
      "i",
    );
    expect(manual, `${name}: ${allowed}`).toMatch(stated);
  }
});

interface ManualEntry {
  readonly file: string;
  readonly name: string;
  readonly optional: boolean;
  readonly manual: string;
  readonly examples: readonly string[];
}

/** Every property that a builder may give: the forbidden halves have no manual, because nobody writes them. */
function propertiesIn(file: string): ManualEntry[] {
  const text = readFileSync(`${planFolder}/${file}`, "utf8");
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  return source.statements.filter(ts.isInterfaceDeclaration).flatMap(({ members }) =>
    members.filter(ts.isPropertySignature).flatMap((property) => {
      const name = property.name.getText();
      const type = property.type?.getText() ?? "";
      if (/^GiveOnlyOneOf|^OneLength$/.test(type) || name === "kind" || name.startsWith("[")) return [];
      const manual = ts
        .getJSDocCommentsAndTags(property)
        .map((doc) => ts.getTextOfJSDocComment(doc.comment) ?? "")
        .join("\n");
      const afterWord = /Example: ([\s\S]*)$/.exec(manual)?.[1] ?? "";
      const examples = [...afterWord.matchAll(/`([^`]+)`/g)].map(([, example = ""]) => example);
      return [{ file, name, optional: property.questionToken !== undefined, manual, examples }];
    }),
  );
}

/** An example is one property, or those that belong together; what else a circuit needs is added. */
function argumentOf(
  file: string,
  example: string,
): { readonly word: "circuit" | "build"; readonly input: string } {
  if (file === "build.ts") return { word: "build", input: `{ ${example} }` };
  const needed = [
    ["load: 40", /\bload(W)?:/],
    ["oneWayFt: 15", /\b(oneWay|positive|negative)/],
    ["gauge: 4", /\b(gauge|mm2):/],
  ] as const;
  const rating = example.startsWith("ratingA") ? "" : "ratingA: 50, ";
  const given = file === "protection.ts" ? `protect: { ${rating}${example} }` : example;
  const rest = needed.filter(([, pattern]) => !pattern.test(given)).map(([property]) => property);
  return { word: "circuit", input: `{ ${[...rest, given].join(", ")} }` };
}
