import { runInNewContext } from "node:vm";
import { describe, expect, it } from "vitest";
import { PlanFile } from "../../server/evaluate/text/parse.ts";

/** Bodies of functions that return a value, or throw; with marks they must do the same. */
const bodies: readonly string[] = [
  "return [1, 2, 3].map((x) => x * 2).concat([4]);",
  "const o = { n: 3, get() { return this.n; } }; return o.get();",
  "const o = { n: 3, deep: { get() { return typeof this; } } }; return o.deep.get();",
  "const o = undefined; return o?.a.b(1).c.d();",
  "const o = { a: (x) => ({ b: x }) }; return [o?.a(1).b, o.a?.(2).b, o.c?.(3).b.d];",
  "const o = { a: () => null }; return o?.a()?.b.c();",
  "class A { constructor(x) { this.x = x; } y() { return this.x; } } class B extends A { constructor() { super(4); } y() { return super.y() + 1; } } return new B().y();",
  "class A { static make() { return new this(); } n = { a: 1 }; } return A.make().n.a;",
  "return new (class { constructor() { return { a: new Date(0).getTime() }; } })().a;",
  "function f() { return new.target === undefined; } return [f(), new f() instanceof f];",
  "const tag = (s, ...v) => s.raw.join('|') + v.join(','); return tag`a${1}b${[2].map((x) => x)}c`;",
  "const o = { tag() { return this === o; } }; return o.tag`x`;",
  "let a, b; ({ a, b = 5 } = { a: 1 }); [a, b] = [b, a]; return [a, b];",
  "let o = {}; ({ x: o.p, ...o.rest } = { x: 1, y: 2, z: 3 }); return o;",
  "const { a, ...rest } = { a: 1, b: 2, c: 3 }; return [a, rest];",
  "const f = ({ a, ...rest }, [b] = [2]) => [a, rest, b]; return f({ a: 1, c: 3 });",
  "const f = ({ ...all }) => all; return f({ a: 1 });",
  "const f = ({ length }) => length; return [f('abc'), f([1, 2])];",
  "const f = ({ a }) => a; return f(undefined);",
  "const f = ({ a: { b } }) => b; return f({});",
  "const f = ({ a = 1, b = a + 1 } = {}) => [a, b]; return [f(), f({ a: 5 }), f.length];",
  "const r = []; for (const { a, b } of [{ a: 1, b: 2 }, { a: 3 }]) r.push(a, b); return r;",
  "const r = []; for (const [k, { v }] of Object.entries({ x: { v: 1 }, y: { v: 2 } })) r.push(k, v); return r;",
  "const r = []; for (const k in { a: 1, b: 2 }) r.push(k); return r;",
  "const xs = [{ a: 1 }, { a: 2 }]; const r = []; for (let i = 0; i < xs.length; i++) r.push({ v: xs[i].a }); return r;",
  "const xs = undefined; let i = 0; return { v: xs ? xs[i].a : 1 };",
  "const f = (o) => ({ v: o ? o.a : 1 }); return [f(), f({ a: 2 })];",
  "try { JSON.parse('{'); } catch { return 'caught'; } finally { [1].map(String); }",
  "const f = () => { try { throw { a: 1 }; } catch ({ a }) { return a; } finally { [].map(String); } }; return f();",
  "a: try { break a; } finally { [1].map(String); } return 1;",
  "if (false) try { f(); } catch {} else return 2;",
  "outer: for (const x of [1, 2]) { for (const y of [1, 2]) { if (y === 2) continue outer; if (x === 2) return [x, y]; } }",
  "function* g() { const x = yield String(1); yield [x].map((y) => y + 1); } const it = g(); return [it.next().value, it.next(4).value, it.next().done];",
  "function* g() { yield* [1, 2].map((x) => x); } return [...g()];",
  "function* g() { return [String(yield 1), yield 2]; } const it = g(); it.next(); it.next('a'); return it.next('b').value;",
  "return{a:1}.a",
  "return(function () { return 3; })()",
  "const x = typeof{} + void String(1); return x",
  "return ((a, b) => a + b)(...[1, 2])",
  "const f = (...xs) => xs.length; return [f(...[1, 2], 3), f.call(null, 1)]",
  "const o = { f() { return arguments.length; } }; return [o.f(1, 2), o['f']()]",
  "const o = { a: { b: 1 } }; delete o.a.b; return [o, delete o.a]",
  "const o = { get x() { return [1].map((y) => y)[0]; }, ['k' + String(1)]: 2, async m() {}, *g() {} }; return [o.x, o.k1, Object.keys(o)]",
  "const o = Object.create(null); o.a = 1; const { a } = o; const f = ({ a }) => a; return [a, f(o)]",
  "let n = 0; const next = () => ({ n: n++ }); const xs = [next(), next()]; return [xs, n]",
  "const x = 5; return ((x) => { const w = x.y; { const r = { w }; let x = 1; return [r, x]; } })({ y: 2 })",
  "switch (String(1)) { case '1': { const { length } = 'abc'; return length; } default: return 0; }",
  "const f = (n) => n === 0 ? [] : [{ n }, ...f(n - 1)]; return f(3)",
  "return `${[1, 2].map((x) => `${x}${{ a: x }.a}`)}`",
  "return [1, 2, 3].includes(2) ? { a: [1].length } : { b: 1 }",
  "var { p } = { p: 1 }; var { p } = { p: 2 }; return p",
  "return eval === undefined || [3].at(-1)",
  "const w = new WeakMap(); const k = {}; w.set(k, { a: 1 }); return w.get(k)",
  "'use strict'; return this === undefined",
  "const f = function () { 'use strict'; return this; }; return f() === undefined",
  "return nope.a",
  "let n = 0; const xs = [{ a: n++ }, { a: n++, b: [{ c: n }, { c: n++ }] }, { ...{ a: n } }]; return [xs, n];",
  "return [{ a: 1 }, { get a() { return nope.b; } }].map((x) => x.a)",
  "return [{ a: 1 }, { a: nope.b }]",
  "return (void 0)()",
  "throw { a: 1 }",
];

describe("marks do not change what a plan does", () => {
  for (const body of bodies) {
    it(body, () => {
      const text = `"use strict";\nconst ended = (() => { try { return { value: (function () { ${body} })() }; } catch (error) { return { thrown: String(error) }; } })();\n`;
      const file = new PlanFile({ uri: "file:///plans/plan.js", version: 1, text }, 3);
      expect(file.syntaxError).toBeUndefined();
      expect(file.instrumented?.refused).toEqual([]);
      const js = file.instrumented?.js.text ?? "";
      expect(js.split("\n").length).toBe(text.split("\n").length);
      expect(run(`${marks}\n${js}`)).toBe(run(text));
      expect(run("open.length", js)).toBe("[0]");
    });
  }

  it("asynchronous ones neither", async () => {
    const text = `
      const later = async (x) => { await null; return { x }; };
      const all = async () => {
        const made = [];
        for (const x of [1, 2]) made.push((await later(x)).x);
        for await (const { x } of [later(3), later(4)]) made.push(x);
        try { await Promise.reject({ a: 5 }); } catch ({ a }) { made.push(a); }
        return made.concat(await Promise.all([6, 7].map(async (x) => (await later(x)).x)));
      };
      globalThis.ended = all();`;
    const file = new PlanFile({ uri: "file:///plans/plan.js", version: 1, text }, 0);
    const context = { ended: Promise.resolve() as Promise<unknown> };
    runInNewContext(`${marks}\n${file.instrumented?.js.text}`, context);
    expect(JSON.stringify(await context.ended)).toBe("[1,2,3,4,5,6,7]");
  });
});

/** The sandbox's functions in their plainest form. */
const marks = `
const open = [], allocations = new WeakMap();
const __enter = (site, ...seen) => { const token = open.slice(); open.push({ site, seen: seen.map((o) => Object(o) === o && allocations.get(o)) }); return token; };
const __leave = (token, value) => { open.length = 0; open.push(...token); return value; };
const __open = () => open.slice();
const __awaited = (value) => value;
const __watched = (value) => value;
const __literal = (literal, object, ...seen) => { allocations.set(object, { literal, seen: seen.length }); return object; };
const __literals = (first, list) => { list.forEach((object, at) => __literal(first + at, object)); return list; };
const __self = Symbol();
Object.defineProperty(Object.prototype, __self, { get() { "use strict"; return this; } });`;

function run(text: string, js?: string): string {
  const whole =
    js === undefined ? `${text}\nJSON.stringify([ended])` : `${marks}\n${js}\nJSON.stringify([${text}])`;
  return String(runInNewContext(whole));
}
