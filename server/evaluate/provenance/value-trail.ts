import ts from "typescript";
import type { CallLike } from "../instrument/instrument.ts";
import { loopOf, pathInPattern, rootOf } from "./binding-patterns.ts";
import {
  type EvaluationContext,
  type EvaluationContexts,
  observesNothing,
  type SourceNode,
  type SourceObject,
} from "./contexts.ts";
import { declarationOf } from "./declarations.ts";
import type { KnownPart } from "./literal-lists.ts";
import { propertyValue } from "./object-literals.ts";
import { staticValue } from "./static-value.ts";
import { unwrapExpression } from "./unwrap-expression.ts";
import type { Element } from "./value.ts";
import { branchesOf, isUndefined, type Made, type ValueResolver } from "./value-resolver.ts";

/** The path of one value of a record from the expression that gives it, step by step, to the node that set it. */
export class ValueTrail {
  readonly steps: SourceNode[] = [];
  readonly #contexts: EvaluationContexts;
  readonly #objects: ValueResolver;
  readonly #wanted: Wanted;

  constructor(contexts: EvaluationContexts, objects: ValueResolver, wanted: Wanted) {
    this.#contexts = contexts;
    this.#objects = objects;
    this.#wanted = wanted;
  }

  /** Appends the steps of an expression. False: the trail ends at another value than the wanted one. */
  follow(expression: ts.Expression, context: EvaluationContext, depth: number): boolean {
    const node = unwrapExpression(expression);
    // A reference to a part ends here; do not follow how the part was made.
    if (node === this.#wanted.made?.call && this.steps.length > 0) return true;
    const length = this.steps.push({ file: context.file, node });
    const known = staticValue(node);
    if (known) return !isSimple(this.#wanted.value) || Object.is(known.value, this.#wanted.value);
    if (this.#objects.tooFar(depth)) return true;
    if (this.#step(node, context, depth + 1)) return true;
    // A step led to another value than the recorded one: the trail ends at the last reliable node.
    this.steps.length = length;
    return true;
  }

  /** One step from an expression to the source of its value. */
  #step(node: ts.Expression, context: EvaluationContext, depth: number): boolean {
    if (ts.isIdentifier(node)) return this.#followName(node, context, depth);
    if (ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node)) {
      const value = this.#objects.definitionOf(node, context, depth);
      if (value) return this.follow(value.node, value.context, depth);
      if (ts.isPropertyAccessExpression(node)) return false;
      const list = this.#objects.elements(node.expression, context, depth);
      return this.#followElement(list, [], depth, () => false);
    }
    const branches = branchesOf(node);
    return branches.some((branch) => this.#tryFollow(branch, context, depth));
  }

  /** Follows only if the end is certain to have the wanted value. */
  #tryFollow(expression: ts.Expression, context: EvaluationContext, depth: number): boolean {
    if (!isSimple(this.#wanted.value)) return false;
    const attempt = new ValueTrail(this.#contexts, this.#objects, this.#wanted);
    attempt.follow(expression, context, depth);
    const end = attempt.steps.at(-1);
    const known = end && ts.isExpression(end.node) ? staticValue(end.node) : undefined;
    if (!known || !Object.is(known.value, this.#wanted.value)) return false;
    this.steps.push(...attempt.steps);
    return true;
  }

  #followName(name: ts.Identifier, context: EvaluationContext, depth: number): boolean {
    const declaration = declarationOf(name, context.file);
    if (!declaration) return false;
    return this.#followDeclaration(declaration, context, depth);
  }

  #followDeclaration(declaration: ts.Node, context: EvaluationContext, depth: number): boolean {
    if (ts.isVariableDeclaration(declaration)) return this.#followVariable(declaration, [], context, depth);
    if (ts.isParameter(declaration)) return this.#followParameter(declaration, [], context, depth);
    if (ts.isBindingElement(declaration)) return this.#followBinding(declaration, context, depth);
    const elsewhere = this.#objects.imported(declaration, context.file);
    if (!elsewhere) return false;
    const top: EvaluationContext = {
      file: elsewhere.file,
      fn: undefined,
      caller: undefined,
      seen: observesNothing,
    };
    return ts.isExpression(elsewhere.node)
      ? this.follow(elsewhere.node, top, depth)
      : this.#followDeclaration(elsewhere.node, top, depth + 1);
  }

  #followParameter(
    parameter: ts.ParameterDeclaration,
    path: readonly string[],
    context: EvaluationContext,
    depth: number,
  ): boolean {
    const fn = parameter.parent;
    const there = this.#contexts.contextIn(fn, context);
    const index = fn.parameters.indexOf(parameter);
    const caller = there?.caller;
    if (!caller || parameter.dotDotDotToken) return false;
    const outside = this.#contexts.inside(caller);
    if (this.#objects.isCallback(caller, fn, outside, depth)) {
      const list =
        index === elementIndex(caller.node) ? this.#objects.elementsGiven(caller.node, outside, depth) : [];
      return this.#followElement(list, path, depth, namesOf(parameter, context));
    }
    const given = caller.node.arguments ?? [];
    if (given.slice(0, index + 1).some(ts.isSpreadElement)) return false;
    const argument = given[index];
    if (!argument || isUndefined(argument)) {
      return parameter.initializer && path.length === 0
        ? this.follow(parameter.initializer, there, depth)
        : false;
    }
    return this.#followInto(argument, path, outside, depth);
  }

  /** A name bound by a pattern: `{ load }`, `[name, load]`, with or without a default. */
  #followBinding(binding: ts.BindingElement, context: EvaluationContext, depth: number): boolean {
    const path = pathInPattern(binding);
    const root = rootOf(binding);
    if (!path || !root) return false;
    const born = this.#objects.patternBirth(root, context);
    const { length } = this.steps;
    if (born && this.#followDown(born, path, depth)) return true;
    this.steps.length = length;
    const followed = ts.isParameter(root)
      ? this.#followParameter(root, path, context, depth)
      : this.#followVariable(root, path, context, depth);
    if (followed || !binding.initializer) return followed;
    return this.#tryFollow(binding.initializer, this.#contexts.contextOf(binding, context), depth);
  }

  #followVariable(
    variable: ts.VariableDeclaration,
    path: readonly string[],
    context: EvaluationContext,
    depth: number,
  ): boolean {
    const there = this.#contexts.contextOf(variable, context);
    if (variable.initializer) return this.#followInto(variable.initializer, path, there, depth);
    const loop = loopOf(variable);
    if (!loop) return false;
    const list = this.#objects.elements(loop.expression, there, depth);
    return this.#followElement(list, path, depth, namesOf(variable, context));
  }

  /** Follows a path of property names into the value of an expression. */
  #followInto(
    expression: ts.Expression,
    path: readonly string[],
    context: EvaluationContext,
    depth: number,
  ): boolean {
    const [key, ...rest] = path;
    if (key === undefined) return this.follow(expression, context, depth);
    if (/^\d+$/.test(key)) {
      const element = this.#objects.elements(expression, context, depth)[Number(key)];
      return element && "node" in element
        ? this.#followInto(element.node, rest, element.context, depth + 1)
        : false;
    }
    const object = this.#objects.object(expression, context, depth);
    return object ? this.#followDown(object, path, depth) : false;
  }

  #followDown(object: SourceObject, path: readonly string[], depth: number): boolean {
    const [key = "", ...rest] = path;
    const found = this.#objects.property(object, key, depth);
    const value = found && propertyValue(found.property);
    return value ? this.#followInto(value, rest, found.holder.context, depth + 1) : false;
  }

  /**
   * Identifies the element of a list by its values: exactly one element must have the wanted value at the path, and other parts
   * equal to the record's other values. `same` is true for names bound to the same element.
   */
  #followElement(
    list: readonly Element[],
    path: readonly string[],
    depth: number,
    same: (name: ts.Identifier) => boolean,
  ): boolean {
    const { made } = this.#wanted;
    if ((!isSimple(this.#wanted.value) && !made) || this.#objects.tooFar(depth)) return false;
    this.#objects.comparesElements = true;
    const { literalLists } = this.#objects;
    const fits = (element: Element, { path: at, value }: KnownPart) => {
      const end = this.#objects.part(element, at, depth);
      const known = end && staticValue(unwrapExpression(end.node));
      return known !== undefined && Object.is(known.value, value);
    };
    const namesMade = (element: Element) => {
      const end = this.#objects.part(element, path, depth);
      return (
        end !== undefined && made !== undefined && this.#objects.names(end.node, end.context, made, depth + 1)
      );
    };
    const own: KnownPart = { path, value: this.#wanted.value };
    let fitting =
      (made ? undefined : literalLists.having(list, [own])) ??
      list.filter((element) => (made ? namesMade(element) : fits(element, own)));
    if (fitting.length > 1) {
      const parts = this.#partsBeside(list, same);
      fitting =
        (made ? undefined : literalLists.having(list, [own, ...parts])) ??
        fitting.filter((element) => parts.every((part) => fits(element, part)));
    }
    const [only, another] = fitting;
    const part = only && !another ? this.#objects.part(only, path, depth) : undefined;
    return part ? this.follow(part.node, part.context, depth) : false;
  }

  /** The record's other values that come from the same element. */
  #partsBeside(list: readonly Element[], same: (name: ts.Identifier) => boolean): readonly KnownPart[] {
    const file = list[0]?.context.file;
    return this.#wanted.neighbours().flatMap(({ expression, value }) => {
      if (!ts.isIdentifier(expression) || !isSimple(value) || !same(expression)) return [];
      const declaration = file && declarationOf(expression, file);
      const path = declaration && ts.isBindingElement(declaration) ? pathInPattern(declaration) : [];
      return path ? [{ path, value }] : [];
    });
  }
}

/** The known facts about a value that is traced: the value itself, and its neighbours in the same record. */
export interface Wanted {
  readonly value: unknown;
  readonly neighbours: () => readonly Neighbour[];
  /** If the value refers to the result of a DSL function. */
  readonly made?: Made | undefined;
}

export interface Neighbour {
  readonly expression: ts.Expression;
  readonly value: unknown;
}

/** Returns a test: true for the variable or parameter itself, and for names bound by its pattern. */
function namesOf(
  declared: ts.ParameterDeclaration | ts.VariableDeclaration,
  context: EvaluationContext,
): (name: ts.Identifier) => boolean {
  return (name) => rootOf(declarationOf(name, context.file)) === declared;
}

/** The index of the callback's parameter for the element. */
function elementIndex(call: CallLike): number {
  const name = ts.isPropertyAccessExpression(call.expression) ? call.expression.name.text : "";
  return name.startsWith("reduce") ? 1 : 0;
}

function isSimple(value: unknown): boolean {
  return typeof value === "number" || typeof value === "string" || typeof value === "boolean";
}
