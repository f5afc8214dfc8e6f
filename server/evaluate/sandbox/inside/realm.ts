/**
 * The code that runs inside QuickJS before any plan: it removes features that a plan does not need, holds the hooks, and
 * records the arguments of the DSL functions. Evaluated once in every fresh context, as one module; the host calls its exports.
 *
 * A rule for every file of this folder: a plan may later replace anything of the language. So each file takes the functions it
 * needs from `primordials.ts`, looks up no method on a prototype, grows no array by assignment (a setter on `Array.prototype`
 * would see it), and passes on no object with missing properties that would be looked up there.
 */
import { enter, leave, literal, literals, open, self } from "./allocations.ts";
import { harden } from "./harden.ts";
import { defineProperty } from "./primordials.ts";
import { awaited, watched } from "./promises.ts";
import { numbers, recorded, setEmit, setNumbering, unused, written } from "./recorder.ts";

export { forgetOpenCalls } from "./allocations.ts";
export { describeThrown } from "./describe-thrown.ts";
export { hasReported, isTakenAwaited, placeOfTaken, reportedError, takePromise } from "./promises.ts";
export { flush, indexOfOpenCall } from "./recorder.ts";

/** The memory that the recorder writes its numbers to. */
export const memory = numbers.buffer;

const doors = globalThis as unknown as Doors;
setEmit(doors.emit);
delete doors.emit;

// The host moves these into constants that no plan can reach or replace, then deletes them.
doors.marks = { enter, leave, open, awaited, watched, literal, literals, self, unused, written };
doors.recorded = recorded;
doors.setNumbering = setNumbering;

// Read by the pattern `{ [__self]: whole, load }`: identifies the destructured object.
defineProperty(Object.prototype, self, {
  get(this: unknown) {
    return this;
  },
});

harden();

/** Globals that exist only while the context is prepared, before any plan can see them. */
interface Doors {
  emit?: Parameters<typeof setEmit>[0] | undefined;
  marks?: unknown;
  recorded?: unknown;
  setNumbering?: unknown;
}
