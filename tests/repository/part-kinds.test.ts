import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, test } from "vitest";
import { words } from "../../library/model/record.ts";
import { isPartWord } from "../../library/model/terminals.ts";

/*
 * No code may pass over a new kind of part in silence. The compiler names each switch and each record of kinds that
 * lacks it; this test refuses what the compiler cannot see: a `default` that takes every other kind, a list of kinds, and a
 * comparison with one kind or another.
 */

const house = fileURLToPath(new URL("../..", import.meta.url));
const kinds: ReadonlySet<string> = new Set(words.filter(isPartWord));

/** Lists that pass over no kind. */
const onPurpose: readonly string[] = [
  // Folders of rules.
  "library/documents/report/rule-groups.ts: list of alternator, battery, inverter",
  "library/documents/report/rule-groups.ts: list of disconnect, part, shunt",
];

test("no default, list or comparison passes over a kind of part", () => {
  const found = ["library", "server"].flatMap((room) =>
    readdirSync(join(house, room), { recursive: true, encoding: "utf8" })
      .filter((file) => /(?<!\.test|\.d)\.ts$/.test(file) && !/(^|\/)(node_modules|dist|plan)\//.test(file))
      .flatMap((file) => silentDoorsIn(`${room}/${file}`)),
  );
  expect(found).toEqual([]);
});

test("each of the three is found", () => {
  const text = `
    switch (part.kind) { case "shunt": return 1; default: return 0; }
    switch (part.kind) { case "shunt": return 1; default: return part satisfies never; }
    const some = new Set(["shunt", "busBar"]);
    const is = part.kind === "shunt" || part.kind === "busBar";
    const isNot = kind !== "shunt" && other && kind !== "busBar";
    const one = part.kind === "load" && part.draws.as === "motor";
  `;
  expect(silentDoors("a.ts", text)).toEqual([
    "a.ts: default beside shunt",
    "a.ts: list of shunt, busBar",
    "a.ts: comparison with shunt, busBar",
    "a.ts: comparison with shunt, busBar",
  ]);
});

function silentDoorsIn(file: string): string[] {
  return silentDoors(file, readFileSync(join(house, file), "utf8"));
}

function silentDoors(file: string, text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node, withinComparison: boolean): void => {
    if (ts.isCaseBlock(node)) {
      const cases = node.clauses.filter(ts.isCaseClause).map(({ expression }) => expression);
      const [other] = node.clauses.filter(ts.isDefaultClause);
      const [first] = cases.filter(isKind);
      if (first && other && !/satisfies never/.test(other.getText()))
        found.push(`${file}: default beside ${first.text}`);
    }
    if (ts.isArrayLiteralExpression(node)) {
      const named = node.elements.filter(isKind).map(({ text }) => text);
      if (named.length > 1) found.push(`${file}: list of ${named.slice(0, 3).join(", ")}`);
    }
    const joins = joinsComparisons(node);
    if (joins && !withinComparison) {
      for (const compared of comparedIn(node).values())
        if (compared.size > 1) found.push(`${file}: comparison with ${[...compared].join(", ")}`);
    }
    ts.forEachChild(node, (child) => visit(child, joins));
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true), false);
  return found.filter((one) => !onPurpose.includes(one));
}

function joinsComparisons(node: ts.Node): boolean {
  const joining: readonly ts.SyntaxKind[] = [
    ts.SyntaxKind.BarBarToken,
    ts.SyntaxKind.AmpersandAmpersandToken,
  ];
  return ts.isBinaryExpression(node) && joining.includes(node.operatorToken.kind);
}

/** By compared expression: the kinds that it is compared with in operands of `||` and `&&`. */
function comparedIn(node: ts.Node, found = new Map<string, Set<string>>()): Map<string, Set<string>> {
  if (ts.isParenthesizedExpression(node)) return comparedIn(node.expression, found);
  if (!ts.isBinaryExpression(node)) return found;
  if (joinsComparisons(node)) return comparedIn(node.right, comparedIn(node.left, found));
  if (isKind(node.right)) {
    const key = node.left.getText();
    found.set(key, (found.get(key) ?? new Set()).add(node.right.text));
  }
  return found;
}

function isKind(node: ts.Node): node is ts.StringLiteral {
  return ts.isStringLiteral(node) && kinds.has(node.text);
}
