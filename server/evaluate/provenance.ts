import ts from "typescript";
import type { PropertyPath } from "../../library/model/record.ts";
import { bareExpression } from "./bare-expression.ts";
import { declarationOf, exportOf, passedOn } from "./declarations.ts";
import { type CallLike, patternName, type Site, sitesInFile } from "./marks.ts";
import type { PlanFile } from "./parse.ts";
import type { RunOutcome } from "./sandbox.ts";
import { staticValue } from "./static-value.ts";

/** A part of a plan's text. */
export interface Written {
  readonly file: PlanFile;
  readonly node: ts.Node;
}

/** An object literal, and where it was evaluated. */
export interface WrittenObject {
  readonly file: PlanFile;
  readonly literal: ts.ObjectLiteralExpression;
  readonly scene: Scene;
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

export interface Evidence {
  readonly outcome: RunOutcome;
  readonly root: PlanFile;
  readonly files: readonly PlanFile[];
  /** The file that an import in a file leads to; undefined for the library. */
  readonly imported: (importer: PlanFile, text: string) => PlanFile | undefined;
}

/** An open call, with everything that is known of the place it was made at. */
interface Frame {
  readonly file: PlanFile;
  readonly node: CallLike;
  readonly seen: Seen;
  readonly within: Frame | undefined;
}

/** The circumstances in which an expression was evaluated: the call that its function was entered by, and the objects seen. */
export interface Scene {
  readonly file: PlanFile;
  readonly fn: ts.Node | undefined;
  readonly caller: Frame | undefined;
  readonly seen: Seen;
}

type Seen = (text: string) => number | undefined;

/** What is known of a value that is looked for: its own value, and how its neighbours of the same record look. */
interface Wanted {
  readonly value: unknown;
  readonly neighbours: () => readonly Neighbour[];
}

interface Neighbour {
  readonly expression: ts.Expression;
  readonly value: unknown;
}

const seesNothing: Seen = () => undefined;

/** Longer chains are followed no further; the value then is where the chain was left. */
const longestTrail = 60;

/**
 * Follows the values of records back to the text that set them: the tree tells how expressions hang together, the run tells
 * which call and which object it was. Whatever cannot be followed ends the trail early, and a trail that arrives at another
 * value than the record has is not believed.
 */
export class Provenance {
  readonly #evidence: Evidence;
  readonly #numbered: ReadonlyMap<number, PlanFile>;
  readonly #frames: (Frame | null)[] = [];
  readonly #scenes = new Map<Frame, Scene>();

  constructor(evidence: Evidence) {
    this.#evidence = evidence;
    this.#numbered = new Map(evidence.files.map((file) => [file.number, file]));
  }

  /** The call that made a record, and what it was given. */
  argumentOf(record: number): Argument {
    const raw = this.#evidence.outcome.records[record];
    const frame = raw && this.#frame(raw.call);
    if (!raw || !frame) return { call: topOf(this.#evidence.root), given: undefined, object: undefined };
    const given = frame.node.arguments?.[0];
    const born = this.#born(raw.births[""]);
    const object =
      born ?? (given && !ts.isSpreadElement(given) ? this.#object(given, this.#inside(frame), 0) : undefined);
    return { call: { file: frame.file, node: frame.node }, given, object };
  }

  /** The calls that led to a record, innermost first: that of the word, the one its function was called by, and so on. */
  callersOf(record: number): readonly Written[] {
    const callers: Written[] = [];
    let frame = this.#frame(this.#evidence.outcome.records[record]?.call ?? -1);
    while (frame && callers.length < longestTrail) {
      callers.push({ file: frame.file, node: frame.node });
      frame = this.#inside(frame).caller;
    }
    return callers;
  }

  /** The text of an open call. */
  callAt(call: number): Written | undefined {
    const frame = this.#frame(call);
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
      .flatMap((birth) => this.#born(birth) ?? [])
      .map(({ file, literal }) => ({ file, node: literal }));
  }

  /** Undefined: the value is written nowhere, or it cannot be told where. */
  originOf(record: number, path: PropertyPath, argument: Argument): Origin | undefined {
    const raw = this.#evidence.outcome.records[record];
    let object = path.length > 0 && raw ? argument.object : undefined;
    let value: unknown = raw?.input;
    for (const [depth, key] of path.entries()) {
      const found = object && this.#property(object, key, 0);
      if (!object || !found) return undefined;
      value = propertyOf(value, key);
      const last = depth === path.length - 1;
      const expression = writtenValue(found.property);
      const inner = !last && expression ? this.#object(expression, found.holder.scene, 0) : undefined;
      const born: WrittenObject | undefined = last
        ? undefined
        : (inner ?? this.#born(raw?.births[path.slice(0, depth + 1).join(".")]));
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
      const found = object && this.#property(object, key, 0);
      const expression = found && writtenValue(found.property);
      object =
        (expression && this.#object(expression, found.holder.scene, 0)) ??
        this.#born(raw?.births[path.slice(0, depth + 1).join(".")]);
    }
    return object;
  }

  /** The literal itself and those spread into it. */
  layersOf(object: WrittenObject): readonly WrittenObject[] {
    const layers = [object];
    for (const property of object.literal.properties) {
      if (layers.length > longestTrail || !ts.isSpreadAssignment(property)) continue;
      for (const spread of this.#objects(property.expression, object.scene, 0))
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
      const value = this.#written(node, scene, depth);
      if (value) return this.#follow(value.node, value.scene, wanted, trail, depth);
      if (ts.isPropertyAccessExpression(node)) return false;
      const list = this.#elements(node.expression, scene, depth);
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
      const there = this.#sceneOf(declaration, scene);
      if (declaration.initializer) return this.#follow(declaration.initializer, there, wanted, trail, depth);
      const loop = loopOf(declaration);
      if (!loop) return false;
      const same = (identifier: ts.Identifier) => declarationOf(identifier, scene.file) === declaration;
      return this.#followElement(
        this.#elements(loop.expression, there, depth),
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
    const elsewhere = this.#exported(declaration, scene.file);
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
    const there = this.#sceneIn(fn, scene);
    const index = fn.parameters.indexOf(parameter);
    const caller = there?.caller;
    if (!caller || parameter.dotDotDotToken) return false;
    const outside = this.#inside(caller);
    if (this.#isCallback(caller, fn, outside, depth)) {
      const list =
        index === elementIndex(caller.node) ? this.#elementsGiven(caller.node, outside, depth) : [];
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
    const born = this.#born(scene.seen(this.#nameOf(root, scene.file)));
    const followed: boolean =
      (born && this.#followDown(born, path, wanted, trail, depth)) ||
      (ts.isParameter(root)
        ? this.#followParameter(root, path, scene, wanted, trail, depth)
        : this.#followVariablePattern(root, path, binding, scene, wanted, trail, depth));
    if (followed || !binding.initializer) return followed;
    return this.#tryFollow(binding.initializer, this.#sceneOf(binding, scene), wanted, trail, depth);
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
    const there = this.#sceneOf(root, scene);
    if (root.initializer) return this.#followInto(root.initializer, path, there, wanted, trail, depth);
    const loop = loopOf(root);
    if (!loop) return false;
    const same = (identifier: ts.Identifier) =>
      rootOf(declarationOf(identifier, scene.file)) === rootOf(binding);
    return this.#followElement(
      this.#elements(loop.expression, there, depth),
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
      const element = this.#elements(expression, scene, depth)[Number(key)];
      return element && "node" in element
        ? this.#followInto(element.node, rest, element.scene, wanted, trail, depth + 1)
        : false;
    }
    const object = this.#object(expression, scene, depth);
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
    const found = this.#property(object, key, depth);
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
      const end = this.#part(element, at, depth);
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
    const part = only && !another ? this.#part(only, path, depth) : undefined;
    return part ? this.#follow(part.node, part.scene, wanted, trail, depth) : false;
  }

  #part(element: Element, path: readonly string[], depth: number): Value | undefined {
    const [key, ...rest] = path;
    if (key === undefined) return "node" in element ? element : undefined;
    if ("pair" in element) {
      const part = element.pair[Number(key)];
      return part && this.#part({ node: part, scene: element.scene }, rest, depth + 1);
    }
    if (/^\d+$/.test(key)) {
      const inner = this.#elements(element.node, element.scene, depth + 1)[Number(key)];
      return inner && this.#part(inner, rest, depth + 1);
    }
    const object = this.#object(element.node, element.scene, depth + 1);
    const found = object && this.#property(object, key, depth + 1);
    const value = found && writtenValue(found.property);
    return value && this.#part({ node: value, scene: found.holder.scene }, rest, depth + 1);
  }

  /** The elements of a list that is written out, in any order in which the plan may have put them since. */
  #elements(expression: ts.Expression, scene: Scene, depth: number): readonly Element[] {
    const node = bareExpression(expression);
    if (depth > longestTrail) return [];
    if (ts.isArrayLiteralExpression(node)) {
      return node.elements.flatMap((element): readonly Element[] =>
        ts.isSpreadElement(element)
          ? this.#elements(element.expression, scene, depth + 1)
          : [{ node: element, scene }],
      );
    }
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const { expression: base, name } = node.expression;
      if (ts.isIdentifier(base) && base.text === "Object" && node.arguments[0]) {
        return this.#entries(node.arguments[0], name.text, scene, depth + 1);
      }
      return keepsElements.has(name.text) ? this.#elements(base, scene, depth + 1) : [];
    }
    const value = this.#written(node, scene, depth + 1);
    return value ? this.#elements(value.node, value.scene, depth + 1) : [];
  }

  #entries(table: ts.Expression, what: string, scene: Scene, depth: number): readonly Element[] {
    const object = this.#object(table, scene, depth);
    if (what === "freeze") return this.#elements(table, scene, depth);
    if (!object) return [];
    return object.literal.properties.flatMap((property): readonly Element[] => {
      const value = writtenValue(property);
      if (!value || !property.name) return [];
      if (what === "values") return [{ node: value, scene: object.scene }];
      const key = property.name as ts.Expression;
      if (what === "keys") return [{ node: key, scene: object.scene }];
      return what === "entries" ? [{ pair: [key, value], scene: object.scene }] : [];
    });
  }

  /** The list that a native method hands to its callback, element by element. */
  #elementsGiven(call: CallLike, scene: Scene, depth: number): readonly Element[] {
    if (!ts.isPropertyAccessExpression(call.expression)) return [];
    const { expression: base, name } = call.expression;
    const list = name.text === "from" && ts.isIdentifier(base) ? call.arguments?.[0] : base;
    return list ? this.#elements(list, scene, depth) : [];
  }

  /** The object literal that an expression gave, if there is only one that it can be. */
  #object(expression: ts.Expression, scene: Scene, depth: number): WrittenObject | undefined {
    return this.#objects(expression, scene, depth)[0];
  }

  #objects(expression: ts.Expression, scene: Scene, depth: number): readonly WrittenObject[] {
    const node = bareExpression(expression);
    if (depth > longestTrail) return [];
    if (ts.isObjectLiteralExpression(node)) return [{ file: scene.file, literal: node, scene }];
    const branches = branchesOf(node);
    if (branches.length > 0) return branches.flatMap((branch) => this.#objects(branch, scene, depth + 1));
    const born = this.#born(scene.seen(this.#textOf(node, scene.file)));
    if (born) return [born];
    if (ts.isCallExpression(node)) return this.#returned(node, scene, depth + 1);
    const value = this.#written(node, scene, depth + 1);
    return value ? this.#objects(value.node, value.scene, depth + 1) : [];
  }

  /** What a name or a property stands for, one step further. */
  #written(node: ts.Expression, scene: Scene, depth: number): Value | undefined {
    if (depth > longestTrail) return undefined;
    if (ts.isIdentifier(node)) {
      const declaration = declarationOf(node, scene.file);
      return declaration && this.#declared(declaration, scene, depth);
    }
    const key = ts.isPropertyAccessExpression(node)
      ? node.name.text
      : ts.isElementAccessExpression(node)
        ? staticValue(bareExpression(node.argumentExpression))?.value
        : undefined;
    if (key === undefined || key === null) return undefined;
    const { expression: base } = node as ts.PropertyAccessExpression;
    if (ts.isIdentifier(base)) {
      // `import * as sizes`: its properties are the other file's exports.
      const declaration = declarationOf(base, scene.file);
      if (declaration && ts.isNamespaceImport(declaration)) {
        const other = this.#fileOf(declaration.parent.parent.moduleSpecifier, scene.file);
        return other && this.#exportedValue(other, String(key), depth);
      }
    }
    const object = this.#object(base, scene, depth);
    const found = object && this.#property(object, String(key), depth);
    const value = found && writtenValue(found.property);
    if (value) return { node: value, scene: found.holder.scene };
    const element = /^\d+$/.test(String(key)) ? this.#elements(base, scene, depth)[Number(key)] : undefined;
    return element && "node" in element ? element : undefined;
  }

  #declared(declaration: ts.Node, scene: Scene, depth: number): Value | undefined {
    if (ts.isVariableDeclaration(declaration)) {
      const { initializer } = declaration;
      return initializer && { node: initializer, scene: this.#sceneOf(declaration, scene) };
    }
    if (ts.isParameter(declaration)) return this.#given(declaration, scene, depth);
    if (ts.isBindingElement(declaration)) {
      const root = rootOf(declaration);
      const path = pathInPattern(declaration);
      if (!root || !path) return undefined;
      const born = this.#born(scene.seen(this.#nameOf(root, scene.file)));
      const whole = born
        ? { node: born.literal, scene: born.scene }
        : ts.isParameter(root)
          ? this.#given(root, scene, depth)
          : root.initializer && { node: root.initializer, scene: this.#sceneOf(root, scene) };
      return whole && this.#part(whole, path, depth + 1);
    }
    const elsewhere = this.#exported(declaration, scene.file);
    return elsewhere && this.#valueOfExport(elsewhere, depth);
  }

  /** The argument that a parameter stands for. */
  #given(parameter: ts.ParameterDeclaration, scene: Scene, depth: number): Value | undefined {
    const fn = parameter.parent;
    const there = this.#sceneIn(fn, scene);
    const caller = there?.caller;
    if (!caller || parameter.dotDotDotToken) return undefined;
    const outside = this.#inside(caller);
    if (this.#isCallback(caller, fn, outside, depth)) return undefined;
    const index = fn.parameters.indexOf(parameter);
    const given = caller.node.arguments ?? [];
    if (given.slice(0, index + 1).some(ts.isSpreadElement)) return undefined;
    const argument = given[index];
    if (argument && !isUndefined(argument)) return { node: argument, scene: outside };
    return parameter.initializer && { node: parameter.initializer, scene: there };
  }

  /** The literal that a call gives back: what a word was given, or what a function of the plan returns. */
  #returned(call: ts.CallExpression, scene: Scene, depth: number): readonly WrittenObject[] {
    if (depth > longestTrail) return [];
    const argument = call.arguments[0];
    const { expression: callee } = call;
    if (ts.isPropertyAccessExpression(callee) && ts.isIdentifier(callee.expression) && argument) {
      const copies = callee.expression.text === "Object" && callee.name.text === "freeze";
      if (copies) return this.#objects(argument, scene, depth);
    }
    const fn = this.#functionOf(callee, scene, depth);
    if (fn === "word" && argument) return this.#objects(argument, scene, depth);
    if (!fn || fn === "word" || !ts.isFunctionLike(fn.node)) return [];
    const body = returnedBy(fn.node);
    if (!body) return [];
    const frame: Frame = { file: scene.file, node: call, seen: scene.seen, within: scene.caller };
    return this.#objects(body, { file: fn.file, fn: fn.node, caller: frame, seen: seesNothing }, depth + 1);
  }

  /** The function or class that is called, if the text tells. */
  #functionOf(callee: ts.Expression, scene: Scene, depth: number): Written | "word" | undefined {
    const node = bareExpression(callee);
    if (depth > longestTrail) return undefined;
    if (isFunction(node)) return { file: scene.file, node };
    if (ts.isIdentifier(node)) {
      const declaration = declarationOf(node, scene.file);
      if (!declaration) return undefined;
      if (isFunction(declaration)) return { file: scene.file, node: declaration };
      if (ts.isImportSpecifier(declaration) && importsLibrary(declaration)) return "word";
      const elsewhere = this.#exported(declaration, scene.file);
      if (elsewhere && isFunction(elsewhere.node)) return elsewhere;
    }
    const value = this.#written(node, scene, depth + 1);
    return value && this.#functionOf(value.node, value.scene, depth + 1);
  }

  /** Whether a function was called by the called one (a callback), rather than being the called one itself. */
  #isCallback(caller: Frame, fn: ts.Node, scene: Scene, depth: number): boolean {
    const called = this.#functionOf(caller.node.expression, scene, depth);
    if (called && called !== "word") {
      if (called.node === fn || called.node === fn.parent) return false;
    }
    const given = caller.node.arguments ?? [];
    const isGiven = given.some((argument) => {
      const passed = this.#functionOf(argument, scene, depth);
      return passed && passed !== "word" && passed.node === fn;
    });
    if (isGiven) return true;
    const { expression } = caller.node;
    return ts.isPropertyAccessExpression(expression) && callsBack.has(expression.name.text);
  }

  /** The last property of that name wins; a spread counts as the properties it brings. */
  #property(object: WrittenObject, key: string, depth: number): FoundProperty | undefined {
    const { properties } = object.literal;
    if (depth > longestTrail) return undefined;
    for (let index = properties.length - 1; index >= 0; index--) {
      const property = properties[index] as ts.ObjectLiteralElementLike;
      if (ts.isSpreadAssignment(property)) {
        for (const spread of this.#objects(property.expression, object.scene, depth + 1)) {
          const found = this.#property(spread, key, depth + 1);
          if (found) return found;
        }
      } else if (propertyName(property) === key) return { property, holder: object };
    }
    return undefined;
  }

  #exported(declaration: ts.Node, file: PlanFile): Written | undefined {
    if (ts.isImportSpecifier(declaration)) {
      const other = this.#fileOf(declaration.parent.parent.parent.moduleSpecifier, file);
      return other && this.#export(other, (declaration.propertyName ?? declaration.name).text, 0);
    }
    if (ts.isImportClause(declaration)) {
      const other = this.#fileOf(declaration.parent.moduleSpecifier, file);
      return other && this.#export(other, "default", 0);
    }
    return undefined;
  }

  #export(file: PlanFile, name: string, depth: number): Written | undefined {
    if (depth > longestTrail) return undefined;
    const node = exportOf(file, name);
    if (!node) {
      for (const text of name === "default" ? [] : passedOn(file)) {
        const other = this.#evidence.imported(file, text);
        const found = other && this.#export(other, name, depth + 1);
        if (found) return found;
      }
      return undefined;
    }
    if (!ts.isExportSpecifier(node)) return { file, node };
    const { moduleSpecifier } = node.parent.parent;
    const inner = node.propertyName ?? node.name;
    if (moduleSpecifier) {
      const other = this.#fileOf(moduleSpecifier, file);
      return other && this.#export(other, inner.text, depth + 1);
    }
    const declaration = ts.isIdentifier(inner) ? declarationOf(inner, file) : undefined;
    return declaration && (this.#exported(declaration, file) ?? { file, node: declaration });
  }

  #exportedValue(file: PlanFile, name: string, depth: number): Value | undefined {
    const found = this.#export(file, name, 0);
    return found && this.#valueOfExport(found, depth);
  }

  #valueOfExport({ file, node }: Written, depth: number): Value | undefined {
    const scene: Scene = { file, fn: undefined, caller: undefined, seen: seesNothing };
    return ts.isExpression(node) ? { node, scene } : this.#declared(node, scene, depth + 1);
  }

  #fileOf(specifier: ts.Expression, importer: PlanFile): PlanFile | undefined {
    return ts.isStringLiteral(specifier) ? this.#evidence.imported(importer, specifier.text) : undefined;
  }

  #frame(index: number): Frame | undefined {
    const known = this.#frames[index];
    if (known !== undefined) return known ?? undefined;
    const call = this.#evidence.outcome.calls[index];
    const at = call && this.#site(call.callSite);
    if (!at || ts.isObjectLiteralExpression(at.site.node)) return undefined;
    const seen = seenBy(at.site, call.seen);
    // Calls that were left open by mistake would be a chain without end; none is followed further than this.
    const frame: Frame = { file: at.file, node: at.site.node, seen, within: this.#frame(call.within) };
    this.#frames[index] = frame;
    return frame;
  }

  #born(index: number | undefined): WrittenObject | undefined {
    const birth = index === undefined ? undefined : this.#evidence.outcome.births[index];
    const at = birth && this.#site(birth.literal);
    if (!at || !ts.isObjectLiteralExpression(at.site.node)) return undefined;
    const literal = at.site.node;
    const fn = functionAround(literal);
    const caller = fn && callerAt(this.#frame(birth.call), literal, at.file);
    return {
      file: at.file,
      literal,
      scene: { file: at.file, fn, caller, seen: seenBy(at.site, birth.seen) },
    };
  }

  #site(number: number): { readonly file: PlanFile; readonly site: Site } | undefined {
    const file = this.#numbered.get(Math.floor(number / sitesInFile));
    const site = file?.tree.marked?.sites[number % sitesInFile];
    return file && site && { file, site };
  }

  /** The scene in which the arguments of a call were evaluated. */
  #inside(frame: Frame): Scene {
    let scene = this.#scenes.get(frame);
    if (!scene) {
      const fn = functionAround(frame.node);
      scene = {
        file: frame.file,
        fn,
        caller: fn && callerAt(frame.within, frame.node, frame.file),
        seen: frame.seen,
      };
      this.#scenes.set(frame, scene);
    }
    return scene;
  }

  /** The scene of a declaration that is visible in a scene: the same function's, or an outer one's. */
  #sceneOf(declaration: ts.Node, scene: Scene): Scene {
    const fn = functionAround(declaration);
    return this.#sceneIn(fn, scene) ?? { file: scene.file, fn, caller: undefined, seen: scene.seen };
  }

  #sceneIn(fn: ts.Node | undefined, from: Scene): Scene | undefined {
    let scene: Scene | undefined = from;
    for (let steps = 0; scene && steps < longestTrail; steps++) {
      if (scene.fn === fn) return scene === from ? from : { ...scene, seen: from.seen };
      scene = scene.caller && this.#inside(scene.caller);
    }
    return undefined;
  }

  #nameOf(root: ts.ParameterDeclaration | ts.VariableDeclaration, file: PlanFile): string {
    if (!ts.isObjectBindingPattern(root.name)) return "";
    const index = file.tree.marked?.patterns.indexOf(root.name) ?? -1;
    return index < 0 ? "" : patternName(index);
  }

  #textOf(node: ts.Expression, file: PlanFile): string {
    if (ts.isIdentifier(node)) return node.text;
    if (!ts.isElementAccessExpression(node)) return "";
    const { expression, argumentExpression } = node;
    if (!ts.isIdentifier(expression) || !ts.isIdentifier(argumentExpression)) return "";
    return `${expression.getText(file.tree.source)}[${argumentExpression.text}]`;
  }
}

interface FoundProperty {
  readonly property: ts.ObjectLiteralElementLike;
  readonly holder: WrittenObject;
}

interface Value {
  readonly node: ts.Expression;
  readonly scene: Scene;
}

type Element = Value | { readonly pair: readonly ts.Expression[]; readonly scene: Scene };

/** Methods of lists that give a list of the same elements, or of some of them. */
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

/** Native methods that call the function they are given. */
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

/** Which parameter of a callback is the element. */
function elementIndex(call: CallLike): number {
  const name = ts.isPropertyAccessExpression(call.expression) ? call.expression.name.text : "";
  return name.startsWith("reduce") ? 1 : 0;
}

/** The start of a file, for what happened at no call. */
function topOf(file: PlanFile): Written {
  return { file, node: file.tree.source.statements[0] ?? file.tree.source };
}

function seenBy(site: Site, births: readonly number[]): Seen {
  const { seen } = site;
  if (seen.length === 0) return seesNothing;
  return (text) => {
    const birth = births[seen.indexOf(text)];
    return birth === undefined || birth < 0 ? undefined : birth;
  };
}

/** The call that a node's function was entered by: calls whose arguments the node is part of were open, but are not it. */
function callerAt(open: Frame | undefined, node: ts.Node, file: PlanFile): Frame | undefined {
  const fn = functionAround(node);
  let frame = open;
  while (frame && frame.file === file && contains(frame.node, node) && functionAround(frame.node) === fn) {
    frame = frame.within;
  }
  return frame;
}

function contains(outer: ts.Node, inner: ts.Node): boolean {
  return outer.pos <= inner.pos && inner.end <= outer.end;
}

function functionAround(node: ts.Node): ts.Node | undefined {
  let outer: ts.Node | undefined = ts.isParameter(node) ? node.parent : node.parent;
  while (outer && !ts.isFunctionLike(outer)) outer = outer.parent;
  return outer;
}

function isFunction(node: ts.Node): boolean {
  return ts.isFunctionLike(node) || ts.isClassLike(node);
}

/** The one expression that a function gives back, when there is only one. */
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

/** The statement whose variable this is, if each turn of a loop sets it. */
function loopOf(declaration: ts.VariableDeclaration): ts.ForInOrOfStatement | undefined {
  const loop = declaration.parent.parent;
  return ts.isForOfStatement(loop) ? loop : undefined;
}

function rootOf(
  declaration: ts.Node | undefined,
): ts.ParameterDeclaration | ts.VariableDeclaration | undefined {
  let node = declaration;
  while (node && ts.isBindingElement(node)) node = node.parent.parent;
  return node && (ts.isParameter(node) || ts.isVariableDeclaration(node)) ? node : undefined;
}

/** Property names and positions from a pattern's whole value to one name in it; undefined where it takes the rest. */
function pathInPattern(binding: ts.BindingElement): readonly string[] | undefined {
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

/** Expressions of which one is the value of the whole. */
function branchesOf(node: ts.Expression): readonly ts.Expression[] {
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

export function propertyName(property: ts.ObjectLiteralElementLike): string | undefined {
  const { name } = property;
  if (!name) return undefined;
  if (ts.isIdentifier(name) || ts.isStringLiteralLike(name) || ts.isNumericLiteral(name)) return name.text;
  const computed = ts.isComputedPropertyName(name) ? staticValue(bareExpression(name.expression)) : undefined;
  return computed && String(computed.value);
}

/** The expression that a property is set to; its own name for a shorthand; undefined for methods and accessors. */
export function writtenValue(property: ts.ObjectLiteralElementLike): ts.Expression | undefined {
  if (ts.isPropertyAssignment(property)) return property.initializer;
  return ts.isShorthandPropertyAssignment(property) ? property.name : undefined;
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

function isUndefined(node: ts.Expression): boolean {
  return ts.isIdentifier(node) && node.text === "undefined";
}

function isSimple(value: unknown): boolean {
  return typeof value === "number" || typeof value === "string" || typeof value === "boolean";
}

function propertyOf(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key]
    : undefined;
}
