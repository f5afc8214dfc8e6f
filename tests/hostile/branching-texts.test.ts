import { afterAll, expect, test } from "vitest";
import type { CheckedPlan } from "../../server/evaluate/checked-plan.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";

// Values are traced back to the text outside the sandbox, without a time limit. A text that branches at every step has far too
// many paths to follow all of them, and must not hold up the server. The test is that these tests end.

const planUri = "file:///plans/plan.ts";
const files = new Map<string, string>();
const workspace: Workspace = {
  read(uri) {
    const text = files.get(uri);
    return text === undefined ? undefined : { uri, version: text, text };
  },
  folders: () => ["file:///plans"],
  realUri: (uri) => uri,
  planFiles: () => [planUri],
};
const checker = createChecker(workspace, { limits: { timeMs: 20_000 } });

afterAll(() => checker.dispose());

async function check(text: string, others: Readonly<Record<string, string>> = {}): Promise<CheckedPlan> {
  files.clear();
  files.set(planUri, `import { circuit } from "loomwright";\n${text}`);
  for (const [name, other] of Object.entries(others)) files.set(`file:///plans/${name}`, other);
  const outcome = await checker.check(planUri);
  if (outcome.state !== "checked") throw new Error(`the plan was ${outcome.state}`);
  return outcome;
}

/** Its values have no origin in the text, so every path is tried in vain. */
const base = `const base = (): any => JSON.parse('{"load":48,"gauge":12,"oneWayFt":10}');\n`;

/** Forty names, each made from the one before, which is written `#`. */
const chain = (first: string, step: string) =>
  [
    `const a0: any = ${first};`,
    ...Array.from({ length: 40 }, (_, n) => `const a${n + 1}: any = ${step.replaceAll("#", `a${n}`)};`),
  ].join("\n");

const recursive = (object: string) => `const f = (n: number): any => (n > 0 ? ${object} : base());\n`;

test.each([
  ["a function that spreads itself", `${recursive("{ ...f(n - 1) }")}circuit(f(3));`],
  ["three times", `${recursive("{ ...f(n - 1), ...f(n - 2), ...f(n - 3) }")}circuit(f(3));`],
  ["a chain of spreads", `${chain("base()", "{ ...#, ...# }")}\ncircuit(a40);`],
  [
    "a chain of choices",
    `${chain("base().gauge", "Math.random() > 0.5 ? # : #")}\ncircuit({ ...base(), gauge: a40 });`,
  ],
  [
    "a chain of lists",
    `${chain("[base().gauge]", "[...#, ...#].slice(1)")}\nfor (const gauge of a40) circuit({ ...base(), gauge });`,
  ],
])("%s", async (_name, text) => {
  const plan = await check(base + text);
  expect(plan.judgement.circuits.map(({ circuit }) => circuit.loadA)).toEqual([48]);
  for (const finding of plan.findings) await checker.provenFixes(plan, finding);
  expect(plan.findings.map(({ finding }) => finding.rule)).toContain("conductor/ampacity");
});

test("files that pass on each other's names in a circle", async () => {
  const names = ["a", "b", "c", "d"];
  const others = Object.fromEntries(
    names.map((name) => [`${name}.ts`, names.map((other) => `export * from "./${other}.ts";`).join("\n")]),
  );
  const text = `${base}import * as a from "./a.ts";\ncircuit({ ...base(), gauge: a.missing ?? 12 });`;
  const plan = await check(text, others);
  expect(plan.judgement.circuits.map(({ circuit }) => circuit.loadA)).toEqual([48]);
  expect(plan.findings.map(({ finding }) => finding.rule)).toContain("conductor/ampacity");
});

test("a table of three thousand rows is no such text: the finding still is on its row", async () => {
  const rows = Array.from(
    { length: 3_000 },
    (_, row) => `  { name: "lamp ${row}", load: ${row === 2_900 ? 48 : 1}, gauge: 12 },`,
  );
  const loop = "for (const { name, load, gauge } of table) circuit({ name, load, gauge, ...same });";
  const same = "const same = { oneWayFt: 3, insulationC: 105, protect: 45 };";
  const plan = await check(`const table = [\n${rows.join("\n")}\n];\n${same}\n${loop}\n`);
  const found = plan.findings.filter(({ finding }) => finding.rule === "conductor/ampacity");
  const rest = found.map(({ place }) => files.get(planUri)?.slice(place.start).split("\n", 1)[0]);
  expect(rest).toEqual(["12 },"]);
  expect(found[0]?.subjects).toEqual(["lamp 2900"]);
  const before = files.get(planUri)?.slice(0, found[0]?.place.start).split("\n").at(-1);
  expect(before).toBe('  { name: "lamp 2900", load: 48, gauge: ');
});
