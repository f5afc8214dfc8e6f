import { getOwnPropertyDescriptor, ownKeys, stringify } from "./primordials.ts";

/**
 * What words made: parts, circuits, cables, and the terminals of parts. Where a later word is given one of them, its record
 * holds no copy but names it. Known by identity, so a plan cannot forge one; written out by hand, `{ kind: "battery", id: 3 }`
 * is data like any other, and what it means is for the model to say.
 */
export interface Reference {
  /** Without prototype, so that nothing runs when it is turned into JSON. */
  readonly data: object;
  json: string | undefined;
}

/** Remembers what the word of that name made in its call of that number, and its terminals. */
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

// Own properties, so that nothing is looked up on a prototype.
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
