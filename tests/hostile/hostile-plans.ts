/**
 * Plans written to do harm: to hang, to fill memory, to reach the machine, to lie about their content. Each states its required
 * outcome. Every text begins with the import of the library's functions, and most then make one sound circuit that must still
 * exist at the end.
 */
export interface HostilePlan {
  readonly name: string;
  readonly text: string;
  readonly finding: "plan/cannot-run" | "plan/too-slow" | "plan/invalid-value";
  /** The text that the finding covers, or begins with. Empty if only the file is known. */
  readonly on: string;
  /** A part of its message. */
  readonly says: string;
  /** Sound circuits that the result must still contain. */
  readonly circuits: number;
  /** For plans that must meet a limit other than time, however busy the machine. */
  readonly patient?: true;
}

const goodCircuit =
  'circuit({ name: "good", load: 40, oneWayFt: 15, gauge: 4, protect: 50, insulationC: 105 });';

/** The same with one more property, whose value is malicious. */
const circuitWith = (property: string) =>
  `circuit({ name: "bad", load: 40, oneWayFt: 15, gauge: 4, protect: 50, insulationC: 105, ${property} });`;

const outOfTime = "s: look for a loop";

const begin = `import { battery, build, busBar, cable, circuit, load, motor, part, scenario } from "loomwright";\n`;

/** A plan without any harm in it. */
export const soundPlan = `${begin}${goodCircuit}\n`;

export const hostilePlans: readonly HostilePlan[] = [
  // Endless running time.
  ...tooSlow(outOfTime, [
    ["an empty loop", "for (;;) {}", "for"],
    [
      "a loop that catches what would stop it",
      "while (true) { try { throw 1; } catch {} finally { continue; } }",
      "while",
    ],
    ["a loop in a function", "const spin = () => {\n  let n = 0;\n  for (;;) n++;\n};\nspin();", "for"],
    ["a loop in a getter", "const lamp = { get load() { for (;;) {} } };\ncircuit(lamp as never);", "for"],
    ["promises that make promises", "const again = (): unknown => Promise.resolve().then(again);\nagain();"],
    [
      "an async function that never rests",
      "const forever = async () => { for (;;) await null; };\nvoid forever();",
    ],
    ["a thenable that never answers", "await { then() { for (;;) {} } };"],
    ["a generator without end", "function* numbers() { for (;;) yield 1; }\nfor (const n of numbers());"],
    [
      "a regular expression that tries everything",
      'const slow = /^(a+)+$/;\nslow.test("a".repeat(50) + "b");',
    ],
    [
      "a sort that is slower than slow",
      "const compare = () => { for (;;) {} };\n[2, 1].sort(compare);",
      "for",
    ],
    ["a join that no interrupt reaches", 'const texts = new Array(1e9);\ntexts.join("abc");'],
    [
      "a search that no interrupt reaches",
      'const text = "a".repeat(3e6);\ntext.indexOf("a".repeat(1e6) + "b");',
    ],
    [
      "a proxy that names endless properties",
      "circuit(new Proxy({}, { ownKeys() { for (;;) {} } }) as never);",
    ],
    [
      "an error whose stack never gets made",
      "(Error as any).prepareStackTrace = () => { for (;;) {} };\n(null as any).load;",
    ],
  ]),
  // Unlimited size.
  ...tooSlow("MiB of memory", [
    ["a list that grows", 'const list: unknown[] = [];\nfor (;;) list.push("x".repeat(1e6));', "repeat"],
    [
      "blocks of bytes",
      "const blocks: unknown[] = [];\nfor (;;) blocks.push(new ArrayBuffer(1e6));",
      "ArrayBuffer",
    ],
    ["one block that is far too large", "const block = new Uint8Array(1e9);", "Uint8Array"],
    ["a text spread into letters", 'const letters = "a".repeat(1e7).split("");', "split"],
  ]),
  ...tooSlow("circuits", [
    [
      "a million circuits",
      "for (let n = 1; n <= 1e6; n++) circuit({ load: n, oneWayFt: 15, gauge: 4 });",
      "circuit",
    ],
    [
      "a million circuits that catch what would stop them",
      "for (;;) { try { circuit({} as never); } catch {} }",
      "circuit",
    ],
  ]),
  // Errors, also of odd kinds.
  ...cannotRun([
    [
      "recursion without end",
      "const deeper = (): number => deeper() + 1;\ndeeper();",
      "deeper",
      "call stack",
    ],
    [
      "recursion by way of text",
      "const o = { toString(): string { return `${this}`; } };\n`${o}`;",
      "",
      "call stack",
    ],
    [
      "recursion inside the engine",
      'const brackets = "[".repeat(1e6);\nJSON.parse(brackets);',
      "brackets",
      "call stack",
    ],
    ["a text that doubles", 'let text = "x";\nfor (;;) text += text;', "", "string too long"],
    ["null, thrown", "throw null;", "", "null"],
    [
      "an error that cannot be read",
      "throw new Proxy({}, { getOwnPropertyDescriptor() { for (;;) {} } });",
      "",
      "cannot be read",
    ],
    [
      "an error with a message that never ends",
      "throw { get message() { for (;;) {} } };",
      "",
      "not an error",
    ],
    [
      "an error with line breaks and marks that turn text around",
      'throw new Error("a\\nb\\u202ec\\u0000d");',
      "Error",
      "a bc d",
    ],
    [
      "an error with a made-up stack",
      'const e = new Error("low");\ne.stack = "    at f (file:///etc/passwd:1:1)";\nthrow e;',
      "",
      "low",
    ],
    [
      "an await that is never over",
      "await new Promise(() => {});",
      "",
      "waits for something that never happens",
    ],
    ["a rejection", 'await Promise.reject(new TypeError("late"));', "TypeError", "late"],
    [
      "a getter that throws",
      'circuit({ get load(): number { throw new Error("no load"); }, oneWayFt: 15, gauge: 4 });',
      "Error",
      "no load",
    ],
    [
      "a proxy that throws",
      "circuit(new Proxy({}, { ownKeys() { throw new Error('trapped'); } }) as never);",
      "Error",
      "trapped",
    ],
    [
      "a proxy that was taken back",
      "const { proxy, revoke } = Proxy.revocable({}, {});\nrevoke();\ncircuit(proxy as never);",
      "proxy",
      "revoked",
    ],
  ]),
  // Escapes from the sandbox.
  ...cannotRun([
    [
      "code from text, by constructor.constructor",
      '(circuit as any).constructor.constructor("return this")();',
      "",
      "code from text",
    ],
    [
      "code from text, by an async function",
      '(async () => {}).constructor("return process")();',
      "",
      "code from text",
    ],
    ["code from text, by eval", 'eval("1");', "eval", "eval"],
    ["the process", "(globalThis as any).process.exit(1);", "", "exit"],
    [
      "require",
      'declare const require: any;\nrequire("node:fs").writeFileSync("taken.txt", "x");',
      "require",
      "require",
    ],
    ["a timer", "declare const setTimeout: any;\nsetTimeout(() => {}, 1);", "setTimeout", "setTimeout"],
    ["the network", 'declare const fetch: any;\nawait fetch("https://example.org/");', "fetch", "fetch"],
    [
      "waiting in shared memory",
      "declare const Atomics: any, SharedArrayBuffer: any;\nAtomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);",
      "",
      "Atomics",
    ],
  ]),
  ...refusedImports([
    ["a module of Node", "node:fs", "cannot be imported"],
    ["a module of Node without its prefix", "fs", "cannot be imported"],
    ["a URL", "https://example.org/plan.ts", "cannot be imported"],
    ["a data URL", "data:text/javascript,export default 1", "cannot be imported"],
    ["a file URL", "file:///etc/passwd", "cannot be imported"],
    ["an absolute path", "/etc/passwd", "cannot be imported"],
    ["a path that climbs out", "../outside.ts", "outside"],
    ["a path that climbs out by a detour", "./lamps/../../outside.ts", "outside"],
    ["a path that climbs out in disguise", "./%2e%2e/outside.ts", "outside"],
    ["a link that leads out", "./link.ts", "outside"],
    ["a file in a linked folder", "./linked/outside.ts", "outside"],
    ["the sandbox's own modules", "loomwright/realm", "cannot be imported"],
  ]),
  {
    name: "an import made while the plan runs",
    text: `${begin}${goodCircuit}\nconst fs = await import("node:fs");\n`,
    finding: "plan/cannot-run",
    on: "import",
    says: "import",
    circuits: 0,
  },
  // Lies about values.
  ...invalidValue([
    [
      "toJSON that says something else",
      "Object.prototype.toJSON = Number.prototype.toJSON = () => 5;",
      "minimumV: NaN",
      "NaN",
    ],
    [
      "prototypes full of traps",
      "Object.prototype.gauge = 2; Object.prototype.minimumV = 11;",
      'insulationC: "hot"',
      '"hot"',
    ],
    [
      "a language taken apart",
      "for (const key of Reflect.ownKeys(Object)) { try { if (key !== 'freeze' && key !== 'keys' && key !== 'defineProperty') delete Object[key]; } catch {} } WeakMap.prototype.get = WeakMap.prototype.set = JSON.stringify = null;",
      "minimumV: Infinity",
      "Infinity",
    ],
    [
      "a getter that never says the same twice",
      "let n = 0;",
      "get minimumV() { return n++ === 0 ? -1 : 11; }",
      "-1",
      "",
    ],
    [
      "an object that contains itself",
      "const self: any = {}; self.self = self;",
      "protectFarEnd: self",
      "protectFarEnd.self is not a property",
      "circuit",
    ],
    [
      "an object nested without end",
      "let deep: any = {}; for (let i = 0; i < 500; i++) deep = { ratingA: deep };",
      "protectFarEnd: deep",
      "an object",
      "circuit",
    ],
    [
      "an object with too many properties",
      "const wide: any = {}; for (let i = 0; i < 5000; i++) wide['p' + i] = i;",
      "protectFarEnd: wide",
      "more than 300 properties",
      "{}",
    ],
    [
      "a list of a million",
      "const many = new Array(1e6).fill(0);",
      "minimumV: many",
      "a list of more than 1500 values",
      "new Array",
    ],
    ["a function", "", "minimumV: () => 11", "a function"],
    ["a class instance", "", "minimumV: new Date()", "Date"],
    ["a symbol", "", "minimumV: Symbol('V')", "a symbol"],
    ["a BigInt", "", "minimumV: 11n", "BigInt"],
  ]),
  // Names.
  ...names([
    ["HTML", '<img src=x onerror="alert(1)"><script>alert(2)</script>'],
    ["control characters", "a\u0000b\u0007c\u001b[31md\r\ne"],
    ["right-to-left marks", "\u202egnp.exe\u2066x\u2069\u200f"],
    ["half a character", "lone \ud800 half"],
    ["three million letters", "n".repeat(100_000)],
    [
      "markup of the editor's hovers",
      "[click](command:workbench.action.quit) `${process.exit()}` | $(trash)",
    ],
  ]),
  // Networks.
  ...networks([
    [
      "a terminal of a part that does not exist",
      "from: { kind: 'terminal', part: 4_000, of: 'battery', terminal: 'positive' }",
      "from",
      "{ kind",
    ],
    [
      "a terminal of something that is no part",
      "from: { kind: 'terminal', part: 0, of: 'battery', terminal: 'positive' }",
      "from",
      "{ kind",
    ],
    [
      "a terminal with a number that is none",
      "from: { kind: 'terminal', part: NaN, of: 'battery', terminal: 'positive' }",
      "from",
      "{ kind",
    ],
    [
      "a terminal with a negative number",
      "from: { kind: 'terminal', part: -1, of: 'battery', terminal: 'positive' }",
      "from",
      "{ kind",
    ],
    [
      "a terminal that the part does not have",
      "from: { kind: 'terminal', part: 1, of: 'battery', terminal: '__proto__' }",
      "from",
      "{ kind",
    ],
    [
      "a terminal of another kind of part",
      "from: { kind: 'terminal', part: 1, of: 'busBar', terminal: 'stud' }",
      "from",
      "{ kind",
    ],
    [
      "a terminal whose getters lie",
      "from: { kind: 'terminal', get part() { return Math.random() < 2 ? 'x' : 1; }, of: 'battery', terminal: 'positive' }",
      "from",
      "{ kind",
    ],
    [
      "a terminal behind a proxy that says yes to everything",
      "from: new Proxy({}, { get: () => 1, ownKeys: () => ['kind'], getOwnPropertyDescriptor: () => ({ value: 1, enumerable: true, configurable: true }) })",
      "from",
      "new Proxy",
    ],
    ["an object that contains itself for a terminal", "from: endless", "from", "{ kind"],
    ["a whole part for a terminal", "from: house", "from", "house"],
    ["a list for a terminal", "from: [house.positive]", "from", "[house"],
    ["a function for a terminal", "from: () => house.positive", "from", "() =>"],
    ["the same terminal at both ends", "from: bus.stud", "to", "bus.stud"],
  ]),
  ...nonsense([
    ["words called with nothing", "battery(); busBar(); cable(); load(); motor(); part(); scenario();", ""],
    [
      "words called with numbers",
      "battery(1); busBar('x'); cable(NaN); load([]); part(null); scenario(true);",
      "",
    ],
    [
      "a battery that is spread into itself",
      "const twin = battery({ ...house, house, capacityAh: -1, self: house });",
      "-1",
    ],
    [
      "a part with terminals of every sort",
      "part({ terminals: ['a', 'a', '', '__proto__', 'constructor', 5, null, {}, 'n'.repeat(9_000)] });",
      "",
    ],
    ["a part with terminals that are one text", "part({ terminals: 'in' });", ""],
    [
      "a part joined to what is not there",
      "part({ terminals: ['a'], joins: [{ between: ['a', 'b'] }, { between: [] }, 5, null] });",
      "",
    ],
    [
      "a scenario of junk",
      "scenario({ name: 'x', off: [5, null, 'house', house.positive, {}, [], () => 1, { kind: 'load', id: 9e9 }, house, bus] });",
      "",
    ],
    [
      "a scenario that lists itself",
      "const list = []; const s = scenario({ name: 'x', off: list }); scenario({ name: 'y', off: [s] });",
      "",
    ],
    [
      "a scenario with a list that contains itself",
      "const list = []; list.push(list); scenario({ name: 'x', off: list });",
      "",
    ],
    [
      "a circuit that ends at itself",
      "const lamp = circuit({ from: bus.stud, returnTo: house.negative, to: { kind: 'circuit', id: 3 }, oneWayFt: 3, gauge: 12 });",
      "",
    ],
    [
      "negative resistances",
      "part({ terminals: ['a', 'b'], joins: [{ between: ['a', 'b'], milliohm: -5 }] });",
      "-5",
    ],
  ]),
  // Misuse of the checker's own instrumentation.
  {
    name: "the checker's own marks, called by hand",
    text: `${begin}declare const __enter: any, __leave: any, __literal: any, __open: any;
__leave({}, 1); __enter(NaN, 1, null); __enter({ valueOf() { for (;;) {} } }); __leave("x");
const token = __open(); try { token.within = token; } catch {} __leave(token);
${goodCircuit}
circuit(__literal(1e9, { name: "bad", load: -1, oneWayFt: 15, gauge: 4 }));\n`,
    finding: "plan/invalid-value",
    on: "",
    says: "-1",
    circuits: 1,
  },
  {
    name: "the checker's own marks, replaced",
    text: `${begin}${goodCircuit}\ndeclare let __enter: any;\n__enter = () => 5;\n`,
    finding: "plan/cannot-run",
    on: "__enter",
    says: "read-only",
    circuits: 1,
  },
];

/** A cable that is sound except for the given property. */
function networks(
  rows: readonly (readonly [name: string, property: string, on: string, text: string])[],
): HostilePlan[] {
  return rows.map(([name, property, wrong, on]) => ({
    name,
    text: `${begin}${goodCircuit}
const house: any = battery({ chemistry: "AGM", capacityAh: 100 });
const bus: any = busBar({});
const endless: any = { kind: "terminal", of: "battery", terminal: "positive" }; endless.part = endless;
cable({ ${property}, to: bus.stud, lengthM: 1, gauge: 4 } as any);
`,
    finding: "plan/invalid-value" as const,
    on,
    says: `${wrong} `,
    circuits: 1,
  }));
}

/** Statements that leave no readable network. */
function nonsense(rows: readonly (readonly [name: string, text: string, says: string])[]): HostilePlan[] {
  return rows.map(([name, text, says]) => ({
    name,
    text: `${begin}${goodCircuit}
const house: any = battery({ chemistry: "AGM", capacityAh: 100 });
const bus: any = busBar({});
${text}
`,
    finding: "plan/invalid-value" as const,
    on: "",
    says,
    circuits: 1,
  }));
}

type Row = readonly [name: string, text: string, on?: string];

function tooSlow(says: string, rows: readonly Row[]): HostilePlan[] {
  return rows.map(([name, text, on = ""]) => ({
    name,
    text: `${begin}${goodCircuit}\n${text}\n`,
    finding: "plan/too-slow",
    on,
    says,
    circuits: 1,
    ...(says === outOfTime ? {} : { patient: true }),
  }));
}

function cannotRun(
  rows: readonly (readonly [name: string, text: string, on: string, says: string])[],
): HostilePlan[] {
  return rows.map(([name, text, on, says]) => ({
    name,
    text: `${begin}${goodCircuit}\n${text}\n`,
    finding: "plan/cannot-run",
    on,
    says,
    circuits: 1,
  }));
}

/** None of such a plan is run. */
function refusedImports(
  rows: readonly (readonly [name: string, specifier: string, says: string])[],
): HostilePlan[] {
  return rows.map(([name, specifier, says]) => ({
    name: `an import of ${name}`,
    text: `${begin}import * as taken from "${specifier}";\n${goodCircuit}\ncircuit(taken as never);\n`,
    finding: "plan/cannot-run",
    on: `"${specifier}"`,
    says,
    circuits: 0,
  }));
}

function invalidValue(
  rows: readonly (readonly [name: string, before: string, property: string, says: string, on?: string])[],
): HostilePlan[] {
  return rows.map(([name, before, property, says, on]) => ({
    name: `a value: ${name}`,
    text: `${begin}${goodCircuit}
${before}
${circuitWith(property)}
`,
    finding: "plan/invalid-value",
    on: on ?? property.slice(property.indexOf(": ") + 2),
    says,
    circuits: 1,
  }));
}

/** The name itself is harmless; its effect on a program that shows it is tested where the message is made. */
function names(rows: readonly (readonly [name: string, value: string])[]): HostilePlan[] {
  return rows.map(([name, value]) => ({
    name: `a name: ${name}`,
    text: `${begin}${goodCircuit}\ncircuit({ name: ${JSON.stringify(value)}, load: -7, oneWayFt: 15, gauge: 4 });\n`,
    finding: "plan/invalid-value",
    on: "-7",
    says: "-7",
    circuits: 1,
  }));
}
