import { afterAll, describe, expect, test } from "vitest";
import { createChecker } from "../checker.ts";
import { LocatedPlan } from "../provenance/located-plan.ts";
import { createSandbox } from "../sandbox.ts";
import type { Workspace } from "../workspace.ts";
import type { RunRequest } from "./contract.ts";

const engine = createSandbox();
afterAll(() => engine.dispose());

const root = "file:///plan.ts";

/** Checks versions of a plan one after another; `ran` are the texts that ran. */
function checking(others: Readonly<Record<string, string>>) {
  const ran: string[] = [];
  let files: Readonly<Record<string, string>> = {};
  const workspace: Workspace = {
    read: (uri) => (files[uri] === undefined ? undefined : { uri, version: files[uri], text: files[uri] }),
    folders: () => ["file:///"],
    realUri: (uri) => uri,
    planFiles: () => [root],
  };
  const checker = createChecker(workspace, {
    sandbox: {
      run(request: RunRequest) {
        ran.push(request.modules[0]!.js);
        return engine.run(request);
      },
      dispose: async () => {},
    },
  });
  const check = async (text: string) => {
    files = { [root]: text, ...others };
    const plan = await checker.check(root);
    if (!(plan instanceof LocatedPlan)) return plan;
    const { traced, judgement } = plan;
    const places = plan.records.map(({ input }, record) => [
      plan.callOf(record),
      ...Object.keys(input ?? {}).map((name) => plan.placeOf(record, [name])),
    ]);
    return {
      records: plan.records.map(({ word, input, fallbackName }) => ({ word, input, fallbackName })),
      raw: traced.outcome.records,
      findings: plan.findings.map(({ finding, ...shown }) => ({ rule: finding.rule, ...shown })),
      circuits: judgement.circuits,
      places,
    };
  };
  return { check, ran };
}

async function expectSameAsAlone(texts: readonly string[], others: Readonly<Record<string, string>> = {}) {
  const typed = checking(others);
  const lengths: number[] = [];
  for (const text of texts) {
    const before = typed.ran.length;
    const found = await typed.check(text);
    expect(found).toEqual(await checking(others).check(text));
    lengths.push(typed.ran.length - before);
  }
  return { ran: typed.ran, lengths };
}

const head = 'import { battery, circuit, fusePanel } from "loomwright";\n';
const rows = `[
  { name: "a", load: 4, oneWayFt: 6, gauge: 12 },
  { name: "b", load: 5, oneWayFt: 90, gauge: 12 }, // far
  { name: "c", load: 6, oneWayFt: 8, gauge: 14 },
]`;
const isRowAlone = (js: string | undefined) =>
  js?.includes('"b"') && !js.includes('"a"') && !js.includes('"c"');
const edited = (plan: string) => [
  plan,
  plan.replace("load: 5", "load: 50"),
  plan.replace("load: 5", "load: 6"),
];

describe("one changed row runs alone, with the result of a whole run", () => {
  test.each<[string, string]>([
    [
      "spread into a circuit",
      `const rows = ${rows};\nfor (const row of rows) circuit({ ...row, protect: 10 });`,
    ],
    ["the row itself", `const rows = ${rows} as const;\nfor (const row of rows) circuit(row);`],
    ["a list in the loop", `for (const row of ${rows}) circuit({ protect: 15, ...row });`],
    [
      "forEach",
      `const rows = ${rows};\nrows.forEach((row) => circuit({ ...row, continuous: row.load > 5 }));`,
    ],
    [
      "a pattern, a function and a method",
      `function lamp(name: string, load: number) { return circuit({ name: name.toUpperCase(), load, oneWayFt: 6, gauge: 12 }); }
const rows = ${rows};
for (const { name, load } of rows) { lamp(name, Math.round(load * 1.25)); circuit({ name: \`\${name} 2\`, load, oneWayFt: 9, gauge: 10 }); }`,
    ],
    [
      "parts before and after it",
      `const house = battery({ chemistry: "LiFePO4", capacityAh: 100 });
const fuse = { ratingA: 10, family: "UL 248-14" } as const;
const rows = ${rows};
for (const row of rows) circuit({ from: house.positive, returnTo: house.negative, ...row, protect: fuse });
const panel = fusePanel({ positions: 4, ratedA: 100 });
circuit({ name: "later", from: panel.branch, load: 3, oneWayFt: 3, gauge: 12, protect: 10 });`,
    ],
  ])("%s", async (_, plan) => {
    const { ran, lengths } = await expectSameAsAlone(edited(`${head}${plan}\n`));
    expect(lengths).toEqual([1, 1, 1]);
    expect(ran.slice(1).every(isRowAlone)).toBe(true);
  });

  test("nested rows, of an imported base, whose text becomes longer", async () => {
    const plan = `${head}import { base } from "./base.ts";
const rows = [{ a: { load: 4 } }, { a: { load: 5 } }, { a: { load: 6 } }];
for (const row of rows) circuit({ ...base, ...row.a });\n`;
    const base = "export const base = { oneWayFt: 6, gauge: 12 };\n";
    const { ran, lengths } = await expectSameAsAlone(edited(plan), { "file:///base.ts": base });
    expect(lengths).toEqual([1, 1, 1]);
    expect(ran[1]).not.toContain("load: 4");
  });
});

describe("after many edits, places and findings are those of a fresh check", () => {
  const list = (row: (at: number) => string) =>
    `[\n${Array.from({ length: 9 }, (_, at) => `  ${row(at)},\n`).join("")}]`;
  const objects = list((at) => `{ name: "row ${at}", load: ${4 + (at % 3)}, oneWayFt: ${at % 4 ? 6 : 70} }`);
  const tuples = list((at) => `["row ${at}", ${4 + (at % 3)}, ${at % 4 ? 6 : 70}]`);

  test.each<[string, string]>([
    [
      "a size that rows share",
      `const panel = { gauge: 12, protect: 10 } as const;
const rows = ${objects};
for (const row of rows) circuit({ ...panel, ...row, continuous: row.load > 5 });`,
    ],
    [
      "a size by condition",
      `const [thin, thick] = [16, 12];
for (const row of ${objects}) circuit({ ...row, gauge: row.load > 5 ? thick : thin });`,
    ],
    [
      "constants by condition",
      `const thin = 16;
const thick = 12;
for (const row of ${objects}) circuit({ ...row, gauge: row.load > 5 ? thick : thin });`,
    ],
    [
      "rows without names",
      `for (const [load, oneWayFt] of ${list((at) => `[${4 + (at % 3)}, ${at % 4 ? 6 : 70}]`)})
  circuit({ load, oneWayFt, gauge: 14 });`,
    ],
    [
      "names in a pattern",
      `for (const { name, load, oneWayFt } of ${objects}) circuit({ name, load, oneWayFt, gauge: 14 });`,
    ],
    [
      "rows that only their values tell apart",
      `const rows = ${tuples};
for (const [name, load, oneWayFt] of rows) circuit({ name: String(name), load: Number(load), oneWayFt: Number(oneWayFt), gauge: 14 });`,
    ],
    [
      "values straight from rows",
      `const rows = ${tuples};
for (const [name, load, oneWayFt] of rows) circuit({ name, load, oneWayFt, gauge: 14, protect: 10 });`,
    ],
  ])("%s", async (_, plan) => {
    let text = `${head}${plan}\n`;
    const texts = [text];
    for (const [turn, value] of [6, 70, 5, 9, 30, 4, 70, 6].entries()) {
      const figures = [...text.matchAll(/(?<=[:,] )(?:[4-9]|[37]0)\b/g)];
      const { 0: was, index } = figures[(turn * 5 + 2) % figures.length]!;
      text = text.slice(0, index) + value + text.slice(index + was.length);
      texts.push(text);
    }
    await expectSameAsAlone(texts);
  });
});

describe("the whole plan runs if rows may depend on one another", () => {
  test.each<[string, string]>([
    [
      "a sum",
      `const rows = ${rows};\nlet sum = 0;\nfor (const row of rows) circuit({ ...row, load: (sum += row.load) });`,
    ],
    [
      "another use of the list",
      `const rows = ${rows};\nfor (const row of rows) circuit({ ...row, load: rows[1].load });`,
    ],
    [
      "the row's number",
      `const rows = ${rows};\nrows.forEach((row, at) => circuit({ ...row, load: row.load + at }));`,
    ],
    [
      "a row that is skipped",
      `const rows = ${rows};\nfor (const row of rows) if (row.load > 4) circuit(row);`,
    ],
    [
      "a changed object",
      `const rows = ${rows};\nconst all = { oneWayFt: 6 };\nfor (const row of rows) circuit({ ...row, ...Object.assign(all, { load: row.load }) });`,
    ],
    [
      "a changed language",
      `const rows = ${rows};\nObject.defineProperty(Object.prototype, "mm2", { get() { return 4; } });\nfor (const row of rows) circuit({ ...row });`,
    ],
    [
      "two records of a row",
      `const rows = ${rows};\nfunction two(row: object) { circuit({ ...row }); circuit({ ...row }); }\nfor (const row of rows) two(row);`,
    ],
    [
      "a part made for a row",
      `const rows = ${rows};\nfunction own(row: object) { const panel = fusePanel({ positions: 4, ratedA: 100 }); circuit({ ...row, from: panel.branch }); }\nfor (const row of rows) own(row);`,
    ],
    [
      "a record of the row itself",
      `const rows = [{ own: circuit({ name: "b", load: 5, oneWayFt: 6, gauge: 12 }) }, { own: circuit({ name: "c", load: 4, oneWayFt: 6, gauge: 12 }) }];
for (const row of rows) circuit({ name: "again", load: 3, oneWayFt: 6, gauge: row.own ? 12 : 14 });`,
    ],
    [
      "a spread list",
      `const more = [{ name: "d", load: 5, oneWayFt: 6, gauge: 12 }];\nconst rows = [...more, { name: "b", load: 5, oneWayFt: 6, gauge: 12 }];\nfor (const row of rows) circuit(row);`,
    ],
  ])("%s", async (_, plan) => {
    const { ran } = await expectSameAsAlone(edited(`${head}${plan}\n`));
    expect(ran.at(-1)).toContain(ran[0]!.includes('"c"') ? '"c"' : '"d"');
  });

  test("a list that gets another use later", async () => {
    const plan = `${head}const rows = ${rows};\nfor (const row of rows) circuit({ ...row, protect: 10 });\n`;
    const using = plan.replace("protect: 10", "protect: rows[1].load");
    const { lengths, ran } = await expectSameAsAlone([...edited(plan), ...edited(using)]);
    expect(lengths).toEqual([1, 1, 1, 1, 1, 1]);
    expect(ran.map(isRowAlone)).toEqual([false, true, true, false, false, false]);
  });

  test("a row made of another object", async () => {
    const plan = `${head}const rows = ${rows};\nconst fuses = [{ ratingA: 10 }, { ratingA: 60 }];
for (const row of rows) circuit({ ...row, protect: row.load > 5 ? fuses[1] : fuses[0] });\n`;
    const { lengths } = await expectSameAsAlone(edited(plan));
    expect(lengths).toEqual([1, 2, 1]);
  });

  test.each<[string, string, string]>([
    ["an assignment became a sum", "load: all.load = 5", "load: all.load + 5"],
    ["a name is no longer deleted", "load: delete all.load ? 5 : 5", "load: all.load ? 5 : 5"],
    ["a row fewer", ' },\n  { name: "b",', ","],
    ["a row more", "load: 5,", "load: 5 }, { load: 4,"],
    ["a row with an error", "load: 5", "load: all.b.c"],
  ])("%s", async (_, before, after) => {
    const plan = `${head}const all = { load: 7 };\nconst rows = ${rows};\nfor (const row of rows) circuit({ ...row, oneWayFt: all.load });\n`;
    const first = before.startsWith("load") ? plan.replace("load: 5", before) : plan;
    await expectSameAsAlone([first, first.replace(before, after), first]);
  });
});
