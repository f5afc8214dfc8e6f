import { type Allocation, birthOf } from "./allocations.ts";
import {
  defineProperty,
  firstOf,
  getOwnPropertyDescriptor,
  getPrototypeOf,
  isArray,
  objectPrototype,
  valuesOf,
} from "./primordials.ts";
import { referenceTo } from "./references.ts";

// Far above the needs of any DSL function: a value that is cut off here gets a finding anyway.
const mostCharacters = 1_000;
const mostProperties = 300;
/** A scenario may name every load of a large plan. */
const mostElements = 1_500;
const mostValues = 2_000;
const deepest = 6;

/**
 * Copies the argument of a DSL function, reading every property once: getters and proxies run here, and never again. The copy
 * contains nothing that could run code when it is turned into JSON: objects without prototype, lists with their `toJSON`
 * covered, texts, finite numbers, booleans, null. Results of other DSL functions become references, see {@link referenceTo};
 * any other value is described: `{ $strange: "NaN" }`.
 */
export function plainCopy(given: unknown): PlainCopy {
  const copying: Copying = {
    value: undefined,
    isFlat: false,
    values: 0,
    allocations: undefined,
    strangers: undefined,
  };
  copying.value = given === undefined ? strange("nothing") : copyOf(given, "", undefined, copying);
  return copying;
}

export interface PlainCopy {
  readonly value: unknown;
  /** An object with plain values only, of unknown allocation. */
  readonly isFlat: boolean;
  /** Allocations of the objects in it, with their paths. */
  readonly allocations: AllocationAt | undefined;
  /** Values that were described or referred to instead of copied, with their paths. */
  readonly strangers: Stranger | undefined;
}

/** A linked list, because a plan could observe a growing array. */
export interface AllocationAt {
  readonly path: string;
  readonly allocation: Allocation;
  readonly next: AllocationAt | undefined;
}

export interface Stranger {
  readonly holder: Record<string, unknown>;
  readonly key: string;
  readonly original: unknown;
  readonly next: Stranger | undefined;
}

interface Copying {
  value: unknown;
  isFlat: boolean;
  values: number;
  allocations: AllocationAt | undefined;
  strangers: Stranger | undefined;
}

interface Ancestor {
  readonly value: object;
  readonly path: string;
  readonly depth: number;
  readonly parent: Ancestor | undefined;
}

function copyOf(value: unknown, path: string, parent: Ancestor | undefined, copying: Copying): unknown {
  if (++copying.values > mostValues) return strange("more values than fit in one call");
  switch (typeof value) {
    case "object":
      return value === null ? null : copyOfObject(value, path, parent, copying);
    case "number":
      return value - value === 0 ? value : strange(`${value}`);
    case "string":
      return firstOf(value, mostCharacters);
    case "boolean":
    case "undefined":
      return value;
    case "function":
      return strange("a function");
    case "symbol":
      return strange("a symbol");
    default:
      return strange("a BigInt");
  }
}

function copyOfObject(value: object, path: string, parent: Ancestor | undefined, copying: Copying): unknown {
  const reference = parent === undefined ? undefined : referenceTo(value);
  if (reference !== undefined) return reference.data;
  for (let above = parent; above !== undefined; above = above.parent) {
    if (above.value === value) return strange("an object that contains itself");
  }
  const depth = parent === undefined ? 1 : parent.depth + 1;
  if (depth > deepest) return strange("an object nested too deeply");
  const allocation = birthOf(value);
  if (allocation !== undefined) copying.allocations = { path, allocation, next: copying.allocations };
  if (isArray(value)) return copyOfList(value, { value, path, depth, parent }, copying);
  const prototype = getPrototypeOf(value);
  if (prototype !== objectPrototype && prototype !== null) return strange(classOf(prototype));

  // The spread reads every property, once; all later code looks at the copy only.
  const copy: Record<string, unknown> = { __proto__: null, ...value } as never;
  if (holdsPlainValues(copy, copying)) {
    copying.isFlat = parent === undefined && allocation === undefined;
    return copy;
  }
  const here: Ancestor = { value, path, depth, parent };
  let properties = 0;
  for (const key in copy) {
    if (++properties > mostProperties)
      return strange(`an object with more than ${mostProperties} properties`);
    const original = copy[key];
    const copied =
      original === undefined && parent === undefined && leadsSomewhere(key)
        ? strange("nothing")
        : copyOf(original, path === "" ? key : `${path}.${key}`, here, copying);
    if (copied !== original) put(copy, key, copied, original, copying);
  }
  return copy;
}

/**
 * Undefined values are left out, except here: a misspelt terminal (`from: bank.positve`) must not turn a networked circuit into
 * a lone one. Without types to report it, the model does.
 */
function leadsSomewhere(key: string): boolean {
  return key === "from" || key === "to" || key === "returnTo";
}

/** True for nearly every object; this early test makes recording twice as fast. */
function holdsPlainValues(copy: object, copying: Copying): boolean {
  const values: readonly unknown[] = valuesOf(copy);
  const { length } = values;
  if (length > mostProperties) return false;
  for (let index = 0; index < length; index++) {
    const value = values[index];
    if (typeof value === "number") {
      if (value - value !== 0) return false;
    } else if (typeof value === "string") {
      if (value.length > mostCharacters) return false;
    } else if (typeof value !== "boolean") return false;
  }
  copying.values += length;
  return copying.values <= mostValues;
}

function copyOfList(value: readonly unknown[], here: Ancestor, copying: Copying): unknown {
  const { length } = value;
  if (!(length <= mostElements)) return strange(`a list of more than ${mostElements} values`);
  const copy: unknown[] = [];
  defineProperty(copy, "toJSON", { __proto__: null, value: undefined } as never);
  for (let index = 0; index < length; index++) {
    const original = value[index];
    const copied =
      original === undefined ? strange("nothing") : copyOf(original, `${here.path}.${index}`, here, copying);
    defineProperty(copy, index, {
      __proto__: null,
      value: copied,
      writable: true,
      enumerable: true,
      configurable: true,
    } as never);
    if (copied !== original) put(copy as never, `${index}`, copied, original, copying);
  }
  return copy;
}

function put(
  holder: Record<string, unknown>,
  key: string,
  copied: unknown,
  original: unknown,
  copying: Copying,
) {
  holder[key] = copied;
  const described = typeof original !== "object" || (copied as { $strange?: unknown }).$strange !== undefined;
  if (described || referenceTo(original) !== undefined)
    copying.strangers = { holder, key, original, next: copying.strangers };
}

function strange(described: string): { readonly $strange: string } {
  return { __proto__: null, $strange: described } as never;
}

/** Looks only at own data properties: describing an object runs no code of the plan except a proxy's traps. */
function classOf(prototype: object): string {
  const maker: unknown = getOwnPropertyDescriptor(prototype, "constructor")?.value;
  const name: unknown =
    typeof maker === "function" ? getOwnPropertyDescriptor(maker, "name")?.value : undefined;
  return typeof name === "string" && name !== ""
    ? `an object of class ${firstOf(name, 60)}`
    : "an object with inherited properties";
}
