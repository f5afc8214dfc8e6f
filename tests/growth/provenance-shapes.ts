import { type PlanOfSize, plansByShape } from "./plans-of-size.ts";

const imports = 'import { circuit } from "loomwright";\n';

const wrong = "load: 40, oneWayFt: 15, gauge: 18, protect: 50";

/** Lists of rows, the first of which is as good as the second for whoever looks for a value. */
const rows = (count: number, row: (index: number) => string) =>
  Array.from({ length: count }, (_, index) => `  ${row(index)},`).join("\n");

const lamp = (index: number) =>
  `{ name: "lamp ${index}", load: ${30 + (index % 7)}, oneWayFt: ${10 + (index % 9)} }`;
const pair = (index: number) => `["lamp ${index}", ${30 + (index % 7)}]`;

/** Ways in which builders make many circuits from something written once, or from lists. */
export const shapes: Readonly<Record<string, PlanOfSize>> = {
  "a table of circuits": plansByShape["a table of circuits"]!,
  "a list of objects, for of, spread": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nfor (const one of list) circuit({ ...one, gauge: 18, protect: 50 });\n`,
  "a list of objects, for of, properties": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nfor (const one of list) circuit({ name: one.name, load: one.load, oneWayFt: one.oneWayFt, gauge: 18, protect: 50 });\n`,
  "a list of objects, for of, a pattern": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nfor (const { name, load, oneWayFt } of list) circuit({ name, load, oneWayFt, gauge: 18, protect: 50 });\n`,
  "a list of objects, by index": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nfor (let i = 0; i < list.length; i++) circuit({ ...list[i]!, gauge: 18, protect: 50 });\n`,
  "a list of objects, by index, properties": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nfor (let i = 0; i < list.length; i++) circuit({ name: list[i]!.name, load: list[i]!.load, oneWayFt: 15, gauge: 18, protect: 50 });\n`,
  "a list of objects, map": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nlist.map((one) => circuit({ ...one, gauge: 18, protect: 50 }));\n`,
  "a list of objects, forEach, a pattern": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nlist.forEach(({ name, load, oneWayFt }) => { circuit({ name, load, oneWayFt, gauge: 18, protect: 50 }); });\n`,
  "a list of objects, flatMap": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nlist.flatMap((one) => [circuit({ ...one, gauge: 18, protect: 50 })]);\n`,
  "a list of objects, filtered and sorted": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nlist.filter(({ load }) => load > 1).sort((a, b) => a.load - b.load).forEach((one) => circuit({ ...one, gauge: 18, protect: 50 }));\n`,
  "a list of objects, reduce": (n) =>
    `${imports}const list = [\n${rows(n, lamp)}\n];\nlist.reduce((sum, one) => { circuit({ name: one.name, load: one.load, oneWayFt: one.oneWayFt, gauge: 18, protect: 50 }); return sum + one.load; }, 0);\n`,
  "a list of pairs, for of": (n) =>
    `${imports}const list = [\n${rows(n, pair)}\n] as const;\nfor (const [name, load] of list) circuit({ name, load, oneWayFt: 15, gauge: 18, protect: 50 });\n`,
  "a list of pairs, map": (n) =>
    `${imports}const list = [\n${rows(n, pair)}\n] as const;\nlist.map(([name, load]) => circuit({ name, load, oneWayFt: 15, gauge: 18, protect: 50 }));\n`,
  "a list of numbers, for of": (n) =>
    `${imports}const list = [\n${rows(n, (i) => `${30 + i / 1000}`)}\n];\nfor (const load of list) circuit({ load, oneWayFt: 15, gauge: 18, protect: 50 });\n`,
  "a list of numbers, map": (n) =>
    `${imports}const list = [\n${rows(n, (i) => `${30 + i / 1000}`)}\n];\nlist.map((load) => circuit({ load, oneWayFt: 15, gauge: 18, protect: 50 }));\n`,
  "a list of numbers, by index": (n) =>
    `${imports}const list = [\n${rows(n, (i) => `${30 + i / 1000}`)}\n];\nfor (let i = 0; i < list.length; i++) circuit({ load: list[i]!, oneWayFt: 15, gauge: 18, protect: 50 });\n`,
  "a list of equal numbers": (n) =>
    `${imports}const list = [\n${rows(n, () => "40")}\n];\nfor (const load of list) circuit({ load, oneWayFt: 15, gauge: 18, protect: 50 });\n`,
  "two lists by one index": (n) =>
    `${imports}const names = [\n${rows(n, (i) => `"lamp ${i}"`)}\n];\nconst loads = [\n${rows(n, (i) => `${30 + (i % 9)}`)}\n];\nnames.forEach((name, i) => circuit({ name, load: loads[i]!, oneWayFt: 15, gauge: 18, protect: 50 }));\n`,
  "entries of an object": (n) =>
    `${imports}const all = {\n${rows(n, (i) => `"lamp ${i}": { load: ${30 + (i % 7)}, oneWayFt: 15 }`)}\n};\nfor (const [name, one] of Object.entries(all)) circuit({ name, ...one, gauge: 18, protect: 50 });\n`,
  "entries of an object, numbers": (n) =>
    `${imports}const all = {\n${rows(n, (i) => `"lamp ${i}": ${30 + (i % 7)}`)}\n};\nfor (const [name, load] of Object.entries(all)) circuit({ name, load, oneWayFt: 15, gauge: 18, protect: 50 });\n`,
  "values of an object": (n) =>
    `${imports}const all = {\n${rows(n, (i) => `"lamp ${i}": { load: ${30 + (i % 7)}, oneWayFt: 15 }`)}\n};\nObject.values(all).map((one) => circuit({ ...one, gauge: 18, protect: 50 }));\n`,
  "keys of an object": (n) =>
    `${imports}const all: any = {\n${rows(n, (i) => `"lamp ${i}": { load: ${30 + (i % 7)}, oneWayFt: 15 }`)}\n};\nfor (const name of Object.keys(all)) circuit({ name, ...all[name], gauge: 18, protect: 50 });\n`,
  "properties of one object, written out": (n) =>
    `${imports}const sizes = {\n${rows(n, (i) => `lamp${i}: ${30 + (i % 7)}`)}\n};\n${rows(
      n,
      (i) => `circuit({ load: sizes.lamp${i}, oneWayFt: 15, gauge: 18, protect: 50 })`,
    )
      .replaceAll(",\n", ";\n")
      .replace(/,$/, ";")}\n`,
  "elements of one list, written out": (n) =>
    `${imports}const sizes = [\n${rows(n, (i) => `${30 + (i % 7)}`)}\n];\n${Array.from({ length: n }, (_, i) => `circuit({ load: sizes[${i}]!, oneWayFt: 15, gauge: 18, protect: 50 });`).join("\n")}\n`,
  "nested loops": (n) =>
    `${imports}const loads = [\n${rows(Math.round(Math.sqrt(n)), (i) => `${30 + i}`)}\n];\nconst lengths = [\n${rows(Math.round(Math.sqrt(n)), (i) => `${10 + i / 10}`)}\n];\nfor (const load of loads) for (const oneWayFt of lengths) circuit({ load, oneWayFt, gauge: 18, protect: 50 });\n`,
  "nested lists": (n) =>
    `${imports}const rooms = [\n${rows(Math.round(Math.sqrt(n)), (i) => `{ room: "room ${i}", lamps: [${Array.from({ length: Math.round(Math.sqrt(n)) }, (_, j) => `{ name: "${i} ${j}", load: ${30 + (j % 7)} }`).join(", ")}] }`)}\n];\nfor (const { lamps } of rooms) for (const lamp of lamps) circuit({ ...lamp, oneWayFt: 15, gauge: 18, protect: 50 });\n`,
  "many lists spread into one": (n) =>
    `${imports}${Array.from({ length: n / 10 }, (_, i) => `const room${i} = [${Array.from({ length: 10 }, (_, j) => lamp(10 * i + j)).join(", ")}];`).join("\n")}\nfor (const one of [${Array.from({ length: n / 10 }, (_, i) => `...room${i}`).join(", ")}]) circuit({ ...one, gauge: 18, protect: 50 });\n`,
  "one object spread into all": (n) =>
    `${imports}const base = { load: 40, oneWayFt: 15, gauge: 18, protect: 50 } as const;\nfor (let i = 0; i < ${n}; i++) circuit({ ...base, name: "lamp " + i });\n`,
  "one object spread into all, written out": (n) =>
    `${imports}const base = { load: 40, oneWayFt: 15, gauge: 18, protect: 50 } as const;\n${Array.from({ length: n }, (_, i) => `circuit({ ...base, name: "lamp ${i}" });`).join("\n")}\n`,
  "one object given to all": (n) =>
    `${imports}const base = { load: 40, oneWayFt: 15, gauge: 18, protect: 50 } as const;\nfor (let i = 0; i < ${n}; i++) circuit(base);\n`,
  "one object given to all, written out": (n) =>
    `${imports}const base = { load: 40, oneWayFt: 15, gauge: 18, protect: 50 } as const;\n${Array.from({ length: n }, () => "circuit(base);").join("\n")}\n`,
  "one constant in all, written out": (n) =>
    `${imports}const size = 18;\n${Array.from({ length: n }, (_, i) => `circuit({ load: 40, oneWayFt: 15, gauge: size, protect: 50, name: "lamp ${i}" });`).join("\n")}\n`,
  "a constant for each": (n) =>
    `${imports}${Array.from({ length: n }, (_, i) => `const load${i} = ${30 + (i % 7)};`).join("\n")}\n${Array.from({ length: n }, (_, i) => `circuit({ load: load${i}, oneWayFt: 15, gauge: 18, protect: 50 });`).join("\n")}\n`,
  "a factory": (n) =>
    `${imports}const lamp = (name: string, load: number) => circuit({ name, load, oneWayFt: 15, gauge: 18, protect: 50 });\n${Array.from({ length: n }, (_, i) => `lamp("lamp ${i}", ${30 + (i % 7)});`).join("\n")}\n`,
  "factories in factories": (n) =>
    `${imports}const made = (given: any) => circuit({ ...given, protect: 50 });\nconst sized = (given: any) => made({ ...given, gauge: 18 });\nfunction lamp(name: string, load: number) {\n  return sized({ name, load, oneWayFt: 15 });\n}\n${Array.from({ length: n }, (_, i) => `lamp("lamp ${i}", ${30 + (i % 7)});`).join("\n")}\n`,
  "a factory in a loop over a list": (n) =>
    `${imports}function lamp({ name, load }: any) {\n  return circuit({ name, load, oneWayFt: 15, gauge: 18, protect: 50 });\n}\nconst list = [\n${rows(n, lamp)}\n];\nfor (const one of list) lamp(one);\nlist.length;\n`,
  "a function of one circuit called by a loop": (n) =>
    `${imports}function lamp() {\n  return circuit({ ${wrong} });\n}\nfor (let i = 0; i < ${n}; i++) lamp();\n`,
  "a function of one circuit called many times": (n) =>
    `${imports}function lamp() {\n  return circuit({ ${wrong} });\n}\n${"lamp();\n".repeat(n)}`,
  "a function that loops, called many times": (n) =>
    `${imports}function lamps(many: number) {\n  for (let i = 0; i < many; i++) circuit({ ${wrong} });\n}\n${"lamps(10);\n".repeat(n / 10)}`,
  "functions that call each other deeply": (n) =>
    `${imports}const f0 = (load: number) => circuit({ load, oneWayFt: 15, gauge: 18, protect: 50 });\n${Array.from({ length: 40 }, (_, i) => `const f${i + 1} = (load: number) => f${i}(load);`).join("\n")}\nfor (let i = 0; i < ${n}; i++) f40(40);\n`,
  "each function calls the one before": (n) =>
    `${imports}const f0 = (load: number) => circuit({ load, oneWayFt: 15, gauge: 18, protect: 50 });\n${Array.from({ length: n }, (_, i) => `function g${i}() {\n  f0(${30 + (i % 7)});\n}\ng${i}();`).join("\n")}\n`,
  "a recursive function": (n) =>
    `${imports}function lamps(left: number): void {\n  if (left === 0) return;\n  circuit({ ${wrong} });\n  lamps(left - 1);\n}\nfor (let i = 0; i < ${n / 100}; i++) lamps(100);\n`,
  "a class that makes circuits": (n) =>
    `${imports}class Lamp {\n  made;\n  constructor(load: number) {\n    this.made = circuit({ load, oneWayFt: 15, gauge: 18, protect: 50 });\n  }\n}\n${Array.from({ length: n }, (_, i) => `new Lamp(${30 + (i % 7)});`).join("\n")}\n`,
  "names that are equal": (n) => `${imports}${`{ const lamp = circuit({ ${wrong} }); }\n`.repeat(n)}`,
  "one line of many calls": (n) => `${imports}${`circuit({ ${wrong} }); `.repeat(n)}\n`,
  "a list of calls": (n) =>
    `${imports}const all = [\n${rows(n, () => `circuit({ ${wrong} })`)}\n];\nexport default all;\n`,
  "conditional values": (n) =>
    `${imports}for (let i = 0; i < ${n}; i++) circuit({ load: i % 2 ? 40 : 45, oneWayFt: 15, gauge: i % 2 ? 18 : 16, protect: 50 });\n`,
  "protect as an object, spread": (n) =>
    `${imports}const fuse = { ratingA: 50, distanceIn: 99 };\nfor (let i = 0; i < ${n}; i++) circuit({ load: 40, oneWayFt: 15, gauge: 18, protect: { ...fuse } });\n`,
  "constants across files": (n) =>
    `${imports}import { ${Array.from({ length: n }, (_, i) => `load${i}`).join(", ")} } from "./sizes.ts";\n${Array.from({ length: n }, (_, i) => `circuit({ load: load${i}, oneWayFt: 15, gauge: 18, protect: 50 });`).join("\n")}\n// file: sizes.ts\n${Array.from({ length: n }, (_, i) => `export const load${i} = ${30 + (i % 7)};`).join("\n")}\n`,
  "constants of a namespace across files": (n) =>
    `${imports}import * as sizes from "./sizes.ts";\n${Array.from({ length: n }, (_, i) => `circuit({ load: sizes.load${i}, oneWayFt: 15, gauge: 18, protect: 50 });`).join("\n")}\n// file: sizes.ts\n${Array.from({ length: n }, (_, i) => `export const load${i} = ${30 + (i % 7)};`).join("\n")}\n`,
  "constants passed on by a file": (n) =>
    `${imports}import { ${Array.from({ length: n }, (_, i) => `load${i}`).join(", ")} } from "./all.ts";\n${Array.from({ length: n }, (_, i) => `circuit({ load: load${i}, oneWayFt: 15, gauge: 18, protect: 50 });`).join("\n")}\n// file: all.ts\nexport * from "./sizes.ts";\nexport {};\n// file: sizes.ts\n${Array.from({ length: n }, (_, i) => `export const load${i} = ${30 + (i % 7)};`).join("\n")}\n`,
  "a list across files": (n) =>
    `${imports}import { list } from "./list.ts";\nfor (const one of list) circuit({ ...one, gauge: 18, protect: 50 });\n// file: list.ts\nexport const list = [\n${rows(n, lamp)}\n];\n`,
  "a file for each ten": (n) =>
    `${imports}${Array.from({ length: n / 10 }, (_, i) => `import { load as load${i} } from "./size${i}.ts";`).join("\n")}\n${Array.from({ length: n }, (_, i) => `circuit({ load: load${i % (n / 10)}, oneWayFt: 15, gauge: 18, protect: 50 });`).join("\n")}\n${Array.from({ length: n / 10 }, (_, i) => `// file: size${i}.ts\nexport const load = ${30 + (i % 7)};`).join("\n")}\n`,
  "misspelt properties in a list": (n) =>
    `${imports}const list: any[] = [\n${rows(n, (i) => `{ name: "lamp ${i}", load: 4, oneWayFt: 9, guage: 12 }`)}\n];\nfor (const one of list) circuit({ ...one });\n`,
  "a list of wrong ratings, for of": (n) =>
    `${imports}const list = [\n${rows(n, (i) => `${60 + (i % 100)}`)}\n];\nfor (const protect of list) circuit({ load: 40, oneWayFt: 15, gauge: 18, protect });\n`,
  "a list of wrong ratings, map": (n) =>
    `${imports}const list = [\n${rows(n, (i) => `${60 + i}`)}\n];\nlist.map((protect) => circuit({ load: 40, oneWayFt: 15, gauge: 18, protect }));\n`,
  "a list of pairs with wrong ratings": (n) =>
    `${imports}const list = [\n${rows(n, (i) => `["lamp ${i}", ${60 + (i % 100)}]`)}\n] as const;\nfor (const [name, protect] of list) circuit({ name, load: 40, oneWayFt: 15, gauge: 18, protect });\n`,
  "entries with wrong ratings": (n) =>
    `${imports}const all = {\n${rows(n, (i) => `"lamp ${i}": ${60 + (i % 100)}`)}\n};\nfor (const [name, protect] of Object.entries(all)) circuit({ name, load: 40, oneWayFt: 15, gauge: 18, protect });\n`,
};
