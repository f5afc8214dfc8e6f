/**
 * What runs inside QuickJS before any plan does: it takes away what a plan has no use for, keeps the marks, and records what
 * the words of the DSL are given. Evaluated once in every fresh context, as one module; the host calls what it exports.
 *
 * A rule for every file of this folder: a plan may replace anything of the language later, so whatever is needed is taken
 * hold of in `primordials.ts`, no method is looked up on a prototype, no array grows by assignment (a setter on
 * `Array.prototype` would see it), and no object is handed over whose missing properties would be looked up there.
 */
import { enter, leave, literal, open, self } from "./allocations.ts";
import { harden } from "./harden.ts";
import { defineProperty } from "./primordials.ts";
import { numbers, recorded, setEmit, setNumbering, written } from "./recorder.ts";

export { forgetOpenCalls } from "./allocations.ts";
export { describeThrown } from "./describe-thrown.ts";
export { flush, indexOfOpenCall } from "./recorder.ts";

/** Where the recorder writes its numbers. */
export const memory = numbers.buffer;

const doors = globalThis as unknown as Doors;
setEmit(doors.emit);
delete doors.emit;

// Taken over by the host into constants that no plan can reach or replace, then removed.
doors.marks = { enter, leave, open, literal, self, written };
doors.recorded = recorded;
doors.setNumbering = setNumbering;

// What the pattern `{ [__self]: whole, load }` reads: it tells which object is taken apart.
defineProperty(Object.prototype, self, {
  get(this: unknown) {
    return this;
  },
});

harden();

/** Globals that exist only while the context is made ready, before a plan is there to see them. */
interface Doors {
  emit?: Parameters<typeof setEmit>[0] | undefined;
  marks?: unknown;
  recorded?: unknown;
  setNumbering?: unknown;
}
