import ts from "typescript";
import type { PropertyPath } from "../../library/model/record.ts";
import { bareExpression } from "./bare-expression.ts";
import { loopOf, pathInPattern, rootOf } from "./binding-patterns.ts";
import { declarationOf } from "./declarations.ts";
import type { CallLike } from "./marks.ts";
import { propertyName, writtenValue } from "./object-literals.ts";
import type { PlanFile } from "./parse.ts";
import {
  type Evidence,
  longestTrail,
  type Scene,
  Scenes,
  seesNothing,
  type Written,
  type WrittenObject,
} from "./scenes.ts";
import { staticValue } from "./static-value.ts";
import { branchesOf, type Element, isUndefined, WrittenObjects } from "./written-objects.ts";

/**
 * Follows the values of records back to the text that set them: the tree tells how expressions hang together, the run tells
 * which call and which object it was. Whatever cannot be followed ends the trail early, and a trail that arrives at another
 * value than the record has is not believed.
 */
export class Provenance {
  readonly #evidence: Evidence;
  readonly #scenes: Scenes;
  readonly #objects: WrittenObjects;

  constructor(evidence: Evidence) {
    this.#evidence = evidence;
    this.#scenes = new Scenes(evidence);
    this.#objects = new WrittenObjects(evidence, this.#scenes);
  }

  /** The call that made a record, and what it was given. */
  argumentOf(record: number): Argument {
    const raw = this.#evidence.outcome.records[record];
    const frame = raw && this.#scenes.frame(raw.call);
    if (!raw || !frame) return { call: topOf(this.#evidence.root), given: undefined, object: undefined };
    const given = frame.node.arguments?.[0];
    const born = this.#scenes.born(raw.births[""]);
    const object =
      born ??
      (given && !ts.isSpreadElement(given)
        ? this.#objects.object(given, this.#scenes.inside(frame), 0)
        : undefined);
    return { call: { file: frame.file, node: frame.node }, given, object };
  }

  /** The calls that led to a record, innermost first: that of the word, the one its function was called by, and so on. */
  callersOf(record: number): readonly Written[] {
    const callers: Written[] = [];
    let frame = this.#scenes.frame(this.#evidence.outcome.records[record]?.call ?? -1);
    while (frame && callers.length < longestTrail) {
      callers.push({ file: frame.file, node: frame.node });
      frame = this.#scenes.inside(frame).caller;
    }
    return callers;
  }

  /** The text of an open call. */
  callAt(call: number): Written | undefined {
    const frame = this.#scenes.frame(call);
    return frame && { file: frame.file, node: frame.node };
  }

  /** Literals that the objects seen at a record's call were made by: the element of a loop. */
  seenAt(record: number): readonly Written[] {
    const { records, calls } = this.#evidence.outcome;
    const births = [...Object.values(records[record]?.births ?? {})];
    for (let call = records[record]?.call ?? -1; call >= 0; call = calls[call]?.within ?? -1) {
      births.push(...(calls[call]?.seen ?? []));
    }
    return births
      .flatMap((birth) => this.#scenes.born(birth) ?? [])
      .map(({ file, literal }) => ({ file, node: literal }));
  }

  /** Undefined: the value is written nowhere, or it cannot be told where. */
  originOf(record: number, path: PropertyPath, argument: Argument): Origin | undefined {
    const raw = this.#evidence.outcome.records[record];
    let object = path.length > 0 && raw ? argument.object : undefined;
    let value: unknown = raw?.input;
    for (const [depth, key] of path.entries()) {
      const found = object && this.#objects.property(object, key, 0);
      if (!object || !found) return undefined;
      value = propertyOf(value, key);
      const last = depth === path.length - 1;
      const expression = writtenValue(found.property);
      const inner = !last && expression ? this.#objects.object(expression, found.holder.scene, 0) : undefined;
      const born: WrittenObject | undefined = last
        ? undefined
        : (inner ?? this.#scenes.born(raw?.births[path.slice(0, depth + 1).join(".")]));
      if (born) {
        object = born;
        continue;
      }
      const trail: Written[] = [];
      const wanted: Wanted = { value, neighbours: () => neighboursOf(found.holder.literal, raw?.input) };
      const target = expression ?? found.property;
      if (expression) this.#follow(expression, found.holder.scene, wanted, trail, 0);
      else trail.push({ file: found.holder.file, node: target });
      return { trail, holder: found.holder, property: found.property, whole: last };
    }
    return undefined;
  }

  /** The object that a nested path of a record leads to: where a property of it can be put in. */
  objectAt(record: number, path: PropertyPath): WrittenObject | undefined {
    let object = this.argumentOf(record).object;
    const raw = this.#evidence.outcome.records[record];
    for (const [depth, key] of path.entries()) {
      const found = object && this.#objects.property(object, key, 0);
      const expression = found && writtenValue(found.property);
      object =
        (expression && this.#objects.object(expression, found.holder.scene, 0)) ??
        this.#scenes.born(raw?.births[path.slice(0, depth + 1).join(".")]);
    }
    return object;
  }

  /** The literal itself and those spread into it. */
  layersOf(object: WrittenObject): readonly WrittenObject[] {
    const layers = [object];
    for (const property of object.literal.properties) {
      if (layers.length > longestTrail || !ts.isSpreadAssignment(property)) continue;
      for (const spread of this.#objects.objects(property.expression, object.scene, 0))
        layers.push(...this.layersOf(spread));
    }
    return layers;
  }

  /** Appends what an expression leads to. False: the end of the trail has another value than is wanted. */
  #follow(expression: ts.Expression, scene: Scene, wanted: Wanted, trail: Written[], depth: number): boolean {
    const node = bareExpression(expression);
    const length = trail.push({ file: scene.file, node });
    const known = staticValue(node);
    if (known) return !isSimple(wanted.value) || Object.is(known.value, wanted.value);
    if (depth > longestTrail) return true;
    if (this.#step(node, scene, wanted, trail, depth + 1)) return true;
    // A step led to something else than what came out: the place is as far as the trail could be believed.
    trail.length = length;
    return true;
  }

  /** One step from an expression to what its value was taken from. */
  #step(node: ts.Expression, scene: Scene, wanted: Wanted, trail: Written[], depth: number): boolean {
    if (ts.isIdentifier(node)) return this.#followName(node, scene, wanted, trail, depth);
    if (ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node)) {
      const value = this.#objects.written(node, scene, depth);
      if (value) return this.#follow(value.node, value.scene, wanted, trail, depth);
      if (ts.isPropertyAccessExpression(node)) return false;
      const list = this.#objects.elements(node.expression, scene, depth);
      return this.#followElement(list, [], wanted, trail, depth, () => false);
    }
    const branches = branchesOf(node);
    return branches.some((branch) => this.#tryFollow(branch, scene, wanted, trail, depth));
  }

  /** Follows only if the end is sure to have the wanted value. */
  #tryFollow(
    expression: ts.Expression,
    scene: Scene,
    wanted: Wanted,
    trail: Written[],
    depth: number,
  ): boolean {
    if (!isSimple(wanted.value)) return false;
    const attempt: Written[] = [];
    this.#follow(expression, scene, wanted, attempt, depth);
    const end = attempt.at(-1);
    const known = end && ts.isExpression(end.node) ? staticValue(end.node) : undefined;
    if (!known || !Object.is(known.value, wanted.value)) return false;
    trail.push(...attempt);
    return true;
  }

  #followName(name: ts.Identifier, scene: Scene, wanted: Wanted, trail: Written[], depth: number): boolean {
    const declaration = declarationOf(name, scene.file);
    if (!declaration) return false;
    return this.#followDeclaration(declaration, scene, wanted, trail, depth);
  }

  #followDeclaration(
    declaration: ts.Node,
    scene: Scene,
    wanted: Wanted,
    trail: Written[],
    depth: number,
  ): boolean {
    if (ts.isVariableDeclaration(declaration)) {
      const there = this.#scenes.sceneOf(declaration, scene);
      if (declaration.initializer) return this.#follow(declaration.initializer, there, wanted, trail, depth);
      const loop = loopOf(declaration);
      if (!loop) return false;
      const same = (identifier: ts.Identifier) => declarationOf(identifier, scene.file) === declaration;
      return this.#followElement(
        this.#objects.elements(loop.expression, there, depth),
        [],
        wanted,
        trail,
        depth,
        same,
      );
    }
    if (ts.isParameter(declaration))
      return this.#followParameter(declaration, [], scene, wanted, trail, depth);
    if (ts.isBindingElement(declaration))
      return this.#followBinding(declaration, scene, wanted, trail, depth);
    const elsewhere = this.#objects.imported(declaration, scene.file);
    if (!elsewhere) return false;
    const top: Scene = { file: elsewhere.file, fn: undefined, caller: undefined, seen: seesNothing };
    return ts.isExpression(elsewhere.node)
      ? this.#follow(elsewhere.node, top, wanted, trail, depth)
      : this.#followDeclaration(elsewhere.node, top, wanted, trail, depth + 1);
  }

  #followParameter(
    parameter: ts.ParameterDeclaration,
    path: readonly string[],
    scene: Scene,
    wanted: Wanted,
    trail: Written[],
    depth: number,
  ): boolean {
    const fn = parameter.parent;
    const there = this.#scenes.sceneIn(fn, scene);
    const index = fn.parameters.indexOf(parameter);
    const caller = there?.caller;
    if (!caller || parameter.dotDotDotToken) return false;
    const outside = this.#scenes.inside(caller);
    if (this.#objects.isCallback(caller, fn, outside, depth)) {
      const list =
        index === elementIndex(caller.node) ? this.#objects.elementsGiven(caller.node, outside, depth) : [];
      const same = (identifier: ts.Identifier) => rootOf(declarationOf(identifier, scene.file)) === parameter;
      return this.#followElement(list, path, wanted, trail, depth, same);
    }
    const given = caller.node.arguments ?? [];
    if (given.slice(0, index + 1).some(ts.isSpreadElement)) return false;
    const argument = given[index];
    if (!argument || isUndefined(argument)) {
      return parameter.initializer && path.length === 0
        ? this.#follow(parameter.initializer, there, wanted, trail, depth)
        : false;
    }
    return this.#followInto(argument, path, outside, wanted, trail, depth);
  }

  /** A name taken out of a pattern: `{ load }`, `[name, load]`, with or without a default. */
  #followBinding(
    binding: ts.BindingElement,
    scene: Scene,
    wanted: Wanted,
    trail: Written[],
    depth: number,
  ): boolean {
    const path = pathInPattern(binding);
    const root = rootOf(binding);
    if (!path || !root) return false;
    const born = this.#objects.patternBirth(root, scene);
    const followed: boolean =
      (born && this.#followDown(born, path, wanted, trail, depth)) ||
      (ts.isParameter(root)
        ? this.#followParameter(root, path, scene, wanted, trail, depth)
        : this.#followVariablePattern(root, path, binding, scene, wanted, trail, depth));
    if (followed || !binding.initializer) return followed;
    return this.#tryFollow(binding.initializer, this.#scenes.sceneOf(binding, scene), wanted, trail, depth);
  }

  #followVariablePattern(
    root: ts.VariableDeclaration,
    path: readonly string[],
    binding: ts.BindingElement,
    scene: Scene,
    wanted: Wanted,
    trail: Written[],
    depth: number,
  ): boolean {
    const there = this.#scenes.sceneOf(root, scene);
    if (root.initializer) return this.#followInto(root.initializer, path, there, wanted, trail, depth);
    const loop = loopOf(root);
    if (!loop) return false;
    const same = (identifier: ts.Identifier) =>
      rootOf(declarationOf(identifier, scene.file)) === rootOf(binding);
    return this.#followElement(
      this.#objects.elements(loop.expression, there, depth),
      path,
      wanted,
      trail,
      depth,
      same,
    );
  }

  /** Follows a path of property names into what an expression gives. */
  #followInto(
    expression: ts.Expression,
    path: readonly string[],
    scene: Scene,
    wanted: Wanted,
    trail: Written[],
    depth: number,
  ): boolean {
    const [key, ...rest] = path;
    if (key === undefined) return this.#follow(expression, scene, wanted, trail, depth);
    if (/^\d+$/.test(key)) {
      const element = this.#objects.elements(expression, scene, depth)[Number(key)];
      return element && "node" in element
        ? this.#followInto(element.node, rest, element.scene, wanted, trail, depth + 1)
        : false;
    }
    const object = this.#objects.object(expression, scene, depth);
    return object ? this.#followDown(object, path, wanted, trail, depth) : false;
  }

  #followDown(
    object: WrittenObject,
    path: readonly string[],
    wanted: Wanted,
    trail: Written[],
    depth: number,
  ): boolean {
    const [key = "", ...rest] = path;
    const found = this.#objects.property(object, key, depth);
    const value = found && writtenValue(found.property);
    return value ? this.#followInto(value, rest, found.holder.scene, wanted, trail, depth + 1) : false;
  }

  /**
   * Which element of a list it was is told by the values: of the elements that have the wanted value at the path, and whose
   * other parts agree with the record's other values, there must be just one. `same` tells names bound to the same element.
   */
  #followElement(
    list: readonly Element[],
    path: readonly string[],
    wanted: Wanted,
    trail: Written[],
    depth: number,
    same: (name: ts.Identifier) => boolean,
  ): boolean {
    if (!isSimple(wanted.value) || depth > longestTrail) return false;
    const fits = (element: Element, at: readonly string[], value: unknown) => {
      const end = this.#objects.part(element, at, depth);
      const known = end && staticValue(bareExpression(end.node));
      return known !== undefined && Object.is(known.value, value);
    };
    let fitting = list.filter((element) => fits(element, path, wanted.value));
    if (fitting.length > 1) {
      for (const { expression, value } of wanted.neighbours()) {
        if (!ts.isIdentifier(expression) || !isSimple(value) || !same(expression)) continue;
        const file = list[0]?.scene.file;
        const declaration = file && declarationOf(expression, file);
        const at = declaration && ts.isBindingElement(declaration) ? pathInPattern(declaration) : [];
        if (at) fitting = fitting.filter((element) => fits(element, at, value));
      }
    }
    const [only, another] = fitting;
    const part = only && !another ? this.#objects.part(only, path, depth) : undefined;
    return part ? this.#follow(part.node, part.scene, wanted, trail, depth) : false;
  }
}

/** Where a value of a record comes from. */
export interface Origin {
  /** From the value as it is given to the word, step by step, to what set it; at least one. */
  readonly trail: readonly Written[];
  /** Where the property's name is written. */
  readonly holder: WrittenObject;
  readonly property: ts.ObjectLiteralElementLike;
  /** The path led to the end: not to a number where an object was expected. */
  readonly whole: boolean;
}

/** The argument of a word, as far as it is known. */
export interface Argument {
  /** The call of the word, or the innermost call that led to it. */
  readonly call: Written;
  /** The expression given to the word. */
  readonly given: ts.Expression | undefined;
  readonly object: WrittenObject | undefined;
}

/** What is known of a value that is looked for: its own value, and how its neighbours of the same record look. */
interface Wanted {
  readonly value: unknown;
  readonly neighbours: () => readonly Neighbour[];
}

interface Neighbour {
  readonly expression: ts.Expression;
  readonly value: unknown;
}

/** Which parameter of a callback is the element. */
function elementIndex(call: CallLike): number {
  const name = ts.isPropertyAccessExpression(call.expression) ? call.expression.name.text : "";
  return name.startsWith("reduce") ? 1 : 0;
}

/** The start of a file, for what happened at no call. */
function topOf(file: PlanFile): Written {
  return { file, node: file.tree.source.statements[0] ?? file.tree.source };
}

function neighboursOf(literal: ts.ObjectLiteralExpression, input: unknown): readonly Neighbour[] {
  return literal.properties.flatMap((property) => {
    const expression = writtenValue(property);
    const key = propertyName(property);
    return expression && key !== undefined
      ? [{ expression: bareExpression(expression), value: propertyOf(input, key) }]
      : [];
  });
}

function isSimple(value: unknown): boolean {
  return typeof value === "number" || typeof value === "string" || typeof value === "boolean";
}

function propertyOf(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key]
    : undefined;
}
