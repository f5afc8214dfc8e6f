import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { FileCache } from "./file-cache.ts";
import { editedToken } from "./one-token-edit.ts";
import { PlanFile } from "./parse.ts";

const uri = "file:///camper/plan.ts";
const call = 'import { circuit } from "loomwright";\ncircuit({ load: 4, oneWayM: 3, mm2: 6 });\n';

const read = (text: string, how?: ConstructorParameters<typeof PlanFile>[2]) =>
  new PlanFile({ uri, version: 1, text }, 0, how);

describe("a text is refused at the character that", () => {
  test.each([
    ["ends the text for the engine", "// a\0b", 4, "U+0000"],
    ["is the first half of another one", "// a\ud800\n", 4, "U+D800"],
    ["is the second half of another one", 'const a = "\udfff";', 11, "U+DFFF"],
    ["is a space for the parser alone", "const a =\u200b1;", 9, "U+200B"],
    ["is a space for the parser alone, behind a comment", "const a = /* \u200b */\u00851;", 17, "U+0085"],
  ])("%s", (_, line, at, code) => {
    const { refusal, instrumented, syntaxError } = read(`${line}\n${call}`);
    expect(refusal).toMatchObject({ reason: "character-refused", start: at, end: at + 1 });
    expect(refusal?.detail).toContain(code);
    expect([instrumented, syntaxError]).toEqual([undefined, undefined]);
  });
});

test.each([
  "// \u200b\u0085\u180e",
  "/* \u200b */",
  'const a = "\u200b";',
  "const a = `\u200b${1}\u200b`;",
  "const a = /\u200b/;",
  'const a = "\\0\\ud800", b = "\u{1f600}";',
])("a text is read that has such a character where it does no harm: %j", (line) => {
  expect(read(`${line}\n${call}`).instrumented?.sites).toHaveLength(1);
});

test("a byte order mark before a hashbang leaves all at its place", () => {
  const text = `\ufeff#!/usr/bin/env node\n${call}`;
  const { instrumented, tree } = read(text);
  expect(instrumented?.sites.map(({ node }) => text.slice(node.getStart(tree.source), node.end))).toEqual([
    "circuit({ load: 4, oneWayM: 3, mm2: 6 })",
  ]);
  expect(instrumented?.js.text.split("\n")).toHaveLength(text.split("\n").length);
});

describe("what is nested too deeply is refused, at the nest", () => {
  test.each([
    ["lists", `const a = ${"[".repeat(600)}1${"]".repeat(600)};\n`, "["],
    ["parentheses", `const a = ${"(".repeat(20_000)}1${")".repeat(20_000)};\n`, "("],
    ["functions", `const a = ${"()=>{".repeat(20_000)}`, "{"],
    ["sums", `const a = (${"1+".repeat(20_000)}1);\n`, "("],
    ["conditions", `const a = (${"b?c:".repeat(5_000)}1);\n`, "("],
    ["calls of calls", `const a = b${"()".repeat(20_000)};\n`, "("],
  ])("%s", (_, nest, first) => {
    const text = `${nest}${call}`;
    const { refusal } = read(text);
    expect(refusal?.reason).toBe("nested-too-deeply");
    expect(text.slice(refusal?.start, refusal?.end)).toBe(first);
  });

  test("and 400 levels are read", () => {
    expect(
      read(`const a = ${"[".repeat(400)}1${"]".repeat(400)};\n${call}`).instrumented?.sites,
    ).toHaveLength(1);
  });
});

/** Texts that TypeScript's parser tries in an astronomical number of ways; the depth alone decides. */
const slowTexts: readonly [string, (depth: number) => string][] = [
  ["calls of async", (depth) => `${"async(".repeat(depth)}1${")".repeat(depth)}`],
  ["calls of async with lists", (depth) => `${"async(a,".repeat(depth)}1${")".repeat(depth)}`],
  ["generic calls of async", (depth) => `${"async<T>(".repeat(depth)}1${")".repeat(depth)}`],
  ["conditions of async", (depth) => `${"x?async(".repeat(depth)}1${"):2".repeat(depth)}`],
  ["calls of async that do not end", (depth) => "async(a,".repeat(depth)],
];

describe("a text that the parser does not come to an end with", () => {
  test.each(slowTexts)("is refused at its nest, in every kind of file that it holds up: %s", (_, text) => {
    // Where `<` may begin an element, the parser takes no generic call for an arrow function, and is soon done.
    const endings = text(1).includes("<T>") ? ["ts", "mts"] : ["ts", "tsx", "js", "mts"];
    for (const ending of endings) {
      const { refusal, tree } = new PlanFile(
        { uri: `file:///plan.${ending}`, version: 1, text: `${call}${text(80)}` },
        0,
        { limitMs: 50 },
      );
      expect(refusal).toMatchObject({ reason: "reading-too-slow", detail: "0.05 s" });
      expect(refusal?.start).toBe(call.length + text(80).indexOf("("));
      expect(tree.source.statements).toHaveLength(0);
    }
  });

  test("leaves the parser as it is in a fresh process, wherever it was interrupted", () => {
    const expected = treesInFreshProcess();
    for (const [index, [, text]] of slowTexts.entries()) {
      const slow = read(`${call}${text(80)}`, { limitMs: 10 + 7 * index });
      expect(slow.refusal?.reason).toBe("reading-too-slow");
      expect(mixed.map((after) => outline(read(after).tree.source))).toEqual(expected);
    }
  });

  test("is refused as an edit too, and the edit after it is read", () => {
    const sound = read(call);
    const slow = read(`${call}${slowTexts[0]![1](80)}`, { before: sound, limitMs: 50 });
    expect(slow.refusal?.reason).toBe("reading-too-slow");
    const after = read(`${call}circuit({ load: 5 });`, { before: slow });
    expect(after.instrumented?.sites).toHaveLength(2);
    // The older version has a tree again, too.
    expect(sound.tree.source.text).toBe(call);
    expect(sound.tree.instrumented?.sites).toHaveLength(1);
  });

  test("costs its time once, and more of it only when it is to be run", () => {
    const cache = new FileCache();
    const source = (version: number) => ({ uri, version, text: slowTexts[0]![1](80) });
    const glanced = cache.glance(source(1));
    expect(glanced.refusal?.detail).toBe("0.15 s");
    expect(cache.glance(source(2)).refusal).toBe(glanced.refusal);
    const asked = cache.get(source(2));
    expect(asked.refusal?.detail).not.toBe("0.15 s");
    cache.forget(uri);
    expect(cache.get(source(3)).refusal).toBe(asked.refusal);
    expect(cache.glance(source(3)).refusal).toBe(asked.refusal);
    expect(new FileCache(cache).get(source(3)).refusal).toBe(asked.refusal);
    expect(cache.get({ uri, version: 4, text: call }).instrumented).toBeDefined();
  });
});

describe("an edit changes one token alone", () => {
  test.each([
    ["a figure", "circuit({ load: 4 });", "circuit({ load: 14.5 });"],
    ["a text in quotes", 'circuit({ name: "lamp" });', 'circuit({ name: "lamps(" });'],
    ["a name", "circuit({ ...panel });", "circuit({ ...panels });"],
  ])("%s", (_, before, after) => {
    expect(isOneToken(before, after)).toBe(true);
  });

  test.each([
    ["a keyword of an identifier", "const a = asyn(1);", "const a = async(1);"],
    ["an identifier of a keyword that is a name", "const a = async(1);", "const a = asyncs(1);"],
    ["two tokens of one", "circuit({ load: 14 });", "circuit({ load: 1 4 });"],
    ["one token of two", "circuit({ load: 1 .toFixed });", "circuit({ load: 1.toFixed });"],
    ["a text that does not end", 'a = "b"; c = "d";', 'a = "b; c = "d";'],
    ["a text that ends earlier", 'a = "b(c";', 'a = "b"(c";'],
    ["code of a comment", "/* a */ b;", "/ a */ b;"],
    ["code of a text", "`a${1}`;", "`a{1}`;"],
    ["a bracket", "a(1);", "a((1);"],
    ["a figure with an error", "a(1);", "a(1e);"],
    ["several", "a(1, 2);", "a(2, 3);"],
  ])("not if it makes %s", (_, before, after) => {
    expect(isOneToken(before, after)).toBe(false);
  });

  test.each(slowTexts)("and so no text begins to take its time without a limit: %s", (_, text) => {
    const slow = text(80);
    for (const [hidden, shown] of [
      [`"${slow}"`, `${slow}"`],
      [`/*${slow}*/`, slow],
      [`\`${slow}\``, slow],
      [slow.replaceAll("async", "asynk"), slow],
    ] as const) {
      const before = read(`${call}${hidden}`);
      expect(before.refusal).toBeUndefined();
      expect(read(`${call}${shown}`, { before, limitMs: 50 }).refusal?.reason).toBe("reading-too-slow");
    }
  });
});

describe("changing one literal gives what reading the text anew gives", () => {
  const others: Readonly<Record<string, readonly string[]>> = {
    '"': ['""', '"another text"', '"\\u{1f600}"'],
    "'": ["''", "'another text'"],
    other: ["7", "1_000.25", "0x1F", "1e3"],
  };

  test.each([
    ...readdirSync(examples, { recursive: true, encoding: "utf8" })
      .filter((file) => /\.m?ts$/.test(file))
      .map((file): [string, string] => [file, readFileSync(new URL(file, examples), "utf8")]),
    ["a table", table],
    ["calls in all forms", formsOfCalls],
  ])("%s", (_, text) => {
    const literals = literalsIn(read(text).tree.source);
    expect(literals.length).toBeGreaterThan(0);
    const asBefore = everythingOf(read(text));
    const step = Math.ceil(literals.length / 5);
    for (let index = 0; index < literals.length; index += step) {
      const { start, end } = literals[index]!;
      const was = text.slice(start, end);
      for (const other of others[was[0]!] ?? others.other!) {
        const after = text.slice(0, start) + other + text.slice(end);
        const expected = everythingOf(read(after));
        const changed = read(after, { before: read(text) });
        expect(everythingOf(changed)).toBe(expected);
        expect(everythingOf(read(text, { before: changed }))).toBe(asBefore);
      }
    }
  });
});

const examples = new URL("../../../examples/", import.meta.url);

const table = `import { circuit } from "loomwright";
const rows = [
${Array.from({ length: 30 }, (_, row) => `  { name: 'row ${row}', load: ${row}, oneWayM: 3, size: { mm2: 6 } },`).join("\n")}
];
for (const row of rows) circuit({ ...row.size, ...row, continuous: row.load > 5 });
`;

const formsOfCalls = `import { battery, build as system, circuit } from "loomwright";
type Kind = "pump" | 3;
const sizes = [4, 10, "16"] as const satisfies unknown;
const house = battery({ "name": "house", capacityAh: 100 });
function circuitOf(load = 2) { return circuit({ load, "oneWayM": 3, accept: { "a/b": "known" } }); }
circuit({ from: house.positive, load: 4, protect: { ratingA: 10 } }); circuit({ from: house.positive, load: 4 });
{ const circuit = (given: { load: 1 | 2 }) => given; circuit({ load: 1 }); }
for (const size of sizes) circuit({ name: \`c\${size}\${1}\`, load: 3 as number, gauge: size });
const { load: kept = 5 } = { load: 6, "x": -7 };
export { kept as "kept load" };
export default { a: [1, [2, { "b": 3 }]], [\`\${4}\`]: 5 };
`;

function literalsIn(source: ts.SourceFile) {
  const found: { readonly start: number; readonly end: number; readonly value: string }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isNumericLiteral(node) || ts.isStringLiteral(node))
      found.push({ start: node.getStart(source), end: node.end, value: node.text });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** All that a text is read for, as text, without the tree's own objects. */
function everythingOf({ instrumented, syntaxError, refusal, tree }: PlanFile): string {
  const { source } = tree;
  const rangeOf = ({ pos, end }: ts.Node) => [pos, end];
  return JSON.stringify({
    outline: outline(source),
    literals: literalsIn(source),
    lines: source.getLineStarts(),
    syntaxError,
    refusal,
    instrumented: instrumented && {
      ...instrumented,
      js: instrumented.js.text,
      offsets: Array.from({ length: instrumented.js.text.length / 5 }, (_, at) =>
        instrumented.js.offsetBefore(5 * at),
      ),
      patterns: instrumented.patterns.map(rangeOf),
      sites: instrumented.sites.map(({ node, seen, input }) => ({
        range: rangeOf(node),
        seen,
        object: input?.object,
        named: input?.named.map(({ path, expression }) => [path, rangeOf(expression)]),
      })),
    },
  });
}

function isOneToken(before: string, after: string): boolean {
  let start = 0;
  while (before[start] === after[start]) start++;
  let same = 0;
  while (same < Math.min(before.length, after.length) - start && before.at(-1 - same) === after.at(-1 - same))
    same++;
  return (
    editedToken(read(before).tree.source, after, {
      span: { start, length: before.length - same - start },
      newLength: after.length - same - start,
    }) !== undefined
  );
}

/** Texts that the parser must try to read in several ways. */
const mixed = [
  "const a = b ? (c) : d => e;",
  "const a = b ? (c, d) => e : (f) => g;",
  "f((a), (b) => c, async (d) => e, async(g), async <T>(h: T) => h);",
  "const a = <T,>(b: T): b is T => c < d;",
  readFileSync(new URL("./parse.ts", import.meta.url), "utf8"),
];

type Outline = readonly [kind: number, pos: number, end: number, flags: number, inner: readonly Outline[]];

function outline(node: ts.Node): Outline {
  const inner: Outline[] = [];
  ts.forEachChild(node, (child) => {
    inner.push(outline(child));
  });
  return [node.kind, node.pos, node.end, node.flags & ~knownErrors, inner];
}

/** The parser's note that it has looked for errors below a node already. */
const knownErrors = 1 << 21;

function treesInFreshProcess(): unknown {
  const script = `
    const ts = require("typescript");
    const outline = (node) => {
      const inner = [];
      ts.forEachChild(node, (child) => { inner.push(outline(child)); });
      return [node.kind, node.pos, node.end, node.flags & ~${knownErrors}, inner];
    };
    const options = { languageVersion: ts.ScriptTarget.ESNext, impliedNodeFormat: ts.ModuleKind.ESNext, jsDocParsingMode: ts.JSDocParsingMode.ParseNone };
    const texts = JSON.parse(require("fs").readFileSync(0, "utf8"));
    console.log(JSON.stringify(texts.map((text) => outline(ts.createSourceFile("plan.ts", text, options, true, ts.ScriptKind.TS)))));`;
  const cwd = new URL(".", import.meta.url);
  return JSON.parse(
    execFileSync(process.execPath, ["-e", script], {
      cwd,
      input: JSON.stringify(mixed),
      encoding: "utf8",
      maxBuffer: 2 ** 26,
    }),
  );
}
