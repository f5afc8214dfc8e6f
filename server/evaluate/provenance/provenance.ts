import ts from "typescript";
import type { PropertyPath } from "../../../library/model/plain-values.ts";
import type { PlanFile } from "../text/parse.ts";
import {
  type EvaluationContext,
  EvaluationContexts,
  longestTrail,
  type SourceNode,
  type SourceObject,
  type TracedRun,
} from "./contexts.ts";
import { propertyName, propertyValue } from "./object-literals.ts";
import { referenceIn } from "./references.ts";
import { staticValue } from "./static-value.ts";
import { unwrapExpression } from "./unwrap-expression.ts";
import type { Value } from "./value.ts";
import { type FoundProperty, type Made, ValueResolver } from "./value-resolver.ts";
import { type Neighbour, ValueTrail, type Wanted } from "./value-trail.ts";

/**
 * Traces the values of records back to the text that set them. The tree shows how expressions depend on each other, the run
 * shows which call and which object it was. A trail ends early at an expression that cannot be followed. A trail is rejected if
 * its end has another value than the record.
 */
export class Provenance {
  readonly #traced: TracedRun;
  readonly #contexts: EvaluationContexts;
  readonly #objects: ValueResolver;

  constructor(traced: TracedRun) {
    this.#traced = traced;
    this.#contexts = new EvaluationContexts(traced);
    this.#objects = new ValueResolver(traced, this.#contexts);
  }

  /** True if an origin so far was found by the values of other rows: those of one record then decide about others. */
  get comparesElements(): boolean {
    return this.#objects.comparesElements;
  }

  /** The call that made a record, and its argument. */
  argumentOf(record: number): Argument {
    const raw = this.#traced.outcome.records[record];
    const frame = raw && this.#contexts.frame(raw.call);
    if (!raw || !frame) return { call: topOf(this.#traced.root), given: undefined, object: undefined };
    const given = frame.node.arguments?.[0];
    const born = this.#contexts.allocatedAt(raw.allocations[""]);
    const object =
      born ??
      (given && !ts.isSpreadElement(given)
        ? this.#objects.object(given, this.#contexts.inside(frame), 0)
        : undefined);
    return { call: { file: frame.file, node: frame.node }, given, object };
  }

  /** The calls that led to a record, innermost first: that of the DSL function, that of its enclosing function, and so on. */
  callersOf(record: number): readonly SourceNode[] {
    const callers: SourceNode[] = [];
    let frame = this.#contexts.frame(this.#traced.outcome.records[record]?.call ?? -1);
    while (frame && callers.length < longestTrail) {
      callers.push({ file: frame.file, node: frame.node });
      frame = this.#contexts.inside(frame).caller;
    }
    return callers;
  }

  /** The node of an open call. */
  callAt(call: number): SourceNode | undefined {
    const frame = this.#contexts.frame(call);
    return frame && { file: frame.file, node: frame.node };
  }

  /** Literals of the objects observed at a record's call: the element of a loop. */
  observedAt(record: number): readonly SourceNode[] {
    const { records, calls } = this.#traced.outcome;
    const allocations = [...Object.values(records[record]?.allocations ?? {})];
    for (let call = records[record]?.call ?? -1; call >= 0; call = calls[call]?.within ?? -1) {
      allocations.push(...(calls[call]?.seen ?? []));
    }
    return allocations
      .flatMap((allocation) => this.#contexts.allocatedAt(allocation) ?? [])
      .map(({ file, literal }) => ({ file, node: literal }));
  }

  /** Undefined: the value is not written anywhere, or its place is unknown. */
  originOf(record: number, path: PropertyPath, argument: Argument): Origin | undefined {
    const raw = this.#traced.outcome.records[record];
    let object = path.length > 0 && raw ? argument.object : undefined;
    let found: FoundProperty | undefined;
    // The property reached so far, and its value: later perhaps that of an element of its list.
    let here: Value | undefined;
    let value: unknown = raw?.input;
    let element = false;
    for (const [depth, key] of path.entries()) {
      if (object) {
        found = this.#objects.property(object, key, 0);
        if (!found) return undefined;
        const expression = propertyValue(found.property);
        here = expression && { node: expression, context: found.holder.context };
        element = false;
      } else {
        const inList = here && Array.isArray(value) ? this.#elementOf(here, value, key) : undefined;
        if (!inList) break;
        here = inList;
        element = true;
      }
      value = propertyOf(value, key);
      const whole = depth === path.length - 1;
      if (whole && found) return this.#origin({ found, here, whole, element, value }, raw?.input);
      object = Array.isArray(value)
        ? undefined
        : ((here && this.#objects.object(here.node, here.context, 0)) ??
          this.#contexts.allocatedAt(raw?.allocations[path.slice(0, depth + 1).join(".")]));
    }
    return found && this.#origin({ found, here, whole: false, element, value }, raw?.input);
  }

  #origin(
    {
      found,
      here,
      whole,
      element,
      value,
    }: Omit<Origin, "trail" | "holder" | "property"> & {
      readonly found: FoundProperty;
      readonly here: Value | undefined;
      readonly value: unknown;
    },
    input: unknown,
  ): Origin {
    const { holder, property } = found;
    const neighbours = () => neighboursOf(holder.literal, input);
    const trail = here
      ? this.#trailOf(here.node, here.context, { value, neighbours, made: this.#madeBy(value) })
      : [{ file: holder.file, node: property }];
    return { trail, holder, property, whole, element };
  }

  /** One element of a list in the source; undefined if the list has meanwhile got another element there. */
  #elementOf(list: Value, values: readonly unknown[], key: string): Value | undefined {
    const found = this.#objects.elements(list.node, list.context, 0)[Number(key)];
    if (!found || !("node" in found)) return undefined;
    const value = values[Number(key)];
    const known = staticValue(unwrapExpression(found.node));
    if (known) return Object.is(known.value, value) ? found : undefined;
    const made = this.#madeBy(value);
    return made && !this.#objects.names(found.node, found.context, made, 0) ? undefined : found;
  }

  /** The call that made the part or terminal that a record refers to. */
  #madeBy(value: unknown): Made | undefined {
    const reference = referenceIn(value);
    const made = reference && this.#traced.outcome.records[reference.record];
    const frame = made && this.#contexts.frame(made.call);
    return frame && { call: frame.node, terminal: reference?.terminal };
  }

  #trailOf(expression: ts.Expression, context: EvaluationContext, wanted: Wanted): readonly SourceNode[] {
    const trail = new ValueTrail(this.#contexts, this.#objects, wanted);
    trail.follow(expression, context, 0);
    return trail.steps;
  }

  /** The object at a nested path of a record: a property can be inserted in it. */
  objectAt(record: number, path: PropertyPath): SourceObject | undefined {
    let object = this.argumentOf(record).object;
    const raw = this.#traced.outcome.records[record];
    for (const [depth, key] of path.entries()) {
      const found = object && this.#objects.property(object, key, 0);
      const expression = found && propertyValue(found.property);
      object =
        (expression && this.#objects.object(expression, found.holder.context, 0)) ??
        this.#contexts.allocatedAt(raw?.allocations[path.slice(0, depth + 1).join(".")]);
    }
    return object;
  }

  /** The literal itself and those spread into it, directly or not. */
  layersOf(object: SourceObject): readonly SourceObject[] {
    const layers = [object];
    for (const { literal, context } of layers) {
      for (const property of literal.properties) {
        if (layers.length > longestTrail) return layers;
        if (ts.isSpreadAssignment(property))
          layers.push(...this.#objects.objects(property.expression, context, 0));
      }
    }
    return layers;
  }
}

/** The origin of a record's value. */
export interface Origin {
  /** From the value as given to the DSL function, step by step, to the node that set it; at least one. */
  readonly trail: readonly SourceNode[];
  /** The literal that contains the property's name. */
  readonly holder: SourceObject;
  readonly property: ts.ObjectLiteralElementLike;
  /** The path was followed to its end: not to a number in place of an object. */
  readonly whole: boolean;
  /** The path ended at an element of a list, which is no property. */
  readonly element: boolean;
}

/** The argument of a DSL function, as far as it is known. */
export interface Argument {
  /** The call of the DSL function, or the innermost known call that led to it. */
  readonly call: SourceNode;
  /** The expression given to the DSL function. */
  readonly given: ts.Expression | undefined;
  readonly object: SourceObject | undefined;
}

/** The start of a file, for records without a call. */
function topOf(file: PlanFile): SourceNode {
  return { file, node: file.tree.source.statements[0] ?? file.tree.source };
}

function neighboursOf(literal: ts.ObjectLiteralExpression, input: unknown): readonly Neighbour[] {
  return literal.properties.flatMap((property) => {
    const expression = propertyValue(property);
    const key = propertyName(property);
    return expression && key !== undefined
      ? [{ expression: unwrapExpression(expression), value: propertyOf(input, key) }]
      : [];
  });
}

function propertyOf(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key]
    : undefined;
}
