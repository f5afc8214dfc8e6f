import ts from "typescript";
import { propertyName, propertyValue } from "./object-literals.ts";
import { staticValue } from "./static-value.ts";
import { unwrapExpression } from "./unwrap-expression.ts";
import type { Element } from "./value.ts";

/**
 * Lists that consist of literals alone. Their elements have the same values in every context, and are looked up by value: a
 * table of thousands of circuits is traversed once, and not again for each of its rows.
 */
export class LiteralLists {
  readonly #literal = new WeakMap<ts.Node, boolean>();
  readonly #lists = new WeakMap<ts.Node, Map<string, readonly Element[]>>();
  readonly #indices = new WeakMap<readonly Element[], Map<string, ReadonlyMap<string, readonly Element[]>>>();

  /**
   * The elements of a literal as made by `read`; the same list at each call if the literal contains only literals. `kind`
   * distinguishes lists read from one literal: its keys, its values.
   */
  elements(literal: ts.Expression, kind: string, read: () => readonly Element[]): readonly Element[] {
    const known = this.#lists.get(literal)?.get(kind);
    if (known) return known;
    const elements = read();
    const holdsLiterals = this.#literal.get(literal) ?? isLiteral(literal);
    this.#literal.set(literal, holdsLiterals);
    if (!holdsLiterals) return elements;
    const kinds = this.#lists.get(literal) ?? new Map<string, readonly Element[]>();
    this.#lists.set(literal, kinds.set(kind, elements));
    this.#indices.set(elements, new Map());
    return elements;
  }

  /** The elements with all of these parts; undefined: the list contains more than literals. */
  having(list: readonly Element[], parts: readonly KnownPart[]): readonly Element[] | undefined {
    const indices = this.#indices.get(list);
    if (!indices) return undefined;
    const paths = parts.map(({ path }) => path);
    const name = JSON.stringify(paths);
    let index = indices.get(name);
    if (!index) {
      index = indexBy(list, paths);
      indices.set(name, index);
    }
    return index.get(keyOf(parts.map(({ value }) => value))) ?? [];
  }
}

/** The known value at the end of a path of property names and indices in an element. */
export interface KnownPart {
  readonly path: readonly string[];
  readonly value: unknown;
}

/** Leaves out elements without a known value at the end of each path. */
function indexBy(
  list: readonly Element[],
  paths: readonly (readonly string[])[],
): ReadonlyMap<string, readonly Element[]> {
  const index = new Map<string, Element[]>();
  for (const element of list) {
    const values: unknown[] = [];
    for (const path of paths) {
      const end = partOf(element, path);
      const known = end && staticValue(end);
      if (known) values.push(known.value);
    }
    if (values.length < paths.length) continue;
    const key = keyOf(values);
    const alike = index.get(key);
    if (alike) alike.push(element);
    else index.set(key, [element]);
  }
  return index;
}

/** Distinguishes the same values as `Object.is`. */
function keyOf(values: readonly unknown[]): string {
  return JSON.stringify(values.map((value) => [typeof value, Object.is(value, -0) ? "-0" : String(value)]));
}

function partOf(element: Element, path: readonly string[]): ts.Expression | undefined {
  if ("node" in element) return partIn(element.node, path);
  const [key, ...rest] = path;
  const part = key === undefined ? undefined : element.pair[Number(key)];
  return part && partIn(part, rest);
}

function partIn(expression: ts.Expression, path: readonly string[]): ts.Expression | undefined {
  const node = unwrapExpression(expression);
  const [key, ...rest] = path;
  if (key === undefined) return node;
  if (/^\d+$/.test(key)) {
    const element = ts.isArrayLiteralExpression(node) ? node.elements[Number(key)] : undefined;
    return element && partIn(element, rest);
  }
  if (!ts.isObjectLiteralExpression(node)) return undefined;
  const property = node.properties.findLast((one) => propertyName(one) === key);
  const value = property && propertyValue(property);
  return value && partIn(value, rest);
}

function isLiteral(expression: ts.Expression): boolean {
  const node = unwrapExpression(expression);
  if (ts.isArrayLiteralExpression(node)) return node.elements.every(isLiteral);
  if (ts.isObjectLiteralExpression(node)) {
    return node.properties.every(
      (property) =>
        ts.isPropertyAssignment(property) &&
        !ts.isComputedPropertyName(property.name) &&
        isLiteral(property.initializer),
    );
  }
  return staticValue(node) !== undefined;
}
