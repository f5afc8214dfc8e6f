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

test("imports go down the table of rooms, never up", () => {
  const imports = sourceFiles().flatMap(importsOf);
  expect(imports.length, "the reader of imports finds none: it is broken").toBeGreaterThan(100);
  expect(imports.map(brokenArrow).filter((arrow) => arrow !== undefined)).toEqual([]);
});

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
  const files: Import = { file: "library/model/circuit.ts", line: 1, to: "node:fs", typeOnly: false };
  expect(brokenArrow(files)).toBe("library/model/circuit.ts:1: library/model may not import node:fs");
});

function brokenArrow({ file, line, to, typeOnly }: Import): string | undefined {
  const from = roomOf(file);
  const room = rooms[from];
  if (!room) return `${file}:${line}: ${file} stands in no room of tests/house/rooms.json`;
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

function roomOf(file: string): string {
  const matches = Object.keys(rooms).filter((room) => file.startsWith(`${room}/`));
  return matches.sort((a, b) => b.length - a.length)[0] ?? "";
}

/** Sources that are shipped: tests and testers may reach across rooms, and the rules' tester is one. */
function sourceFiles(): string[] {
  return ["library", "server", "extension"].flatMap((folder) =>
    readdirSync(join(house, folder), { recursive: true, withFileTypes: true })
      .filter(
        (entry) =>
          entry.isFile() &&
          entry.name.endsWith(".ts") &&
          !/\.test\.ts$|-tester\.ts$|\.d\.ts$/.test(entry.name),
      )
      .map((entry) => relative(house, join(entry.parentPath, entry.name)).split(sep).join("/"))
      .filter((file) => !/(^|\/)(node_modules|dist|template)\//.test(file)),
  );
}

function importsOf(file: string): Import[] {
  const source = ts.createSourceFile(
    file,
    readFileSync(join(house, file), "utf8"),
    ts.ScriptTarget.Latest,
    false,
  );
  return source.statements.flatMap((statement) => {
    if (!ts.isImportDeclaration(statement) && !ts.isExportDeclaration(statement)) return [];
    if (!statement.moduleSpecifier || !ts.isStringLiteral(statement.moduleSpecifier)) return [];
    const line = source.getLineAndCharacterOfPosition(statement.moduleSpecifier.end).line + 1;
    return [{ file, line, to: statement.moduleSpecifier.text, typeOnly: isTypeOnly(statement) }];
  });
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
