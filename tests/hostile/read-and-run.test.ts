import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import type { CheckedPlan, CheckOutcome } from "../../server/evaluate/checked-plan.ts";
import { createChecker } from "../../server/evaluate/checker.ts";
import { createSandbox, type Sandbox } from "../../server/evaluate/sandbox.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";
import { sampled } from "../setup/sampled.ts";

/**
 * The text that the parser reads and the program that the engine runs are two readings of one file. The worst possible fault is a
 * circuit that one of them has and the other silently lacks. Therefore each odd character at each kind of place, and each way to
 * lose a part of the program, must end in a finding, in an unfinished text, or in the whole plan.
 */
const uri = "file:///camper/plan.ts";
let text = "";
let version = 0;
const workspace: Workspace = {
  read: (asked) => (asked === uri ? { uri, version, text } : undefined),
  folders: () => ["file:///camper"],
  realUri: (asked) => asked,
  planFiles: () => [uri],
};

/** Passes on different JavaScript, like an engine that parses the text differently. */
let misread = (js: string) => js;
const engine = createSandbox();
const misreading: Sandbox = {
  run: (request) =>
    engine.run({
      ...request,
      modules: request.modules.map((module) => ({ ...module, js: misread(module.js) })),
    }),
  dispose: () => engine.dispose(),
};
const checker = createChecker(workspace, { sandbox: misreading, limits: { timeMs: 60_000 } });
afterAll(() => checker.dispose());

async function check(plan: string): Promise<CheckOutcome> {
  text = plan;
  version++;
  return checker.check(uri);
}

const circuitCalled = (name: string) =>
  `circuit({ name: "${name}", load: 4, oneWayM: 3, mm2: 6, protect: 10, insulationC: 105 })`;
const words = 'import { circuit } from "loomwright";\n';

const namesIn = ({ judgement }: CheckedPlan) => judgement.circuits.map(({ circuit }) => circuit.name);
const reasonsIn = ({ judgement }: CheckedPlan) =>
  judgement.problems.map((problem) => ("reason" in problem ? problem.reason : problem.limit));

const control = Array.from({ length: 0x20 }, (_, code) => String.fromCharCode(code));
const characters: readonly string[] = [
  ...control,
  ..."\x7f\x80\x85\x9f\xa0\xad",
  ..."\u061c\u1680\u180e\u200b\u200c\u200d\u200e\u2028\u2029\u202a\u202e\u202f\u205f\u2060\u2066\u3000\ufe0f\ufeff\ufffd\ufffe\uffff",
  "\u{1f600}",
  "\u{e0001}",
  "\u{10ffff}",
  // Halves of characters, and halves in the wrong order.
  ...["\ud800", "\udbff", "\udc00", "\udfff", "\udc00\ud800", "\ud800\ud800\udc00"],
  // Characters that end a comment in one reading and not in another.
  ...["\r", "\r\n", "\n\r", "*/", "/*", "<!--", "-->", "//", "\\", "`", "${", "'", '"'],
];

/** A call outside any comment, in either reading. */
const sameLine = /^(?!.*\/\/).*same line/s;

/** Between two circuits, or within the first one. */
const places: readonly [string, (character: string) => string][] = [
  ["in a comment to the end of the line", (c) => `// a${c}b`],
  ["last in such a comment", (c) => `// a${c}`],
  ["in a comment with an end", (c) => `/* a${c}b */`],
  ["in a text", (c) => `const a = "b${c}c";`],
  ["in a text of the other kind", (c) => `const a = 'b${c}c';`],
  ["in a template", (c) => `const a = \`b${c}c\`;`],
  ["in a template's hole", (c) => `const a = \`b\${${c}1}c\`;`],
  ["in a tagged template", (c) => `const a = String.raw\`b${c}c\`;`],
  ["in a regular expression", (c) => `const a = /b${c}c/;`],
  ["in a class of one", (c) => `const a = /[b${c}c]/;`],
  ["in a name", (c) => `const a${c}b = 1;`],
  ["in a property's name", (c) => `const a = { b${c}: 1 };`],
  ["in a number", (c) => `const a = 1${c}2;`],
  ["between words", (c) => `const${c}a = 1;`],
  ["before an operator", (c) => `const a = 1 ${c}+ 2;`],
  ["in a type", (c) => `const a:${c}number = 1;`],
  ["in a type's text", (c) => `type A = "b${c}c";`],
  ["alone on a line", (c) => c],
  ["before a call on the same line", (c) => `${c}${circuitCalled("same line")};`],
  ["behind a number, before a call", (c) => `let b = 5, d = 1 ${c}b; ${circuitCalled("same line")};`],
];

describe("a character that is odd leaves no circuit out without a word", () => {
  test.each(places)("%s", async (_, place) => {
    for (const character of sampled("odd characters", characters)) {
      const between = place(character);
      const plan = `${words}${circuitCalled("before")};\n${between}\n${circuitCalled("behind")};\n`;
      const outcome = await check(plan);
      if (outcome.state === "incomplete" || reasonsIn(outcome).length > 0) continue;
      const expected = ["before", "behind", ...(sameLine.test(between) ? ["same line"] : [])];
      expect(namesIn(outcome).sort(), JSON.stringify(between)).toEqual(expected);
    }
  });

  test.each(["\0", "\ud800", "\udfff"])("first and last in a file: %j", async (character) => {
    for (const plan of [
      `${character}${words}${circuitCalled("a")};`,
      `${words}${circuitCalled("a")};${character}`,
    ]) {
      const outcome = await check(plan);
      if (outcome.state === "incomplete") throw new Error("a plan that will never be finished");
      expect(reasonsIn(outcome)).toEqual(["character-refused"]);
      expect(outcome.findings.map(({ place }) => place.start)).toEqual([plan.indexOf(character)]);
    }
  });
});

/** Each is run whenever the file runs to its end: the call in it cannot be missing. `C` is the call. */
const certain: readonly string[] = [
  "C;",
  "const held = C;",
  "let held = C;",
  "export const held = C;",
  "export default C;",
  "const list = [C, 1];",
  "const list = { lamp: C, ['b']: 1 };",
  "const inner = { lamps: [{ lamp: (C) }] };",
  "const spread = [...[C]];",
  "{ C; }",
  "const typed = C as object satisfies object;",
  "const later = await C;",
  "void C;",
  "const said = `a ${C} b`;",
  "String(C);",
  "Object.keys({ a: C }).map((key) => key);",
  "let kept; kept = C;",
  "const one = (1, C);",
  "new Map([[1, C]]);",
  'lib.circuit({ name: "C", load: 4, oneWayM: 3, mm2: 6 });',
];

/** Each is run or not, depending on the plan. */
const uncertain: readonly string[] = [
  "if (1 > 2) C;",
  "const a = 1 > 2 ? C : 1;",
  "const a = 1 > 2 && C;",
  "const a = 1 < 2 || C;",
  "const a = 1 ?? C;",
  "let a = 1; a ||= C; a ??= C; let z = 0; z &&= C;",
  "const none = undefined as { b(x: unknown): void } | undefined; none?.b(C);",
  "const none = undefined as { b: { c(x: unknown): void } } | undefined; none?.b.c(C);",
  "const none = undefined as { b(): { c(x: unknown): void } } | undefined; none?.b().c(C);",
  "const none = undefined as ((x: unknown) => void) | undefined; none?.(C);",
  "const none = undefined as unknown[] | undefined; none?.[C as never];",
  "for (const a of []) C;",
  "for (; 1 > 2; ) C;",
  "while (1 > 2) C;",
  "do { break; C; } while (1 > 2);",
  "try { throw 1; C; } catch {}",
  "try {} catch { C; }",
  "skipped: { break skipped; C; }",
  "switch (1 as number) { case 2: C; }",
  "function never() { C; }",
  "const never = () => C;",
  "function* never() { yield C; } never();",
  "function* never() { C; } never();",
  "class Never { a = C; static b() { C; } }",
  "const { a = C } = { a: 1 };",
  "const [a = C] = [1];",
  "let a; ({ a = C } = { a: 1 });",
  "let a; [a = C] = [1];",
  "const never = { get a() { return C; } };",
  "const circuitOf = (a = C) => a; circuitOf(1 as never);",
  "{ const circuit = (x: unknown) => x; C; }",
  "type Never = typeof circuit;",
];

const uncertainPlan = (line: string) =>
  `${words}import * as lib from "loomwright";\nvoid lib;\n${circuitCalled("before")};\n${line}\n`;
const withCall = (line: string) =>
  line.replaceAll(/\bC\b/g, (word, at) => (line[at - 1] === '"' ? word : circuitCalled("C")));

describe("a call that every run must make", () => {
  test.each(certain)("is missed, and lets the run of the whole text be: %s", async (line) => {
    const plan = uncertainPlan(withCall(line));
    const whole = await check(plan);
    if (whole.state === "incomplete") throw new Error(whole.unfinished.text);
    expect(reasonsIn(whole)).toEqual([]);
    expect(namesIn(whole)).toContain("C");
    // The engine stops reading at that line.
    misread = (js) => js.split("\n").slice(0, 4).join("\n");
    try {
      const cut = await check(`${plan}\n`);
      if (cut.state === "incomplete") throw new Error("incomplete");
      expect(reasonsIn(cut)).toEqual(["call-not-reached"]);
      const { place } = cut.findings.find(({ finding }) => finding.rule === "plan/cannot-run")!;
      expect(text.slice(place.start, place.end)).toBe("circuit");
      expect(text.slice(0, place.start).split("\n")).toHaveLength(5);
    } finally {
      misread = (js) => js;
    }
  });

  test.each(uncertain)("is none that a run may leave out: %s", async (line) => {
    const outcome = await check(uncertainPlan(withCall(line)));
    if (outcome.state === "incomplete") throw new Error(outcome.unfinished.text);
    expect(reasonsIn(outcome)).toEqual([]);
  });

  test("is missed wherever the engine stops reading between two statements", async () => {
    const lines = Array.from({ length: 12 }, (_, index) => `${circuitCalled(`c${index}`)};`);
    const plan = `${words}${lines.join("\n")}\n`;
    for (let kept = 0; kept < lines.length; kept++) {
      misread = (js) =>
        js
          .split("\n")
          .slice(0, kept + 1)
          .join("\n");
      const outcome = await check(plan + " ".repeat(kept));
      misread = (js) => js;
      if (outcome.state === "incomplete") throw new Error("incomplete");
      expect(reasonsIn(outcome)).toEqual(["call-not-reached"]);
      expect(outcome.judgement.findings.find(({ rule }) => rule === "plan/cannot-run")).toBeDefined();
    }
  });
});

describe("no honest plan is said to leave a call out", () => {
  const house = fileURLToPath(new URL("../..", import.meta.url));
  const texts = (folder: string) =>
    readdirSync(`${house}${folder}`, { recursive: true, encoding: "utf8" })
      .filter((name) => /\.(?:ts|md)$/.test(name) && !name.includes("node_modules"))
      .map((name) => [`${folder}/${name}`, readFileSync(`${house}${folder}/${name}`, "utf8")] as const);
  const usual = createChecker(workspace);
  afterAll(() => usual.dispose());
  const plans = ["examples", "tests/networks", "tests/provenance", "tests/typing", "library/rules"].flatMap(
    (folder) =>
      texts(folder).flatMap(([name, file]) =>
        plansIn(file).map((plan, index) => [`${name} ${index}`, plan] as const),
      ),
  );

  test("there are many", () => expect(plans.length).toBeGreaterThan(100));

  test("of all that are written in this project", async () => {
    for (const [name, plan] of plans) {
      text = plan;
      version++;
      const outcome = await usual.check(uri);
      if (outcome.state === "checked") expect(reasonsIn(outcome), name).not.toContain("call-not-reached");
    }
  });
});

/** The file itself if it is a plan, and the plans in its texts or code blocks. */
function plansIn(file: string): readonly string[] {
  const blocks = [...file.matchAll(/```ts\n(.*?)```/gs), ...file.matchAll(/`([^`]*circuit\([^`]*)`/gs)].map(
    ([, block = ""]) => block,
  );
  return [file, ...blocks.map((block) => (block.includes('"loomwright"') ? block : words + block))].filter(
    (plan) => plan.includes('"loomwright"') && !plan.includes("vitest"),
  );
}
