import ts from "typescript";
import { expect, test } from "vitest";
import { isWithoutSideEffects } from "./side-effects.ts";

const head =
  'import { battery, circuit } from "loomwright"; import { given } from "./given.ts"; const a = { b: 1 };\n';

const isAllowed = (text: string) =>
  isWithoutSideEffects(ts.createSourceFile("plan.ts", head + text, ts.ScriptTarget.ESNext, true));

test.each([
  "const house = battery({ capacityAh: 100 }); circuit({ from: house.positive, ...a, load: -a.b * 2 });",
  "interface Row { load: number } const rows: readonly Row[] = [{ load: 4 }] as const; for (const row of rows) circuit(row);",
  "function lamp({ load = 2 }, ...more: number[]) { if (load > 3) return circuit({ load }); return more; } lamp(a);",
  "const double = (x: number) => x * 2; circuit({ load: Math.round(double(4)), name: `n${Number(`4`).toFixed(1)}` });",
  "[1, 2].map((load) => circuit({ load })).filter((one) => one); export const c = a?.b ?? given; export default c;",
])("has none: %s", (text) => {
  expect(isAllowed(text)).toBe(true);
});

test.each([
  "a.b = 2;",
  "a.b += 2;",
  "a.b++;",
  "--a.b;",
  "delete a.b;",
  "let c = 1;",
  "var c = 1;",
  "[a.b] = [2];",
  "Object.assign(a, { b: 2 });",
  "Object.defineProperty(Object.prototype, 'b', {});",
  "globalThis.b = 1;",
  "given(a);",
  "[1].push(2);",
  "[1].map(given);",
  "const f = {}.constructor.assign; f(a, { b: 2 });",
  "const o = { at: {}.constructor.assign }; o.at(a, { b: 2 });",
  "const o = { ['a' + 't']: {}.constructor.assign }; o.at(a, { b: 2 });",
  "const at = {}.constructor.assign; const o = { at }; o.at(a, { b: 2 });",
  "const o = { toString: [].push }; circuit({ name: `${o}` });",
  "Math.__defineGetter__('round', () => 1);",
  "function circle(circuit: () => void) { circuit(); }",
  "new Map();",
  "class C { static { a.b = 2; } }",
  "const o = { get b() { return 1; } };",
  "const o = { b() { return 1; } };",
  "async function f() { await 1; }",
  "const f = async () => 1;",
  "function* f() { yield 1; }",
  "for (let c = 0; c < 2; c++);",
  "while (a.b) circuit({});",
  "try { circuit({}); } catch {}",
  "throw a;",
  "(() => a)();",
  "a.b`text`;",
  "__leave(__open(), 1);",
  "import * as all from './given.ts'; all.given(a);",
  "import other from './given.ts'; other(a);",
])("may have one: %s", (text) => {
  expect(isAllowed(text)).toBe(false);
});
