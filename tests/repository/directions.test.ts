import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, test } from "vitest";
import table from "./rooms.json";

const house = fileURLToPath(new URL("../..", import.meta.url));

interface Room {
  readonly rooms: readonly string[];
  readonly packages: readonly string[];
  readonly typesFrom?: readonly string[];
  readonly typesFromPackages?: readonly string[];
}

const rooms: Readonly<Record<string, Room>> = table.rooms;

interface Import {
  readonly file: string;
  readonly line: number;
  readonly to: string;
  readonly typeOnly: boolean;
}

const sources = sourceFiles().map(parse);
const importsByFile = new Map(sources.map((source) => [source.fileName, importsOf(source)]));

test("imports go down the table of rooms, never up", () => {
  const imports = [...importsByFile.values()].flat();
  for (const room of Object.keys(rooms).filter((name) => !roomsOfOthers.has(name))) {
    const ownFiles = sources.filter(({ fileName }) => roomOf(fileName) === room);
    expect(ownFiles.length, `no file is read of ${room}: the reader of sources is broken`).toBeGreaterThan(0);
  }
  expect(imports.length, "the reader of imports finds none: it is broken").toBeGreaterThan(100);
  expect(imports.map(brokenArrow).filter((arrow) => arrow !== undefined)).toEqual([]);
});

test.each(Object.entries(rooms))(
  "%s may import nothing that its line of the table does not name",
  (from, room) => {
    const file = `${from}/some-file.ts`;
    const up = Object.keys(rooms).filter((other) => other !== from && !room.rooms.includes(other));
    for (const to of up) {
      const typesAllowed = room.typesFrom?.includes(to) ?? false;
      const path = `${"../".repeat(from.split("/").length)}${to}/other.ts`;
      const said = `${file}:1: ${from} may not import ${to}`;
      expect(brokenArrow({ file, line: 1, to: path, typeOnly: false })).toBe(said);
      expect(brokenArrow({ file, line: 1, to: path, typeOnly: true })).toBe(typesAllowed ? undefined : said);
    }
    expect(brokenArrow({ file, line: 1, to: "nobodys-package", typeOnly: true })).toBeDefined();
  },
);

test("the table allows no circle: what a room may import never leads back to it", () => {
  const below = (room: string, seen = new Set<string>()): Set<string> => {
    for (const next of rooms[room]?.rooms ?? []) if (!seen.has(next)) below(next, seen.add(next));
    return seen;
  };
  expect(Object.keys(rooms).filter((room) => below(room).has(room))).toEqual([]);
});

test("only tests and testers import a tester", () => {
  const testers = importsOf(parse("library/rules/bus/studs.test.ts")).filter(({ to }) => isTester(to));
  expect(testers, "a test's tester is not recognised: the check is broken").toHaveLength(1);
  const found = sources.flatMap(importsOf).filter(({ to }) => isTester(to));
  expect(found).toEqual([]);
});

test("no file imports itself through others, not even for types", () => {
  const imports = new Map(
    [...importsByFile].map(([file, own]) => [
      file,
      own.map(importedFile).filter((to) => importsByFile.has(to)),
    ]),
  );
  expect(
    [...imports.values()].flat().length,
    "imports between files are not found: the test is broken",
  ).toBeGreaterThan(1000);
  expect(circlesIn(imports)).toEqual([]);
});

test("a circle is found, and named once by all its files", () => {
  const imports = new Map([
    ["a.ts", ["b.ts", "d.ts"]],
    ["b.ts", ["c.ts"]],
    ["c.ts", ["a.ts"]],
    ["d.ts", ["c.ts", "e.ts"]],
    ["e.ts", []],
    ["f.ts", ["f.ts"]],
  ]);
  expect(circlesIn(imports)).toEqual(["a.ts, b.ts, c.ts, d.ts", "f.ts"]);
});

test("every way to import is seen", () => {
  const text = `import a from "./a.ts";
import type { B } from "./b.ts";
export { c } from "./c.ts";
const d = await import("./d.ts");
type E = import("./e.ts").E;
const f = require("./f.ts");
`;
  const seen = importsOf(ts.createSourceFile("library/x.ts", text, ts.ScriptTarget.Latest, true));
  expect(seen.map(({ line, to, typeOnly }) => [line, to, typeOnly])).toEqual([
    [1, "./a.ts", false],
    [2, "./b.ts", true],
    [3, "./c.ts", false],
    [4, "./d.ts", false],
    [5, "./e.ts", true],
    [6, "./f.ts", false],
  ]);
});

test("nothing in library or the language service writes to a console, or knows the process", () => {
  const found = sources
    .filter(({ fileName }) => /^(?:library|server\/language)\//.test(fileName))
    .flatMap((source) => usesOf(source, new Set(["console", "process", "setTimeout", "setInterval"])));
  expect(found).toEqual([]);
});

test("the engine asks neither clock nor chance", () => {
  const engine = sources.filter(({ fileName }) => fileName.startsWith("library/"));
  expect(engine.flatMap((source) => usesOf(source, new Set(["Date", "performance", "crypto"])))).toEqual([]);
  expect(engine.filter(({ text }) => text.includes("Math.random")).map(({ fileName }) => fileName)).toEqual(
    [],
  );
});

test("no room keeps state for the whole process, save tables and what is worked out of them", () => {
  const found = sources.filter(({ fileName }) => !insideSandbox.test(fileName)).flatMap(processWideState);
  expect(found.filter((place) => !workedOutOnce.has(place))).toEqual([]);
  expect(
    [...workedOutOnce].filter((place) => !found.includes(place)),
    "named here, but gone",
  ).toEqual([]);
});

/** Not part of the product: the initial content of a builder's own folder. */
const roomsOfOthers = new Set(["library/templates"]);

/**
 * Its process belongs to one plan: the context is made anew for each. The library's functions run there too, and count their
 * calls.
 */
const insideSandbox = /^server\/evaluate\/sandbox\/inside\/|^library\/plan\/numbering\.ts$/;

/** Maps filled only with results of the tables: the same for any order of requests. */
const workedOutOnce = new Set([
  "library/analysis/made-sizes.ts: conductorsMade",
  "library/rules/wording/format-number.ts: formats",
]);

test("an arrow that points up is named with file and line", () => {
  const up: Import = {
    file: "library/analysis/ampacity.ts",
    line: 3,
    to: "../rules/rule.ts",
    typeOnly: false,
  };
  expect(brokenArrow(up)).toBe(
    "library/analysis/ampacity.ts:3: library/analysis may not import library/rules",
  );
  const files: Import = { file: "library/model/run.ts", line: 1, to: "node:fs", typeOnly: false };
  expect(brokenArrow(files)).toBe("library/model/run.ts:1: library/model may not import node:fs");
});

function brokenArrow({ file, line, to, typeOnly }: Import): string | undefined {
  const from = roomOf(file);
  const room = rooms[from];
  if (!room) return `${file}:${line}: ${file} stands in no room of tests/repository/rooms.json`;
  if (!to.startsWith(".")) {
    const allowed = [...room.packages, ...(typeOnly ? (room.typesFromPackages ?? []) : [])];
    const fits = allowed.some((name) => to === name || to.startsWith(name.endsWith(":") ? name : `${name}/`));
    return fits ? undefined : `${file}:${line}: ${from} may not import ${to}`;
  }
  const target = join(dirname(file), to).split(sep).join("/");
  // A package's own manifest is data, not a room.
  if (target.endsWith("package.json")) return undefined;
  const reached = roomOf(target);
  const allowed = [from, ...room.rooms, ...(typeOnly ? (room.typesFrom ?? []) : [])];
  return allowed.includes(reached) ? undefined : `${file}:${line}: ${from} may not import ${reached}`;
}

function importedFile({ file, to }: Import): string {
  return to.startsWith(".") ? join(dirname(file), to).split(sep).join("/") : to;
}

/**
 * Files that import one another, directly or through others: the strongly connected components of the imports (Tarjan,
 * "Depth-first search and linear graph algorithms", 1972). Each as the list of its files.
 */
function circlesIn(imports: ReadonlyMap<string, readonly string[]>): string[] {
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const circles: string[] = [];
  const enter = (file: string): void => {
    order.set(file, order.size);
    low.set(file, order.get(file)!);
    open.push(file);
    for (const to of imports.get(file) ?? []) {
      if (!order.has(to)) enter(to);
      // A file that has left the list belongs to a component that is complete.
      if (open.includes(to)) low.set(file, Math.min(low.get(file)!, low.get(to)!));
    }
    if (low.get(file) !== order.get(file)) return;
    const members = open.splice(open.indexOf(file));
    if (members.length > 1 || imports.get(file)?.includes(file)) circles.push(members.sort().join(", "));
  };
  for (const file of imports.keys()) if (!order.has(file)) enter(file);
  return circles;
}

function roomOf(file: string): string {
  const matches = Object.keys(rooms).filter((room) => file.startsWith(`${room}/`));
  return matches.sort((a, b) => b.length - a.length)[0] ?? "";
}

function isTester(specifier: string): boolean {
  return specifier.endsWith(".tester.ts");
}

/** Shipped sources: tests and testers may reach across rooms. */
function sourceFiles(): string[] {
  return ["library", "server", "extension"].flatMap((folder) =>
    readdirSync(join(house, folder), { recursive: true, withFileTypes: true })
      .filter(
        (entry) =>
          entry.isFile() &&
          entry.name.endsWith(".ts") &&
          !/\.test\.ts$|\.tester\.ts$|\.d\.ts$/.test(entry.name),
      )
      .map((entry) => relative(house, join(entry.parentPath, entry.name)).split(sep).join("/"))
      .filter((file) => !/(^|\/)(node_modules|dist|templates)\//.test(file)),
  );
}

function parse(file: string): ts.SourceFile {
  return ts.createSourceFile(file, readFileSync(join(house, file), "utf8"), ts.ScriptTarget.Latest, true);
}

function importsOf(source: ts.SourceFile): Import[] {
  const imports: Import[] = [];
  const add = (specifier: ts.Node | undefined, typeOnly: boolean) => {
    if (!specifier || !ts.isStringLiteral(specifier)) return;
    const line = source.getLineAndCharacterOfPosition(specifier.end).line + 1;
    imports.push({ file: source.fileName, line, to: specifier.text, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node))
      add(node.moduleSpecifier, isTypeOnly(node));
    else if (ts.isImportTypeNode(node))
      add(ts.isLiteralTypeNode(node.argument) ? node.argument.literal : undefined, true);
    else if (ts.isCallExpression(node)) {
      const { expression, arguments: given } = node;
      const loads =
        expression.kind === ts.SyntaxKind.ImportKeyword ||
        (ts.isIdentifier(expression) && expression.text === "require");
      if (loads) add(given[0], false);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return imports;
}

/** The uses of global names, by file and line. */
function usesOf(source: ts.SourceFile, names: ReadonlySet<string>): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const { parent } = node;
    const isName = ts.isIdentifier(node) && names.has(node.text);
    const isProperty =
      isName &&
      ((ts.isPropertyAccessExpression(parent) && parent.name === node) || ts.isPropertyAssignment(parent));
    if (isName && !isProperty) {
      const line = source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
      found.push(`${source.fileName}:${line}: ${node.text}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** Variables at the top of a file that can change: `let`, and maps and sets that are neither read-only nor weak. */
function processWideState(source: ts.SourceFile): string[] {
  return source.statements.filter(ts.isVariableStatement).flatMap(({ declarationList }) =>
    declarationList.declarations
      .filter(({ initializer, type }) => {
        if (!(declarationList.flags & ts.NodeFlags.Const)) return true;
        const made = initializer && ts.isNewExpression(initializer) ? initializer : undefined;
        const growing = made && /^(?:Map|Set)$/.test(made.expression.getText(source));
        // A collection filled at its creation is a table.
        return growing && !type?.getText(source).startsWith("Readonly") && !made.arguments?.length;
      })
      .map(({ name }) => `${source.fileName}: ${name.getText(source)}`),
  );
}

function isTypeOnly(statement: ts.ImportDeclaration | ts.ExportDeclaration): boolean {
  if (ts.isExportDeclaration(statement)) return statement.isTypeOnly;
  const clause = statement.importClause;
  if (!clause || clause.isTypeOnly) return clause !== undefined;
  const names = clause.namedBindings;
  return (
    !clause.name &&
    names !== undefined &&
    ts.isNamedImports(names) &&
    names.elements.every((name) => name.isTypeOnly)
  );
}
