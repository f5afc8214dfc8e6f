import { apply, construct, defineProperty, freeze } from "./primordials.ts";
import { reportToConsole, watchThen } from "./promises.ts";

/**
 * Removes features that a plan does not need: the clock, chance, code made from text, and access to the engine's memory
 * management. A plan then gives the same records every time and everywhere.
 */
export function harden() {
  for (const name of unwanted) delete (globalThis as Record<string, unknown>)[name];
  removeCodeFromText();
  stopTheClock();
  replaceChance();
  silenceTheConsole();
  watchThen();
}

const unwanted = [
  "performance",
  "queueMicrotask",
  "eval",
  "Atomics",
  "SharedArrayBuffer",
  "WeakRef",
  "FinalizationRegistry",
  "gc",
  "navigator",
];

/** `Function("…")` and its kin, also by way of `constructor.constructor`. They remain prototype owners, as `instanceof` needs. */
function removeCodeFromText() {
  const kinds = [() => {}, async () => {}, function* () {}, async function* () {}];
  for (let index = 0; index < kinds.length; index++) {
    const prototype = Object.getPrototypeOf(kinds[index]) as object;
    const name = index === 0 ? "Function" : (prototype as { constructor: { name: string } }).constructor.name;
    function refusing(): never {
      throw new EvalErrorKept("a plan cannot make code from text");
    }
    defineProperty(refusing, "name", { value: name });
    defineProperty(refusing, "prototype", { value: prototype, writable: false });
    defineProperty(prototype, "constructor", { value: refusing, writable: false, configurable: false });
    if (index === 0) setGlobal("Function", refusing);
  }
}

const EvalErrorKept = EvalError;

/** The time is always the same. The class is no subclass: `super` would lead back to the real one. */
function stopTheClock() {
  const Real = Date;
  const moment = Real.UTC(2000, 0, 1);
  const written = Real.prototype.toString;
  function Stopped(...parts: unknown[]): unknown {
    if (new.target === undefined) return apply(written, new Real(moment), []);
    return construct(Real, parts.length === 0 ? [moment] : parts, new.target);
  }
  defineProperty(Stopped, "name", { value: "Date" });
  defineProperty(Stopped, "length", { value: 7 });
  defineProperty(Stopped, "prototype", { value: Real.prototype, writable: false });
  defineProperty(Stopped, "now", { value: () => moment, writable: true, configurable: true });
  defineProperty(Stopped, "parse", { value: Real.parse, writable: true, configurable: true });
  defineProperty(Stopped, "UTC", { value: Real.UTC, writable: true, configurable: true });
  defineProperty(Real.prototype, "constructor", { value: Stopped });
  setGlobal("Date", Stopped);
}

/** A fixed sequence (mulberry32): a plan that uses chance is at least the same plan every time. */
function replaceChance() {
  const { imul } = Math;
  let state = 0x10_0a_d5;
  const random = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  defineProperty(Math, "random", { value: random, writable: true, configurable: true });
}

/**
 * A builder may write `console.log` to find a mistake; in the editor it has no effect, in plain Node it prints. An error is not
 * lost: the plan went on without all that follows the place where it was thrown.
 */
function silenceTheConsole() {
  const console: Record<string, unknown> = {};
  for (const name of [
    "log",
    "info",
    "warn",
    "error",
    "debug",
    "trace",
    "table",
    "dir",
    "assert",
    "count",
    "group",
    "groupEnd",
    "time",
    "timeEnd",
  ]) {
    console[name] = (...given: unknown[]) => {
      for (let at = 0; at < given.length; at++) reportToConsole(given[at]);
    };
  }
  setGlobal("console", freeze(console));
}

function setGlobal(name: string, value: unknown) {
  defineProperty(globalThis, name, { value, writable: true, enumerable: false, configurable: true });
}
