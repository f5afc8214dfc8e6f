import { describe, expect, test } from "vitest";
import { PlanFile } from "../text/parse.ts";
import { defaultLimits, type End, type RunRequest, type Stopped } from "./contract.ts";
import { memoisedSandbox } from "./memoised-sandbox.ts";

const first: RunRequest = {
  root: "file:///plan.ts",
  modules: [
    { uri: "file:///plan.ts", js: "__written(0,circuit)", imports: { loomwright: "loomwright" } },
    { uri: "file:///sizes.ts", js: "export const load = 4", imports: {} },
  ],
  limits: defaultLimits,
};
const [plan, sizes] = first.modules as [RunRequest["modules"][0], RunRequest["modules"][0]];

/** Counts its run requests. */
function countingSandbox(end: End = "whole") {
  const ran: RunRequest[] = [];
  const sandbox = memoisedSandbox({
    async run(request) {
      ran.push(request);
      return { records: [], calls: [], allocations: [], end };
    },
    async dispose() {},
  });
  return { sandbox, ran };
}

test("what ran last is not run again", async () => {
  const { sandbox, ran } = countingSandbox();
  const outcome = await sandbox.run(first);
  expect(await sandbox.run(structuredClone(first))).toBe(outcome);
  expect(ran).toHaveLength(1);
});

describe("runs again, and so does going back", () => {
  test.each<[string, RunRequest]>([
    ["other text", { ...first, modules: [plan, { ...sizes, js: "export const load = 5" }] }],
    ["a file more", { ...first, modules: [plan, sizes, { ...sizes, uri: "file:///more.ts" }] }],
    ["a file less", { ...first, modules: [plan] }],
    ["another file of the same text", { ...first, modules: [plan, { ...sizes, uri: "file:///other.ts" }] }],
    [
      "an import that leads elsewhere",
      { ...first, modules: [{ ...plan, imports: { loomwright: "file:///sizes.ts" } }, sizes] },
    ],
    ["other limits", { ...first, limits: { ...defaultLimits, records: 3 } }],
  ])("%s", async (_, second) => {
    const { sandbox, ran } = countingSandbox();
    for (const request of [first, second, first]) await sandbox.run(request);
    expect(ran).toEqual([first, second, first]);
  });
});

test("each plan is remembered by itself", async () => {
  const { sandbox, ran } = countingSandbox();
  const other = { ...first, root: "file:///sizes.ts" };
  for (const request of [first, other, first, other]) await sandbox.run(request);
  expect(ran).toEqual([first, other]);
});

test.each<Stopped>([
  { why: "time" },
  { why: "memory" },
  { why: "records" },
  { why: "error", began: true, message: "Error: no", call: -1 },
  { why: "failed", message: "the worker died" },
])("what was stopped is tried again ($why)", async (end) => {
  const { sandbox, ran } = countingSandbox(end);
  for (const request of [first, first]) await sandbox.run(request);
  expect(ran).toHaveLength(2);
});

test("an edit of any length in what the text alone tells leaves the JavaScript as it is", () => {
  const js = (text: string) =>
    new PlanFile({ uri: "file:///plan.ts", version: 1, text }, 0).instrumented?.js.text;
  const plan = (input: string) =>
    `import { circuit } from "loomwright";\ncircuit({ ${input} });\nconst a = circuit({\n  load: 4,\n});\n`;
  expect(js(plan("load: 4"))).toContain("__written");
  expect(js(plan("load: 4"))).toBe(js(plan("load: 125, name: 'heater'")));
  expect(js(plan("load: 4"))).not.toBe(js(plan("load: 4,\n")));
});

test("after another run, inputs that are as before are the same objects", async () => {
  const outcomes = [
    [{ load: 4 }, { load: 5, protect: { ratingA: 5 } }, [1, 2], -0, { a: 1, b: 2 }, { load: 4 }],
    [{ load: 4 }, { load: 5, protect: { ratingA: 6 } }, [1, 2], 0, { b: 2, a: 1 }, { load: 4, name: "x" }],
  ].map((inputs) => ({
    records: inputs.map((input) => ({ word: "circuit" as const, input, call: -1, allocations: {} })),
    calls: [],
    allocations: [],
    end: "whole" as const,
  }));
  const waiting = [...outcomes];
  const sandbox = memoisedSandbox({ run: async () => waiting.shift()!, dispose: async () => {} });
  const before = await sandbox.run(first);
  const after = await sandbox.run({ ...first, modules: [plan] });
  expect(after.records).toEqual(outcomes[1]!.records);
  expect(after.records.map(({ input }, index) => Object.is(input, before.records[index]!.input))).toEqual([
    true,
    false,
    true,
    false,
    false,
    false,
  ]);
});
