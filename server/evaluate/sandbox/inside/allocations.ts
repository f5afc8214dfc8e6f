/**
 * The hooks that track open calls and allocations. See `sandbox.ts` for their meaning.
 *
 * A plan can name the hooks in its text and misuse them. A token is a {@link Call} with private fields only, so it can be
 * neither forged nor changed; any other value in its place is ignored. At worst, a finding of that plan has a wrong place in
 * it.
 */
import { defineProperty, freeze, isArray } from "./primordials.ts";
import { watched } from "./promises.ts";

/** A call that was open. Freed with the last token, allocation or call that refers to it. */
export class Call {
  readonly #site: number;
  readonly #within: Call | undefined;
  readonly #seen: readonly (Allocation | undefined)[] | undefined;
  #index = -1;

  constructor(site: number, within: Call | undefined, seen: readonly (Allocation | undefined)[] | undefined) {
    this.#site = site;
    this.#within = within;
    this.#seen = seen;
  }

  static is(token: unknown): token is Call {
    return typeof token === "object" && token !== null && #site in token;
  }

  static site(call: Call): number {
    return call.#site;
  }

  static within(call: Call): Call | undefined {
    return call.#within;
  }

  static seen(call: Call): readonly (Allocation | undefined)[] | undefined {
    return call.#seen;
  }

  /** Its number among the recorded calls; -1 until recorded. */
  static index(call: Call): number {
    return call.#index;
  }

  static number(call: Call, index: number) {
    call.#index = index;
  }
}

/** The allocation of an object. Never passed to a plan. */
export interface Allocation {
  readonly literal: number;
  readonly call: Call | undefined;
  readonly seen: readonly (Allocation | undefined)[] | undefined;
  index: number;
}

// A token gives no access to its class, and so to no second token.
defineProperty(Call.prototype, "constructor", { value: undefined });
freeze(Call.prototype);

let current: Call | undefined;

// Own properties: no lookup on a prototype.
const allocations = Object.assign(new WeakMap<object, Allocation>(), {
  allocationOf: WeakMap.prototype.get as (
    this: WeakMap<object, Allocation>,
    object: unknown,
  ) => Allocation | undefined,
  remember: WeakMap.prototype.set as (
    this: WeakMap<object, Allocation>,
    object: object,
    allocation: Allocation,
  ) => unknown,
});

export function enter(site: number, ...seen: unknown[]): Call | undefined {
  const before = current;
  current = new Call(site, before, seen.length === 0 ? undefined : allocationsOf(seen));
  return before;
}

export function leave<Value>(token: Call | undefined, value: Value): Value {
  if (token === undefined || Call.is(token)) current = token;
  return watched(value);
}

export function open(): Call | undefined {
  return current;
}

export function literal<Made extends object>(id: number, made: Made, ...seen: unknown[]): Made {
  allocations.remember(made, {
    literal: id,
    call: current,
    seen: seen.length === 0 ? undefined : allocationsOf(seen),
    index: -1,
  });
  return made;
}

/** The elements of a list: literals with successive numbers from `first`. */
export function literals<List extends readonly object[]>(first: number, list: List): List {
  // A plan that calls the hook itself may give it anything.
  if (!isArray(list)) return list;
  const { length } = list;
  for (let at = 0; at < length; at++) {
    const made = list[at];
    if (typeof made === "object" && made !== null)
      allocations.remember(made, { literal: first + at, call: current, seen: undefined, index: -1 });
  }
  return list;
}

export const self = Symbol("self");

/** The result of a DSL function has the allocation of its argument. */
export function sameAllocation(made: unknown, as: object) {
  const allocation = allocations.allocationOf(as);
  if (allocation !== undefined && typeof made === "object" && made !== null)
    allocations.remember(made, allocation);
}

export function birthOf(object: unknown): Allocation | undefined {
  return allocations.allocationOf(object);
}

/** No call of the plan is open between two jobs. */
export function forgetOpenCalls() {
  current = undefined;
}

/** In place: the list is the function's own. */
function allocationsOf(seen: unknown[]): (Allocation | undefined)[] {
  for (let position = 0; position < seen.length; position++) {
    seen[position] = allocations.allocationOf(seen[position]);
  }
  return seen as (Allocation | undefined)[];
}
