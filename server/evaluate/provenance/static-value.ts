import ts from "typescript";

/** The value of a plain literal; undefined for all other expressions. */
export function staticValue(
  node: ts.Node,
): { readonly value: number | string | boolean | null | undefined } | undefined {
  switch (node.kind) {
    case ts.SyntaxKind.NumericLiteral:
      return { value: Number((node as ts.NumericLiteral).text) };
    case ts.SyntaxKind.StringLiteral:
    case ts.SyntaxKind.NoSubstitutionTemplateLiteral:
      return { value: (node as ts.StringLiteral).text };
    case ts.SyntaxKind.TrueKeyword:
      return { value: true };
    case ts.SyntaxKind.FalseKeyword:
      return { value: false };
    case ts.SyntaxKind.NullKeyword:
      return { value: null };
    case ts.SyntaxKind.PrefixUnaryExpression: {
      const { operator, operand } = node as ts.PrefixUnaryExpression;
      const inner = staticValue(operand);
      if (typeof inner?.value !== "number") return undefined;
      if (operator === ts.SyntaxKind.MinusToken) return { value: -inner.value };
      return operator === ts.SyntaxKind.PlusToken ? inner : undefined;
    }
    default:
      return undefined;
  }
}
