import { apply, defineProperty, getPrototypeOf } from "./primordials.ts";

/**
 * Watches the promises of a plan. The error of an async function that is called without `await` would otherwise be lost, and the
 * circuits behind it with it; so would those behind an `await` that never ends.
 *
 * Every call of a plan returns through a hook, so every promise that a plan holds was seen here. The host reads their states once no
 * job is left.
 */
export function watched<Value>(value: Value): Value {
  if (isPromise(value) && promises.find(value) === undefined) add(value);
  return value;
}

/** The operand of an `await`. */
export function awaited<Value>(value: Value): Value {
  if (isPromise(value)) awaitedBy(promises.find(value) ?? add(value));
  return value;
}

/** `catch`, `finally`, `Promise.all` and their kin all call `then`. */
export function watchThen() {
  const { then } = promisePrototype;
  const watching = {
    // biome-ignore lint/suspicious/noThenProperty: it is the language's own
    then(this: Promise<unknown>, fulfilled?: unknown, rejected?: unknown): unknown {
      const known = promises.find(this);
      if (known !== undefined) awaitedBy(known);
      return watched(apply(then, this, [fulfilled, rejected] as never));
    },
  };
  defineProperty(promisePrototype, "then", { value: watching.then, writable: true, configurable: true });
}

/** An error that the plan passed on to the console: in plain Node the builder would see it there. */
export function reportToConsole(given: unknown) {
  if (!isReported && isError(given)) {
    isReported = true;
    reported = given;
  }
}

let isReported = false;
let reported: unknown;

export function hasReported(): boolean {
  return isReported;
}

export function reportedError(): unknown {
  return reported;
}

/** Takes the earliest promise that was not taken yet; undefined if none is left. */
export function takePromise(): object | undefined {
  taken = first;
  first = first?.next;
  return taken?.promise;
}

/** Its outcome reaches another part of the plan: an `await`, or a function given to `then`. */
export function isTakenAwaited(): boolean {
  return taken?.awaitedAt !== undefined;
}

/** An error whose stack is that of the `await`. */
export function placeOfTaken(): unknown {
  return taken?.awaitedAt;
}

interface Watched {
  readonly promise: object;
  awaitedAt: Error | undefined;
  next: Watched | undefined;
}

const promisePrototype = Promise.prototype;
const errorPrototype = Error.prototype;
const KeptError = Error;

// Own properties: no lookup on a prototype.
const promises = Object.assign(new WeakMap<object, Watched>(), {
  find: WeakMap.prototype.get as (this: WeakMap<object, Watched>, promise: object) => Watched | undefined,
  remember: WeakMap.prototype.set as (
    this: WeakMap<object, Watched>,
    promise: object,
    watched: Watched,
  ) => unknown,
});

let first: Watched | undefined;
let last: Watched | undefined;
let taken: Watched | undefined;

function add(promise: object): Watched {
  const added: Watched = { promise, awaitedAt: undefined, next: undefined };
  promises.remember(promise, added);
  if (last === undefined || first === undefined) first = added;
  else last.next = added;
  last = added;
  return added;
}

function awaitedBy(one: Watched) {
  if (one.awaitedAt === undefined) one.awaitedAt = new KeptError();
}

function isPromise(value: unknown): value is object {
  return typeof value === "object" && value !== null && getPrototypeOf(value) === promisePrototype;
}

function isError(value: unknown): boolean {
  let holder = typeof value === "object" ? value : null;
  for (let steps = 0; holder !== null && steps < 10; steps++) {
    holder = getPrototypeOf(holder);
    if (holder === errorPrototype) return true;
  }
  return false;
}
