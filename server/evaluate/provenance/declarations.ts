import ts from "typescript";
import type { PlanFile } from "../text/parse.ts";

/**
 * The declaration, in the same file, of a name used at a node: the declaration itself, a binding element, or the import.
 * Undefined for names without a declaration (globals).
 */
export function declarationOf(name: ts.Identifier, file: PlanFile): ts.Node | undefined {
  const { text } = name;
  for (let node: ts.Node | undefined = name.parent; node; node = node.parent) {
    if (!isScope(node)) continue;
    const found = namesIn(node, file).get(text);
    if (found) return found;
  }
  return undefined;
}

/** The names that can be used at a node, with their declarations; of two of the same name, the one that is nearer. */
export function namesAround(at: ts.Node, file: PlanFile): ReadonlyMap<string, ts.Node> {
  const names = new Map<string, ts.Node>();
  for (let node: ts.Node | undefined = at; node; node = node.parent) {
    if (!isScope(node)) continue;
    for (const [name, declaration] of namesIn(node, file)) if (!names.has(name)) names.set(name, declaration);
  }
  return names;
}

/** A file's export of a name: a declaration, the expression of `export default`, or a specifier that leads elsewhere. */
export function exportOf(file: PlanFile, name: string): ts.Node | undefined {
  return exportsOf(file).names.get(name);
}

/** The names of a file's own exports, "default" among them. */
export function exportedNames(file: PlanFile): readonly string[] {
  return [...exportsOf(file).names.keys()];
}

/** Module texts of the `export *` declarations. */
export function passedOn(file: PlanFile): readonly string[] {
  return exportsOf(file).all;
}

interface Exports {
  readonly names: ReadonlyMap<string, ts.Node>;
  readonly all: readonly string[];
}

const known = new WeakMap<ts.SourceFile, Exports>();

function exportsOf(file: PlanFile): Exports {
  const { source } = file.tree;
  let exports = known.get(source);
  if (!exports) {
    exports = readExports(source);
    known.set(source, exports);
  }
  return exports;
}

function readExports(source: ts.SourceFile): Exports {
  const names = new Map<string, ts.Node>();
  const all: string[] = [];
  for (const statement of source.statements) {
    if (ts.isExportDeclaration(statement)) {
      const { exportClause, moduleSpecifier } = statement;
      if (!exportClause && moduleSpecifier && ts.isStringLiteral(moduleSpecifier))
        all.push(moduleSpecifier.text);
      else if (exportClause && ts.isNamedExports(exportClause)) {
        for (const element of exportClause.elements) names.set(element.name.text, element);
      } else if (exportClause) names.set(exportClause.name.text, exportClause);
    } else if (ts.isExportAssignment(statement)) {
      names.set("default", statement.expression);
    } else if (hasModifier(statement, ts.SyntaxKind.ExportKeyword)) {
      const asDefault = hasModifier(statement, ts.SyntaxKind.DefaultKeyword);
      declare(statement, (name, node) => names.set(asDefault ? "default" : name, node));
      if (asDefault && !names.has("default")) names.set("default", statement);
    }
  }
  return { names, all };
}

function isScope(node: ts.Node): boolean {
  switch (node.kind) {
    case ts.SyntaxKind.SourceFile:
    case ts.SyntaxKind.Block:
    case ts.SyntaxKind.CaseBlock:
    case ts.SyntaxKind.CatchClause:
    case ts.SyntaxKind.ForStatement:
    case ts.SyntaxKind.ForInStatement:
    case ts.SyntaxKind.ForOfStatement:
      return true;
    default:
      return ts.isFunctionLike(node);
  }
}

function namesIn(scope: ts.Node, file: PlanFile): ReadonlyMap<string, ts.Node> {
  const { scopes } = file.tree;
  let names = scopes.get(scope);
  if (!names) {
    names = readNames(scope);
    scopes.set(scope, names);
  }
  return names;
}

function readNames(scope: ts.Node): ReadonlyMap<string, ts.Node> {
  const names = new Map<string, ts.Node>();
  const add = (name: string, node: ts.Node) => {
    if (!names.has(name)) names.set(name, node);
  };
  if (ts.isSourceFile(scope) || ts.isBlock(scope)) {
    for (const statement of scope.statements) declare(statement, add);
  } else if (ts.isCaseBlock(scope)) {
    for (const clause of scope.clauses) for (const statement of clause.statements) declare(statement, add);
  } else if (ts.isCatchClause(scope)) {
    if (scope.variableDeclaration) declareBinding(scope.variableDeclaration, add);
  } else if (ts.isForStatement(scope) || ts.isForInStatement(scope) || ts.isForOfStatement(scope)) {
    const { initializer } = scope;
    if (initializer && ts.isVariableDeclarationList(initializer)) {
      for (const declaration of initializer.declarations) declareBinding(declaration, add);
    }
  } else if (ts.isFunctionLike(scope)) {
    for (const parameter of scope.parameters) {
      if (ts.isParameter(parameter)) declareBinding(parameter, add);
    }
    if (ts.isFunctionExpression(scope) && scope.name) add(scope.name.text, scope);
  }
  return names;
}

function declare(statement: ts.Statement, add: (name: string, node: ts.Node) => void): void {
  if (ts.isVariableStatement(statement)) {
    for (const declaration of statement.declarationList.declarations) declareBinding(declaration, add);
  } else if (ts.isFunctionDeclaration(statement)) {
    // Overload signatures have no body, and do not run.
    if (statement.name && statement.body) add(statement.name.text, statement);
  } else if (ts.isClassDeclaration(statement)) {
    if (statement.name) add(statement.name.text, statement);
  } else if (ts.isImportDeclaration(statement) && statement.importClause) {
    const { name, namedBindings } = statement.importClause;
    if (name) add(name.text, statement.importClause);
    if (namedBindings && ts.isNamespaceImport(namedBindings)) add(namedBindings.name.text, namedBindings);
    else if (namedBindings) for (const element of namedBindings.elements) add(element.name.text, element);
  }
}

function declareBinding(
  declaration: ts.VariableDeclaration | ts.ParameterDeclaration | ts.BindingElement,
  add: (name: string, node: ts.Node) => void,
): void {
  const { name } = declaration;
  if (ts.isIdentifier(name)) add(name.text, declaration);
  else for (const element of name.elements) if (ts.isBindingElement(element)) declareBinding(element, add);
}

function hasModifier(statement: ts.Statement, kind: ts.SyntaxKind): boolean {
  const { modifiers } = statement as ts.VariableStatement;
  return modifiers?.some((modifier) => modifier.kind === kind) ?? false;
}
