import ts from "typescript";
import { unwrapExpression } from "../provenance/unwrap-expression.ts";

const K = ts.SyntaxKind;

/** True if a further link of its chain follows the call: wrapping it would end the chain early. */
export function continuesOptionalChain(node: ts.CallExpression): boolean {
  if (!(node.flags & ts.NodeFlags.OptionalChain)) return false;
  let outer = node.parent;
  while (ts.isNonNullExpression(outer)) outer = outer.parent;
  return (
    (outer.flags & ts.NodeFlags.OptionalChain) !== 0 &&
    (outer as Partial<ts.CallExpression>).expression?.pos === node.pos
  );
}

/** While a generator is suspended in the middle of the call, other code runs; the call would seem open all the while. */
export function yieldsInside(node: ts.CallExpression): boolean {
  return node.arguments.some(function yields(argument): boolean {
    if (argument.kind === K.YieldExpression) return true;
    if (ts.isFunctionLike(argument)) return false;
    if (ts.isIdentifier(argument) || ts.isLiteralExpression(argument)) return false;
    // Yield is rare: check the parser's flag instead of walking everything.
    if (!(argument.flags & ts.NodeFlags.YieldContext)) return false;
    return ts.forEachChild(argument, (child) => yields(child as ts.Expression) || undefined) ?? false;
  });
}

/** True for ambient (`declare`) declarations, which are stripped. */
export function isDeclared(node: ts.Node): boolean {
  const { modifiers } = node as ts.PropertyDeclaration;
  if (!modifiers) return false;
  return modifiers.some(
    ({ kind }) => kind === K.DeclareKeyword || (kind === K.AbstractKeyword && ts.isPropertyDeclaration(node)),
  );
}

/** True for a `const` at the top of a file. */
export function isConstantOfFile(node: ts.VariableDeclaration): boolean {
  const { parent: list } = node;
  return (
    (list.flags & ts.NodeFlags.Const) !== 0 &&
    ts.isVariableStatement(list.parent) &&
    ts.isSourceFile(list.parent.parent) &&
    !isDeclared(list.parent)
  );
}

export function isExported(node: ts.VariableDeclaration): boolean {
  const statement = node.parent.parent;
  return (
    ts.isVariableStatement(statement) &&
    (statement.modifiers?.some(({ kind }) => kind === K.ExportKeyword) ?? false)
  );
}

/** True if its value can be read from the text: a literal, or a name. */
export function isPlain(node: ts.Expression): boolean {
  switch (node.kind) {
    case K.AsExpression:
    case K.SatisfiesExpression:
    case K.ParenthesizedExpression:
    case K.NonNullExpression:
      return isPlain((node as ts.ParenthesizedExpression).expression);
    case K.CallExpression:
    case K.NewExpression:
    case K.ElementAccessExpression:
    case K.AwaitExpression:
    case K.ConditionalExpression:
    case K.BinaryExpression:
      return false;
    default:
      return true;
  }
}

export function isObject(node: ts.Expression): boolean {
  const bare = unwrapExpression(node);
  return ts.isObjectLiteralExpression(bare) || ts.isArrayLiteralExpression(bare);
}

/** `import.defer` in `import.defer("./lamps.ts")`. */
export function isImportDefer(node: ts.Node): boolean {
  return ts.isMetaProperty(node) && node.keywordToken === K.ImportKeyword && node.name.text === "defer";
}

/**
 * Syntax of a regular expression that the engine does not support, in a builder's words. The engine accepts the v flag, but
 * reads its class operators as plain characters.
 */
export function notRunInPattern(literal: string): string | undefined {
  const end = literal.lastIndexOf("/");
  if (literal.includes("v", end)) return "A regular expression with the flag v";
  const pattern = literal.slice(1, end).replace(/\\.|\[(?:\\.|[^\]\\])*\]/gs, "");
  if (/\(\?[a-z]*-?[a-z]*:/.test(pattern.replaceAll("(?:", "")))
    return "A regular expression that sets flags within";
  const names = [...pattern.matchAll(/\(\?<([^=!>][^>]*)>/g)].map(([, name]) => name);
  return names.length === new Set(names).size
    ? undefined
    : "A regular expression with two groups of one name";
}

/** Syntax that the type stripper could not strip, in a builder's words. */
export function leftOverName(node: ts.Node): string {
  switch (node.kind) {
    case K.EnumDeclaration:
      return "An enum";
    case K.ModuleDeclaration:
      return "A namespace";
    case K.ImportEqualsDeclaration:
      return "import =";
    case K.ExportAssignment:
      return "export =";
    case K.NamespaceExportDeclaration:
      return "export as namespace";
    case K.WithStatement:
      return "A with statement";
    case K.TypeAssertionExpression:
      return "A type written before a value (<T>x)";
    case K.AsExpression:
    case K.SatisfiesExpression:
      return "A type in the middle of a calculation, without parentheses,";
    default:
      return "A property declared among a constructor's parameters";
  }
}
