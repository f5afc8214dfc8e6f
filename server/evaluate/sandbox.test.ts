import { afterAll, describe, expect, it } from "vitest";
import { defaultLimits, type Limits, type RunOutcome } from "./sandbox/contract.ts";
import { createSandbox } from "./sandbox.ts";

const sandbox = createSandbox();
afterAll(() => sandbox.dispose());

const root = "file:///camper/plan.ts";

/** Runs instrumented JavaScript, as the instrumenter returns it, below an import of the DSL functions on its first line. */
function run(js: string, limits: Partial<Limits> = {}): Promise<RunOutcome> {
  return runModules(
    { [root]: `import { battery, build, cable, circuit, part, scenario } from "loomwright";${js}` },
    limits,
  );
}

function runModules(
  modules: Readonly<Record<string, string>>,
  limits: Partial<Limits> = {},
  imports: Readonly<Record<string, string>> = { loomwright: "loomwright" },
): Promise<RunOutcome> {
  return sandbox.run({
    root,
    modules: Object.entries(modules).map(([uri, js]) => ({ uri, js, imports })),
    limits: { ...defaultLimits, ...limits },
  });
}

async function inputsOf(js: string): Promise<unknown[]> {
  const { records, end } = await run(js);
  expect(end).toBe("whole");
  return records.map(({ input }) => input);
}

describe("a record", () => {
  it("holds the word and what it was given, in the order of the calls", async () => {
    const { records } = await run(
      "build({ voltage: 24 }); circuit({ load: 40, protect: { ratingA: 50 } }); circuit({ load: 5 });",
    );
    expect(records).toEqual([
      { word: "build", input: { voltage: 24 }, call: -1, allocations: {} },
      { word: "circuit", input: { load: 40, protect: { ratingA: 50 } }, call: -1, allocations: {} },
      { word: "circuit", input: { load: 5 }, call: -1, allocations: {} },
    ]);
  });

  it("keeps a terminal that is not there, for that would make a lone circuit of one in a network", async () => {
    const [input] = await inputsOf(
      "circuit({ from: ({}).positve, to: undefined, protect: undefined, load: 4 });",
    );
    expect(input).toEqual({ from: { $strange: "nothing" }, to: { $strange: "nothing" }, load: 4 });
  });

  it.each([
    ["NaN", { $strange: "NaN" }],
    ["-Infinity", { $strange: "-Infinity" }],
    ["() => 1", { $strange: "a function" }],
    ["class Pump {}", { $strange: "a function" }],
    ["Symbol('a')", { $strange: "a symbol" }],
    ["12n", { $strange: "a BigInt" }],
    ["new Date()", { $strange: "an object of class Date" }],
    ["new Map()", { $strange: "an object of class Map" }],
    ["new (class Pump {})", { $strange: "an object of class Pump" }],
    ["Object.create({ load: 1 })", { $strange: "an object with inherited properties" }],
    ["Object.create({ load: 1, constructor: 5 })", { $strange: "an object with inherited properties" }],
    ["Promise.resolve(1)", { $strange: "an object of class Promise" }],
    ["/a/", { $strange: "an object of class RegExp" }],
    ["[1, undefined, NaN, 'x']", [1, { $strange: "nothing" }, { $strange: "NaN" }, "x"]],
    ["Array(1501).fill(0)", { $strange: "a list of more than 1500 values" }],
    [
      "Object.fromEntries(Array.from({ length: 301 }, (_, i) => ['p' + i, i]))",
      { $strange: "an object with more than 300 properties" },
    ],
    ["Object.create(null)", {}],
    ["null", null],
    ["-0", 0],
    ["1e308", 1e308],
    ["'n'.repeat(1_001)", "n".repeat(1_000)],
    ["'lone \\ud800 surrogate, \\0, \\u2028, \\u202e'", "lone \ud800 surrogate, \0, \u2028, \u202e"],
  ])("holds %s as plain data", async (value, expected) => {
    expect(await inputsOf(`circuit({ value: ${value} });`)).toEqual([{ value: expected }]);
  });

  it("holds anything that a word was given in place of an object", async () => {
    expect(
      await inputsOf("circuit(); circuit(null); circuit('40 A'); circuit(40); circuit(NaN); circuit([]);"),
    ).toEqual([{ $strange: "nothing" }, null, "40 A", 40, { $strange: "NaN" }, []]);
  });

  it("leaves out what is undefined, like what is absent", async () => {
    expect(await inputsOf("circuit({ load: 1, name: undefined });")).toEqual([{ load: 1 }]);
  });

  it("says where an object leads back to itself, and where it is nested too deeply", async () => {
    expect(await inputsOf("const a = { load: 1 }; a.self = a; circuit(a);")).toEqual([
      { load: 1, self: { $strange: "an object that contains itself" } },
    ]);
    const [deep] = await inputsOf("let o = 1; for (let i = 0; i < 1000; i++) o = { o }; circuit(o);");
    expect(JSON.stringify(deep)).toContain("nested too deeply");
  });

  it("keeps __proto__ and its like as properties of the object itself", async () => {
    const [input] = await inputsOf('circuit({ ["__proto__"]: { load: 1 }, constructor: 2, toString: 3 });');
    expect(Object.entries(input as object)).toEqual([
      ["__proto__", { load: 1 }],
      ["constructor", 2],
      ["toString", 3],
    ]);
    expect(Object.getPrototypeOf(input)).toBe(Object.prototype);
  });

  it("reads each property once", async () => {
    expect(
      await inputsOf("let n = 0; circuit({ get load() { return ++n; } }); circuit({ load: n });"),
    ).toEqual([{ load: 1 }, { load: 1 }]);
  });

  it("is not changed by what the plan does to the language's own objects", async () => {
    expect(
      await inputsOf(`
        for (const C of [Object, Array, String, Number]) C.prototype.toJSON = () => "forged";
        Object.defineProperty(Object.prototype, "gauge", { get: () => 4 });
        Object.prototype.value = Object.prototype.enumerable = 5;
        JSON.stringify = Object.values = Object.getPrototypeOf = WeakMap.prototype.get = WeakMap.prototype.set = () => { throw 1; };
        circuit({ load: 1, name: "a", list: [1, { x: NaN }] });`),
    ).toEqual([{ load: 1, name: "a", list: [1, { x: { $strange: "NaN" } }] }]);
  });
});

describe("a word", () => {
  it("returns what the library returns, strange values included", async () => {
    expect(
      await inputsOf(`
        const made = circuit({ load: NaN, of: Date, protect: { ratingA: 50 } });
        circuit({ kind: made.kind, nan: Number.isNaN(made.load), same: made.of === Date, rating: made.protect.ratingA,
          frozen: Object.isFrozen(made) && Object.isFrozen(made.protect) });`),
    ).toEqual([
      { load: { $strange: "NaN" }, of: { $strange: "a function" }, protect: { ratingA: 50 } },
      { kind: "circuit", nan: true, same: true, rating: 50, frozen: true },
    ]);
  });

  it("names what another word made, and passes it on as it is", async () => {
    expect(
      (
        await inputsOf(`
        const house = battery({ name: "House", accept: { a: "b" } });
        const lead = cable({ from: house.positive, to: house, deep: [{ house }] });
        circuit({ same: lead.from === house.positive && lead.to === house && lead.deep[0].house.negative.part === 0,
          id: lead.id, copied: { ...house }, terminals: Object.keys(house), own: "positive" in house });`)
      ).slice(1),
    ).toEqual([
      {
        from: { kind: "terminal", part: 0, of: "battery", terminal: "positive" },
        to: { kind: "battery", id: 0 },
        deep: [{ house: { kind: "battery", id: 0 } }],
      },
      {
        same: true,
        id: 1,
        copied: { name: "House", accept: { a: "b" }, kind: "battery", id: 0 },
        terminals: ["name", "accept", "kind", "id"],
        own: true,
      },
    ]);
  });

  it("is given what it is spread from, not its name", async () => {
    expect((await inputsOf('battery(battery({ name: "House" }))')).at(-1)).toEqual({
      name: "House",
      kind: "battery",
      id: 0,
    });
  });

  it("knows what words made by identity, whatever a plan does to the language", async () => {
    expect(
      await inputsOf(`
        const made = part({ terminals: ["in", "name", "__proto__", 5, "in"], name: "Relay" });
        WeakMap.prototype.get = () => ({ data: { forged: true } });
        WeakSet.prototype.has = () => true;
        Object.prototype.toJSON = () => "forged";
        cable({ from: made.in, to: made.name, odd: { kind: "terminal", part: 0, of: "part", terminal: "in" } });`),
    ).toEqual([
      { terminals: ["in", "name", "__proto__", 5, "in"], name: "Relay" },
      {
        from: { kind: "terminal", part: 0, of: "part", terminal: "in" },
        to: "Relay",
        odd: { kind: "terminal", part: 0, of: "part", terminal: "in" },
      },
    ]);
  });

  it("takes few values for many parts", async () => {
    const records = await inputsOf(`
      const all = Array.from({ length: 250 }, () => circuit({ load: 1, accept: { a: "", b: "", c: "" }, protect: { ratingA: 5 } }));
      scenario({ off: all });`);
    expect(records.at(-1)).toEqual({
      off: Array.from({ length: 250 }, (_, id) => ({ kind: "circuit", id })),
    });
  });
});

describe("marks", () => {
  it("tell the chain of calls and the literals that made the argument", async () => {
    const { records, calls, allocations } = await run(`
      const lamp = (load) => __leave(__enter(11), circuit(__literal(21, { load, protect: __literal(22, { ratingA: 5 }) })));
      __leave(__enter(12), lamp(2)); __leave(__enter(13), lamp(3));`);
    expect(records.map((record) => chainOf(calls, record.call))).toEqual([
      [12, 11],
      [13, 11],
    ]);
    expect(records.map((record) => allocations[record.allocations[""] as number]?.literal)).toEqual([21, 21]);
    expect(records.map((record) => allocations[record.allocations.protect as number]?.literal)).toEqual([
      22, 22,
    ]);
    expect(
      records.map((record) => chainOf(calls, allocations[record.allocations[""] as number]?.call as number)),
    ).toEqual([
      [12, 11],
      [13, 11],
    ]);
  });

  it("keep allocations of what was seen, and -1 for what has none", async () => {
    const { records, calls, allocations } = await run(`
      const loads = [__literal(1, { load: 1 }), { load: 2 }];
      for (const each of loads) __leave(__enter(5, each, 7), circuit(__literal(9, { ...each }, each)));`);
    expect(records.map(({ call }) => calls[call]?.seen.map((seen) => allocations[seen]?.literal))).toEqual([
      [1, undefined],
      [undefined, undefined],
    ]);
    expect(
      records.map((record) =>
        allocations[record.allocations[""] as number]?.seen.map((seen) => allocations[seen]?.literal),
      ),
    ).toEqual([[1], [undefined]]);
    expect(calls[records[1]?.call as number]?.seen).toEqual([-1, -1]);
  });

  it("tell of what a word returned that the word's own argument made it", async () => {
    const { records, allocations } = await run(
      "const a = circuit(__literal(4, { load: 1 })); circuit(__literal(6, { ...a }, a));",
    );
    const allocation = allocations[records[1]?.allocations[""] as number];
    expect(allocation?.seen.map((seen) => allocations[seen]?.literal)).toEqual([4]);
  });

  it("record a call with an unused result, with what was seen, by the row and in the order of the calls", async () => {
    const { records, calls, allocations, end } = await run(`
      const rows = __literals(1, [{ load: 1 }, { load: NaN }, { load: 3, protect: { ratingA: 5 } }, { load: 4 }]);
      for (const row of rows) __unused(9, row, circuit, { ...row });
      circuit({ load: 5 });`);
    expect(end).toBe("whole");
    expect(records.map(({ input }) => input)).toEqual([
      { load: 1 },
      { load: { $strange: "NaN" } },
      { load: 3, protect: { ratingA: 5 } },
      { load: 4 },
      { load: 5 },
    ]);
    const literals = records.map(({ call }) => calls[call]?.seen.map((seen) => allocations[seen]?.literal));
    expect(literals).toEqual([[1], [2], [3], [4], undefined]);
    expect(records.map(({ call }) => calls[call]?.callSite)).toEqual([9, 9, 9, 9, undefined]);
  });

  it("read each property of such a call once, and run nothing of the plan later", async () => {
    expect(
      await inputsOf(`
        let n = 0;
        for (const C of [Object, Array]) C.prototype.toJSON = () => "forged";
        __unused(1, 0, circuit, { get load() { return ++n; } });
        __unused(1, 0, circuit, new Proxy({ load: 7 }, {}));
        __unused(1, 0, circuit, null); __unused(1, 0, circuit, [1]); __unused(NaN, 0, circuit, {}); __unused(1, 0, 5, {});
        __literals(1, 5); __literals(1, [1, null]);
        circuit({ n });`),
    ).toEqual([{ load: 1 }, { load: 7 }, null, [1], { n: 1 }]);
  });

  it("never give a record the values of another, even if one is made while values are turned into text", async () => {
    const { records, end } = await run(`
      let n = 0;
      Object.defineProperty(Array.prototype, "0", { set() { if (n++ < 3) __unused(2, 0, circuit, { inner: n }); } });
      for (let i = 0; i < 40; i++) __unused(1, 0, circuit, { outer: i });`);
    expect(end).toBe("whole");
    expect(records.map(({ input }) => input).filter((input) => "outer" in (input as object))).toEqual(
      Array.from({ length: 40 }, (_, outer) => ({ outer })),
    );
    expect(records).toHaveLength(43);
  });

  it("close the calls that an exception cut short", async () => {
    const { records, calls } = await run(`
      const fail = () => { throw new Error("x"); };
      { const __t = __open(); try { __leave(__enter(1), fail()); } catch { __leave(__t); } }
      __leave(__enter(2), circuit({ load: 1 }));`);
    expect(chainOf(calls, records[0]?.call as number)).toEqual([2]);
  });

  it("are the same after await as before it, and of one job no other knows", async () => {
    const { records, calls, end } = await run(`
      const lamp = async (load) => { __leave(__open(), await 0); __leave(__enter(1), circuit({ load })); };
      await Promise.all([__leave(__enter(2), lamp(2)), __leave(__enter(3), lamp(3))]);
      const late = async () => { await 0; __leave(__enter(4), circuit({ load: 4 })); };
      await __leave(__enter(5), late());`);
    expect(end).toBe("whole");
    expect(records.map(({ call }) => chainOf(calls, call))).toEqual([[2, 1], [3, 1], [4]]);
  });

  it("give a destructured object its name", async () => {
    const { records, allocations } = await run(
      "const lamp = ({ [__self]: whole, load }) => circuit(__literal(2, { load }, whole)); lamp(__literal(1, { load: 3 }));",
    );
    expect(
      allocations[records[0]?.allocations[""] as number]?.seen.map((seen) => allocations[seen]?.literal),
    ).toEqual([1]);
  });

  it("cannot be listed, replaced or taken away, and bear any misuse", async () => {
    const { records, end } = await run(`
      for (const name of Object.getOwnPropertyNames(globalThis)) if (name.startsWith("__")) circuit({ name });
      delete globalThis.__enter; globalThis.__enter = () => { throw 1; };
      __leave({}, 1); __leave(5); __enter({ valueOf() { throw 1; } }); __enter(NaN, 1, null, undefined);
      const token = __open(); token.within = token; __leave(token);
      circuit(__literal({}, { load: 1 }));
      try { __enter = 5; } catch { circuit({ load: 2 }); }
      circuit({ load: typeof globalThis.recorded + typeof globalThis.emit + typeof globalThis.marks + typeof token.constructor });`);
    expect(end).toBe("whole");
    expect(records.map(({ input }) => input)).toEqual([
      { load: 1 },
      { load: 2 },
      { load: "undefinedundefinedundefinedundefined" },
    ]);
  });

  it("bear chains of calls far longer than the stack", async () => {
    const { records, calls, end } = await run(`
      const step = async (n) => { await 0; if (n === 0) return circuit({ load: 1 }); __enter(n); return step(n - 1); };
      const t = __open(); let chain = 0; for (let i = 0; i < 50_000; i++) __enter(i);
      circuit({ load: 1 });`);
    expect(end).toBe("whole");
    expect(chainOf(calls, records[0]?.call as number)).toHaveLength(50_000);
  });
});

describe("where a plan stopped", () => {
  it("is line and column in UTF-16 units, though the engine counts bytes", async () => {
    const line = 'const é = "é𝒳⚡"; null.gauge;';
    const { end } = await run(`\n${line}`);
    expect(end).toEqual({
      why: "error",
      began: true,
      message: "TypeError: cannot read property 'gauge' of null",
      at: { uri: root, line: 2, column: line.indexOf("null") + 1 },
      call: -1,
    });
  });

  it("is in the module that threw, with the calls open there", async () => {
    const lamps = "file:///camper/lamps.ts";
    const { end, calls } = await runModules(
      {
        [root]: 'import { lamp } from "./lamps.ts";\n__leave(__enter(7), lamp());',
        [lamps]: "export const lamp = () => {\n  throw new RangeError('no');\n};",
      },
      {},
      { "./lamps.ts": lamps },
    );
    expect(end).toMatchObject({ why: "error", message: "RangeError: no", at: { uri: lamps, line: 2 } });
    expect(chainOf(calls, (end as { call: number }).call)).toEqual([7]);
  });

  it("is told for a limit too: the call before it, or the function it is in", async () => {
    const inCall = await run("\ncircuit({ load: 1 });\nfor (;;) circuit({ load: 1 });", { records: 50 });
    expect(inCall.end).toMatchObject({ why: "records", at: { uri: root, line: 3 } });
    const lamps = "file:///camper/lamps.ts";
    const inFunction = await runModules(
      {
        [root]: 'import { lamp } from "./lamps.ts";\n__leave(__enter(7), lamp());',
        [lamps]: "\n\nexport function lamp() { for (;;) {} }",
      },
      { timeMs: 50 },
      { "./lamps.ts": lamps },
    );
    expect(inFunction.end).toMatchObject({ why: "time", at: { uri: lamps, line: 3 }, call: 0 });
    expect(inFunction.calls).toMatchObject([{ callSite: 7 }]);
  });

  it.each([
    ["throw null", "null"],
    ["throw undefined", "undefined"],
    ["throw 'flat battery'", "flat battery"],
    ["throw Symbol('a')", "a symbol"],
    ["throw {}", "an object that is not an error"],
    ["throw { message: 'low' }", "low"],
    ["throw new Error('two\\nlines\\u202e and \\0 more')", "Error: two lines and more"],
    ["throw new Error('x'.repeat(400))", `Error: ${"x".repeat(292)}…`],
    ["throw { get message() { circuit({ load: 1 }); return 'x'; } }", "an object that is not an error"],
    ["throw new Proxy({}, { getPrototypeOf() { throw 1; } })", "an error that cannot be read"],
    ["await Promise.reject(new TypeError('late'))", "TypeError: late"],
    ["await new Promise(() => {})", "the plan waits for something that never happens"],
    [
      "await import('node:fs')",
      "Error: a plan cannot import anything while it runs; use an import at the top of the file",
    ],
    [
      "await import('loomwright')",
      "Error: a plan cannot import anything while it runs; use an import at the top of the file",
    ],
  ])("%s reads as: %s", async (js, message) => {
    const { end, records } = await run(js);
    expect(end).toMatchObject({ why: "error", message });
    expect(records).toEqual([]);
  });

  it("is not taken from a stack that the plan made up", async () => {
    const { end } = await run(
      `const e = new Error("x"); e.stack = "    at f (file:///etc/passwd:1:1)\\n    at g (${root}:99:1)"; throw e;`,
    );
    expect(end).toEqual({ why: "error", began: true, message: "Error: x", call: -1 });
  });
});

describe("limits", () => {
  it.each([
    ["a loop", "for (;;) {}", { timeMs: 50 }, "time"],
    [
      "a loop that catches everything",
      "for (;;) { try { throw 1; } catch {} finally { continue; } }",
      { timeMs: 50 },
      "time",
    ],
    ["promises without end", "const f = () => Promise.resolve().then(f); f();", { timeMs: 50 }, "time"],
    ["a builtin that never looks at the clock", 'new Array(1e9).join("abc");', { timeMs: 50 }, "time"],
    [
      "many blocks of memory",
      "const a = []; for (;;) a.push(new ArrayBuffer(1e6));",
      { timeMs: 10_000 },
      "memory",
    ],
    ["one huge block of memory", "new Uint8Array(1e9);", {}, "memory"],
    [
      "many small objects",
      "const a = []; for (;;) a.push({ a });",
      { timeMs: 20_000, memoryBytes: 24 * 1024 * 1024 },
      "memory",
    ],
  ])("stop %s, and keep the records made before", async (_what, js, limits, why) => {
    const { records, end } = await run(`circuit({ load: 1 });\n${js}`, limits);
    expect(end).toMatchObject({ why });
    expect(records.map(({ input }) => input)).toEqual([{ load: 1 }]);
  });

  it.each([
    [100, 100, "whole" as const],
    [101, 100, { why: "records" as const }],
  ])("let %i circuits of 100 pass", async (made, kept, ends) => {
    const { records, end } = await run(
      `for (let i = 0; i < ${made}; i++) try { circuit({ load: i }); } catch {}`,
      { records: 100 },
    );
    expect(records).toHaveLength(kept);
    expect([end]).toMatchObject([ends]);
  });

  it("cannot be caught", async () => {
    const { records } = await run(
      'try { for (;;) {} } catch { circuit({ name: "caught" }); } finally { circuit({ name: "finally" }); }',
      { timeMs: 50 },
    );
    expect(records).toEqual([]);
  });

  it("never lead to a record that is half written", async () => {
    const { records } = await run(
      `const taken = [];
      for (let size = 1e6; size >= 1; size /= 10) try { for (;;) taken.push(new ArrayBuffer(size)); } catch {}
      for (let load = 1; load < 200; load++) try { __leave(__enter(load), circuit(__literal(load, { load, name: "n".repeat(500) }))); } catch {}
      taken.length = 0;
      circuit({ load: 200, name: "last" });`,
      { timeMs: 20_000, memoryBytes: 20 * 1024 * 1024 },
    );
    for (const { input } of records)
      expect(input).toEqual({ load: expect.any(Number), name: expect.any(String) });
    expect(records.at(-1)?.input).toEqual({ load: 200, name: "last" });
  });

  it("leave a memory error that the plan deals with to the plan", async () => {
    expect(
      await inputsOf("try { new Uint8Array(1e9); } catch (e) { circuit({ name: e.message }); }"),
    ).toEqual([{ name: "out of memory" }]);
  });
});

describe("a plan", () => {
  it("gives the same records at every time and in every place", async () => {
    const js =
      "circuit({ a: Math.random(), b: Date.now(), c: new Date().toString(), d: new Date(2026, 5, 1, 12).toISOString(), e: Date() });";
    const [first, second] = [await inputsOf(js), await inputsOf(js)];
    expect(first).toEqual(second);
    expect(first[0]).toMatchObject({ b: Date.UTC(2000, 0, 1), d: "2026-06-01T12:00:00.000Z" });
  });

  it("finds nothing that another plan has left", async () => {
    await run("globalThis.left = 1; Object.prototype.left = 2; Array.prototype.push = null;");
    expect(await inputsOf("circuit({ a: typeof left, b: typeof {}.left, c: typeof [].push });")).toEqual([
      { a: "undefined", b: "undefined", c: "function" },
    ]);
  });

  it("may write to the console, and is not heard", async () => {
    expect(await inputsOf("console.log('x'); console.table([1]); circuit({ load: 1 });")).toEqual([
      { load: 1 },
    ]);
  });

  it("has nothing of the machine within reach", async () => {
    const [input] = await inputsOf("circuit({ names: Object.getOwnPropertyNames(globalThis).join() });");
    const names = (input as { names: string }).names.split(",");
    for (const name of [
      "process",
      "require",
      "module",
      "fetch",
      "XMLHttpRequest",
      "WebSocket",
      "setTimeout",
      "setInterval",
      "performance",
      "queueMicrotask",
      "eval",
      "Atomics",
      "SharedArrayBuffer",
      "WeakRef",
      "FinalizationRegistry",
      "Worker",
      "WebAssembly",
      "std",
      "os",
      "bjson",
      "print",
      "scriptArgs",
      "navigator",
      "gc",
    ]) {
      expect(names).not.toContain(name);
    }
  });

  it.each([
    "circuit.constructor.constructor('return this')()",
    "Function('return this')()",
    "new Function('return this')()",
    "(async () => {}).constructor('return 1')",
    "(function* () {}).constructor('return 1')",
    "(async function* () {}).constructor('return 1')",
    "Reflect.construct((() => {}).constructor, ['return 1'])",
    "new (class extends Function { constructor() { super('return 1'); } })()",
  ])("cannot make code from text by %s", async (js) => {
    const { end } = await run(js);
    expect(end).toMatchObject({ why: "error", message: "EvalError: a plan cannot make code from text" });
  });

  it("still tells a function from other things", async () => {
    expect(
      await inputsOf(
        "circuit({ a: circuit instanceof Function, b: new Date() instanceof Date, c: Date.name });",
      ),
    ).toEqual([{ a: true, b: true, c: "Date" }]);
  });

  it.each([
    "node:fs",
    "https://example.org/x.js",
    "/etc/passwd",
    "loomwright/words",
    "loomwright/realm",
    "toString",
    "__proto__",
  ])("cannot import %s where the host has not resolved it", async (text) => {
    const { end } = await run(
      `import * as taken from ${JSON.stringify(text)}; circuit({ name: Object.keys(taken).join() });`,
    );
    expect(end).toMatchObject({ why: "error", message: `Error: "${text}" cannot be imported` });
  });
});

describe("the sandbox", () => {
  it("runs plans one after another, in the order they were given", async () => {
    const order: number[] = [];
    await Promise.all(
      [1, 2, 3].map(async (load) => {
        const { records } = await run(`circuit({ load: ${load} });`);
        for (const { input } of records) order.push((input as { load: number }).load);
      }),
    );
    expect(order).toEqual([1, 2, 3]);
  });

  it("says so when its worker cannot start", async () => {
    const broken = createSandbox({ workerFile: "/no/such/worker.cjs" });
    const outcome = await broken.run({ root, modules: [], limits: defaultLimits });
    expect(outcome).toMatchObject({ records: [], end: { why: "failed" } });
    await broken.dispose();
  });

  it("answers every plan, even one given when it is closed", async () => {
    const closing = createSandbox();
    await closing.run({ root, modules: [], limits: defaultLimits });
    const running = closing.run({
      root,
      modules: [{ uri: root, js: "for (;;) {}", imports: {} }],
      limits: { ...defaultLimits, timeMs: 60_000 },
    });
    const waiting = closing.run({ root, modules: [], limits: defaultLimits });
    await new Promise((resolve) => setImmediate(resolve));
    await closing.dispose();
    expect((await running).end).toEqual({ why: "failed", message: "the sandbox was closed" });
    expect((await waiting).end).toEqual({ why: "failed", message: "the sandbox was closed" });
  });

  it("says so when the plan's own file is missing", async () => {
    expect((await sandbox.run({ root, modules: [], limits: defaultLimits })).end).toMatchObject({
      why: "error",
      began: false,
    });
  });
});

/** Call sites of an open call, outermost first. */
function chainOf(calls: RunOutcome["calls"], call: number): number[] {
  const chain: number[] = [];
  for (let at = calls[call]; at; at = calls[at.within]) chain.unshift(at.callSite);
  return chain;
}
