import type { PlanOfSize } from "./plans-of-size.ts";

const imports = 'import { circuit } from "loomwright";\n';
const sizes = "oneWayFt: 15, gauge: 18";

/** `count` lines made from their numbers. */
function lines(count: number, line: (index: number) => string): string {
  return Array.from({ length: count }, (_, index) => line(index)).join("\n");
}

/** A list, and the statement made from each of its elements. */
function listed(element: (index: number) => string, made: string): PlanOfSize {
  return (count) =>
    `${imports}const list = [\n${lines(count, (index) => `  ${element(index)},`)}\n];\n${made}\n`;
}

/** Statements, preceded by their constants. */
function repeated(before: string, statement: (index: number) => string): PlanOfSize {
  return (count) => `${imports}${before}\n${lines(count, statement)}\n`;
}

/** Wrong ratings, to make the findings refer to the values of the list; some occur several times. */
const rating = (index: number) => 60 + (index % 100);
const row = (index: number) =>
  `{ name: "lamp ${index}", load: ${30 + (index % 7)}, protect: ${rating(index)} }`;

/** The ways that builders make many circuits from lists, or from a single text. */
export const plansByProvenance: Readonly<Record<string, PlanOfSize>> = {
  "a list of objects, spread": listed(row, `for (const one of list) circuit({ ...one, ${sizes} });`),
  "a list of objects, taken apart": listed(
    row,
    `list.forEach(({ name, load, protect }) => {\n  circuit({ name, load, protect, ${sizes} });\n});`,
  ),
  "a list of numbers": listed(
    (index) => String(rating(index)),
    `for (const protect of list) circuit({ load: 40, protect, ${sizes} });`,
  ),
  "a list of numbers, by index": listed(
    (index) => String(rating(index)),
    `for (let i = 0; i < list.length; i++) circuit({ load: 40, ${sizes}, protect: list[i]! });`,
  ),
  "a list of pairs": listed(
    (index) => `["lamp ${index}", ${rating(index)}]`,
    `(list as any[]).map(([name, protect]) => circuit({ name, load: 40, protect, ${sizes} }));`,
  ),
  "the entries of an object": (count) =>
    `${imports}const all = {\n${lines(count, (index) => `  "lamp ${index}": ${rating(index)},`)}\n};
for (const [name, protect] of Object.entries(all)) circuit({ name, load: 40, protect, ${sizes} });
`,
  "one object, spread into each": repeated(
    `const base = { load: 40, ${sizes}, protect: 50 } as const;`,
    (index) => `circuit({ ...base, name: "lamp ${index}" });`,
  ),
  "one object, given to each": repeated(
    `const base = { load: 40, ${sizes}, protect: 50 } as const;`,
    () => "circuit(base);",
  ),
  "factories in factories": repeated(
    `const sized = (given: any) => circuit({ ...given, ${sizes} });
function lamp(name: string, protect: number) {
  return sized({ name, protect, load: 40 });
}`,
    (index) => `lamp("lamp ${index}", ${rating(index)});`,
  ),
  "one circuit in a function that is called many times": repeated(
    `function lamp() {\n  return circuit({ load: 40, ${sizes}, protect: 50 });\n}`,
    () => "lamp();",
  ),
  "constants of another file": (count) =>
    `${imports}import * as ratings from "./ratings.ts";
${lines(count, (index) => `circuit({ load: 40, ${sizes}, protect: ratings.of${index} });`)}
// file: ratings.ts
${lines(count, (index) => `export const of${index} = ${rating(index)};`)}
`,
};
