import { afterAll, describe, expect, test } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";

/**
 * TypeScript parses more than the engine runs. Both lists are kept, refused syntax and syntax that runs: neither may change
 * unnoticed.
 */
const uri = "file:///camper/plan.ts";
let text = "";
let version = 0;
const checker = createChecker({
  read: (asked) => (asked === uri ? { uri, version, text } : undefined),
  folders: () => ["file:///camper"],
  realUri: (asked) => asked,
  planFiles: () => [uri],
});
afterAll(() => checker.dispose());

const plan =
  '\nimport { circuit } from "loomwright";\ncircuit({ load: 4, oneWayM: 3, mm2: 6, protect: 10, insulationC: 105 });\n';

async function check(code: string) {
  text = code + plan;
  version++;
  const outcome = await checker.check(uri);
  if (outcome.state === "incomplete") throw new Error(outcome.unfinished.text);
  const { judgement, findings } = outcome;
  const problems = findings
    .filter(({ finding }) => finding.rule === "plan/cannot-run")
    .map(({ message, place }) => [text.slice(place.start, place.end), message]);
  return { circuits: judgement.circuits.length, problems };
}

describe("syntax that is not run is named, at its place", () => {
  test.each([
    ["using a = null;", "using a = null", "A using declaration"],
    ["await using a = null;", "await using a = null", "A using declaration"],
    ["{ using a = null; }", "using a = null", "A using declaration"],
    ["for (using a of []);", "using a", "A using declaration"],
    ["for (await using a of []);", "await using a", "A using declaration"],
    ["for (using a = null; ; ) break;", "using a = null", "A using declaration"],
    ["const f = () => { using a = null; };", "using a = null", "A using declaration"],
    ["class A { accessor b = 1 }", "accessor", "An accessor field"],
    ["class A { static accessor b = 1 }", "accessor", "An accessor field"],
    ["class A { accessor #b = 1 }", "accessor", "An accessor field"],
    ["const a = /[a&&b]/v;", "/[a&&b]/v", "A regular expression with the flag v"],
    ["/a/v.test('a');", "/a/v", "A regular expression with the flag v"],
    ["const a = /(?i:b)c/;", "/(?i:b)c/", "A regular expression that sets flags within"],
    ["const a = /(?-i:b)c/i;", "/(?-i:b)c/i", "A regular expression that sets flags within"],
    ["const a = /(?<y>b)|(?<y>c)/;", "/(?<y>b)|(?<y>c)/", "A regular expression with two groups of one name"],
    ["enum A { b }", "enum A { b }", "An enum"],
    ["const enum A { b }", "const enum A { b }", "An enum"],
    ["namespace A { export const b = 1 }", "namespace A { export const b = 1 }", "A namespace"],
    ["class A { constructor(private b: number) {} }", "private", "A property declared among"],
    ["export = 1;", "export = 1;", "export ="],
    ["export as namespace A;", "export as namespace A;", "export as namespace"],
    ['import a = require("a");', 'import a = require("a");', "import ="],
    ['import defer * as a from "loomwright";', 'import defer * as a from "loomwright";', "import defer"],
    ["@f class A {}\nfunction f() {}", "@f", "A decorator"],
    ["class A { @f b() {} }\nfunction f() {}", "@f", "A decorator"],
    ["with ({}) {}", "with ({}) {}", "A with statement"],
    ["const a = <number>1;", "<number>1", "A type written before a value"],
  ])("%s", async (code, on, what) => {
    const { circuits, problems } = await check(code);
    expect([circuits, problems.map(([place]) => place)]).toEqual([0, [on]]);
    expect(problems[0]![1]).toContain(what);
    expect(problems[0]![1]).toContain("cannot be used in a plan");
  });
});

describe("a text that is no JavaScript says so, and not that the plan stopped somewhere", () => {
  test.each([
    "let a = 1; let a = 2;",
    "const a;",
    "export { a };",
    "return;",
    "break;",
    "const package = 1;",
    "function f(a, a) {}",
    "1 = 2;",
    "const a = 1 ?? 2 || 3;",
    "const a = /(/;",
    "const a = /b/zz;",
    "class A { b() { return this.#c; } }",
    "class A { static { await 1; } }",
  ])("%s", async (code) => {
    const { circuits, problems } = await check(code);
    expect([circuits, problems.length]).toEqual([0, 1]);
    expect(problems[0]![1]).toMatch(/^This text cannot be run as JavaScript: [^.]+\. Correct it/);
    expect(problems[0]![1]).not.toContain("SyntaxError");
  });
});

describe("the rest of the language runs", () => {
  test.each([
    "#!/usr/bin/env node",
    "\ufeff#!/usr/bin/env node",
    "\ufeff",
    "const using = 1, accessor = 2, defer = 3; void [using, accessor, defer];",
    "class A { accessor() {} }",
    "class A { accessor = 1 }",
    "class A { #b = 1; static c = 2; static { this.c = 3; } get d() { return #b in this; } }",
    "const a = /(?<y>b)\\k<y>|(?<!c)(?=d)(?:e)[(?i:]\\(?i:/dgimsuy;",
    "const a = /\\p{Emoji}/u;",
    "let a = 1_000; a ??= 2; a ||= 3; a &&= 4; const b = a ** 2, c = 2n;",
    "try {} catch {} finally {}",
    "async function* f() { for await (const a of [1]) yield* [await a]; } await f().next();",
    "const a = String.raw`\\u`, b = { *c() {}, async *d() {}, get e() { return 1; }, ['f']: 1, ...{} };",
    'export * as lib from "loomwright"; export { circuit as "a name" } from "loomwright";',
    "abstract class A<const T> { declare b: T; c!: number; d?(): void; abstract e(): void; [f: string]: unknown }",
    'type A = import("loomwright").CircuitInput; declare module "x" {} declare global {} declare enum B { c }',
    "function f(this: void, a: unknown): asserts a is 1; function f(a: unknown) {}",
    "label: for (const of of [1]) { continue label; }",
    "const 変数 = 1, \\u0061b = 2, 𝒳 = 3;",
  ])("%s", async (code) => {
    expect(await check(code)).toEqual({ circuits: 1, problems: [] });
  });
});
