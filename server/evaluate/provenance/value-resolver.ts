import ts from "typescript";
import { type CallLike, patternName } from "../instrument/instrument.ts";
import type { PlanFile } from "../text/parse.ts";
import { pathInPattern, rootOf } from "./binding-patterns.ts";
import {
  type EvaluationContext,
  type EvaluationContexts,
  type Frame,
  longestTrail,
  observesNothing,
  type SourceNode,
  type SourceObject,
  type TracedRun,
} from "./contexts.ts";
import { declarationOf } from "./declarations.ts";
import { ImportedNames } from "./imported-names.ts";
import { LiteralLists } from "./literal-lists.ts";
import { propertyName, propertyValue } from "./object-literals.ts";
import { staticValue } from "./static-value.ts";
import { unwrapExpression } from "./unwrap-expression.ts";
import type { Element, Value } from "./value.ts";

/**
 * Resolves an expression to its object literal, list or function: from the text if it determines it, else from the allocations
 * that the run observed. Each method takes the evaluation context and the current recursion depth.
 */
export class ValueResolver {
  readonly literalLists = new LiteralLists();
  /** Set once elements of a list have been distinguished by their values. */
  comparesElements = false;
  readonly #contexts: EvaluationContexts;
  readonly #imports: ImportedNames;
  #mostSteps = mostSteps;
  #stepsLeft = mostSteps;

  constructor(traced: TracedRun, contexts: EvaluationContexts) {
    this.#contexts = contexts;
    this.#imports = new ImportedNames(traced);
  }

  /**
   * True if the search has gone far enough: along a chain that is too long, or through text that branches at every step. The
   * outermost call has depth 0. A plan that needs many steps gets fewer for each further search, to limit the time of all
   * together.
   */
  tooFar(depth: number): boolean {
    if (depth === 0) this.#stepsLeft = this.#mostSteps;
    if (this.#stepsLeft === 0) return true;
    this.#stepsLeft--;
    if (this.#stepsLeft === 0) this.#mostSteps = Math.max(fewestSteps, Math.floor(this.#mostSteps / 4));
    return depth > longestTrail;
  }

  /** The target of an import, in another file. */
  imported(declaration: ts.Node, file: PlanFile): SourceNode | undefined {
    return this.#imports.ofImport(declaration, file);
  }

  /** The object literal of an expression, if there is only one candidate. */
  object(expression: ts.Expression, context: EvaluationContext, depth: number): SourceObject | undefined {
    return this.objects(expression, context, depth)[0];
  }

  objects(expression: ts.Expression, context: EvaluationContext, depth: number): readonly SourceObject[] {
    const node = unwrapExpression(expression);
    if (this.tooFar(depth)) return [];
    if (ts.isObjectLiteralExpression(node)) return [{ file: context.file, literal: node, context }];
    const branches = branchesOf(node);
    if (branches.length > 0) return branches.flatMap((branch) => this.objects(branch, context, depth + 1));
    const born = this.#contexts.allocatedAt(context.seen(observedText(node, context.file)));
    if (born) return [born];
    if (ts.isCallExpression(node)) return this.#returned(node, context, depth + 1);
    const value = this.definitionOf(node, context, depth + 1);
    return value ? this.objects(value.node, value.context, depth + 1) : [];
  }

  /** The last property of that name wins; a spread counts as its properties. */
  property(object: SourceObject, key: string, depth: number): FoundProperty | undefined {
    const { properties } = object.literal;
    if (this.tooFar(depth)) return undefined;
    for (let index = properties.length - 1; index >= 0; index--) {
      const property = properties[index] as ts.ObjectLiteralElementLike;
      if (ts.isSpreadAssignment(property)) {
        for (const spread of this.objects(property.expression, object.context, depth + 1)) {
          const found = this.property(spread, key, depth + 1);
          if (found) return found;
        }
      } else if (propertyName(property) === key) return { property, holder: object };
    }
    return undefined;
  }

  /** The definition of a name or a property, one step further. */
  definitionOf(node: ts.Expression, context: EvaluationContext, depth: number): Value | undefined {
    if (this.tooFar(depth)) return undefined;
    if (ts.isIdentifier(node)) {
      const declaration = declarationOf(node, context.file);
      return declaration && this.#declared(declaration, context, depth);
    }
    const key = ts.isPropertyAccessExpression(node)
      ? node.name.text
      : ts.isElementAccessExpression(node)
        ? staticValue(unwrapExpression(node.argumentExpression))?.value
        : undefined;
    if (key === undefined || key === null) return undefined;
    const { expression: base } = node as ts.PropertyAccessExpression;
    if (ts.isIdentifier(base)) {
      // `import * as sizes`: its properties are the other file's exports.
      const declaration = declarationOf(base, context.file);
      if (declaration && ts.isNamespaceImport(declaration)) {
        const other = this.#imports.fileOf(declaration.parent.parent.moduleSpecifier, context.file);
        return other && this.#exportedValue(other, String(key), depth);
      }
    }
    const object = this.object(base, context, depth);
    const found = object && this.property(object, String(key), depth);
    const value = found && propertyValue(found.property);
    if (value) return { node: value, context: found.holder.context };
    const element = /^\d+$/.test(String(key)) ? this.elements(base, context, depth)[Number(key)] : undefined;
    return element && "node" in element ? element : undefined;
  }

  /** The elements of a list in the source, in any order that the plan may have given them since. */
  elements(expression: ts.Expression, context: EvaluationContext, depth: number): readonly Element[] {
    const node = unwrapExpression(expression);
    if (this.tooFar(depth)) return [];
    if (ts.isArrayLiteralExpression(node)) {
      return this.literalLists.elements(node, "elements", () =>
        node.elements.flatMap((element): readonly Element[] =>
          ts.isSpreadElement(element)
            ? this.elements(element.expression, context, depth + 1)
            : [{ node: element, context }],
        ),
      );
    }
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const { expression: base, name } = node.expression;
      if (ts.isIdentifier(base) && base.text === "Object" && node.arguments[0]) {
        return this.#entries(node.arguments[0], name.text, context, depth + 1);
      }
      return keepsElements.has(name.text) ? this.elements(base, context, depth + 1) : [];
    }
    const value = this.definitionOf(node, context, depth + 1);
    return value ? this.elements(value.node, value.context, depth + 1) : [];
  }

  /** The list that a native method passes to its callback, element by element. */
  elementsGiven(call: CallLike, context: EvaluationContext, depth: number): readonly Element[] {
    if (!ts.isPropertyAccessExpression(call.expression)) return [];
    const { expression: base, name } = call.expression;
    const list = name.text === "from" && ts.isIdentifier(base) ? call.arguments?.[0] : base;
    return list ? this.elements(list, context, depth) : [];
  }

  part(element: Element, path: readonly string[], depth: number): Value | undefined {
    const [key, ...rest] = path;
    if (key === undefined) return "node" in element ? element : undefined;
    if ("pair" in element) {
      const part = element.pair[Number(key)];
      return part && this.part({ node: part, context: element.context }, rest, depth + 1);
    }
    if (/^\d+$/.test(key)) {
      const inner = this.elements(element.node, element.context, depth + 1)[Number(key)];
      return inner && this.part(inner, rest, depth + 1);
    }
    const object = this.object(element.node, element.context, depth + 1);
    const found = object && this.property(object, key, depth + 1);
    const value = found && propertyValue(found.property);
    return value && this.part({ node: value, context: found.holder.context }, rest, depth + 1);
  }

  /** True if an expression refers to the result of a call of a DSL function, or to that terminal of it. */
  names(
    expression: ts.Expression,
    context: EvaluationContext,
    { call, terminal }: Made,
    depth: number,
  ): boolean {
    const node = unwrapExpression(expression);
    if (this.tooFar(depth)) return false;
    if (node === call) return terminal === undefined;
    const value = this.definitionOf(node, context, depth + 1);
    if (value) return this.names(value.node, value.context, { call, terminal }, depth + 1);
    return (
      ts.isPropertyAccessExpression(node) &&
      node.name.text === terminal &&
      this.names(node.expression, context, { call, terminal: undefined }, depth + 1)
    );
  }

  /** True if the called function called this one (a callback), false if this is the called function itself. */
  isCallback(caller: Frame, fn: ts.Node, context: EvaluationContext, depth: number): boolean {
    const called = this.#functionOf(caller.node.expression, context, depth);
    if (called && called !== "word") {
      if (called.node === fn || called.node === fn.parent) return false;
    }
    const given = caller.node.arguments ?? [];
    const isGiven = given.some((argument) => {
      const passed = this.#functionOf(argument, context, depth);
      return passed && passed !== "word" && passed.node === fn;
    });
    if (isGiven) return true;
    const { expression } = caller.node;
    return ts.isPropertyAccessExpression(expression) && callsBack.has(expression.name.text);
  }

  /** The object that a pattern destructured, if the run observed it. */
  patternBirth(
    root: ts.ParameterDeclaration | ts.VariableDeclaration,
    context: EvaluationContext,
  ): SourceObject | undefined {
    if (!ts.isObjectBindingPattern(root.name)) return undefined;
    const index = context.file.tree.instrumented?.patterns.indexOf(root.name) ?? -1;
    return index < 0 ? undefined : this.#contexts.allocatedAt(context.seen(patternName(index)));
  }

  #declared(declaration: ts.Node, context: EvaluationContext, depth: number): Value | undefined {
    if (ts.isVariableDeclaration(declaration)) {
      const { initializer } = declaration;
      return initializer && { node: initializer, context: this.#contexts.contextOf(declaration, context) };
    }
    if (ts.isParameter(declaration)) return this.#given(declaration, context, depth);
    if (ts.isBindingElement(declaration)) {
      const root = rootOf(declaration);
      const path = pathInPattern(declaration);
      if (!root || !path) return undefined;
      const born = this.patternBirth(root, context);
      const whole = born
        ? { node: born.literal, context: born.context }
        : ts.isParameter(root)
          ? this.#given(root, context, depth)
          : root.initializer && { node: root.initializer, context: this.#contexts.contextOf(root, context) };
      return whole && this.part(whole, path, depth + 1);
    }
    const elsewhere = this.#imports.ofImport(declaration, context.file);
    return elsewhere && this.#valueOfExport(elsewhere, depth);
  }

  /** The argument of a parameter. */
  #given(parameter: ts.ParameterDeclaration, context: EvaluationContext, depth: number): Value | undefined {
    const fn = parameter.parent;
    const there = this.#contexts.contextIn(fn, context);
    const caller = there?.caller;
    if (!caller || parameter.dotDotDotToken) return undefined;
    const outside = this.#contexts.inside(caller);
    if (this.isCallback(caller, fn, outside, depth)) return undefined;
    const index = fn.parameters.indexOf(parameter);
    const given = caller.node.arguments ?? [];
    if (given.slice(0, index + 1).some(ts.isSpreadElement)) return undefined;
    const argument = given[index];
    if (argument && !isUndefined(argument)) return { node: argument, context: outside };
    return parameter.initializer && { node: parameter.initializer, context: there };
  }

  /** The literal that a call returns: the argument of a DSL function, or the return value of a function of the plan. */
  #returned(call: ts.CallExpression, context: EvaluationContext, depth: number): readonly SourceObject[] {
    if (this.tooFar(depth)) return [];
    const argument = call.arguments[0];
    const { expression: callee } = call;
    if (ts.isPropertyAccessExpression(callee) && ts.isIdentifier(callee.expression) && argument) {
      const copies = callee.expression.text === "Object" && callee.name.text === "freeze";
      if (copies) return this.objects(argument, context, depth);
    }
    const fn = this.#functionOf(callee, context, depth);
    if (fn === "word" && argument) return this.objects(argument, context, depth);
    if (!fn || fn === "word" || !ts.isFunctionLike(fn.node)) return [];
    const body = returnedBy(fn.node);
    if (!body) return [];
    const frame: Frame = { file: context.file, node: call, seen: context.seen, within: context.caller };
    return this.objects(
      body,
      { file: fn.file, fn: fn.node, caller: frame, seen: observesNothing },
      depth + 1,
    );
  }

  /** The called function or class, if the text determines it. */
  #functionOf(
    callee: ts.Expression,
    context: EvaluationContext,
    depth: number,
  ): SourceNode | "word" | undefined {
    const node = unwrapExpression(callee);
    if (this.tooFar(depth)) return undefined;
    if (isFunction(node)) return { file: context.file, node };
    if (ts.isIdentifier(node)) {
      const declaration = declarationOf(node, context.file);
      if (!declaration) return undefined;
      if (isFunction(declaration)) return { file: context.file, node: declaration };
      if (ts.isImportSpecifier(declaration) && importsLibrary(declaration)) return "word";
      const elsewhere = this.#imports.ofImport(declaration, context.file);
      if (elsewhere && isFunction(elsewhere.node)) return elsewhere;
    }
    const value = this.definitionOf(node, context, depth + 1);
    return value && this.#functionOf(value.node, value.context, depth + 1);
  }

  #entries(
    table: ts.Expression,
    what: string,
    context: EvaluationContext,
    depth: number,
  ): readonly Element[] {
    const object = this.object(table, context, depth);
    if (what === "freeze") return this.elements(table, context, depth);
    if (!object) return [];
    return this.literalLists.elements(object.literal, what, () =>
      object.literal.properties.flatMap((property): readonly Element[] => {
        const value = propertyValue(property);
        if (!value || !property.name) return [];
        if (what === "values") return [{ node: value, context: object.context }];
        const key = property.name as ts.Expression;
        if (what === "keys") return [{ node: key, context: object.context }];
        return what === "entries" ? [{ pair: [key, value], context: object.context }] : [];
      }),
    );
  }

  #exportedValue(file: PlanFile, name: string, depth: number): Value | undefined {
    const found = this.#imports.named(file, name);
    return found && this.#valueOfExport(found, depth);
  }

  #valueOfExport({ file, node }: SourceNode, depth: number): Value | undefined {
    const context: EvaluationContext = { file, fn: undefined, caller: undefined, seen: observesNothing };
    return ts.isExpression(node) ? { node, context } : this.#declared(node, context, depth + 1);
  }
}

/** Far more than the longest hand-written table needs. */
const mostSteps = 50_000;
const fewestSteps = 50;

/** The call of a DSL function; `terminal`: that terminal of its result. */
export interface Made {
  readonly call: ts.Node;
  readonly terminal: string | undefined;
}

export interface FoundProperty {
  readonly property: ts.ObjectLiteralElementLike;
  readonly holder: SourceObject;
}

/** The expressions that may be the value of the whole. */
export function branchesOf(node: ts.Expression): readonly ts.Expression[] {
  if (ts.isConditionalExpression(node)) return [node.whenTrue, node.whenFalse];
  if (!ts.isBinaryExpression(node)) return [];
  switch (node.operatorToken.kind) {
    case ts.SyntaxKind.QuestionQuestionToken:
    case ts.SyntaxKind.BarBarToken:
      return [node.left, node.right];
    case ts.SyntaxKind.AmpersandAmpersandToken:
      return [node.right];
    default:
      return [];
  }
}

export function isUndefined(node: ts.Expression): boolean {
  return ts.isIdentifier(node) && node.text === "undefined";
}

/** Methods that return a list of all or some of the same elements. */
const keepsElements = new Set([
  "filter",
  "slice",
  "sort",
  "reverse",
  "toSorted",
  "toReversed",
  "concat",
  "values",
  "flat",
]);

/** Native methods that call their function argument. */
const callsBack = new Set([
  "map",
  "forEach",
  "flatMap",
  "filter",
  "reduce",
  "reduceRight",
  "find",
  "findLast",
  "some",
  "every",
  "from",
  "then",
]);

function isFunction(node: ts.Node): boolean {
  return ts.isFunctionLike(node) || ts.isClassLike(node);
}

/** The one expression that a function returns, if there is only one. */
function returnedBy(fn: ts.SignatureDeclaration): ts.Expression | undefined {
  const { body } = fn as ts.FunctionLikeDeclaration;
  if (!body) return undefined;
  if (!ts.isBlock(body)) return body;
  const returns = body.statements.filter(ts.isReturnStatement);
  return returns.length === 1 ? returns[0]?.expression : undefined;
}

function importsLibrary(specifier: ts.ImportSpecifier): boolean {
  const module = specifier.parent.parent.parent.moduleSpecifier;
  return ts.isStringLiteral(module) && module.text === "loomwright";
}

/** As the instrumentation writes observed expressions. */
function observedText(node: ts.Expression, file: PlanFile): string {
  if (ts.isIdentifier(node)) return node.text;
  if (!ts.isElementAccessExpression(node)) return "";
  const { expression, argumentExpression } = node;
  if (!ts.isIdentifier(expression) || !ts.isIdentifier(argumentExpression)) return "";
  return `${expression.getText(file.tree.source)}[${argumentExpression.text}]`;
}
