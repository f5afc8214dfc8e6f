import { getOwnPropertyDescriptor, ownKeys, stringify } from "./primordials.ts";

/**
 * Results of DSL functions: parts, circuits, cables, and the terminals of parts. If one is passed to a later function, the
 * record holds a reference instead of a copy. Known by identity, so a plan cannot forge one. Written by hand,
 * `{ kind: "battery", id: 3 }` is data like any other, and its meaning is for the model to decide.
 */
export interface Reference {
  /** Without prototype: turning it into JSON runs no code. */
  readonly data: object;
  json: string | undefined;
}

/** Remembers the result of the function of that name in its call of that number, and its terminals. */
export function rememberMade(result: unknown, kind: string, id: number) {
  if (typeof result !== "object" || result === null) return;
  references.remember(result, { data: { __proto__: null, kind, id } as never, json: undefined });
  // Terminals are the only properties that are not enumerable, and were defined last.
  const keys = ownKeys(result);
  for (let at = keys.length - 1; at >= 0; at--) {
    const key = keys[at];
    const property = key === undefined ? undefined : getOwnPropertyDescriptor(result, key);
    if (typeof key !== "string" || property === undefined || property.enumerable === true) return;
    const terminal: unknown = property.value;
    if (typeof terminal !== "object" || terminal === null) return;
    const data = { __proto__: null, kind: "terminal", part: id, of: kind, terminal: key } as never;
    references.remember(terminal, { data, json: undefined });
  }
}

export function referenceTo(value: unknown): Reference | undefined {
  return references.known(value);
}

export function jsonOf(reference: Reference): string {
  reference.json ??= stringify(reference.data);
  return reference.json;
}

// Own properties: no lookup on a prototype.
const references = Object.assign(new WeakMap<object, Reference>(), {
  known: WeakMap.prototype.get as (
    this: WeakMap<object, Reference>,
    object: unknown,
  ) => Reference | undefined,
  remember: WeakMap.prototype.set as (
    this: WeakMap<object, Reference>,
    object: object,
    reference: Reference,
  ) => unknown,
});
