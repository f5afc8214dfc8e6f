import ts from "typescript";

/** The parameter or variable of a pattern, or of a part of it. */
export function rootOf(
  declaration: ts.Node | undefined,
): ts.ParameterDeclaration | ts.VariableDeclaration | undefined {
  let node = declaration;
  while (node && ts.isBindingElement(node)) node = node.parent.parent;
  return node && (ts.isParameter(node) || ts.isVariableDeclaration(node)) ? node : undefined;
}

/** Property names and indices from a pattern's whole value to one name in it; undefined for a rest element. */
export function pathInPattern(binding: ts.BindingElement): readonly string[] | undefined {
  const path: string[] = [];
  for (let node: ts.Node = binding; ts.isBindingElement(node); node = node.parent.parent) {
    if (node.dotDotDotToken) return undefined;
    if (ts.isArrayBindingPattern(node.parent)) path.unshift(String(node.parent.elements.indexOf(node)));
    else {
      const name = node.propertyName ?? node.name;
      if (!ts.isIdentifier(name) && !ts.isStringLiteral(name)) return undefined;
      path.unshift(name.text);
    }
  }
  return path;
}

/** The loop that sets this variable at each iteration, if there is one. */
export function loopOf(declaration: ts.VariableDeclaration): ts.ForInOrOfStatement | undefined {
  const loop = declaration.parent.parent;
  return ts.isForOfStatement(loop) ? loop : undefined;
}
