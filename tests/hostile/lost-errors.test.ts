import { afterAll, describe, expect, test } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";

const uri = "file:///lost/plan.ts";
let text = "";
const workspace: Workspace = {
  read: (asked) => (asked === uri ? { uri, version: text, text } : undefined),
  folders: () => ["file:///lost"],
  realUri: (asked) => asked,
  planFiles: () => [uri],
};
const checker = createChecker(workspace, { limits: { timeMs: 60_000 } });
afterAll(() => checker.dispose());

const lamp = 'circuit({ name: "lamp", load: 4, oneWayFt: 10, gauge: 14, protect: 15 });';
const hidden = 'circuit({ name: "hidden", load: 400, oneWayFt: 10, gauge: 14, protect: 15 });';

/** The message of each refusal, and the word at its place. */
async function refusals(statements: string) {
  text = `import { circuit } from "loomwright";\n${statements}\n`;
  const plan = await checker.check(uri);
  if (plan.state === "incomplete") throw new Error(plan.unfinished.text);
  const found = plan.findings.filter(({ finding }) => finding.rule === "plan/cannot-run");
  return {
    circuits: plan.judgement.circuits.map(({ circuit }) => circuit.name),
    refusals: found.map(({ message, place }) => [message, text.slice(place.start, place.end)]),
  };
}

describe("an error that no part of the plan waits for stops the plan, as it stops Node", () => {
  test.each([
    ["an async function", `async function main() { ${lamp} missing(); ${hidden} } main();`],
    ["an async arrow function", `const main = async () => { ${lamp} missing(); ${hidden} }; void main();`],
    ["one that calls itself at once", `(async () => { ${lamp} missing(); ${hidden} })();`],
    ["a method", `class Van { async build() { ${lamp} missing(); ${hidden} } } new Van().build();`],
    ["an optional call", `const van = { async build() { ${lamp} missing(); ${hidden} } }; van?.build?.();`],
    ["a held promise", `const made = (async () => { ${lamp} missing(); ${hidden} })(); void made;`],
    ["behind an await", `async function main() { await null; ${lamp} missing(); ${hidden} } main();`],
    [
      "an await in its argument",
      `async function main(_: number) { ${lamp} missing(); ${hidden} } main(await 4);`,
    ],
    ["a function given to then", `Promise.resolve().then(() => { ${lamp} missing(); ${hidden} });`],
    ["a function given to finally", `Promise.resolve(4).finally(() => { ${lamp} missing(); ${hidden} });`],
    ["behind a then that is no catch", `(async () => { ${lamp} missing(); })().then(() => { ${hidden} });`],
    ["one of several", `Promise.all([4, (async () => { ${lamp} missing(); ${hidden} })()]);`],
    ["a promise made by hand", `new Promise(() => { ${lamp} missing(); ${hidden} });`],
    [
      "an async generator",
      `async function* rows() { yield 4; missing(); yield 5; } (async () => { ${lamp} for await (const load of rows()) void load; ${hidden} })();`,
    ],
    ["an error for the console", `(async () => { ${lamp} missing(); ${hidden} })().catch(console.error);`],
    [
      "a caught error for the console",
      `try { ${lamp} missing(); ${hidden} } catch (error) { console.log("not built", error); }`,
    ],
  ])("%s", async (_kind, statements) => {
    expect(await refusals(statements)).toEqual({
      circuits: ["lamp"],
      refusals: [[expect.stringContaining("ReferenceError: missing is not defined"), "missing"]],
    });
  });
});

describe("a plan that waits for ever is not whole", () => {
  const never = "new Promise<number>(() => {})";
  test.each([
    [
      "in a function that the plan does not wait for",
      `(async () => { ${lamp} await ${never}; ${hidden} })();`,
    ],
    ["at the top", `${lamp} await ${never}; ${hidden}`],
    ["behind then", `${lamp} ${never}.then(() => { ${hidden} });`],
    ["among others", `(async () => { ${lamp} await Promise.all([4, ${never}]); ${hidden} })();`],
  ])("%s", async (_kind, statements) => {
    const { circuits, refusals: found } = await refusals(statements);
    expect(circuits).toEqual(["lamp"]);
    expect(found).toEqual([
      [expect.stringContaining("waits for something that never happens"), expect.anything()],
    ]);
  });
});

describe("a plan that waits for its own work, or deals with its errors, is whole", () => {
  test.each([
    ["awaited", `const make = async () => { await null; ${lamp} }; await make();`],
    ["not awaited", `const make = async () => { await null; ${lamp} }; make();`],
    ["a rejection with a catch", `Promise.reject(new Error("no")).catch(() => { ${lamp} });`],
    [
      "a rejection that an async function catches",
      `(async () => { try { await Promise.reject(new Error("no")); } catch { ${lamp} } })();`,
    ],
    ["allSettled", `await Promise.allSettled([Promise.reject(4)]); ${lamp}`],
    ["a promise that is not used", `new Promise(() => {}); ${lamp}`],
    ["words on the console", `console.error("a word", 4); ${lamp}`],
  ])("%s", async (_kind, statements) => {
    expect(await refusals(statements)).toEqual({ circuits: ["lamp"], refusals: [] });
  });
});
