import ts from "typescript";

/**
 * True if running a file changes nothing that another part of the plan can see, apart from the records of its DSL calls: no
 * variable, no object, no function of the language. An expression then has the same value whenever it is evaluated.
 *
 * Only a small, common part of the language is known here: constants, functions, conditions, loops over lists. All else counts
 * as a side effect. Every file of a plan must be without one, since each could change what the others use.
 */
export function isWithoutSideEffects(source: ts.SourceFile): boolean {
  const known = answers.get(source);
  if (known !== undefined) return known;
  const answer = new Names(source).allow(source);
  answers.set(source, answer);
  return answer;
}

/** An edit of a literal changes a tree in place, and not the answer. */
const answers = new WeakMap<ts.SourceFile, boolean>();

const K = ts.SyntaxKind;

/** The names that a file declares, in any scope; those in `#functions` are functions of the file or of the library. */
class Names {
  readonly #functions = new Set<string>();
  readonly #others = new Set(["undefined", "NaN", "Infinity"]);

  constructor(source: ts.SourceFile) {
    const collect = (node: ts.Node): void => {
      if (ts.isFunctionDeclaration(node)) {
        if (node.name) this.#functions.add(node.name.text);
      } else if (ts.isImportSpecifier(node)) {
        // A name of another file may be a function of the language.
        const { moduleSpecifier } = node.parent.parent.parent;
        const isOurs = ts.isStringLiteral(moduleSpecifier) && moduleSpecifier.text === "loomwright";
        (isOurs ? this.#functions : this.#others).add(node.name.text);
      } else if (ts.isImportClause(node)) {
        if (node.name) this.#others.add(node.name.text);
      } else if (ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node)) {
        const isFunction =
          ts.isVariableDeclaration(node) && node.initializer && isFunctionLiteral(node.initializer);
        if (ts.isIdentifier(node.name)) (isFunction ? this.#functions : this.#others).add(node.name.text);
      }
      ts.forEachChild(node, collect);
    };
    collect(source);
  }

  readonly allow = (node: ts.Node): boolean => {
    const { kind } = node;
    if (kind >= K.FirstTypeNode && kind <= K.LastTypeNode) return true;
    switch (kind) {
      case K.InterfaceDeclaration:
      case K.TypeAliasDeclaration:
      case K.ImportDeclaration:
      case K.ExportDeclaration:
        return true;
      case K.Identifier:
        return this.#isDeclared((node as ts.Identifier).text);
      case K.PropertyAccessExpression:
        return this.allow((node as ts.PropertyAccessExpression).expression);
      case K.PropertyAssignment: {
        const { name, initializer } = node as ts.PropertyAssignment;
        return allowsName(name) && this.allow(initializer);
      }
      case K.ShorthandPropertyAssignment: {
        const { name } = node as ts.ShorthandPropertyAssignment;
        return allowsName(name) && this.allow(name);
      }
      case K.BindingElement: {
        const { propertyName, name, initializer } = node as ts.BindingElement;
        return (
          (!propertyName || allowsName(propertyName)) &&
          this.allow(name) &&
          (!initializer || this.allow(initializer))
        );
      }
      case K.VariableDeclarationList:
        return (node.flags & ts.NodeFlags.BlockScoped) === ts.NodeFlags.Const && this.#allowInside(node);
      case K.FunctionDeclaration:
      case K.FunctionExpression:
        return !(node as ts.FunctionDeclaration).asteriskToken && this.#allowInside(node);
      case K.ForOfStatement:
        return !(node as ts.ForOfStatement).awaitModifier && this.#allowInside(node);
      case K.BinaryExpression: {
        const { kind } = (node as ts.BinaryExpression).operatorToken;
        return !(kind >= K.FirstAssignment && kind <= K.LastAssignment) && this.#allowInside(node);
      }
      case K.PrefixUnaryExpression: {
        const { operator } = node as ts.PrefixUnaryExpression;
        return operator !== K.PlusPlusToken && operator !== K.MinusMinusToken && this.#allowInside(node);
      }
      case K.CallExpression:
        return this.#allowCall(node as ts.CallExpression);
    }
    return (allowed.has(kind) || ts.isToken(node)) && kind !== K.AsyncKeyword && this.#allowInside(node);
  };

  #allowInside(node: ts.Node): boolean {
    return !ts.forEachChild(node, (child) => !this.allow(child));
  }

  #isDeclared(name: string): boolean {
    return this.#functions.has(name) || this.#others.has(name);
  }

  #isFunction(node: ts.Node): boolean {
    return ts.isIdentifier(node) && this.#functions.has(node.text) && !this.#others.has(node.text);
  }

  #allowCall({ expression, arguments: given }: ts.CallExpression): boolean {
    return this.#allowCallee(expression, given[0]) && given.every(this.allow);
  }

  #allowCallee(callee: ts.Expression, first: ts.Expression | undefined): boolean {
    if (this.#isFunction(callee)) return true;
    if (ts.isIdentifier(callee)) return conversions.has(callee.text) && !this.#isDeclared(callee.text);
    if (!ts.isPropertyAccessExpression(callee)) return false;
    const { expression: base, name } = callee;
    if (ts.isIdentifier(base) && base.text === "Math" && !this.#isDeclared(base.text))
      return /^[a-z\d]+$/.test(name.text);
    const isMethod =
      methods.has(name.text) ||
      (methodsWithCallback.has(name.text) &&
        first !== undefined &&
        (isFunctionLiteral(first) || this.#isFunction(first)));
    return isMethod && this.allow(base);
  }
}

/** An object with a method of its own could have one that changes something. */
function allowsName(name: ts.PropertyName): boolean {
  if (ts.isComputedPropertyName(name)) return false;
  return !methods.has(name.text) && !methodsWithCallback.has(name.text) && !calledByLanguage.has(name.text);
}

function isFunctionLiteral(node: ts.Expression): boolean {
  return ts.isArrowFunction(node) || ts.isFunctionExpression(node);
}

/** Nodes that do nothing themselves. Further tokens: literals, keywords, operators. */
const allowed: ReadonlySet<ts.SyntaxKind> = new Set([
  K.SourceFile,
  K.ExportAssignment,
  K.VariableStatement,
  K.VariableDeclaration,
  K.ExpressionStatement,
  K.EmptyStatement,
  K.IfStatement,
  K.ReturnStatement,
  K.Block,
  K.Parameter,
  K.ArrowFunction,
  K.TypeParameter,
  K.ObjectBindingPattern,
  K.ArrayBindingPattern,
  K.OmittedExpression,
  K.ObjectLiteralExpression,
  K.SpreadAssignment,
  K.SpreadElement,
  K.ArrayLiteralExpression,
  K.ElementAccessExpression,
  K.ParenthesizedExpression,
  K.AsExpression,
  K.SatisfiesExpression,
  K.NonNullExpression,
  K.ConditionalExpression,
  K.TemplateExpression,
  K.TemplateSpan,
]);

const conversions: ReadonlySet<string> = new Set(["Number", "String", "Boolean"]);

/** Methods of texts, numbers and lists that change nothing. */
const methods: ReadonlySet<string> = new Set([
  "at",
  "concat",
  "endsWith",
  "includes",
  "indexOf",
  "join",
  "padEnd",
  "padStart",
  "repeat",
  "slice",
  "startsWith",
  "toFixed",
  "toLowerCase",
  "toUpperCase",
  "trim",
]);

const calledByLanguage: ReadonlySet<string> = new Set(["toString", "valueOf"]);

/** They change nothing if the function does not. */
const methodsWithCallback: ReadonlySet<string> = new Set([
  "every",
  "filter",
  "find",
  "flatMap",
  "forEach",
  "map",
  "some",
]);
