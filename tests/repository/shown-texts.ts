import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

const house = fileURLToPath(new URL("../..", import.meta.url));

/** A place that passes text to an interface of the editor, or to the protocol. */
export interface GivenText {
  /** Relative to the house, with the line: "extension/report.ts:88". */
  readonly place: string;
  /** The parameter or the property, by the names in its declaration: "showErrorMessage.message", "CodeLens.title". */
  readonly taker: string;
  /** Whether it is a literal, or has been through `editorWords`. */
  readonly fit: boolean;
  readonly written: string;
}

/**
 * Every text that our sources pass to a foreign interface: arguments, properties of object literals, assignments, and results of
 * callbacks. A foreign function that is passed on instead of called is listed as unfit: its calls are invisible.
 *
 * @param files sources, relative to the house
 * @param made texts of sources without a file, by such a name
 */
export function textsGiven(
  files: readonly string[],
  made: Readonly<Record<string, string>> = {},
): GivenText[] {
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(join(house, "tsconfig.json"), ts.sys.readFile).config,
    ts.sys,
    house,
  );
  const host = ts.createCompilerHost(options, true);
  const { fileExists, getSourceFile } = host;
  const textOf = (path: string): string | undefined =>
    Object.entries(made).find(([name]) => join(house, name) === path)?.[1];
  host.fileExists = (path) => textOf(path) !== undefined || fileExists(path);
  host.getSourceFile = (path, version) => {
    const text = textOf(path);
    return text === undefined ? getSourceFile(path, version) : ts.createSourceFile(path, text, version, true);
  };
  const names = [...files, ...Object.keys(made)];
  const program = ts.createProgram(
    names.map((name) => join(house, name)),
    options,
    host,
  );
  const checker = program.getTypeChecker();
  return names.flatMap((name) => {
    const source = program.getSourceFile(join(house, name));
    if (!source) throw new Error(`${name} cannot be read`);
    const given: GivenText[] = [];
    const add = (taker: string, node: ts.Node, fit: boolean) => {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      given.push({ place: `${name}:${line + 1}`, taker, fit, written: node.getText() });
    };
    visit(source, checker, add);
    return given;
  });
}

type Add = (taker: string, node: ts.Node, fit: boolean) => void;

function visit(node: ts.Node, checker: ts.TypeChecker, add: Add): void {
  if (ts.isCallExpression(node) || ts.isNewExpression(node)) lookAtArguments(node, checker, add);
  else if (ts.isObjectLiteralExpression(node)) lookAtProperties(node, checker, add);
  else if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.EqualsToken)
    lookAtAssignment(node, checker, add);
  else if (ts.isReturnStatement(node) && node.expression) lookAtReturned(node.expression, checker, add);
  else if (ts.isArrowFunction(node) && !ts.isBlock(node.body)) lookAtReturned(node.body, checker, add);
  else if (ts.isPropertyAccessExpression(node) || ts.isIdentifier(node)) lookAtPassedOn(node, checker, add);
  ts.forEachChild(node, (child) => visit(child, checker, add));
}

function lookAtArguments(
  call: ts.CallExpression | ts.NewExpression,
  checker: ts.TypeChecker,
  add: Add,
): void {
  lookAtNamedMessage(call, checker, add);
  const signature = checker.getResolvedSignature(call);
  const declaration = signature?.getDeclaration();
  if (!signature || !declaration || !isForeign(declaration)) return;
  const parameters = signature.getParameters();
  for (const [index, argument] of (call.arguments ?? []).entries()) {
    const parameter = parameters[Math.min(index, parameters.length - 1)];
    if (!parameter) continue;
    const taker = `${nameOf(declaration)}.${parameter.name}`;
    take(taker, argument, checker, add);
    // A generic parameter has the type of our argument; its constraint is the foreign declared type.
    const declared = parameter.valueDeclaration && checker.getTypeAtLocation(parameter.valueDeclaration);
    const own = checker.getTypeAtLocation(argument);
    if (declared && isGeneric(declared, checker) && !mayBeText(own))
      takeType(taker, { from: own, to: declared, at: argument }, checker, add);
  }
}

/** A protocol message that one of our functions sends by its name: `send("window/showMessage", { message })`. */
function lookAtNamedMessage(
  call: ts.CallExpression | ts.NewExpression,
  checker: ts.TypeChecker,
  add: Add,
): void {
  const [method, params] = call.arguments ?? [];
  if (!method || !ts.isStringLiteral(method) || !method.text.startsWith("window/") || !params) return;
  if (!ts.isObjectLiteralExpression(params)) {
    add(`${method.text} whole`, params, false);
    return;
  }
  for (const property of params.properties) {
    const taker = `${method.text}.${property.name?.getText()}`;
    if (ts.isPropertyAssignment(property)) take(taker, property.initializer, checker, add);
    else if (ts.isShorthandPropertyAssignment(property)) takeNamed(taker, property, checker, add);
  }
}

function isGeneric(type: ts.Type, checker: ts.TypeChecker): boolean {
  return membersOf(type, checker).some((one) => (one.flags & ts.TypeFlags.TypeParameter) !== 0);
}

function lookAtProperties(literal: ts.ObjectLiteralExpression, checker: ts.TypeChecker, add: Add): void {
  const type = checker.getContextualType(literal);
  if (!type) return;
  for (const property of literal.properties) {
    if (ts.isSpreadAssignment(property)) {
      if (!ts.isObjectLiteralExpression(property.expression))
        takeType(
          undefined,
          { from: checker.getTypeAtLocation(property.expression), to: type, at: property },
          checker,
          add,
        );
      continue;
    }
    const symbol = propertyOf(type, property.name.getText(), checker);
    const declaration = symbol?.declarations?.find(isForeign);
    if (!declaration) continue;
    const taker = nameOf(declaration);
    if (ts.isPropertyAssignment(property)) take(taker, property.initializer, checker, add);
    else if (ts.isShorthandPropertyAssignment(property)) takeNamed(taker, property, checker, add);
    else if (ts.isMethodDeclaration(property)) takeReturned(taker, property, checker, add);
  }
}

function lookAtAssignment({ left, right }: ts.BinaryExpression, checker: ts.TypeChecker, add: Add): void {
  const declaration = checker.getSymbolAtLocation(left)?.declarations?.find(isForeign);
  if (declaration) take(nameOf(declaration), right, checker, add);
}

/** A foreign object that one of our functions makes through other objects. */
function lookAtReturned(value: ts.Expression, checker: ts.TypeChecker, add: Add): void {
  const expression = bare(value);
  const type = checker.getContextualType(expression);
  if (!type || ts.isObjectLiteralExpression(expression)) return;
  const from = checker.getTypeAtLocation(expression);
  if (!mayBeText(from)) takeType(undefined, { from, to: type, at: expression }, checker, add);
}

/** `const show = window.showErrorMessage`: its later arguments are invisible. */
function lookAtPassedOn(
  node: ts.PropertyAccessExpression | ts.Identifier,
  checker: ts.TypeChecker,
  add: Add,
): void {
  if (ts.isIdentifier(node) && ts.isPropertyAccessExpression(node.parent) && node.parent.name === node)
    return;
  if (ts.isCallExpression(node.parent) && node.parent.expression === node) return;
  const symbol = checker.getSymbolAtLocation(node);
  const declaration = symbol?.declarations?.[0];
  if (!declaration || !isForeign(declaration)) return;
  if (!ts.isFunctionDeclaration(declaration) && !ts.isMethodSignature(declaration)) return;
  if (/^show\w*(?:Message|Box|Pick|Dialog)$|^withProgress$|^setStatusBarMessage$/.test(symbol.name))
    add(`${nameOf(declaration)} passed on`, node, false);
}

/** A value for a taker of text: the text itself, or our own plain objects and lists whose texts the taker will find. */
function take(taker: string, value: ts.Expression, checker: ts.TypeChecker, add: Add): void {
  const expression = bare(value);
  if (ts.isArrowFunction(expression) || ts.isFunctionExpression(expression)) {
    takeReturned(taker, expression, checker, add);
    return;
  }
  // Handled as a separate literal.
  if (ts.isObjectLiteralExpression(expression)) return;
  const type = checker.getTypeAtLocation(expression);
  if (mayBeText(type)) add(taker, expression, isFit(expression, checker));
  else {
    const to = checker.getContextualType(expression);
    if (to) takeType(taker, { from: type, to, at: expression }, checker, add);
  }
}

function takeReturned(
  taker: string,
  callback: ts.SignatureDeclaration,
  checker: ts.TypeChecker,
  add: Add,
): void {
  const returned = checker.getSignatureFromDeclaration(callback)?.getReturnType();
  const type = returned && (checker.getAwaitedType(returned) ?? returned);
  if (type && mayBeText(type)) add(`${taker} returned`, callback, isFitType(type));
}

/** `{ detail }`: the constant itself, whose type is narrower than the property's. */
function takeNamed(
  taker: string,
  property: ts.ShorthandPropertyAssignment,
  checker: ts.TypeChecker,
  add: Add,
): void {
  const symbol = checker.getShorthandAssignmentValueSymbol(property);
  const type = symbol && checker.getTypeOfSymbol(symbol);
  if (!type) return;
  if (mayBeText(type)) add(taker, property, isFitType(type));
  else {
    const to = checker.getContextualType(property.name);
    if (to) takeType(taker, { from: type, to, at: property }, checker, add);
  }
}

interface Given {
  readonly from: ts.Type;
  readonly to: ts.Type;
  readonly at: ts.Node;
}

/**
 * An object made elsewhere: each of its texts, by the taker's declarations. Without a taker, our text is not passed to others.
 */
function takeType(
  taker: string | undefined,
  { from, to, at }: Given,
  checker: ts.TypeChecker,
  add: Add,
  depth = 0,
): void {
  for (const given of membersOf(from, checker)) {
    // Values made by the foreign interfaces are foreign; ours are inspected.
    if (isTheirs(given)) continue;
    for (const taken of membersOf(to, checker)) {
      if (taker !== undefined && mayBeText(given) && mayBeText(taken)) add(taker, at, isFitType(given));
      const declared = checker.getBaseConstraintOfType(taken) ?? taken;
      if (
        depth > 3 ||
        !(declared.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection)) ||
        declared.getCallSignatures().length > 0
      )
        continue;
      for (const property of declared.getProperties()) {
        const declaration = property.declarations?.find(isForeign);
        const own = given.getProperty(property.name);
        if (!declaration || !own) continue;
        const type = checker.getTypeOfSymbolAtLocation(own, at);
        const name = nameOf(declaration);
        if (mayBeText(type)) add(name, at, isFitType(type));
        else
          takeType(
            name,
            { from: type, to: checker.getTypeOfSymbolAtLocation(property, at), at },
            checker,
            add,
            depth + 1,
          );
      }
    }
  }
}

/** The types that a value can have, with those of a list's elements in place of the list. */
function membersOf(type: ts.Type, checker: ts.TypeChecker): ts.Type[] {
  return (type.isUnion() ? type.types : [type]).flatMap((one) => {
    const element = checker.getIndexTypeOfType(one, ts.IndexKind.Number);
    return element && !mayBeText(one) ? membersOf(element, checker) : [one];
  });
}

function bare(expression: ts.Expression): ts.Expression {
  return ts.isParenthesizedExpression(expression) ? bare(expression.expression) : expression;
}

function isTheirs(type: ts.Type): boolean {
  if (type.isIntersection()) return type.types.some(isTheirs);
  return (type.aliasSymbol ?? type.symbol)?.declarations?.some(isForeign) ?? false;
}

function propertyOf(type: ts.Type, name: string, checker: ts.TypeChecker): ts.Symbol | undefined {
  for (const one of type.isUnion() ? type.types : [type]) {
    const property = checker.getPropertyOfType(one, name);
    if (property) return property;
  }
  return undefined;
}

/** A literal, or fit parts that cannot form a link or an icon where they meet. */
function isFit(value: ts.Expression, checker: ts.TypeChecker): boolean {
  const expression = bare(value);
  if (ts.isConditionalExpression(expression))
    return isFit(expression.whenTrue, checker) && isFit(expression.whenFalse, checker);
  if (ts.isTemplateExpression(expression)) {
    const spans = expression.templateSpans;
    return spans.every((span, index) => {
      if (!isFit(span.expression, checker)) return false;
      if (isLiteral(checker.getTypeAtLocation(span.expression))) return true;
      const before = index === 0 ? expression.head.text : spans[index - 1]!.literal.text;
      return !/[\]$]$/.test(before) && !/^\(/.test(span.literal.text) && !(index > 0 && before === "");
    });
  }
  return isFitType(checker.getTypeAtLocation(expression));
}

function isFitType(type: ts.Type): boolean {
  if (type.isUnion()) return type.types.every(isFitType);
  return !mayBeText(type) || isLiteral(type) || type.aliasSymbol?.name === "EditorWords";
}

function isLiteral(type: ts.Type): boolean {
  return type.isUnion() ? type.types.every(isLiteral) : type.isStringLiteral();
}

function mayBeText(type: ts.Type): boolean {
  if (type.isUnion() || type.isIntersection()) return type.types.some(mayBeText);
  return (
    (type.flags & (ts.TypeFlags.StringLike | ts.TypeFlags.Any | ts.TypeFlags.Unknown)) !== 0 &&
    (type.flags & ts.TypeFlags.EnumLike) === 0
  );
}

/** The editor's interface and the protocol's. */
function isForeign(declaration: ts.Node): boolean {
  return /node_modules\/(?:@types\/vscode\/|vscode-(?:languageserver(?!-textdocument)|languageclient|jsonrpc))/.test(
    declaration.getSourceFile().fileName.replaceAll("\\", "/"),
  );
}

/** With the interface of its declaration, if there is one. */
function nameOf(declaration: ts.Node): string {
  const own = (declaration as ts.NamedDeclaration).name?.getText() ?? "new";
  for (let around = declaration.parent; around; around = around.parent) {
    if (
      ts.isInterfaceDeclaration(around) ||
      ts.isClassDeclaration(around) ||
      ts.isTypeAliasDeclaration(around)
    )
      return `${around.name?.getText()}.${own}`;
  }
  return own;
}
